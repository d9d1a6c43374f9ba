// A recorded drive: read, told, and logged when what it tells is right.
import { asked, Trouble, whenOver, type Job } from "./ask";
import { field, make } from "./page_parts";

/** The points of a recording, in order, a run of them for each track segment: [lon, lat]. */
export function runsOf(gpx: string): number[][][] {
  const all = new DOMParser().parseFromString(gpx, "application/xml");
  return [...all.getElementsByTagNameNS("*", "trkseg")].map((run) => [...run.getElementsByTagNameNS("*", "trkpt")]
    .map((point) => [Number(point.getAttribute("lon")), Number(point.getAttribute("lat"))])
    .filter(([lon, lat]) => Number.isFinite(lon) && Number.isFinite(lat))).filter((run) => run.length > 1);
}

const tell = (drive: File, code: string, lesson: string): Promise<{ job: string }> =>
  asked(`/recorded?${new URLSearchParams({ code, lesson, name: drive.name }).toString()}`, { method: "POST", headers: { "Content-Type": "application/gpx+xml" }, body: drive });
const log = (job: string, line: string, keep: boolean): Promise<{ job: string }> =>
  asked(`/recorded/${job}`, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ line, keep }) });

/** Without the folder that the recording lies in meanwhile, and without what goes without saying here. */
const toldOf = (said: string): string => said.replace(/^\/\S*\//, "").replace(/^nothing is written$/m, "").trim();

export class RecordedDrive {
  readonly element: HTMLDetailsElement;
  private readonly file = make("input", { type: "file", accept: ".gpx" });
  private readonly lesson = make("input", { type: "number", min: "1", max: "999999" });
  private readonly line = make("input", { type: "text", autocomplete: "off" });
  private readonly keep = make("input", { type: "checkbox", id: "recorded-keep" });
  private readonly came = make("p", { role: "status" });
  private readonly told = make("div", {});
  private job: string | null = null; // it holds the recording
  private asked = 0; // which question is the last one

  /** code: of the pupil that is shown; draw: shows the recorded runs on the map, none of them takes them away; logged: told
   * what the book says of it. */
  constructor(private readonly code: () => string, private readonly draw: (runs: number[][][]) => void, private readonly logged: (said: string) => Promise<void>) {
    const read = make("form", { onsubmit: (event) => { event.preventDefault(); void this.read(); } },
      make("div", { class: "fields" }, field("GPX file of the drive", this.file, true), field("Number of the lesson", this.lesson)),
      make("p", { class: "far" }, "Without a number: the lesson planned for that time, else a new one. What was passed is told first; nothing is written before you log it."),
      make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, "Read the drive")));
    this.element = make("details", { class: "note" }, make("summary", {}, "From a recorded drive"), read, this.came, this.told);
  }

  /** Nothing of a drive that was told for another pupil. */
  clear(): void {
    ++this.asked;
    this.draw([]);
    this.job = null;
    this.file.value = this.lesson.value = this.line.value = "";
    this.keep.checked = false;
    this.came.replaceChildren();
    this.told.replaceChildren();
  }

  private async read(): Promise<void> {
    const drive = this.file.files?.[0];
    if (!drive) return this.file.focus();
    this.told.replaceChildren();
    this.draw(runsOf(await drive.text()));
    await this.ask("Reading the drive …", () => tell(drive, this.code(), this.lesson.value), (over) => {
      this.came.replaceChildren();
      this.told.replaceChildren(
        make("h4", { tabindex: "-1" }, "What was driven"), make("p", { class: "far" }, "The map shows the recording."), ...over.warned.map((line) => make("p", { class: "trouble" }, line)),
        make("pre", { class: "said", role: "region", "aria-label": "What was driven" }, toldOf(over.said)),
        make("form", { onsubmit: (event) => { event.preventDefault(); void this.log(); } },
          make("div", { class: "fields" }, field("Said of it besides", this.line, true)),
          make("p", {}, this.keep, " ", make("label", { for: "recorded-keep" }, "Keep the recording in the book: it tells where the pupil was")),
          make("div", { class: "deeds" }, make("button", { type: "submit", class: "deed" }, "Log it as driven"))));
      this.told.querySelector("h4")?.focus();
    });
  }

  private async log(): Promise<void> {
    const job = this.job;
    if (!job) return;
    await this.ask("Writing it down …", () => log(job, this.line.value.trim(), this.keep.checked), async (over) => {
      const said = over.said.slice(Math.max(0, over.said.search(/^\S+, lesson \d+ is logged/m))).trim();
      this.clear();
      await this.logged(said);
    });
  }

  /** Begins a job, waits for it, and goes on with what it said; trouble is told, and the recording stays for another try. */
  private async ask(doing: string, begin: () => Promise<{ job: string }>, then: (over: Job) => void | Promise<void>): Promise<void> {
    const now = ++this.asked;
    this.came.replaceChildren(doing);
    try {
      const { job } = await begin();
      if (now !== this.asked) return;
      this.job = job;
      const over = await whenOver(job);
      if (now === this.asked && over) await then(over);
    } catch (failure) {
      if (now === this.asked) this.came.replaceChildren(make("span", { class: "trouble" }, failure instanceof Trouble ? failure.message : String(failure)));
    }
  }
}
