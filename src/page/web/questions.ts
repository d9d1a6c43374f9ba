// What the map and the files tell when they are asked: what to check on the ground, what is near, which streets are used most.
import { toldOf, type Area, type Question } from "./ask";
import { field, make } from "./page_parts";
import { placeInput } from "./place_input";
import { setIn, streetsTable, toldBlocks, type GoTo } from "./told_blocks";
import { kindChoice, movementChoice } from "./wants";
import { whatWentWrong } from "./working";

/** A fold with a question's fields, a button that asks, and the answer below. */
function folded(heading: string, why: string, deed: string, fields: (Node | string)[], ask: () => Promise<HTMLElement[]>): HTMLDetailsElement {
  const answer = make("div", { role: "status" });
  let asked = 0; // which is the last one
  const now = async (): Promise<void> => {
    const mine = ++asked;
    answer.replaceChildren("Looking …");
    try {
      const told = await ask();
      if (mine === asked) answer.replaceChildren(...told);
    } catch (failure) {
      if (mine === asked) answer.replaceChildren(make("p", { class: "trouble" }, whatWentWrong(failure)));
    }
  };
  return make("details", { class: "note" }, make("summary", {}, heading), make("p", { class: "far" }, why),
    make("form", { onsubmit: (event) => { event.preventDefault(); void now(); } }, make("div", { class: "fields" }, ...fields),
      make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, deed))), answer);
}

const told = async (question: Question, words: Record<string, string>): Promise<string> => (await toldOf(question, words)).said.trim();

/** What is old or odd of one's notes, and the plates and signs round a place that the map doesn't know for sure. middle: of the map that
 * is seen, "LAT,LON"; moment: of the lesson. */
export function groundCheck(area: Area, middle: () => string, moment: () => string): HTMLElement {
  const [place, offered] = placeInput({ id: "ground-place", placeholder: "the middle of the map" });
  return folded("What to check on the ground", "Plates and signs with hours within 500 m of a place, with what they are to be read for, and what of your notes is old. A lesson's own list, with a letter each, is on its sheets.",
    "See what to check", [field("Round which place", place, true), offered], async () => [
      ...(area.notes ? (await told("notes", {})).split("\n").filter(Boolean).map((line) => make("p", {}, line.replace(/^\S*: notes/, "your notes:"))) : []),
      ...setIn(await told("ground", { near: place.value.trim() || middle(), at: moment() }), true),
    ]);
}

/** The nearest places to practise something. */
export function nearest(area: Area, moment: () => string, goTo: GoTo): HTMLElement {
  const [home, offered] = placeInput({ id: "near-home", required: true });
  const kind = kindChoice(area, "Kind to practise near there");
  const movement = movementChoice(area, kind, "Movement to practise near there");
  const within = make("input", { type: "number", min: "1", max: "60", value: "10", id: "near-within" });
  return folded("What is near a door", "The nearest places to practise something: minutes there and back, how hard, how sure, and why it counts.",
    "See what is near", [field("From", home, true), offered, make("div", { class: "wide pick" }, kind, movement), field("Within so many minutes", within)], async () =>
      toldBlocks(await told("near", { home: home.value.trim(), want: kind.value + (movement.value ? `:${movement.value}` : ""), within: within.value, start: moment() }), goTo));
}

/** Which quiet streets the drives of all pupils use most. */
export function mostUsed(): HTMLElement {
  const days = make("input", { type: "number", min: "1", max: "366", value: "30", id: "used-days" });
  return folded("Streets your drives use most", "Over all pupils: a quiet street may be driven 6 times a day and 20 times in 30 days.", "See the streets", [field("In the last days", days)],
    async () => streetsTable(await told("streets", { days: days.value })));
}
