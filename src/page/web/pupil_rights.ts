// What a pupil may have, and may have deleted: a page on progress, all that is kept, and the end of it.
import { erasePupil, type PupilRecord } from "./ask_book";
import { make } from "./page_parts";
import { whatWentWrong } from "./working";

export function papersOf(record: PupilRecord): HTMLElement {
  const link = (address: string, text: string, more: Record<string, string> = {}): HTMLElement => make("a", { class: "also", href: `/pupils/${record.code}/${address}`, target: "_blank", ...more }, text);
  return make("div", { class: "deeds" },
    ...(record.lessons.length ? [link("progress", "Progress page, to print")] : []),
    link("export?form=json", "All that is kept, for programs", { download: `${record.code}.json` }),
    link("export?form=pdf", "All that is kept, to read"));
}

/** Asked twice, the second time by the code typed. `then` is told what became of it. */
export function erasing(record: PupilRecord, then: (said: string) => void): HTMLElement {
  const typed = make("input", { type: "text", id: "erase-code", autocomplete: "off", required: true, size: "12" });
  const trouble = make("p", { class: "trouble", role: "alert", hidden: true });
  const sure = make("form", { hidden: true, onsubmit: (event) => { event.preventDefault(); void erase(); } },
    make("p", {}, `All of ${record.code} goes: lessons, levels, remarks, and the files that were written, also one PDF of a day with others' sheets in it. Nothing can bring it back.`),
    make("label", { for: "erase-code" }, `Type ${record.code} to erase it`), " ", typed, trouble,
    make("div", { class: "deeds" }, make("button", { type: "submit", class: "deed" }, "Erase it for good"),
      make("button", { type: "button", class: "also", onclick: () => { sure.hidden = true; first.focus(); } }, "Keep it")));
  const first = make("button", { type: "button", class: "small", onclick: () => { sure.hidden = false; typed.focus(); } }, `Erase ${record.code} …`);
  const erase = async (): Promise<void> => {
    try {
      then((await erasePupil(record.code, typed.value.trim())).said);
    } catch (failure) {
      trouble.hidden = false;
      trouble.replaceChildren(whatWentWrong(failure));
    }
  };
  return make("div", {}, first, sure);
}
