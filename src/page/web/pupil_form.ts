// What the book keeps of a pupil, to be added or changed: a code and what planning needs, no more.
import { addPupil, changePupil, type PupilRecord, type Words } from "./ask_book";
import { field, make, spoken } from "./page_parts";
import { placeInput } from "./place_input";
import { whatWentWrong } from "./working";

const days = [["licence-seen", "Licence seen on"], ["eyesight-read", "Number plate read on"], ["theory-passed", "Theory passed on"], ["test", "Driving test on"]] as const;

/** record: of the pupil that is changed; null: one is added. kinds: what may be kept off. `then` is told the code. */
export function pupilForm(record: PupilRecord | null, kinds: string[], then: (code: string) => void): HTMLElement {
  const name = record ? "change" : "add";
  const input = (id: string, attributes: Record<string, string | boolean>): HTMLInputElement => make("input", { id: `${name}-${id}`, autocomplete: "off", ...attributes });
  const code = input("code", { type: "text", required: true, maxlength: "12", pattern: "[A-Za-z0-9][A-Za-z0-9\\-]*", "aria-describedby": "add-code-why" });
  const [home, offered] = placeInput({ id: `${name}-home`, value: record?.home ?? "", placeholder: "house and street" });
  const dated = days.map(([word, label]) => ({ word, label, was: (word === "test" ? record?.test : record?.ticks[word]) ?? "", control: input(word, { type: "date" }) }));
  for (const each of dated) each.control.value = each.was;
  const sides = make("select", { id: `${name}-sides` }, make("option", { value: "left-right" }, "left and right"),
    make("option", { value: "my-your", selected: record?.my_your === true }, "my side and your side"));
  const keptOff = new Set(record?.avoids ?? []);
  const avoids = make("select", { id: `${name}-avoids`, multiple: true, size: "6", "aria-describedby": `${name}-avoids-why` },
    ...[...kinds].sort().map((kind) => make("option", { value: kind, selected: keptOff.has(kind) }, spoken(kind))));
  const chosen = (): string[] => [...avoids.selectedOptions].map((each) => each.value);
  const trouble = make("p", { class: "trouble", role: "alert", hidden: true });
  const words = (): Words => [
    ...(home.value.trim() && home.value.trim() !== record?.home ? [["home", home.value.trim()]] as Words : []),
    ...dated.filter((each) => each.control.value !== each.was).map((each) => [each.word, each.control.value || "none"] as [string, string]),
    ...(chosen().length !== keptOff.size || chosen().some((kind) => !keptOff.has(kind))
      ? [["avoid", "none"], ...chosen().map((kind) => ["avoid", kind])] as Words : []),
    ...(record || sides.value !== "left-right" ? [["sides", sides.value]] as Words : []),
  ];
  const save = async (): Promise<void> => {
    const who = record?.code ?? code.value.trim();
    try {
      await (record ? changePupil(who, words()) : addPupil(who, words()));
      then(who);
    } catch (failure) {
      trouble.hidden = false;
      trouble.replaceChildren(whatWentWrong(failure));
    }
  };
  return make("details", { class: "note" }, make("summary", {}, record ? `Change what is kept of ${record.code}` : "Add a pupil"),
    make("form", { onsubmit: (event) => { event.preventDefault(); void save(); } },
      make("div", { class: "fields" },
        ...(record ? [] : [field("A code", code), make("span", { id: "add-code-why", class: "far" }, "a code, never a name: up to 12 letters and digits")]),
        field("Home", home, true), offered, ...dated.map((each) => field(each.label, each.control)), field("Sides are called", sides),
        field("Kept off until ready for it", avoids, true), make("span", { id: `${name}-avoids-why`, class: "far wide" }, "several with Ctrl; what is asked for by name is driven all the same, and told")),
      trouble, make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, record ? "Change it" : "Add this pupil"))));
}
