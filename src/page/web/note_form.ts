// What the instructor knows better than the map, written down where it is.
import { Trouble, type Area } from "./ask";
import { field, make, spoken } from "./page_parts";
import { today } from "./words";

type Words = [string, string][];

/** Kinds of note (DEVELOPERS.md, NOTES FILE), what they mean, and what has to be told besides. */
const saying: Record<string, { means: string; asks: string[] }> = {
  narrow: { means: "two cars don't fit", asks: [] },
  "pull-up": { means: "a good place to stop", asks: ["length"] },
  never: { means: "not driven by me, at these hours or at all", asks: ["hours"] },
  closed: { means: "shut for a time", asks: ["from", "until"] },
  hump: { means: "a hump that isn't mapped", asks: [] },
  plate: { means: "the hours on a bus lane's plate", asks: ["hours"] },
  limit: { means: "the limit on the signs", asks: ["limit"] },
  practice: { means: "something to practise is here", asks: ["kind"] },
  not: { means: "the map says so, and it isn't", asks: ["kind"] },
};

/** `write` is told the words of the note; what it throws is shown. */
export function noteForm(area: Area, write: (words: Words) => Promise<void>): HTMLElement {
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
  const seen = make("input", { type: "date", value: today(), required: true });
  const remark = make("input", { type: "text" });
  const fields = make("div", { class: "fields" });
  const trouble = make("p", { class: "trouble", role: "alert", hidden: true });
  const show = (): void => fields.replaceChildren(
    field("It is", says, true), ...saying[says.value]!.asks.map((name) => field(labels[name]!, asked[name]!)),
    field("Seen on", seen), field("Remark, for yourself", remark, true));
  const save = async (): Promise<void> => {
    const words: Words = [["says", says.value], ["seen", seen.value]];
    for (const name of saying[says.value]!.asks) if (asked[name]!.value) words.push([name, asked[name]!.value]);
    if (remark.value.trim()) words.push(["remark", remark.value.trim()]);
    try {
      await write(words);
    } catch (failure) {
      trouble.hidden = false;
      trouble.replaceChildren(failure instanceof Trouble ? failure.message : String(failure));
    }
  };
  says.addEventListener("change", show);
  show();
  return make("details", { class: "note" }, make("summary", {}, "Note what you know better"),
    make("form", { onsubmit: (event) => { event.preventDefault(); void save(); } },
      fields, trouble, make("div", { class: "deeds" }, make("button", { type: "submit", class: "deed" }, "Note this"))));
}
