// Kinds of practice as one says them, picks them and lists them.
import type { Area, Kind } from "./ask";
import { make, spoken } from "./page_parts";

export type Words = [string, string][];
/** count: a number, or "max" for as many as fit. */
export interface Want { kind: string; movement: string; count: string }

export const option = (value: string, text: string, selected = false): HTMLOptionElement =>
  make("option", { value, selected }, text);

/** "turn-off:left=3", as the program reads it. */
export const wordOf = (want: Want): string => `${want.kind}${want.movement ? `:${want.movement}` : ""}=${want.count}`;

/** What wordOf wrote, and "crossroads" alone, which is one of it; none for what joins two kinds. */
export function wantOf(text: string): Want | null {
  const said = /^([a-z-]+)(?::([a-z-]+))?(?:=(\d+|max))?$/.exec(text.trim());
  return said && { kind: said[1]!, movement: said[2] ?? "", count: said[3] ?? "1" };
}

/** "roundabout right as often as fits" */
export const inWords = (want: Want): string =>
  `${spoken(want.kind)}${want.movement ? ` ${want.movement}` : ""} ${want.count === "max" ? "as often as fits" : want.count}`;

/** All kinds by name. */
export function kindChoice(area: Area, label: string): HTMLSelectElement {
  const byName = (a: Kind, b: Kind): number => (a.name < b.name ? -1 : 1);
  return make("select", { "aria-label": label }, ...[...area.kinds].sort(byName).map((kind) =>
    option(kind.name, spoken(kind.name), kind.name === "roundabout")));
}

/** The movements of whichever kind is chosen. */
export function movementChoice(area: Area, kind: HTMLSelectElement, label: string): HTMLSelectElement {
  const movement = make("select", { "aria-label": label });
  const offer = (): void => {
    const known = area.kinds.find((each) => each.name === kind.value)?.movements ?? [];
    movement.replaceChildren(option("", "any"), ...known.map((name) => option(name, name)));
    movement.disabled = known.length === 0;
  };
  kind.addEventListener("change", offer);
  offer();
  return movement;
}

/** A row that can be left out. */
export function listed(text: Node | string, undo: string, label: string, leaveOut: () => void, more: Node | string = ""): HTMLElement {
  return make("li", {}, make("span", {}, text), make("span", {}, more),
    make("button", { type: "button", class: "small", "aria-label": undo, onclick: leaveOut }, label));
}
