// The instructor's own notes: each with its day, shown on the map, dated anew, changed, taken out.
import { changeNote, dropNote, notes, type Area, type Note } from "./ask";
import { noteForm } from "./note_form";
import { make, spoken } from "./page_parts";
import type { GoTo } from "./told_blocks";
import { today } from "./words";
import { whatWentWrong } from "./working";

const word = (note: Note, name: string): string => String(note.properties[name] ?? "");

/** What it says, as the form of a note has its fields. */
function fieldsOf(note: Note): Record<string, string> {
  const said: Record<string, string> = { says: word(note, "says") };
  for (const name of ["kind", "hours", "from", "until", "remark"]) if (word(note, name)) said[name] = word(note, name);
  if (note.properties["limit"]) said["limit"] = `${word(note, "limit")} ${word(note, "unit")}`;
  if (note.properties["length_m"]) said["length"] = word(note, "length_m");
  return said;
}

function inWords(note: Note): string {
  const { says, kind, hours, from, until, limit, length, remark } = fieldsOf(note);
  return [[says, kind && spoken(kind), limit, hours, from && `from ${from}`, until && `until ${until}`, length && `${length} m`].filter(Boolean).join(" "), `seen ${word(note, "seen")}`, remark].filter(Boolean).join(", ");
}

/** The first point of it. */
function placeOf(note: Note): [number, number] {
  const at = note.geometry.type === "Point" ? note.geometry.coordinates : note.geometry.coordinates[0]!;
  return [at[1], at[0]];
}

export class NotesList {
  readonly element: HTMLDetailsElement;
  private readonly list = make("ul", { class: "wants notes", tabindex: "-1", "aria-label": "Your notes" });
  private readonly came = make("p", { role: "status" });

  /** changed: told when the file says something else, to draw the roads anew. */
  constructor(private readonly area: Area, private readonly goTo: GoTo, private readonly changed: () => Promise<void>) {
    this.element = make("details", { class: "note" }, make("summary", {}, "Your notes"), this.list, this.came);
  }

  /** Reads the file anew. */
  async open(): Promise<void> {
    try {
      const all = (await notes()).features as Note[];
      this.list.replaceChildren(...all.map((note, row) => this.row(note, row + 1)));
      if (all.length === 0) this.list.replaceChildren(make("li", {}, "None yet: click a road, and write down what you saw there."));
    } catch (failure) {
      this.fail(failure);
    }
  }

  private row(note: Note, number: number): HTMLElement {
    const words = inWords(note), more = make("div", { class: "wide" });
    const small = (text: string, name: string, deed: () => void): HTMLElement => make("button", { type: "button", class: "small", "aria-label": `${name}: ${words}`, onclick: deed }, text);
    const change = (): void => {
      const form = noteForm(this.area, (said) => this.write(() => changeNote(number, note, said)), fieldsOf(note));
      more.replaceChildren(form);
      form.querySelector("select")?.focus();
    };
    const takeOut = (): void => {
      const sure = make("span", { role: "group", "aria-label": `Really take out this note? ${words}` }, "for good? ",
        small("yes", "Yes, take out", () => void this.write(() => dropNote(number, note)).catch((failure: unknown) => this.fail(failure))), " ",
        small("no", "No, keep", () => { more.replaceChildren(); this.list.focus(); }));
      more.replaceChildren(sure);
      sure.querySelector("button")?.focus();
    };
    return make("li", {}, make("span", {}, words),
      make("span", { class: "pick" }, small("show", "Show on the map", () => this.goTo(...placeOf(note))), small("change", "Change", change),
        small("seen today", "Seen today", () => void this.write(() => changeNote(number, note, [["seen", today()]])).catch((failure: unknown) => this.fail(failure))), small("take out", "Take out", takeOut)), more);
  }

  /** Writes, and shows what the file has then. */
  private async write(deed: () => Promise<{ said: string }>): Promise<void> {
    const { said } = await deed();
    this.came.replaceChildren(said.replace(/^.*?: note/, "Note").trim());
    await this.open();
    await this.changed();
    this.list.focus();
  }

  private fail(failure: unknown): void {
    this.came.replaceChildren(make("span", { class: "trouble" }, whatWentWrong(failure)));
  }
}
