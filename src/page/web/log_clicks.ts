// The after-sheet by clicks: a row for each thing that was practised, with the boxes of the paper. What is clicked is said as a log's words.
import { field, make, spoken } from "./page_parts";
import { option } from "./wants";

const levels = ["introduced", "helped", "prompted", "independent", "reflects on it"]; // 1 to 5, as on the sheet
const conditions: Record<string, string[]> = { light: ["day", "dusk", "dark"], weather: ["bright-dry", "bright-wet", "dull-dry", "dull-wet", "raining", "showers", "fog", "snow", "ice", "wind", "other"], traffic: ["light", "usual", "heavy"] };

const mostAtOnce = 11; // as on the printed sheet; the others are folded

/** One row of boxes. */
interface Marked { what: string; level: string; steppedIn: string; notDriven: boolean }

export class LogClicks {
  readonly element: HTMLDetailsElement;
  private readonly rows = make("div", {});
  private readonly more = make("div", { class: "fields" });
  private marked: Marked[] = [];
  private rest = "";
  private readonly told = new Map<string, HTMLInputElement | HTMLSelectElement>();

  /** changed: told of every click. */
  constructor(private readonly changed: () => void) {
    const minutes = make("input", { type: "number", min: "1", max: "600", id: "clicked-minutes" });
    this.told.set("minutes", minutes);
    const picks = Object.entries(conditions).map(([name, words]) => {
      const pick = make("select", { id: `clicked-${name}` }, option("", "not said"), ...words.map((word) => option(word, spoken(word))));
      this.told.set(name, pick);
      return field(name.charAt(0).toUpperCase() + name.slice(1), pick);
    });
    this.more.append(field("Minutes driven", minutes), ...picks);
    this.element = make("details", { class: "note" }, make("summary", {}, "Mark it by clicks, as on the after-sheet"),
      make("p", { class: "far" }, `The level that was seen: ${levels.map((level, k) => `${k + 1} ${level}`).join(", ")}. Untouched rows count as driven.`), this.rows, this.more);
    this.element.addEventListener("change", () => this.changed());
  }

  offer(practice: { what: string; passes: number }[]): void {
    this.marked = practice.map(({ what }) => ({ what, level: "", steppedIn: "", notDriven: false }));
    this.rest = "";
    for (const control of this.told.values()) control.value = "";
    const boxes = practice.map(({ what, passes }, row) => this.row(`${spoken(what)}${passes > 1 ? `, ${passes}` : ""}`, `clicked-${row}`, (level) => { this.marked[row]!.level = level; }, this.besides(row, what)));
    this.rows.replaceChildren(
      ...boxes.slice(0, mostAtOnce), ...(boxes.length > mostAtOnce ? [make("details", {}, make("summary", {}, `${boxes.length - mostAtOnce} more that were planned`), ...boxes.slice(mostAtOnce))] : []),
      this.row("All else that was planned", "clicked-rest", (level) => { this.rest = level; }, []));
    this.element.hidden = practice.length === 0;
    if (practice.length === 0) this.element.open = false;
  }

  /** Clauses, as the log reads them. */
  words(): string {
    const clauses = this.marked.filter((each) => each.level || each.steppedIn || each.notDriven).map(({ what, level, steppedIn, notDriven }) =>
      notDriven ? `not ${what}` : [what, level, steppedIn].filter(Boolean).join(" "));
    if (this.rest) clauses.push(`rest ${this.rest}`);
    for (const [name, control] of this.told) if (control.value.trim()) clauses.push(`${name} ${control.value.trim()}`);
    return clauses.join("; ");
  }

  /** Where one stepped in, and whether it was driven at all. */
  private besides(row: number, what: string): HTMLElement[] {
    const stepped = make("select", { "aria-label": `${spoken(what)}: you stepped in by` }, option("", "you didn't step in"), option("words", "your words"), option("wheel", "the wheel"), option("pedals", "the pedals"));
    stepped.addEventListener("change", () => { this.marked[row]!.steppedIn = stepped.value; });
    const not = make("input", { type: "checkbox", id: `clicked-not-${row}` });
    not.addEventListener("change", () => { this.marked[row]!.notDriven = not.checked; });
    return [stepped, make("span", {}, not, " ", make("label", { for: not.id, "aria-label": `${spoken(what)}: not driven` }, "not driven"))];
  }

  private row(name: string, group: string, pick: (level: string) => void, besides: HTMLElement[]): HTMLElement {
    const boxes = levels.map((level, k) => {
      const box = make("input", { type: "radio", name: group, value: String(k + 1), id: `${group}-${k + 1}` });
      box.addEventListener("change", () => pick(box.value));
      return make("span", {}, box, make("label", { for: box.id, title: level }, String(k + 1)));
    });
    return make("fieldset", { class: "clicked" }, make("legend", {}, name), make("div", { class: "pick" }, ...boxes, ...besides));
  }
}
