// The page where there is no area yet: an extract is chosen or dropped, sent to the program, and built there.
import { breakOffBuild, buildState, send, type BuildState } from "./first_ask";
import { field, make, part } from "./page_parts";

const regions: [string, string][] = [
  ["", "choose"], ["GB-ENG", "England"], ["GB-WLS", "Wales"], ["GB-SCT", "Scotland"], ["GB-NIR", "Northern Ireland"], ["IE", "Ireland"], ["other", "another country"],
];
const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
const isRunning = ({ stage }: BuildState): boolean => stage === "waiting" || stage === "working";

/** One press of the button, up to its end: what is broken off is that one, whatever was begun meanwhile. */
interface Run { readonly sending: AbortController; stopped: boolean }

/** "35 MB", as one reads a file's size. */
function size(bytes: number): string {
  if (bytes >= 2 ** 30) return `${(bytes / 2 ** 30).toFixed(1)} GB`;
  return bytes >= 2 ** 20 ? `${Math.round(bytes / 2 ** 20)} MB` : `${Math.ceil(bytes / 2 ** 10)} kB`;
}

class FirstRun {
  private readonly region = make("select", { required: true }, ...regions.map(([value, text]) => make("option", { value }, text)));
  private readonly country = make("input", { type: "text", size: "4", maxlength: "2", pattern: "[A-Za-z]{2}", autocomplete: "off" });
  private readonly side = make("select", {}, make("option", { value: "" }, "as usual there"), make("option", { value: "left" }, "left"), make("option", { value: "right" }, "right"));
  private readonly elsewhere = make("div", { class: "fields", hidden: true }, field("Its two letters (ISO 3166)", this.country), field("One drives on the", this.side));
  private readonly file = make("input", { type: "file", id: "extract", "aria-describedby": "extract-why" });
  private readonly chosen = make("p", { id: "extract-chosen", role: "status" });
  private readonly drop = make("div", { class: "drop" },
    make("label", { for: "extract" }, "The extract"), this.file, make("span", { class: "far" }, "or drop it here"), this.chosen);
  private readonly begin = make("button", { type: "submit", class: "deed" }, "Build the area");
  private readonly trouble = make("p", { class: "trouble", role: "alert", hidden: true });
  private readonly how = make("progress", { max: "100", value: "0", "aria-label": "How far it is" });
  private readonly step = make("p", { id: "first-step", role: "status" });
  private readonly working = make("div", { hidden: true }, this.step, this.how, " ",
    make("button", { type: "button", class: "small", onclick: () => void this.stop() }, "break off"));
  private extract: File | null = null;
  private run: Run | null = null; // what is being sent or built; null: nothing

  constructor(form: HTMLFormElement, private readonly known: BuildState) {
    this.file.accept = [...known.endings, ".pbf", ".gz", ".bz2"].join(",");
    this.file.addEventListener("change", () => this.choose(this.file.files?.[0] ?? null));
    this.region.addEventListener("change", () => {
      this.elsewhere.hidden = this.region.value !== "other";
      this.country.required = !this.elsewhere.hidden;
    });
    form.addEventListener("submit", (event) => { event.preventDefault(); void this.build(); });
    this.takeDrops();
    form.append(
      make("div", { class: "fields" }, field("The roads are in", this.region)), this.elsewhere, this.drop,
      make("p", { id: "extract-why", class: "far" }, `Up to ${size(known.most_bytes)}. The area is written to ${known.area}; next time the page opens on it by itself.`),
      this.trouble, make("div", { class: "deeds" }, this.begin), this.working);
  }

  /** Goes on with what is being built already, in another tab or before this page was loaded anew. */
  async goOn(): Promise<void> {
    if (isRunning(this.known)) await this.watch(this.begun());
    else if (this.known.trouble) this.tell(this.known.trouble);
  }

  private takeDrops(): void {
    // A file dropped beside the field would be opened by the browser in place of the page.
    document.addEventListener("dragover", (event) => event.preventDefault());
    document.addEventListener("drop", (event) => {
      event.preventDefault();
      const files = event.dataTransfer?.files;
      if (this.run !== null || !files?.[0]) return;
      this.file.files = files;
      this.choose(files[0]);
    });
    this.drop.addEventListener("dragenter", () => this.drop.classList.add("over"));
    this.drop.addEventListener("dragleave", (event) => {
      if (!this.drop.contains(event.relatedTarget as Node | null)) this.drop.classList.remove("over");
    });
  }

  private choose(file: File | null): void {
    this.drop.classList.remove("over");
    this.extract = file;
    this.trouble.hidden = true;
    this.chosen.replaceChildren(file ? `${file.name}: ${size(file.size)}` : "");
    if (file) this.unfit(file);
  }

  /** Tells what can be told of a file before it is sent. */
  private unfit(file: File): boolean {
    const fits = this.known.endings.some((ending) => file.name.endsWith(ending));
    if (!fits) this.tell(`${file.name}: no extract by its name, which would end in ${this.known.endings.join(", ")}`);
    else if (file.size > this.known.most_bytes) this.tell(`${file.name}: more than ${size(this.known.most_bytes)}; take a smaller extract`);
    else if (file.size === 0) this.tell(`${file.name}: is empty`);
    return !this.trouble.hidden;
  }

  private async build(): Promise<void> {
    const extract = this.extract;
    this.trouble.hidden = true;
    if (!extract) {
      this.tell("Choose an extract first.");
      return this.file.focus();
    }
    if (this.unfit(extract)) return;
    const run = this.begun();
    this.show("sending the extract to the program on this computer", 0);
    try {
      const region = this.region.value === "other" ? this.country.value : this.region.value;
      await send(extract, { region, side: this.elsewhere.hidden ? "" : this.side.value }, run.sending.signal,
        (done) => this.show("sending the extract to the program on this computer", done));
      await this.watch(run);
    } catch (failure) {
      this.end(run.stopped ? "" : failure instanceof Error ? failure.message : String(failure));
    }
  }

  private begun(): Run {
    return this.run = { sending: new AbortController(), stopped: false };
  }

  private async watch(run: Run): Promise<void> {
    for (; ; await pause(300)) {
      const state = await buildState();
      if (run !== this.run) return;
      if (isRunning(state)) this.show(state.step || "beginning", state.percent);
      else if (state.trouble || state.stage !== "over") return this.end(state.trouble);
      else return location.assign("/");
    }
  }

  private show(step: string, percent: number): void {
    this.working.hidden = false;
    this.begin.disabled = this.file.disabled = this.region.disabled = true;
    this.step.replaceChildren(`Building the area: ${step} …`);
    this.how.value = percent;
  }

  private end(trouble: string): void {
    this.run = null;
    this.working.hidden = true;
    this.begin.disabled = this.file.disabled = this.region.disabled = false;
    this.tell(trouble || "Broken off. Nothing is left behind.");
    this.begin.focus();
  }

  private tell(line: string): void {
    this.trouble.hidden = false;
    this.trouble.replaceChildren(line);
  }

  /** The program first: what has just been sent whole would be built all the same. Its answer may come when this build is
   * over and the next one begun, which is none of its business. */
  private async stop(): Promise<void> {
    const run = this.run;
    if (!run || run.stopped) return;
    run.stopped = true;
    await breakOffBuild().catch(() => undefined);
    run.sending.abort();
  }
}

buildState()
  .then((state) => new FirstRun(part<HTMLFormElement>("first-form"), state).goOn())
  .catch((failure: unknown) => part("first-form").replaceChildren(make("p", { class: "trouble", role: "alert" }, failure instanceof Error ? failure.message : String(failure))));
