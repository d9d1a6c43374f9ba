// What a loop passes, counted by kind and movement.
import type { Loop } from "./ask";
import { make, spoken } from "./page_parts";

const movements = ["left", "ahead", "right", "round"] as const;
const turns = ["turn-off", "emerge"]; // the commonest of all, told of every loop

const times = (loop: Loop, kind: string, movement: string | null): number =>
  loop.passes.filter((pass) => pass.kind === kind && pass.movement === movement).length;

/** "turn off: 9 left, 15 right", and so on: what is told of a loop whatever was asked for. */
export function turnsOf(loop: Loop): string[] {
  return turns.map((kind) => `${spoken(kind)}: ${times(loop, kind, "left")} left, ${times(loop, kind, "right")} right`);
}

/** All that it passes, a row for each kind. */
export function countsTable(loop: Loop): HTMLElement {
  const kinds = [...new Set(loop.passes.map((pass) => pass.kind))].sort();
  const some = (count: number): string => (count > 0 ? String(count) : "");
  return make("div", { class: "table", tabindex: "0", role: "region", "aria-label": "Passes by kind and movement" },
    make("table", {},
      make("thead", {}, make("tr", {}, ...["What", ...movements, "In all"].map((head) => make("th", { scope: "col" }, head)))),
      make("tbody", {}, ...kinds.map((kind) => make("tr", {}, make("th", { scope: "row" }, spoken(kind)),
        ...movements.map((movement) => make("td", {}, some(times(loop, kind, movement)))),
        make("td", {}, String(loop.passes.filter((pass) => pass.kind === kind).length)))))));
}
