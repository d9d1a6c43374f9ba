// What else may be said of a lesson: where it is driven to and from, stops and briefs, what counts and how often.
import { look, roadIn, type Area } from "./ask";
import { field, make, spoken } from "./page_parts";
import type { Spot } from "./picking";
import { placeInput } from "./place_input";
import { kindChoice, listed, option, type Words } from "./wants";

/** Words that say a kind, and may be said again. */
const ofKinds: Record<string, string> = { new: "new to the learner", welcome: "welcome on the way", spacing: "apart" };

/** A place of one's own drive: as the program reads it, as one says it, and where it was picked on the map. */
interface Place { value: string; text: string; at: { lat: number; lon: number } | null }

/** What the map does for one's own drive. */
export interface DriveMap { pickPlaces(then: (spot: Spot) => void): void; showPlaces(places: ({ lat: number; lon: number } | null)[]): void }

const metresBetween = (a: { lat: number; lon: number }, b: { lat: number; lon: number }): number =>
  111_195 * Math.hypot(a.lat - b.lat, (a.lon - b.lon) * Math.cos((a.lat * Math.PI) / 180));

/** A picked place, with the junction and the road's name that are there as far as the map knows them. */
async function placeOf({ lat, lon, reach_m }: Spot, start: string): Promise<Place> {
  const { said, junction } = await look(lat, lon, start);
  const [jLat = 0, jLon = 0] = (junction ?? "").split(",").map(Number);
  const isJunction = junction !== undefined && metresBetween({ lat, lon }, { lat: jLat, lon: jLon }) <= reach_m;
  const at = isJunction ? { lat: jLat, lon: jLon } : { lat, lon };
  const road = (roadIn(said) || "a road").replace(/^unnamed road$/, "an unnamed road");
  return { value: `${at.lat.toFixed(6)},${at.lon.toFixed(6)}`, text: isJunction ? `junction at ${road}` : road, at };
}

/** "54.3,2.6" as a place on the map; null for words. */
function pointIn(text: string): { lat: number; lon: number } | null {
  const said = /^(-?\d+(?:\.\d+)?),\s*(-?\d+(?:\.\d+)?)$/.exec(text);
  return said && { lat: Number(said[1]), lon: Number(said[2]) };
}
const placeIn = (text: string): Place => ({ value: text, text, at: pointIn(text) });

/** "new to the learner: zebra", "roundabout: 4 min apart" */
const inWords = ([name, text]: [string, string]): string =>
  name === "spacing" ? `${spoken(text.replace(/=.*/, ""))}: ${text.replace(/.*=/, "")} min apart` : `${ofKinds[name]}: ${spoken(text)}`;

export class MoreWishes {
  readonly element: HTMLDetailsElement;
  private readonly fields = new Map<string, HTMLInputElement | HTMLSelectElement>(); // by the word they say
  private readonly variants = make("input", { type: "checkbox", id: "variants" });
  private readonly ofKind: Words = [];
  private readonly ofKindList = make("ul", { class: "wants", tabindex: "-1", "aria-label": "What else is said of kinds" });
  private readonly ownDrive: Place[] = []; // in order
  private readonly ownDriveList = make("ol", { class: "wants", tabindex: "-1", "aria-label": "Places of your own drive, in order" });

  /** changed: told of any change that isn't typed. */
  constructor(private readonly area: Area, private readonly changed: () => void, private readonly map: DriveMap, private readonly moment: () => string) {
    this.element = make("details", { class: "note" }, make("summary", {}, "More to say: who drives where, briefs, your own drive"),
      make("fieldset", {}, make("legend", {}, "Who drives where"), make("div", { class: "fields" },
        this.place("end", "It ends elsewhere"), this.place("drive-out", "You drive to here first, the learner from there"),
        this.place("drive-back", "The learner drives to here, you drive on home"))),
      make("fieldset", {}, make("legend", {}, "Stops, and who finds the way"), make("div", { class: "fields" },
        this.number("brief", "Minutes of each brief", 1, 30), this.number("talk", "Minutes of a talk near the end", 1, 30),
        this.number("independent", "Minutes in which the learner finds the way", 5, 120))),
      make("fieldset", {}, make("legend", {}, "How hard, how often"), make("div", { class: "fields" },
        this.choice("hardest", "Nothing harder than", ["1", "2", "3", "4", "5"]),
        this.number("place-passes", "Passes of one place that count", 1, 99), this.number("street-passes", "Drives over one quiet street", 1, 99),
        this.number("pace", "Times as long as the usual learner takes", 0.8, 1.6, "0.05")),
      this.ofKindList, this.pickOfKind()),
      make("div", {}, this.variants, " ", make("label", { for: "variants" }, "An easier and a harder loop, too")),
      make("fieldset", {}, make("legend", {}, "Your own drive, instead of a search"), this.ownDriveList, this.pickOwnDrive()));
  }

  /** It is driven through places in an order that is said; nothing is searched. */
  get isOwnDrive(): boolean {
    return this.ownDrive.length > 0;
  }

  words(): Words {
    const words: Words = [...this.fields].filter(([, control]) => control.value.trim()).map(([name, control]) => [name, control.value.trim()]);
    words.push(...this.ofKind);
    if (this.variants.checked) words.push(["variants", ""]);
    if (this.isOwnDrive) words.push(["through", this.ownDrive.map((place) => place.value).join(";")]);
    return words;
  }

  /** What a proposal or a kept wish says; false for a word that isn't said here. */
  take(name: string, text: string): boolean {
    const control = this.fields.get(name);
    if (control) control.value = text;
    else if (name === "variants") this.variants.checked = true;
    else if (name === "through") this.ownDrive.push(...text.split(";").map((place) => place.trim()).filter(Boolean).map(placeIn));
    else if (name in ofKinds) this.ofKind.push([name, text]);
    else return false;
    this.element.open = true;
    this.show();
    return true;
  }

  /** For a line on what is wished for. */
  inALine(): string[] {
    const said = (name: string, text: (value: string) => string): string[] => { const value = this.fields.get(name)?.value.trim(); return value ? [text(value)] : []; };
    return [
      ...(this.isOwnDrive ? [`your own drive by ${this.ownDrive.length < 3 ? this.ownDrive.map((place) => place.text).join(" and ") : `${this.ownDrive.length} places`}`] : []), ...said("drive-out", (place) => `you drive to ${place}`), ...said("end", (place) => `to ${place}`),
      ...said("drive-back", (place) => `you drive on from ${place}`), ...said("hardest", (level) => `nothing harder than ${level}`),
      ...this.ofKind.map(inWords), ...said("independent", (minutes) => `${minutes} min finding the way`)];
  }

  /** Nothing is said any more. */
  clear(): void {
    for (const control of this.fields.values()) control.value = "";
    this.variants.checked = false;
    this.ofKind.length = this.ownDrive.length = 0;
    this.show();
  }

  private place(name: string, label: string): HTMLElement {
    const [input, offered] = placeInput({ id: `say-${name}` });
    this.fields.set(name, input);
    const whole = field(label, input, true);
    whole.append(offered);
    return whole;
  }

  private number(name: string, label: string, min: number, max: number, step = "1"): HTMLElement {
    const input = make("input", { type: "number", id: `say-${name}`, min: String(min), max: String(max), step });
    this.fields.set(name, input);
    return field(label, input);
  }

  private choice(name: string, label: string, values: string[]): HTMLElement {
    const select = make("select", { id: `say-${name}` }, option("", "as the level has it"), ...values.map((value) => option(value, value)));
    this.fields.set(name, select);
    return field(label, select);
  }

  private pickOfKind(): HTMLElement {
    const kind = kindChoice(this.area, "Kind of which more is said");
    const minutes = make("input", { type: "number", min: "1", max: "60", value: "4", "aria-label": "Minutes apart" });
    const add = (name: string, text: string): void => {
      if (!this.ofKind.some((each) => each[0] === name && each[1] === text)) this.ofKind.push([name, text]);
      this.show();
      this.changed();
    };
    return make("div", { class: "pick" }, kind,
      make("button", { type: "button", class: "also", onclick: () => add("new", kind.value) }, "It is new: brief first"),
      make("button", { type: "button", class: "also", onclick: () => add("welcome", kind.value) }, "Welcome on the way"),
      minutes, make("button", { type: "button", class: "also", onclick: () => add("spacing", `${kind.value}=${minutes.value || "4"}`) }, "So many minutes apart"));
  }

  private pickOwnDrive(): HTMLElement {
    const [place, offered] = placeInput({ placeholder: "street or junction", "aria-label": "Next place of your own drive" });
    const add = (): void => {
      const name = place.value.trim();
      if (!name) return place.focus();
      this.driveBy(placeIn(name));
      place.value = "";
    };
    return make("div", { class: "pick" }, place, offered, make("button", { type: "button", class: "also", onclick: add }, "Drive by this place next"),
      make("button", { type: "button", class: "also", onclick: () => this.map.pickPlaces((spot) => void this.pick(spot)) }, "Pick the places on the map"));
  }

  /** It stands in its order at once, and has its name as soon as the map told it. */
  private async pick(spot: Spot): Promise<void> {
    const place = placeIn(`${spot.lat.toFixed(6)},${spot.lon.toFixed(6)}`);
    this.driveBy(place);
    try {
      Object.assign(place, await placeOf(spot, this.moment()));
    } catch {
      return; // it stays what was clicked; the drive says what is wrong with it
    }
    this.show();
    this.changed();
  }

  private driveBy(place: Place): void {
    this.ownDrive.push(place);
    this.show();
    this.changed();
  }

  private show(): void {
    const drop = <T>(all: T[], row: number, list: HTMLElement): void => { all.splice(row, 1); this.show(); this.changed(); list.focus(); };
    this.ofKindList.replaceChildren(...this.ofKind.map((each, row) => listed(inWords(each), `Leave out ${inWords(each)}`, "leave out", () => drop(this.ofKind, row, this.ofKindList))));
    this.ownDriveList.replaceChildren(...this.ownDrive.map((place, row) => listed(make("span", {}, make("strong", {}, `${row + 1} `), place.text), `No longer drive by ${place.text}`, "leave out", () => drop(this.ownDrive, row, this.ownDriveList))));
    this.map.showPlaces(this.ownDrive.map((place) => place.at));
  }
}
