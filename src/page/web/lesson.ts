// A lesson at the desk: wished for, looked for, picked, changed, printed.
import { breakOff, cardAddress, driveOf, lookForLoops, loopsOf, Trouble, whenOver, type Answer, type Drive } from "./ask";
import { make, part } from "./page_parts";
import { clearRibbons, letter, showRibbons, type MetBy } from "./ribbons";
import type { RoadMap } from "./map";
import type { WishForm } from "./wish_form";
import { lasting, wanted } from "./words";

interface Found { job: string; answer: Answer; said: string }

export class Lesson {
  readonly sheet = make("div", { id: "loop-sheet" });
  private found: Found | null = null;
  private chosen = 0;
  private running: string | null = null;
  private asked = 0; // which wish is the last one

  constructor(private readonly form: WishForm, private readonly map: RoadMap, private readonly metBy: MetBy) {}

  /** The first good loops as soon as there are some, then the best within a few seconds. */
  async plan(): Promise<void> {
    const now = ++this.asked;
    if (this.running) void breakOff(this.running).catch(() => undefined);
    const words = this.form.words();
    const first: [string, string][] = words.map(([name, text]) => [name, name === "alternatives" ? "1" : text]); // the sooner
    this.tell("Looking for loops …", true);
    try {
      for (const effort of ["quick", "usual"]) {
        const { job } = await lookForLoops(effort === "quick" ? first : words, effort);
        this.running = job;
        const over = await whenOver(job);
        if (now !== this.asked) return;
        if (!over) return this.tell("Broken off.", false);
        this.form.fold();
        this.take({ job, answer: await loopsOf(job), said: over.said });
        if (now !== this.asked) return;
        await this.show();
        if (effort === "quick") this.tell("First loops. Looking for better ones …", true);
      }
      const lacking = this.found?.answer.shortfall;
      this.tell(lacking ? "Not all that is asked for can be had: see the sheet." : "Looked for as long as usual.", false);
    } catch (failure) {
      if (now !== this.asked) return;
      this.found = null;
      this.map.showDrive(null);
      clearRibbons();
      this.tell("", false);
      this.sheet.replaceChildren(make("p", { class: "trouble", role: "alert" }, failure instanceof Trouble ? failure.message : String(failure)));
    } finally {
      if (now === this.asked) this.running = null;
    }
  }

  private take(found: Found): void {
    this.found = found;
    this.chosen = 0;
  }

  private tell(text: string, working: boolean): void {
    const status = part("loops-status");
    status.replaceChildren(text);
    if (working) status.append(" ", make("button", { type: "button", class: "small", onclick: () => this.stop() }, "break off"));
  }

  private stop(): void {
    ++this.asked;
    if (this.running) void breakOff(this.running).catch(() => undefined);
    this.running = null;
    this.tell("Broken off.", false);
  }

  private async show(): Promise<void> {
    const found = this.found;
    if (!found) return;
    showRibbons(found.answer, this.metBy, this.chosen, (row) => { this.chosen = row; void this.show(); });
    const loop = found.answer.loops[this.chosen];
    if (!loop) {
      this.map.showDrive(null);
      this.sheet.replaceChildren(make("h2", {}, "No loop"), make("pre", { class: "said" }, found.said));
      return;
    }
    const drive = await driveOf(found.job, loop.id);
    if (found !== this.found) return;
    this.map.showDrive(drive);
    this.sheet.replaceChildren(...this.sheetOf(found, drive));
  }

  private sheetOf(found: Found, drive: Drive): HTMLElement[] {
    const loop = found.answer.loops[this.chosen]!;
    const pupil = make("input", { type: "text", id: "pupil", autocomplete: "off", size: "8", "aria-describedby": "pupil-why" });
    const sheets = [["pdf", "deed", "Print the pack"], ["html", "also", "Read it here"]].map(([form, look, text]) => {
      const link = make("a", { class: look!, target: "_blank" }, text!);
      const lead = (): void => { link.href = cardAddress(found.job, loop.id, form!, pupil.value.trim()); };
      pupil.addEventListener("input", lead);
      lead();
      return link;
    });
    return [
      make("h2", {}, `Loop ${letter(this.chosen)}: ${lasting(loop)}`),
      make("p", {}, loop.met.map((met) => `${wanted(met.kind, met.movement)}: ${met.got}` + (met.asked === "max" ? "" : ` of ${met.asked} asked`)).join(" · ")),
      ...(found.answer.shortfall ? [make("pre", { class: "said trouble" }, found.said.slice(found.said.indexOf("Not met:")))] : []),
      ...loop.bus_lanes.map((lane) => make("p", {}, make("strong", {}, `Bus lane, ${lane.arrive[0]} to ${lane.arrive[1]}: ${lane.verdict}. `), lane.why)),
      make("ol", { class: "rows", "aria-label": "What is said" }, ...this.rows(drive)),
      make("div", { class: "fields" }, make("div", {}, make("label", { for: "pupil" }, "Code on the sheets"), pupil,
        make("span", { id: "pupil-why", class: "far" }, "a code, never a name; may be left out"))),
      make("div", { class: "deeds" },
        ...sheets,
        make("button", { type: "button", class: "also", onclick: () => void this.plan() }, "Plan again")),
      make("p", { class: "caution" }, "Plan when parked. Signs, road markings, signals and police on the day overrule the map. You decide."),
    ];
  }

  private rows(drive: Drive): HTMLElement[] {
    return drive.features.filter((feature) => feature.properties.what === "row").map((feature) => {
      const { number, say, where, notes, limit, unit } = feature.properties as Record<string, string | number | undefined>;
      const [lon, lat] = feature.geometry.coordinates as [number, number];
      const text = String(where || say);
      return make("li", {},
        make("span", { class: "number" }, String(number)),
        make("div", {}, make("div", { class: "say" }, String(say)), make("div", { class: "far" }, [where, notes].filter(Boolean).join(" · "))),
        make("span", { class: "limit" }, limit === undefined ? "" : `${limit} ${unit}`),
        make("span", {},
          make("button", { type: "button", class: "small", "aria-label": `Forbid row ${number}: ${text}`, onclick: () => { this.form.forbid(lat, lon, text); void this.plan(); } }, "forbid"),
          make("button", { type: "button", class: "small", "aria-label": `Show row ${number} on the map`, onclick: () => this.map.goTo(lat, lon) }, "show")));
    });
  }
}
