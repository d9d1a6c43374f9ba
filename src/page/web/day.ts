// A day on one ruled sheet: its lessons as the book has them, the drives between, what isn't sure; planned from rows.
import type { Area } from "./ask";
import { beginDay, dayOf, dayPaper, pupils, type DayLesson, type DaySheet } from "./ask_book";
import { DayRows } from "./day_rows";
import { field, make, spokenFirst } from "./page_parts";
import { Working } from "./working";

const few = 5; // more are printed closer, so that the sheet stays one page
const mostTold = 2; // of what isn't sure; the lesson's own sheet has all

const inWords = (day: string): string =>
  new Date(`${day}T12:00:00`).toLocaleDateString("en-GB", { weekday: "long", day: "numeric", month: "long", year: "numeric" });

/** What the command has told so far of lessons that are planned. */
function plannedSoFar(said: string): string {
  const lessons = [...said.matchAll(/^\d\d:\d\d [A-Za-z0-9-]+(?=[,:])/gm)].map((match) => match[0]);
  return lessons.length ? `done: ${lessons.join(", ")}` : "";
}

/** Folded lines as paragraphs, without those on lessons that stand on the sheet. */
function told(said: string): string[] {
  const lines: string[] = [];
  for (const line of said.split("\n")) {
    if (/^ {2,}\S/.test(line) && lines.length) lines.push(`${lines.pop()} ${line.trim()}`);
    else if (line.trim()) lines.push(line.trim());
  }
  return lines.filter((line) => /^clash: |^note: |: not planned|not all of it is met|^nothing is planned|passed over: /.test(line));
}

export class Day {
  readonly element = make("div", { class: "day" });
  private readonly date: HTMLInputElement;
  private readonly rows: DayRows;
  private readonly working = new Working();
  private readonly said = make("div", {});
  private readonly heading = make("h2", { tabindex: "-1" });
  private readonly sheet = make("div", {});
  private readonly planning: HTMLDetailsElement;

  constructor(area: Area, private readonly today: () => string) {
    this.rows = new DayRows(area);
    this.date = make("input", { type: "date", required: true, value: today() });
    this.date.addEventListener("change", () => { if (this.date.value) void this.show(); });
    this.planning = make("details", { class: "wish", open: true }, make("summary", {}, "Plan a day"),
      make("form", { onsubmit: (event) => { event.preventDefault(); void this.plan(); } },
        make("div", { class: "fields" }, field("Day", this.date)), this.rows.element,
        make("div", { class: "deeds" }, make("button", { type: "submit", class: "deed" }, "Plan these lessons"))));
    this.element.append(this.planning, this.working.status, this.said, this.heading, this.sheet);
  }

  /** The day as the book has it now. */
  async open(): Promise<void> {
    this.date.value ||= this.today();
    try {
      const codes = (await pupils()).pupils.filter((each) => each.home).map((each) => each.code);
      this.rows.setPupils(codes);
      if (codes.length === 0) return this.working.say("The book has no pupil with a home yet: add one under Pupil.");
    } catch (failure) {
      return this.working.fail(failure);
    }
    await this.show();
  }

  private async show(): Promise<void> {
    this.said.replaceChildren();
    await this.read("Reading the day …", []);
  }

  private async plan(): Promise<void> {
    const lines = this.rows.lines();
    if (lines.length === 0) return this.working.say("Add a row first.");
    this.said.replaceChildren();
    if (!await this.read("Planning, one lesson after the other …", lines)) return;
    this.planning.open = false;
    this.heading.focus();
  }

  /** Plans the lines, if there are any, and shows the day then. */
  private async read(text: string, lines: string[]): Promise<boolean> {
    const day = this.date.value;
    const done = await this.working.done(text, () => beginDay(day, lines), plannedSoFar);
    if (!done) return this.afterBreakingOff(lines);
    if (lines.length) this.said.replaceChildren(...told(done.job.said).map((line) => make("p", { class: "trouble" }, line)));
    try {
      this.draw(await dayOf(done.id));
    } catch (failure) {
      // A day whose lessons clash isn't planned: the sheet stays as it was.
      if (this.said.childElementCount === 0) this.working.fail(failure);
      return false;
    }
    return true;
  }

  /** What was planned until then is in the book. */
  private async afterBreakingOff(lines: string[]): Promise<boolean> {
    if (lines.length === 0 || !/Broken off/.test(this.working.status.textContent ?? "")) return false;
    await this.show();
    this.working.say("Broken off; what was planned until then is kept.");
    return false;
  }

  private draw(sheet: DaySheet): void {
    const planned = sheet.lessons.some((lesson) => lesson.away_minutes !== null);
    this.heading.replaceChildren(inWords(sheet.day));
    this.sheet.replaceChildren(
      ...(sheet.lessons.length === 0 ? [make("p", {}, "No lesson in the book.")] : []),
      make("ol", { class: sheet.lessons.length > few ? "day-sheet many" : "day-sheet", "aria-label": "Lessons of the day" }, ...sheet.lessons.flatMap((lesson, row) => {
        const gap = sheet.between[row];
        return [this.lesson(lesson), ...(gap ? [this.between(gap)] : [])];
      })),
      make("div", { class: "deeds" },
        ...(planned ? [make("a", { class: "deed", target: "_blank", href: dayPaper(sheet.day) }, "Print all lessons, one PDF")] : []),
        ...(sheet.lessons.length ? [make("button", { type: "button", class: "also", onclick: () => window.print() }, "Print this sheet")] : [])),
      make("p", { class: "caution" }, "Plan when parked. Signs, road markings, signals and police on the day overrule the map. Times are estimates. You decide."));
  }

  private lesson(lesson: DayLesson): HTMLElement {
    const away = lesson.away_minutes;
    const more = lesson.unsure.length - mostTold;
    return make("li", { class: "lesson" },
      make("div", { class: "when" }, make("strong", {}, lesson.start), ` to ${lesson.end}`),
      make("div", { class: "who" }, make("strong", {}, lesson.code), ` lesson ${lesson.number}${lesson.state === "planned" ? "" : `, ${lesson.state}`}`),
      make("div", { class: "what" },
        make("div", {}, lesson.practice.map(spokenFirst).join("; ") || (lesson.state === "planned" ? "no goal by number" : "")),
        away ? make("div", { class: "far" }, `away ${away.likely} min, likely between ${away.low} and ${away.high}; back at about ${lesson.back_by}`) : null),
      make("div", { class: "unsure" },
        lesson.trouble ? make("p", { class: "trouble" }, lesson.trouble) : null,
        ...lesson.unsure.slice(0, mostTold).map((line) => make("div", {}, line)),
        more > 0 ? make("div", { class: "far" }, `and ${more} more to look at, on its sheet`) : null));
  }

  private between(gap: DaySheet["between"][number]): HTMLElement {
    if (gap.clash) return make("li", { class: "between" }, make("span", { class: "trouble" }, `clash: ${gap.clash}`));
    return make("li", { class: "between" }, `${gap.free_minutes} min between, ${gap.drive_minutes === null ? "the drive isn't known" : `${gap.drive_minutes} to drive`}`);
  }
}
