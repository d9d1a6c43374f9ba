// The rows in which a day is written: start, minutes, pupil, and what to practise.
import type { Area } from "./ask";
import { make, spoken } from "./page_parts";

interface Row { start: HTMLInputElement; minutes: HTMLInputElement; code: HTMLSelectElement; kind: HTMLSelectElement; more: HTMLInputElement; element: HTMLElement }

const two = (number: number): string => String(number).padStart(2, "0");

/** "09:00" so many minutes later; the same when that is another day. */
function later(start: string, minutes: number): string {
  const [hours = 0, mins = 0] = start.split(":").map(Number);
  const at = hours * 60 + mins + minutes;
  return at < 24 * 60 ? `${two(Math.floor(at / 60))}:${two(at % 60)}` : start;
}

export class DayRows {
  readonly element = make("div", {});
  private readonly list = make("ol", { class: "day-rows", "aria-label": "Lessons to plan" });
  private rows: Row[] = [];
  private codes: string[] = [];

  constructor(private readonly area: Area) {
    this.element.append(
      make("p", { id: "day-more-why", class: "far" }, "Each row: start, minutes, pupil, what to practise, and further practice in words, such as zebra=2 emerge:right=3."),
      this.list,
      make("button", { type: "button", class: "also", onclick: () => this.add() }, "Add a row"));
  }

  /** Who may be chosen; the first row is made once somebody may. */
  setPupils(codes: string[]): void {
    if (codes.join() === this.codes.join()) return;
    this.codes = codes;
    for (const row of this.rows) this.fill(row.code, row.code.value);
    if (this.rows.length === 0 && codes.length > 0) this.add(false);
  }

  /** As lines of a day's list. */
  lines(): string[] {
    return this.rows.map((row) => [row.start.value, row.minutes.value, row.code.value, row.kind.value, row.more.value.trim()].filter(Boolean).join(" "));
  }

  private fill(select: HTMLSelectElement, chosen: string): void {
    select.replaceChildren(...this.codes.map((code) => make("option", { value: code, selected: code === chosen }, code)));
  }

  private add(focus = true): void {
    const last = this.rows.at(-1);
    const start = last ? later(last.start.value, Number(last.minutes.value) + 15) : "09:00";
    const kinds = [...this.area.kinds].sort((a, b) => (a.name < b.name ? -1 : 1));
    const code = make("select", { "aria-label": "Pupil" });
    this.fill(code, this.codes[this.rows.length % Math.max(1, this.codes.length)] ?? "");
    const row: Row = {
      start: make("input", { type: "time", value: start, required: true, "aria-label": "Start" }),
      minutes: make("input", { type: "number", value: last?.minutes.value ?? "60", min: "20", max: "600", required: true, "aria-label": "Minutes" }),
      code,
      kind: make("select", { "aria-label": "Practise" }, make("option", { value: "" }, "what comes next"), ...kinds.map((kind) => make("option", { value: `${kind.name}=max` }, `${spoken(kind.name)}, as many as fit`))),
      more: make("input", { type: "text", autocomplete: "off", "aria-label": "Further practice", "aria-describedby": "day-more-why" }),
      element: make("li", {}),
    };
    row.element.append(row.start, row.minutes, row.code, row.kind, row.more,
      make("button", { type: "button", class: "small", "aria-label": `Leave out row ${this.rows.length + 1}`, onclick: () => this.remove(row) }, "leave out"));
    this.rows.push(row);
    this.list.append(row.element);
    if (focus) row.start.focus();
  }

  private remove(row: Row): void {
    this.rows = this.rows.filter((each) => each !== row);
    row.element.remove();
    this.rows.forEach((each, number) => each.element.querySelector("button")?.setAttribute("aria-label", `Leave out row ${number + 1}`));
    (this.rows.at(-1)?.start ?? this.element.querySelector("button"))?.focus();
  }
}
