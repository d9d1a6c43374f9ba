// A wish kept in a file of one's own, to be asked for again: the words of the command's own wish files, a line each.
import type { Words } from "./wants";
import { make } from "./page_parts";

/** All but the start: who wants it again wants it another time. */
const textOf = (words: Words): string => words.filter(([name]) => name !== "start").map(([name, text]) => `${name} ${text}`.trimEnd() + "\n").join("");

function wordsIn(text: string): Words {
  return text.split(/\r?\n/).map((line) => line.trim()).filter((line) => line && !line.startsWith("#"))
    .map((line) => { const [, name = "", rest = ""] = /^(\S+)\s*(.*)$/.exec(line) ?? []; return [name, rest]; });
}

/** now: what is wished for; take: does with words what a form does. */
export function wishFile(now: () => Words, take: (words: Words) => void): HTMLElement {
  const keep = (): void => {
    const address = URL.createObjectURL(new Blob([textOf(now())], { type: "text/plain" }));
    make("a", { href: address, download: "lesson.wish" }).click();
    URL.revokeObjectURL(address);
  };
  const file = make("input", { type: "file", id: "wish-file", accept: ".wish,.txt,text/plain" });
  file.addEventListener("change", () => void file.files?.[0]?.text().then((text) => { take(wordsIn(text)); file.value = ""; }));
  return make("details", { class: "note" }, make("summary", {}, "The same wish again, another day"),
    make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: keep }, "Keep this wish in a file")),
    make("div", { class: "fields" }, make("div", { class: "wide" }, make("label", { for: "wish-file" }, "Take a wish from a file"), file)),
    make("p", { class: "far" }, "The file names the door the lesson begins at."));
}
