// A lesson at the desk: wished for, looked for, picked, changed, printed.
import { allMet, breakOff, cardAddress, driveOf, lookForLoops, loopsOf, Trouble, whenOver, type Answer, type Drive, type Loop } from "./ask";
import { countsTable, turnsOf } from "./counts";
import { Keep } from "./keep";
import { make, part } from "./page_parts";
import { Sketches } from "./sketches";
import { clearRibbons, letter, showRibbons, type MetBy } from "./ribbons";
import type { RoadMap } from "./map";
import { setIn } from "./told_blocks";
import type { Words } from "./wants";
import type { WishForm } from "./wish_form";
import { lasting, wanted } from "./words";

interface Found { job: string; answer: Answer; said: string; warned: string[]; wish: string }

/** The command's own paragraph on one of its loops. */
function paragraphOn(said: string, loop: Loop): string {
  const from = said.search(new RegExp(`^Loop ${loop.id}:`, "m"));
  if (from < 0) return "";
  const rest = said.slice(from);
  const next = rest.slice(1).search(/^(Loop \d+:|Not met|Fewer loops|\S+: written)/m);
  return next < 0 ? rest : rest.slice(0, next + 1);
}

/** Of that paragraph what is planned besides junctions: parts, who drives, stops, finding the way; a sentence each. */
function planOf(paragraph: string): string[] {
  const lines: string[] = [];
  for (const line of paragraph.split("\n")) {
    if (/^ {2}\S/.test(line)) lines.push(line.trim());
    else if (lines.length > 0) lines.push(`${lines.pop()} ${line.trim()}`);
  }
  return lines.filter((line) => /^(part \d|you drive|independent driving|brief|talk|easier|harder)/.test(line))
    .map((line) => line.replace(/^(part \d+: .*?) asked \S+=.*$/, "$1"));
}

/** An outline round a place, as --keep-off takes it. */
function around(lat: number, lon: number, metres: number): string {
  const north = metres / 111_000, east = north / Math.cos((lat * Math.PI) / 180);
  const corners = [[north, 0], [0, east], [-north, 0], [0, -east]] as const;
  return corners.map(([up, right]) => `${(lat + up).toFixed(6)},${(lon + right).toFixed(6)}`).join(";");
}

export class Lesson {
  readonly sheet = make("div", { id: "loop-sheet" });
  private readonly heading = make("h2", { tabindex: "-1" });
  private readonly stale = make("p", { class: "trouble", role: "status", hidden: true }, "These loops are for the wish as it was: look for loops again.");
  private readonly pupil = make("input", { type: "text", id: "pupil", autocomplete: "off", size: "8", maxlength: "12", pattern: "[A-Za-z0-9\\-]{1,12}", "aria-describedby": "pupil-why" });
  private readonly links = make("span", { class: "deeds sheets" });
  readonly keeping = new Keep((code) => this.setPupil(code));
  private found: Found | null = null;
  private chosen = 0;
  private sketches: Sketches | null = null; // of the loop that is shown
  private running: string | null = null;
  private asked = 0; // which wish is the last one

  constructor(private readonly form: WishForm, private readonly map: RoadMap, private readonly metBy: MetBy) {
    this.pupil.addEventListener("input", () => this.linkSheets());
  }

  /** The first good loops as soon as there are some, better ones in about a second, then the best within a few. */
  async plan(): Promise<void> {
    const now = ++this.asked;
    if (this.running) void breakOff(this.running).catch(() => undefined);
    const words = this.form.words(), line = this.form.inALine();
    this.tell("Looking for loops …", true);
    try {
      await this.look(now, first(words), "quick", words);
      if (now !== this.asked) return;
      this.form.fold(line);
      this.heading.focus();
      this.tell("First loops. Looking for better ones …", true);
      await this.look(now, words, "soon", words);
      if (now !== this.asked) return;
      this.tell("Better loops. Looking for the best …", true);
      await this.look(now, words, "usual", words);
      if (now !== this.asked) return;
      this.tellOver("Looked for as long as usual.", words);
    } catch (failure) {
      if (now === this.asked) this.fail(failure);
    } finally {
      if (now === this.asked) this.running = null;
    }
  }

  /** As long as it takes to say more closely how good they are. */
  private async lookLonger(words: Words): Promise<void> {
    const now = ++this.asked;
    this.tell("Looking longer, for a minute or more …", true);
    try {
      await this.look(now, words, "thorough", words);
      if (now === this.asked) this.tellOver("Looked for longer than usual.", null);
    } catch (failure) {
      if (now === this.asked) this.fail(failure);
    } finally {
      if (now === this.asked) this.running = null;
    }
  }

  /** words: of the wish, when one may still look longer. */
  private tellOver(text: string, words: Words | null): void {
    this.tell(this.found?.answer.shortfall ? `Not all that is asked for can be had: see the sheet. ${text}` : text, false);
    if (words && !words.some(([name]) => name === "through"))
      part("loops-status").append(" ", make("button", { type: "button", class: "small", onclick: () => void this.lookLonger(words) }, "look longer"));
  }

  /** wish: what is asked for in the end. */
  private async look(now: number, words: Words, effort: string, wish: Words): Promise<void> {
    const { job } = await lookForLoops(words, effort);
    if (now !== this.asked) return void breakOff(job).catch(() => undefined);
    this.running = job;
    const over = await whenOver(job);
    if (now !== this.asked || !over) return;
    const answer = await loopsOf(job);
    if (now !== this.asked) return;
    this.found = { job, answer, said: over.said, warned: over.warned, wish: JSON.stringify(wish) };
    this.chosen = 0;
    await this.show();
  }

  private fail(failure: unknown): void {
    this.found = null;
    this.map.showDrive(null);
    clearRibbons();
    this.tell("Nothing was found.", false);
    this.sheet.replaceChildren(make("p", { class: "trouble", role: "alert" }, failure instanceof Trouble ? failure.message : String(failure)));
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

  /** What is shown must be for what is asked: else it can't be printed. */
  checkWish(): void {
    const isStale = this.found !== null && this.found.wish !== JSON.stringify(this.form.words());
    this.stale.hidden = !isStale;
    this.links.hidden = isStale;
    const loop = this.found?.answer.loops[this.chosen];
    this.keeping.offer(!isStale && this.found && loop ? { job: this.found.job, loop: loop.id, minutes: this.found.answer.wish.minutes ?? 60 } : null);
  }

  /** A loop, and the junction of the pass that was clicked on its ribbon. */
  private async pick(row: number, pass: number | null): Promise<void> {
    this.chosen = row;
    await this.show();
    if (pass !== null) this.sketches?.showPass(pass);
  }

  private async show(): Promise<void> {
    const found = this.found;
    if (!found) return;
    showRibbons(found.answer, this.metBy, this.chosen, (row, pass) => void this.pick(row, pass));
    const loop = found.answer.loops[this.chosen];
    if (!loop) {
      this.map.showDrive(null);
      this.heading.replaceChildren("No loop");
      return this.sheet.replaceChildren(this.heading, this.stale, ...this.elsewhere(found.said), ...setIn(paragraphs(found.said).replace(mapNumbers, ""), true));
    }
    const [drive, sketches] = await Promise.all([driveOf(found.job, loop.id), Sketches.of(found.job, loop.id)]);
    if (found !== this.found || loop !== found.answer.loops[this.chosen]) return;
    this.sketches = sketches;
    this.map.showDrive(drive);
    this.heading.replaceChildren(`Loop ${letter(this.chosen)}${loop.variant ? `, ${loop.variant}` : ""}: ${lasting(loop)}`);
    this.linkSheets();
    this.sheet.replaceChildren(...this.sheetOf(found, loop, drive));
    this.checkWish();
  }

  private linkSheets(): void {
    const found = this.found, loop = found?.answer.loops[this.chosen];
    if (!found || !loop) return;
    const link = (form: string, look: string, text: string): HTMLElement =>
      make("a", { class: look, target: "_blank", href: cardAddress(found.job, loop.id, form, this.pupil.value.trim()) }, text);
    if (this.pupil.validity.valid) this.links.replaceChildren(link("pdf", "deed", "Print the pack"), link("html", "also", "Read it here"));
    else this.links.replaceChildren(make("span", { class: "trouble" }, "A code is up to 12 letters and digits."));
  }

  /** A pupil's code, for the sheets. */
  setPupil(code: string): void {
    this.pupil.value = code;
    this.keeping.setPupil(code);
    this.linkSheets();
  }

  private sheetOf(found: Found, loop: Loop, drive: Drive): HTMLElement[] {
    return [
      this.heading, this.stale, ...found.warned.map((line) => make("p", { class: "trouble" }, line)),
      make("p", {}, allMet(loop).map((met) => `${wanted(met.kind, met.movement)}: ${met.got}` + (met.asked === "max" ? "" : ` of ${met.asked} asked`)).join(" · ")),
      make("p", {}, turnsOf(loop).join(" · ")),
      ...(found.answer.shortfall ? [make("div", { class: "trouble" }, ...setIn(notMet(found.said), true))] : []),
      ...this.elsewhere(found.said),
      ...planOf(paragraphOn(found.said, loop)).map((line) => make("p", {}, line)),
      ...busLanes(loop),
      make("details", {}, make("summary", {}, "Passes by kind and movement"), countsTable(loop)),
      make("details", {}, make("summary", {}, "More on this loop: what it passes, how sure, what to check"), make("pre", { class: "said" }, paragraphOn(found.said, loop))),
      make("ol", { class: "rows", "aria-label": "What is said" }, ...this.rows(drive)),
      make("div", { class: "fields" }, make("div", {}, make("label", { for: "pupil" }, "Code on the sheets"), this.pupil,
        make("span", { id: "pupil-why", class: "far" }, "a code, never a name; may be left out"))),
      make("div", { class: "deeds" }, this.links, make("button", { type: "button", class: "also", onclick: () => void this.plan() }, "Plan again")),
      this.keeping.element,
      make("p", { class: "caution" }, "Plan when parked. Signs, road markings, signals and police on the day overrule the map. You decide."),
    ];
  }

  private rows(drive: Drive): HTMLElement[] {
    return drive.features.filter((feature) => feature.properties.what === "row").map((feature) => {
      const { number, say, where, notes, stops } = feature.properties as Record<string, string | number | undefined>;
      const [lon, lat] = feature.geometry.coordinates as [number, number];
      return make("li", {},
        make("span", { class: "number" }, String(number)),
        make("div", {}, make("div", { class: "say" }, String(say)), make("div", { class: "far" }, [where, notes, stops].filter(Boolean).join(" · ")), this.sketches?.foldOf(Number(number))),
        make("span", {}, limit(feature.properties), hard(feature.properties)),
        make("span", {},
          make("button", { type: "button", class: "small", "aria-label": `Forbid the place of row ${number}: ${say}`, onclick: () => this.forbid(lat, lon, String(say)) }, "forbid"),
          make("button", { type: "button", class: "small", "aria-label": `Go by the place of row ${number} in every loop: ${say}`, onclick: () => this.pin(lat, lon, String(say)) }, "go by"),
          make("button", { type: "button", class: "small", "aria-label": `Show row ${number} on the map`, onclick: () => this.map.goTo(lat, lon) }, "show")));
    });
  }

  /** The place itself, and no more of its street: a ring is wide, and its row lies where it is come to. */
  private forbid(lat: number, lon: number, say: string): void {
    const metres = say.includes("roundabout") ? 60 : 12;
    this.form.forbid(around(lat, lon, metres), `${metres} m round where one says “${say}”`);
    void this.plan();
  }

  /** Where the lesson could begin that can't be had from the door, or only by turning the car round. */
  private elsewhere(said: string): HTMLElement[] {
    const found = elsewhereIn(said);
    if (!found) return [];
    return [make("p", {}, `${found.words} `, make("button", { type: "button", class: "small", onclick: () => {
      this.form.add(found.wish);
      void this.plan();
    } }, "begin there"))];
  }

  private pin(lat: number, lon: number, say: string): void {
    this.form.mustTake(`${lat.toFixed(6)},${lon.toFixed(6)}`, `where one says “${say}”`);
    void this.plan();
  }
}

/** One loop will do for the first answer, and is there sooner. */
function first(words: Words): Words {
  return words.filter(([name]) => name !== "variants").map(([name, text]) => [name, name === "alternatives" ? "1" : text]);
}

const mapNumbers = /\s+\((?:way|node|relation)\/\d+\)/g;

/** What fell short of the wish, without the map's own numbers of things. */
function notMet(said: string): string {
  return paragraphs(said.slice(said.indexOf("Not met:"))).replace(mapNumbers, "");
}

/** Without what speaks of files: there are none for who asks here; nor where it could begin, which has a button; nor words of the command. */
function paragraphs(said: string): string {
  return said.replace(/^.*: written; .*$/m, "").replace(new RegExp(`^${begunElsewhere.source}$`, "m"), "")
    .replace(/\s+\(--[a-z-]+\s+\d+\)/g, "").trim();
}

/** A command's words on a place to begin: what it is, and what the wish must say for it. */
const begunElsewhere = /(not from this door|without turning round): (begun in [^:]*it\s+is\s+met):((?:\s+--[a-z-]+\s+\S+)+)/;

function elsewhereIn(said: string): { words: string; wish: Words } | null {
  const [, why = "", begun = "", options = ""] = begunElsewhere.exec(said) ?? [];
  const wish = [...options.matchAll(/--(\S+)\s+(\S+)/g)].map(([, name = "", value = ""]): [string, string] => [name, value]);
  return wish.length ? { words: `${why[0]?.toUpperCase()}${why.slice(1)}: ${begun.replace(/\s+/g, " ")}.`, wish } : null;
}

/** What is to be done at each, folded under how many there are, so that the rows come soon on a narrow screen. */
function busLanes(loop: Loop): HTMLElement[] {
  if (loop.bus_lanes.length === 0) return [];
  const keepOut = loop.bus_lanes.filter((lane) => lane.verdict !== "usable").length;
  return [make("details", {},
    make("summary", {}, make("strong", {}, `Bus lanes met: ${loop.bus_lanes.length}; keep out of ${keepOut}, or look at the plate`)),
    ...loop.bus_lanes.map((lane) => make("p", {}, make("strong", {}, `${streetOf(loop, lane.first)}${lane.side === "unknown" ? "" : `, ${lane.side} side`}, ${lane.arrive[0]} to ${lane.arrive[1]}: ${lane.verdict}. `), lane.why)))];
}

function streetOf(loop: Loop, row: number): string {
  return loop.stretches[row]?.street || "unnamed road";
}

/** How hard what is practised from a row on is, as on the card; nothing when nothing is. */
function hard({ hardness }: Record<string, unknown>): HTMLElement {
  return make("span", { class: "hard" }, Number(hardness) > 0 ? `hard ${hardness}` : "");
}

/** A limit the map isn't sure of has a question mark, as on the card. */
function limit(row: Record<string, unknown>): HTMLElement {
  if (row.limit === undefined) return make("span", { class: "limit" });
  if (row.limit_is === "certain" || row.limit_is === "noted") return make("span", { class: "limit" }, `${row.limit} ${row.unit}`);
  return make("span", { class: "limit" }, `${row.limit}? ${row.unit}`, make("span", { class: "unseen" }, " look for the sign"));
}
