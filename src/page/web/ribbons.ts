// Loops as ribbons of time: minutes to scale from the top, what is practised as marks on them.
import { allWanted, type Answer, type Loop, type Pass } from "./ask";
import { comparison } from "./compare";
import { make, part, shape } from "./page_parts";
import { clock, goodness, lasting, minutes, wanted } from "./words";

const pixelsAMinute = 6;
const top = 34, middle = 24, width = 86;

export const letter = (row: number): string => String.fromCharCode(65 + row);

/** By kind that may be asked for, the kinds whose passes count for it. */
export type MetBy = Map<string, string[]>;

/** Passes that are asked for. */
function practised(answer: Answer, loop: Loop, metBy: MetBy): Pass[] {
  return loop.passes.filter((pass) => allWanted(answer).some((want) =>
    (metBy.get(want.kind) ?? [want.kind]).includes(pass.kind) && (want.movement === null || want.movement === pass.movement)));
}

function secondsAt(loop: Loop, pass: Pass): number {
  return loop.stretches[pass.first]?.arrive_s.likely ?? 0;
}

const passesInWords = (passes: Pass[], loop: Loop): string =>
  passes.map((pass) => `${clock(loop.start, secondsAt(loop, pass))} ${wanted(pass.kind, pass.movement)}`).join("; ");

function drawn(passes: Pass[], loop: Loop, row: number, chosen: boolean): SVGElement {
  const length = minutes(loop.seconds.likely + loop.stop_seconds) * pixelsAMinute;
  const line = chosen ? "var(--ink)" : "var(--main)", words = chosen ? "var(--ink)" : "var(--grey)";
  let named = -Infinity; // where the last mark with words is
  const marks = passes.map((pass) => {
    const y = top + (secondsAt(loop, pass) / 60) * pixelsAMinute;
    const hasRoom = y - named >= 13;
    if (hasRoom) named = y;
    return shape("g", { "data-pass": loop.passes.indexOf(pass) },
      shape("title", {}, `${clock(loop.start, secondsAt(loop, pass))} ${wanted(pass.kind, pass.movement)}`),
      shape("circle", { cx: middle, cy: y, r: pass.hardness >= 3 ? 6 : 4, fill: "var(--paper)", stroke: line, "stroke-width": 2.5 }),
      ...(hasRoom ? [shape("image", { x: middle + 9, y: y - 8, width: 16, height: 16, href: `/symbols/${pass.kind}`, class: "symbol" }),
      shape("text", { x: middle + 27, y: y + 4, "font-size": 11, fill: words }, pass.movement ?? "")] : []));
  });
  const end = top + length;
  const [early, late] = [loop.seconds.low, loop.seconds.high].map((seconds) => top + ((seconds + loop.stop_seconds) / 60) * pixelsAMinute) as [number, number];
  return shape("svg", { width, height: late + 30, "aria-hidden": "true" },
    shape("text", { x: middle, y: 18, "text-anchor": "middle", "font-size": 17, "font-weight": 700, fill: words }, letter(row)),
    shape("line", { x1: middle, y1: top, x2: middle, y2: end, stroke: line, "stroke-width": 8 }),
    shape("line", { x1: middle - 14, y1: end, x2: middle + 14, y2: end, stroke: line, "stroke-width": 4 }),
    shape("line", { x1: middle, y1: early, x2: middle, y2: late, stroke: words, "stroke-width": 1.5 }),
    shape("line", { x1: middle - 8, y1: late, x2: middle + 8, y2: late, stroke: words, "stroke-width": 1.5 }),
    ...marks,
    shape("text", { x: middle, y: late + 18, "text-anchor": "middle", "font-size": 13, "font-weight": 700, fill: words },
      `${minutes(loop.seconds.likely + loop.stop_seconds)} min`));
}

/** The pass whose mark was clicked; none beside one. */
function passAt(event: Event): number | null {
  const mark = event.target instanceof Element ? event.target.closest("[data-pass]") : null;
  return mark ? Number(mark.getAttribute("data-pass")) : null;
}

/** Draws them; `choose` is told which one is picked, and at which of its passes. */
export function showRibbons(answer: Answer, metBy: MetBy, chosen: number, choose: (row: number, pass: number | null) => void): void {
  const ribbons = part("ribbons"), verdicts = part("verdicts");
  const hadFocus = ribbons.contains(document.activeElement);
  ribbons.replaceChildren(...answer.loops.map((loop, row) =>
    make("button", {
      type: "button", "aria-pressed": String(row === chosen),
      "aria-label": `Loop ${letter(row)}${loop.variant ? `, ${loop.variant}` : ""}: ${lasting(loop)}. ${row === chosen ? "Picked" : "Pick this one"}. ${passesInWords(practised(answer, loop, metBy), loop)}`,
      onclick: (event) => choose(row, passAt(event)),
    }, drawn(practised(answer, loop, metBy), loop, row, row === chosen))));
  if (hadFocus) (ribbons.children[chosen] as HTMLElement | undefined)?.focus();
  verdicts.replaceChildren(...answer.loops.map((loop, row) =>
    make("p", row === chosen ? {} : { class: "far" },
      make("strong", {}, `${letter(row)}${loop.variant ? `, ${loop.variant}` : ""}: `), goodness(loop.certificate, answer))));
  const table = comparison(answer, chosen);
  if (table) verdicts.prepend(table);
  if (answer.fewer_because) verdicts.append(make("p", { class: "far" }, `Fewer loops than asked: ${answer.fewer_because}`));
}

export function clearRibbons(): void {
  part("ribbons").replaceChildren();
  part("verdicts").replaceChildren();
}
