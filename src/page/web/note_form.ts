// What the instructor knows better than the map, written down where it is.
import { Trouble, type Area } from "./ask";
import { field, make, spoken } from "./page_parts";
import { today } from "./words";

type Words = [string, string][];

/** Kinds of note (DEVELOPERS.md, NOTES FILE), what they mean, and what has to be told besides. */
const saying: Record<string, { means: string; asks: string[] }> = {
  narrow: { means: "two cars don't fit", asks: [] },
  "pull-up": { means: "a good place to stop", asks: ["length"] },
  never: { means: "not driven by me, at these hours, on these days or at all", asks: ["hours", "from", "until"] },
  closed: { means: "shut for a time", asks: ["from", "until"] },
  hump: { means: "a hump that isn't mapped", asks: [] },
  plate: { means: "the hours on a bus lane's plate", asks: ["hours"] },
  limit: { means: "the limit on the signs", asks: ["limit"] },
  practice: { means: "something to practise is here", asks: ["kind"] },
  not: { means: "the map says so, and it isn't", asks: ["kind"] },
};

/** The eight winds, as a compass heading. */
const headings = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];

/** `write` is told the words of the note; what it throws is shown. was: what a note says that is changed; where it lies stays. */
export function noteForm(area: Area, write: (words: Words) => Promise<void>, was: Record<string, string> | null = null): HTMLElement {
  const says = make("select", {}, ...Object.entries(saying).map(([name, { means }]) => make("option", { value: name }, `${name}: ${means}`)));
  const asked: Record<string, HTMLInputElement | HTMLSelectElement> = {
    hours: make("input", { type: "text", placeholder: "Mo-Fr 08:00-09:00" }),
    from: make("input", { type: "date" }),
    until: make("input", { type: "date" }),
    limit: make("input", { type: "text", placeholder: "20 mph" }),
    length: make("input", { type: "number", min: "5", max: "200" }),
    kind: make("select", {}, ...area.kinds.map((kind) => make("option", { value: kind.name }, spoken(kind.name)))),
  };
  const labels: Record<string, string> = { hours: "Hours", from: "First day", until: "Last day", limit: "Limit", length: "Metres of room", kind: "Kind of practice" };
  const heading = make("select", {}, make("option", { value: "" }, "who drives either way"), ...headings.map((name, k) => make("option", { value: String(45 * k) }, `who drives ${name}`)));
  const to = make("input", { type: "text", placeholder: "here alone, to the next junctions", autocomplete: "off" });
  const seen = make("input", { type: "date", value: today(), required: true });
  const remark = make("input", { type: "text" });
  const fields = make("div", { class: "fields" });
  const trouble = make("p", { class: "trouble", role: "alert", hidden: true });
  const show = (): void => fields.replaceChildren(
    field("It is", says, true), ...saying[says.value]!.asks.map((name) => field(labels[name]!, asked[name]!)),
    ...(was ? [] : [field("It holds for", heading), field("As far as, along the road", to)]), field("Seen on", seen), field("Remark, for yourself", remark, true));
  /** What the note said, and is to say no longer. */
  const emptied = (): string[] => [...(was?.["says"] === says.value ? saying[says.value]!.asks.filter((name) => was[name] && !asked[name]!.value) : []),
    ...(was?.["remark"] && !remark.value.trim() ? ["remark"] : [])];
  const save = async (): Promise<void> => {
    const words: Words = [["says", says.value], ["seen", seen.value]];
    for (const name of saying[says.value]!.asks) if (asked[name]!.value) words.push([name, asked[name]!.value]);
    if (!was && heading.value && !to.value.trim()) words.push(["heading", heading.value]);
    if (!was && to.value.trim()) words.push(["to", to.value.trim()]);
    if (remark.value.trim()) words.push(["remark", remark.value.trim()]);
    words.push(...emptied().map((name) => ["without", name] as [string, string]));
    try {
      await write(words);
    } catch (failure) {
      trouble.hidden = false;
      trouble.replaceChildren(failure instanceof Trouble ? failure.message : String(failure));
    }
  };
  says.addEventListener("change", show);
  for (const [name, text] of Object.entries(was ?? {})) {
    if (name === "says") says.value = text;
    else if (name === "remark") remark.value = text;
    else if (asked[name]) asked[name]!.value = text;
  }
  show();
  return make("details", { class: "note", open: was !== null }, make("summary", {}, was ? "What it says now" : "Note what you know better"),
    make("form", { onsubmit: (event) => { event.preventDefault(); void save(); } },
      fields, trouble, make("div", { class: "deeds" }, make("button", { type: "submit", class: "deed" }, was ? "Change it" : "Note this"))));
}
