// What the map says anywhere, and why.
import { addNote, find, look, notes, Trouble, type Area } from "./ask";
import { field, make } from "./page_parts";
import type { RoadMap } from "./map";
import { noteForm } from "./note_form";

export class Look {
  readonly element = make("div", {});
  private readonly said = make("div", { role: "status" }, make("p", { class: "far" }, "Click a road, or find a place."));

  constructor(private readonly map: RoadMap, private readonly area: Area, private readonly moment: () => string, private readonly forbid: (lat: number, lon: number, text: string) => void) {
    const text = make("input", { type: "text", autocomplete: "off" });
    const every = make("input", { type: "checkbox", id: "everything" });
    every.addEventListener("change", () => this.map.showKinds([], every.checked));
    this.element.append(
      make("h2", {}, "What the map says"),
      make("form", { onsubmit: (event) => { event.preventDefault(); void this.go(text.value); } },
        make("div", { class: "fields" }, field("Find a place", text, true)),
        make("div", { class: "deeds" }, make("button", { type: "submit", class: "deed" }, "Find"))),
      make("p", {}, every, " ", make("label", { for: "everything" }, "Mark every junction there is to practise at")),
      this.said);
    void this.showNotes();
  }

  private async showNotes(): Promise<void> {
    if (this.area.notes) this.map.showNotes(await notes());
  }

  /** The place on the map, in the program's words. */
  async at(lat: number, lon: number): Promise<void> {
    this.said.replaceChildren(make("p", { class: "far" }, "Looking …"));
    try {
      const { said } = await look(lat, lon, this.moment());
      const street = said.split("\n")[1]?.split(":")[0] ?? "this place";
      this.said.replaceChildren(
        make("pre", { class: "said" }, said),
        make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => this.forbid(lat, lon, street) }, "Forbid this in the lesson")),
        ...(this.area.notes ? [noteForm(this.area, async (words) => {
          await addNote([["at", `${lat.toFixed(7)},${lon.toFixed(7)}`], ...words]);
          await this.showNotes();
          await this.at(lat, lon);
        })] : []),
        make("p", { class: "caution" }, "This is what the map holds. Signs, road markings, signals and police on the day overrule it."));
    } catch (failure) {
      this.trouble(failure);
    }
  }

  private async go(text: string): Promise<void> {
    try {
      const found = await find(text);
      const place = found.places[0];
      if (found.meant === 1 && place) {
        this.map.goTo(place.lat, place.lon);
        return await this.at(place.lat, place.lon);
      }
      const several = found.places.slice(0, found.meant);
      this.said.replaceChildren(
        make("p", {}, found.meant > 1 ? "Several places are called so:" : found.why || "Nothing is called so here."),
        make("ul", {}, ...several.map((each) => make("li", {}, make("button", { type: "button", class: "small", onclick: () => { this.map.goTo(each.lat, each.lon); void this.at(each.lat, each.lon); } }, `${each.name}${each.near ? `, ${each.near}` : ""}`))),
          ...(found.meant === 0 ? found.instead.map((name) => make("li", {}, make("button", { type: "button", class: "small", onclick: () => void this.go(name) }, name))) : [])));
    } catch (failure) {
      this.trouble(failure);
    }
  }

  private trouble(failure: unknown): void {
    this.said.replaceChildren(make("p", { class: "trouble" }, failure instanceof Trouble ? failure.message : String(failure)));
  }
}
