// The form in which a lesson is wished for. It says words of the command `loops`, and checks nothing that the program
// checks itself.
import type { Area } from "./ask";
import { LessonParts } from "./lesson_parts";
import { MoreWishes, type DriveMap } from "./more_wishes";
import { field, make, spoken } from "./page_parts";
import { placeInput } from "./place_input";
import { wishFile } from "./wish_file";
import { inWords, kindChoice, listed, movementChoice, option, wantOf, wordOf, type Want, type Words } from "./wants";

interface Told { word: "avoid" | "keep-off" | "take"; value: string; text: string }

/** A lesson's minutes when nobody said another number. */
export const usualMinutes = 60;

/** A time for the clock of the area: the next full hour of this computer. */
export function nextHour(): string {
  const at = new Date(Date.now() + 3600_000);
  const two = (number: number): string => String(number).padStart(2, "0");
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}T${two(at.getHours())}:00`;
}

export class WishForm {
  readonly element: HTMLDetailsElement;
  private readonly summary = make("summary", {}, "A lesson");
  private readonly home: HTMLInputElement;
  private readonly start = make("input", { type: "datetime-local", required: true, value: nextHour() });
  private readonly minutes = make("input", { type: "number", min: "10", max: "600", value: String(usualMinutes), required: true });
  private readonly reserve = make("input", { type: "number", min: "0", max: "60", value: "5" });
  private readonly level = make("select", {}, option("", "not said", true), ...["1", "2", "3", "4", "5"].map((n) => option(n, n)));
  private readonly alternatives = make("select", {}, ...["1", "2", "3", "4", "5", "6", "7", "8", "9", "10"].map((n) => option(n, n, n === "3")));
  private readonly easyFirst = make("input", { type: "checkbox", id: "easy-first" });
  private readonly turnRound = make("input", { type: "checkbox", id: "turn-round" });
  private readonly wants = make("ul", { class: "wants", tabindex: "-1", "aria-label": "What is practised" });
  private readonly keptOff = make("ul", { class: "wants", tabindex: "-1", "aria-label": "What is kept away from" });
  private readonly wanted: Want[] = [];
  private also: Words = []; // further words of a proposal
  private readonly goneBy = make("ul", { class: "wants", tabindex: "-1", "aria-label": "What must be gone by" });
  private readonly off: Told[] = [];
  private readonly by: Told[] = []; // what every loop must take
  private readonly parts: LessonParts;
  private readonly more: MoreWishes;

  constructor(
    private readonly area: Area, private readonly changed: () => void, plan: () => void,
    private readonly map: DriveMap & { drawOutline(then: (corners: string[]) => void): void }) {
    const [home, offered] = placeInput({ required: true, placeholder: "house and street, or click the map" });
    this.home = home;
    this.parts = new LessonParts(() => this.wanted.splice(0), (wants) => this.wanted.push(...wants), () => { this.show(); this.changed(); });
    this.more = new MoreWishes(area, () => this.changed(), map, () => this.moment());
    const form = make("form", { onsubmit: (event) => { event.preventDefault(); plan(); } },
      make("div", { class: "fields" },
        field("From and back to", this.home, true), offered,
        field("Start", this.start, "double"), field("Minutes", this.minutes), field("Kept free at the end", this.reserve),
        field("Level of the learner", this.level), field("Loops to choose from", this.alternatives)),
      make("fieldset", {}, make("legend", {}, "Practise"), this.wants, this.pickWant(), this.parts.element),
      make("fieldset", {}, make("legend", {}, "Keep away from"), this.keptOff, this.pickAvoid()),
      make("fieldset", {}, make("legend", {}, "Must go by"), this.goneBy, this.pickTake()),
      make("fieldset", {},
        make("div", {}, this.easyFirst, " ", make("label", { for: "easy-first" }, "Easy first, and a gentle last stretch home")),
        make("div", {}, this.turnRound, " ", make("label", { for: "turn-round" }, "The car may be turned round where a street ends"))),
      this.more.element, wishFile(() => this.words(), (words) => this.take(words.find(([name]) => name === "home")?.[1] ?? "", words)),
      make("div", { class: "deeds go" }, make("button", { type: "submit", class: "deed" }, "Look for loops")));
    form.addEventListener("input", () => this.changed());
    form.addEventListener("change", () => this.changed());
    this.element = make("details", { class: "wish", open: true }, this.summary, form);
    this.show();
  }

  /** What is wished for, in a line. */
  inALine(): string {
    const wants = [...this.parts.inALine(), ...this.wanted.map(inWords), ...this.more.inALine()];
    const off = [...this.by.map((each) => `by ${each.text}`), ...this.off.map((each) => `not ${each.text}`)];
    return [`${this.minutes.value} min from ${this.home.value.trim()}, ${this.start.value.slice(11)}`, ...wants, ...off].join(" · ");
  }

  /** Makes room for what was found; the wish it was found for stays above it. */
  fold(wish: string): void {
    this.element.open = false;
    this.summary.replaceChildren(wish);
  }

  /** What is asked for. */
  words(): Words {
    const words: Words = [["home", this.home.value.trim()], ["start", this.start.value]];
    // A drive of one's own has its own minutes, and is one.
    if (!this.more.isOwnDrive) {
      words.push(["minutes", this.minutes.value], ["alternatives", this.alternatives.value]);
      if (Number(this.reserve.value) > 0) words.push(["reserve", this.reserve.value]);
      if (this.easyFirst.checked) words.push(["easy-first", ""]);
      if (this.turnRound.checked) words.push(["welcome", "turn-in-road"]);
    }
    if (this.level.value) words.push(["level", this.level.value]);
    for (const want of this.wanted) words.push(["want", wordOf(want)]);
    for (const each of [...this.by, ...this.off]) words.push([each.word, each.value]);
    words.push(...this.parts.words(), ...this.more.words());
    return [...words, ...this.also];
  }

  moment(): string {
    return this.start.value || nextHour();
  }

  duration(): number {
    return Math.min(600, Math.max(10, Math.round(Number(this.minutes.value)) || usualMinutes));
  }

  kinds(): string[] {
    return [...this.wanted.map((want) => want.kind), ...this.parts.kinds()];
  }

  /** Takes what is proposed for a pupil; all of it can be changed. */
  take(home: string, words: Words): void {
    if (home) this.home.value = home;
    this.wanted.length = this.off.length = this.by.length = 0;
    this.also = [];
    this.parts.clear();
    this.more.clear();
    this.easyFirst.checked = this.turnRound.checked = false;
    for (const [name, text] of words) {
      const want = name === "want" ? wantOf(text) : null;
      if (want) this.wanted.push(want);
      else if (name === "part" && this.parts.take(text)) continue;
      else if (name === "avoid") this.off.push({ word: "avoid", value: text, text: spoken(text) });
      else if (name === "keep-off") this.off.push({ word: "keep-off", value: text, text });
      else if (name === "take") this.by.push({ word: "take", value: text, text });
      else if (name === "level") this.level.value = text;
      else if (name === "minutes") this.minutes.value = text;
      else if (name === "reserve") this.reserve.value = text;
      else if (name === "alternatives") this.alternatives.value = text;
      else if (name === "easy-first") this.easyFirst.checked = true;
      else if (name === "welcome" && text === "turn-in-road") this.turnRound.checked = true;
      else if (name === "home") this.home.value ||= text; // mostly said beside the words
      else if (name === "start") this.start.value = text.slice(0, 16);
      else if (!this.more.take(name, text)) this.also.push([name, text]);
    }
    this.element.open = true;
    this.show();
    this.changed();
  }

  /** Keeps off a street, or an outline, from now on; value: as --keep-off takes it. */
  forbid(value: string, text: string): void {
    if (this.off.some((each) => each.value === value)) return;
    this.off.push({ word: "keep-off", value, text });
    this.show();
    this.changed();
  }

  /** Every loop must take this street or junction from now on; value: as --take takes it. */
  mustTake(value: string, text: string): void {
    if (!this.by.some((each) => each.value === value)) this.by.push({ word: "take", value, text });
    this.show();
    this.changed();
  }

  /** Says this too, of what more there is to say. */
  add(words: Words): void {
    for (const [name, text] of words) this.more.take(name, text);
    this.changed();
  }

  /** The lesson begins and ends there from now on. */
  beginAt(value: string): void {
    this.home.value = value;
    this.changed();
  }

  private pickWant(): HTMLElement {
    const kind = kindChoice(this.area, "Kind");
    const movement = movementChoice(this.area, kind, "Movement");
    const count = make("input", { type: "number", min: "1", max: "99", value: "3", "aria-label": "How many" });
    const most = make("input", { type: "checkbox", id: "most" });
    most.addEventListener("change", () => { count.disabled = most.checked; });
    const add = (): void => {
      const want = { kind: kind.value, movement: movement.value, count: most.checked ? "max" : count.value || "1" };
      const same = this.wanted.findIndex((each) => each.kind === want.kind && each.movement === want.movement);
      if (same >= 0) this.wanted.splice(same, 1);
      this.wanted.push(want);
      this.show();
      this.changed();
    };
    return make("div", { class: "pick" }, kind, movement, count, make("span", {}, most, " ", make("label", { for: "most" }, "as many as fit")),
      make("button", { type: "button", class: "also", onclick: add }, "Add to the practice"));
  }

  private pickAvoid(): HTMLElement {
    const kind = kindChoice(this.area, "Kind to keep away from");
    const movement = movementChoice(this.area, kind, "Movement to keep away from");
    const keepKind = (): void => {
      const value = movement.value ? `${kind.value}:${movement.value}` : kind.value;
      keep("avoid", value, spoken(value.replace(":", ", ")));
    };
    const [street, offered] = placeInput({ placeholder: "street or junction", "aria-label": "Street or junction to keep away from" });
    const hours = make("input", { type: "text", placeholder: "hours, if not always", "aria-label": "Hours in which to keep away, such as Mo-Fr 08:30-09:15", autocomplete: "off" });
    const keep = (word: Told["word"], value: string, text: string): void => {
      if (!this.off.some((each) => each.value === value)) this.off.push({ word, value, text });
      this.show();
      this.changed();
    };
    const keepStreet = (): void => {
      const name = street.value.trim(), when = hours.value.trim();
      if (!name) return street.focus();
      keep("keep-off", when ? `${name} @ ${when}` : name, when ? `${name}, ${when}` : name);
      street.value = hours.value = "";
    };
    const keepArea = (): void => {
      this.map.drawOutline((corners) => {
        const when = hours.value.trim();
        keep("keep-off", corners.join(";") + (when ? ` @ ${when}` : ""), `an area of ${corners.length} corners${when ? `, ${when}` : ""}`);
        hours.value = "";
      });
    };
    return make("div", { class: "pick" }, kind, movement, make("button", { type: "button", class: "also", onclick: keepKind }, "Keep off this kind"),
      street, offered, hours, make("button", { type: "button", class: "also", onclick: keepStreet }, "Keep off this place"),
      make("button", { type: "button", class: "also", onclick: keepArea }, "Draw an area on the map"));
  }

  private pickTake(): HTMLElement {
    const [street, offered] = placeInput({ placeholder: "street or junction", "aria-label": "Street or junction that must be gone by" });
    const take = (): void => {
      const name = street.value.trim();
      if (!name) return street.focus();
      this.mustTake(name, name);
      street.value = "";
    };
    return make("div", { class: "pick" }, street, offered, make("button", { type: "button", class: "also", onclick: take }, "Go by this place"));
  }

  private show(): void {
    this.wants.replaceChildren(...this.wanted.map((want, row) => make("li", {},
      make("span", { class: "kind" }, make("img", { src: `/symbols/${want.kind}`, alt: "", class: "symbol" }), spoken(want.kind) + (want.movement ? `, ${want.movement}` : "")),
      make("strong", {}, want.count === "max" ? "as many as fit" : want.count),
      make("button", { type: "button", class: "small", "aria-label": `Leave out ${spoken(want.kind)} ${want.movement}`, onclick: () => { this.wanted.splice(row, 1); this.show(); this.changed(); this.wants.focus(); } }, "leave out"))));
    this.wants.append(...this.also.map(([name, text], row) => listed(`${spoken(name)}: ${spoken(text)}`, `Leave out ${name} ${text}`, "leave out",
      () => { this.also.splice(row, 1); this.show(); this.changed(); this.wants.focus(); })));
    this.showPlaces(this.goneBy, this.by, "No longer go by", "leave out");
    this.showPlaces(this.keptOff, this.off, "No longer keep away from", "allow again");
  }

  private showPlaces(list: HTMLElement, places: Told[], undo: string, label: string): void {
    const drop = (row: number): void => { places.splice(row, 1); this.show(); this.changed(); list.focus(); };
    list.replaceChildren(...places.map((each, row) => listed(each.text, `${undo} ${each.text}`, label, () => drop(row))));
  }
}
