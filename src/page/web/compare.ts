// Loops of one answer side by side: what differs between them, a row for each count.
import { allMet, type Answer, type Loop } from "./ask";
import { make } from "./page_parts";
import { letter } from "./ribbons";
import { distance, minutes, unitOf, wanted } from "./words";

const hardest = (loop: Loop): number => Math.max(0, ...loop.passes.map((pass) => pass.hardness));

const turned = (loop: Loop, movement: string): number => loop.passes.filter((pass) => (pass.kind === "turn-off" || pass.kind === "emerge") && pass.movement === movement).length;

/** What is counted, and of each loop how much. */
function counted({ area, loops }: Answer): [string, string[]][] {
  const of = (tell: (loop: Loop) => string | number): string[] => loops.map((loop) => String(tell(loop)));
  const unit = unitOf(area.region);
  return [
    ["likely minutes", of((loop) => minutes(loop.seconds.likely + loop.stop_seconds))],
    ...allMet(loops[0]!).map((met, row): [string, string[]] => [
      wanted(met.kind, met.movement) + (met.asked === "max" ? "" : `, ${met.asked} asked`), of((loop) => allMet(loop)[row]?.got ?? 0)]),
    ["turns, left and right", of((loop) => [turned(loop, "left"), turned(loop, "right")].join(" · "))],
    ["passes in all", of((loop) => loop.passes.length)],
    ["hardest pass", of(hardest)],
    ["bus lanes met", of((loop) => loop.bus_lanes.length)],
    [`${unit} in all`, of((loop) => distance(loop.metres, unit))],
    [`${unit} driven twice`, of((loop) => distance(loop.metres_twice, unit))],
  ];
}

/** The table; none when there is nothing to compare. chosen: the row of the loop that is read now. */
export function comparison(answer: Answer, chosen: number): HTMLElement | null {
  if (answer.loops.length < 2) return null;
  const look = (row: number): Record<string, string> => (row === chosen ? { class: "chosen" } : {});
  return make("table", { class: "compare" },
    make("caption", {}, "Side by side"),
    make("thead", {}, make("tr", {}, make("td", {}), ...answer.loops.map((_, row) =>
      make("th", { scope: "col", ...look(row) }, letter(row), answer.loops[row]!.variant ? `, ${answer.loops[row]!.variant}` : "")))),
    make("tbody", {}, ...counted(answer).map(([what, values]) => make("tr", {},
      make("th", { scope: "row" }, what), ...values.map((value, row) => make("td", look(row), value))))));
}
