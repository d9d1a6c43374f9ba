// A pupil's record on the sheet: lessons, skills by date, in what was driven.
import { lessonAddress, type Exposure, type LessonRow, type PupilRecord, type Skill } from "./ask_book";
import { make } from "./page_parts";

function table(name: string, heads: string[], rows: (Node | string)[][]): HTMLElement {
  return make("div", { class: "table", tabindex: "0", role: "region", "aria-label": name },
    make("table", {}, make("thead", {}, make("tr", {}, ...heads.map((head) => make("th", { scope: "col" }, head)))),
      make("tbody", {}, ...rows.map((cells) => make("tr", {}, ...cells.map((cell, column) => column === 0 ? make("th", { scope: "row" }, cell) : make("td", {}, cell)))))));
}

function lessonRow(code: string, lesson: LessonRow): (Node | string)[] {
  const paper = lesson.state === "planned"
    ? make("a", { target: "_blank", href: lessonAddress(code, lesson.number, "pdf"), "aria-label": `Print lesson ${lesson.number}` }, "print") : "";
  const start = make("span", {}, make("span", { class: "whole" }, lesson.day), ` ${lesson.start}`);
  return [String(lesson.number), start, `${lesson.length} min`, lesson.mock ? `${lesson.state}, mock test` : lesson.state, String(lesson.passes), paper];
}

/** The level now, and those before it, the latest first. */
function skillRow(skill: Skill): string[] {
  const last = skill.seen.at(-1);
  if (!last) return [skill.name, "not yet", ""];
  const before = skill.seen.slice(0, -1).reverse().slice(0, 4).map((seen) => `${seen.level} on ${seen.day}`);
  return [skill.name, `${last.level} ${last.word}, ${last.day}`, before.join(", ")];
}

function exposureRow(exposure: Exposure): string[] {
  const inWhat = [exposure.light, exposure.weather, exposure.traffic && `traffic ${exposure.traffic}`].filter(Boolean).join(", ");
  return [exposure.road, inWhat || "not said", `${exposure.minutes} min`];
}

export function lessonsOf(record: PupilRecord): HTMLElement {
  if (record.lessons.length === 0) return make("p", { class: "far" }, "None yet: keep a loop as a lesson, or plan the day.");
  return table("Lessons", ["No", "Start", "Length", "State", "Passes", "Paper"], record.lessons.map((lesson) => lessonRow(record.code, lesson)));
}

/** Skills that were seen by group, the others by name. */
export function skillsOf(record: PupilRecord): HTMLElement[] {
  const seen = record.skills.filter((skill) => skill.seen.length > 0);
  const notYet = record.skills.filter((skill) => skill.seen.length === 0).map((skill) => skill.name);
  return [
    ...(seen.length ? [table("What was observed", ["Skill", "Now", "Before"], seen.map(skillRow))] : []),
    ...(notYet.length ? [make("p", { class: "far" }, `not yet: ${notYet.join(", ")}`)] : []),
  ];
}

export function exposureOf(record: PupilRecord): HTMLElement {
  if (record.exposure.length === 0) return make("p", { class: "far" }, "No lesson tells yet on which roads it was.");
  return table("In what was driven", ["Road", "In", "Minutes"], record.exposure.map(exposureRow));
}
