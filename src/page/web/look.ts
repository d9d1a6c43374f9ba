// What the map says anywhere, and why.
import { addNote, find, look, notes, roadIn, Trouble, type Area } from "./ask";
import { field, make } from "./page_parts";
import { Centres } from "./centres";
import { groundCheck, mostUsed, nearest } from "./questions";
import { NotesList } from "./notes_list";
import type { RoadMap } from "./map";
import { placeInput } from "./place_input";
import { setIn } from "./told_blocks";
import { noteForm } from "./note_form";

/** What is done in the lesson with what was looked at; value: as the program takes a place. */
export interface Deeds {
  forbid(value: string, text: string): void;
  mustTake(value: string, text: string): void;
  beginAt(value: string): void;
}

export class Look {
  readonly element = make("div", {});
  private readonly status = make("p", { role: "status", class: "far" }, "Click a road, or find a place.");
  private readonly said = make("div", {});
  private readonly centres: Centres;
  private readonly noted: NotesList;
  private asked = 0; // which question is the last one

  constructor(private readonly map: RoadMap, private readonly area: Area, private readonly moment: () => string, private readonly lesson: Deeds) {
    const [text, offered] = placeInput({ placeholder: "street, house, postcode or name" });
    const every = make("input", { type: "checkbox", id: "everything" });
    every.addEventListener("change", () => this.map.showEverything(every.checked));
    this.centres = new Centres(map);
    const show = (lat: number, lon: number): void => { map.showSpot(lat, lon); map.goTo(lat, lon); };
    this.noted = new NotesList(area, show, async () => { await this.showNotes(); map.notesChanged(); });
    this.element.append(
      make("h2", {}, "What the map says"),
      make("form", { onsubmit: (event) => { event.preventDefault(); void this.go(text.value); } },
        make("div", { class: "fields" }, field("Find a place", text, true), offered),
        make("div", { class: "deeds" }, make("button", { type: "submit", class: "deed" }, "Find"))),
      make("p", { class: "screen" }, every, " ", make("label", { for: "everything" }, "Mark every place there is to practise at")),
      this.status, this.said, nearest(area, moment, show), groundCheck(area, () => map.middle(), moment), ...(area.notes ? [this.noted.element] : []),
      ...(area.book ? [mostUsed(), this.centres.element] : []));
    if (area.book) void this.centres.open();
    if (area.notes) void this.noted.open();
    void this.showNotes();
  }

  private async showNotes(): Promise<void> {
    if (this.area.notes) this.map.showNotes(await notes());
  }

  /** The place on the map, in the program's words. */
  async at(lat: number, lon: number): Promise<void> {
    const now = ++this.asked;
    this.status.replaceChildren("Looking …");
    this.map.showSpot(lat, lon);
    try {
      const { said, junction } = await look(lat, lon, this.moment());
      if (now !== this.asked) return;
      const road = roadIn(said);
      const street = road.replace(/ \(.*\)$/, "");
      this.status.replaceChildren(`${road || "The place"}, ringed on the map:`);
      this.said.replaceChildren(
        ...setIn(said, false),
        ...(street && street !== "unnamed road" ? [make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => this.lesson.forbid(street, `the whole of ${street}`) }, `Keep the lesson off the whole of ${street}`),
          make("button", { type: "button", class: "also", onclick: () => this.lesson.mustTake(street, street) }, `Go by ${street} in every loop`))] : []),
        ...(junction ? [make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => this.lesson.forbid(junction, `the junction at ${street || junction}`) }, "Keep the lesson off this junction"),
          make("button", { type: "button", class: "also", onclick: () => this.lesson.mustTake(junction, `the junction at ${street || junction}`) }, "Go by this junction in every loop"))] : []),
        make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => this.lesson.beginAt(`${lat.toFixed(6)},${lon.toFixed(6)}`) }, "Begin the lesson here, and end it here")),
        ...(this.area.notes ? [noteForm(this.area, async (words) => {
          await addNote([["at", `${lat.toFixed(7)},${lon.toFixed(7)}`], ...words]);
          await this.showNotes();
          await this.noted.open();
          this.map.notesChanged();
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
      this.status.replaceChildren("");
      this.said.replaceChildren(
        make("p", {}, found.meant > 1 ? "Several places are called so:" : found.why || "Nothing is called so here."),
        make("ul", {}, ...several.map((each) => make("li", {}, make("button", { type: "button", class: "small", onclick: () => { this.map.goTo(each.lat, each.lon); void this.at(each.lat, each.lon); } }, `${each.name}${each.near ? `, ${each.near}` : ""}`))),
          ...(found.meant === 0 ? found.instead.map((name) => make("li", {}, make("button", { type: "button", class: "small", onclick: () => void this.go(name) }, name))) : [])));
    } catch (failure) {
      this.trouble(failure);
    }
  }

  private trouble(failure: unknown): void {
    this.status.replaceChildren("");
    this.said.replaceChildren(make("p", { class: "trouble", role: "alert" }, failure instanceof Trouble ? failure.message : String(failure)));
  }
}
