// A lesson in parts, in order, each with minutes, roads and practice of its own.
import { make, spoken } from "./page_parts";
import { inWords, listed, option, wantOf, wordOf, type Want, type Words } from "./wants";

interface Part { minutes: string; roads: string; hardest: string; wants: Want[] }

/** As the program reads it: "20 quiet hardest 3: turn-off:left=3, emerge:left=2". */
function wordOfPart({ minutes, roads, hardest, wants }: Part): string {
  const head = [minutes, ...(roads === "any" ? [] : [roads]), ...(hardest ? [`hardest ${hardest}`] : [])].join(" ");
  return wants.length > 0 ? `${head}: ${wants.map(wordOf).join(", ")}` : head;
}

function partOf(text: string): Part | null {
  const said = /^(\d+)(?: (any|quiet|busier))?(?: hardest (\d))?(?::(.*))?$/.exec(text.trim());
  const wants = (said?.[4] ?? "").split(",").filter((each) => each.trim()).map(wantOf);
  if (!said || wants.includes(null)) return null;
  return { minutes: said[1]!, roads: said[2] ?? "any", hardest: said[3] ?? "", wants: wants as Want[] };
}

export class LessonParts {
  readonly element: HTMLDetailsElement;
  private readonly list = make("ol", { class: "wants", tabindex: "-1", "aria-label": "Parts of the lesson, in order" });
  private readonly minutes = make("input", { type: "number", min: "3", max: "600", value: "20", "aria-label": "Minutes of the part" });
  private readonly roads = make("select", { "aria-label": "Roads of the part" }, option("any", "any roads"), option("quiet", "quiet streets"), option("busier", "busier roads"));
  private readonly hardest = make("select", { "aria-label": "Hardest in the part" }, option("", "as hard as the level"), ...["1", "2", "3", "4", "5"].map((n) => option(n, `hardest ${n}`)));
  private readonly parts: Part[] = [];

  /** handOver: gives what is listed under Practise, which then is the part's; giveBack: lists it there again. changed: told of any change. */
  constructor(private readonly handOver: () => Want[], private readonly giveBack: (wants: Want[]) => void, private readonly changed: () => void) {
    this.element = make("details", { class: "note" }, make("summary", {}, "In parts"),
      make("p", { class: "far" }, "Put together above what the first part practises, say how long and where, and make it a part; then the next one."),
      this.list,
      make("div", { class: "pick" }, this.minutes, this.roads, this.hardest,
        make("button", { type: "button", class: "also", onclick: () => this.add() }, "Make the practice above a part")));
  }

  get any(): boolean {
    return this.parts.length > 0;
  }

  words(): Words {
    return this.parts.map((part) => ["part", wordOfPart(part)]);
  }

  /** False for a part that this form can't show. */
  take(text: string): boolean {
    const part = partOf(text);
    if (part) this.parts.push(part);
    this.element.open ||= part !== null;
    this.show();
    return part !== null;
  }

  kinds(): string[] {
    return this.parts.flatMap((part) => part.wants.map((want) => want.kind));
  }

  inALine(): string[] {
    return this.parts.map((part) => `${part.minutes} min ${part.roads === "any" ? "" : `${part.roads} `}${part.wants.map(inWords).join(", ")}`.trim());
  }

  clear(): void {
    this.parts.length = 0;
    this.show();
  }

  private add(): void {
    this.parts.push({ minutes: this.minutes.value || "20", roads: this.roads.value, hardest: this.hardest.value, wants: this.handOver() });
    this.show();
    this.changed();
  }

  private show(): void {
    this.list.replaceChildren(...this.parts.map((part, row) => listed(
      `${part.minutes} min, ${part.roads === "any" ? "any roads" : part.roads === "quiet" ? "quiet streets" : "busier roads"}${part.hardest ? `, hardest ${part.hardest}` : ""}: ${part.wants.map((want) => inWords({ ...want, kind: spoken(want.kind) })).join(", ") || "driving alone"}`,
      `No part ${row + 1} any more`, "undo", () => {
        this.giveBack(this.parts.splice(row, 1)[0]!.wants);
        this.show();
        this.changed();
        this.list.focus();
      })));
  }
}
