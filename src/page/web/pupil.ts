// A pupil: what the book knows, what could come next and why, what came of a lesson, and what else may be asked.
import { logLesson, pupil, pupils, type PupilRecord, type Words } from "./ask_book";
import { field, make } from "./page_parts";
import { MoveLesson } from "./move_lesson";
import { pupilForm } from "./pupil_form";
import { exposureOf, lessonsOf, skillsOf } from "./pupil_record";
import { erasing, papersOf } from "./pupil_rights";
import { AtHome, LikeIt, NextLesson, NotMet } from "./pupil_tasks";
import { RecordedDrive } from "./recorded";
import type { GoTo } from "./told_blocks";
import { whatWentWrong } from "./working";

/** With the level and what is kept off, where the words don't say them; what is asked for isn't kept off. */
function withRecord(record: PupilRecord, words: Words): Words {
  const said = (name: string, text: string): boolean => words.some((word) => word[0] === name && word[1].startsWith(text));
  return [...words,
    ...(record.level && !said("level", "") ? [["level", String(record.level)]] as Words : []),
    ...record.avoids.filter((kind) => !said("avoid", kind) && !said("want", kind)).map((kind) => ["avoid", kind] as [string, string])];
}

export class PupilSheet {
  readonly element = make("div", { class: "pupil" });
  private readonly choice = make("select", {});
  private readonly choosing = make("div", { class: "fields" }, field("Code", this.choice));
  private readonly adding = make("div", {});
  private readonly told = make("div", {});
  private readonly line = make("input", { type: "text", autocomplete: "off", "aria-describedby": "log-how" });
  private readonly logged = make("select", { id: "log-lesson" });
  private readonly came = make("p", { role: "status" });
  private readonly moving: MoveLesson;
  private readonly logForm = make("form", { onsubmit: (event) => { event.preventDefault(); void this.log(); } },
    make("h3", {}, "What came of the lesson"),
    make("div", { class: "fields" }, field("Of lesson", this.logged), field("In a line", this.line, true)),
    make("p", { id: "log-how", class: "far" }, "All that was planned counts as driven; say what was different: roundabout right 2 pedals; rest 4; minutes 52; said: the big ones still scare me. Or: not driven"),
    make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, "Log it")));
  private readonly recorded = new RecordedDrive(() => this.choice.value, async (said) => {
    await this.show();
    this.came.replaceChildren(said);
  });
  private readonly next: NextLesson;
  private readonly tasks: (NotMet | LikeIt | AtHome)[];
  private record: PupilRecord | null = null;

  /** take: what is done with words for a pupil's lesson. start: the lesson's. */
  constructor(start: () => string, goTo: GoTo, take: (record: PupilRecord, words: Words) => void) {
    const asked = {
      code: () => this.choice.value, start, goTo,
      take: (words: Words) => { if (this.record) take(this.record, withRecord(this.record, words)); },
    };
    this.next = new NextLesson(asked);
    this.moving = new MoveLesson(() => this.choice.value, async (said) => {
      await this.show();
      this.came.replaceChildren(said);
    });
    this.tasks = [new NotMet(asked), new LikeIt(asked), new AtHome(asked)];
    this.choice.addEventListener("change", () => { this.came.replaceChildren(); this.recorded.clear(); void this.show(); });
    this.element.append(make("h2", {}, "A pupil"), this.choosing, this.adding, this.came, this.told);
  }

  /** Reads the book anew; code: who is shown then. */
  async open(code = this.choice.value): Promise<void> {
    try {
      const all = (await pupils()).pupils;
      this.choice.replaceChildren(...all.map((each) => make("option", { value: each.code, selected: each.code.toLowerCase() === code.toLowerCase() }, each.code)));
      this.choosing.hidden = all.length === 0;
      this.addForm(all.length === 0);
      if (all.length === 0) this.told.replaceChildren(make("p", {}, "The book has no pupil yet."));
      else await this.show();
    } catch (failure) {
      this.trouble(failure);
    }
  }

  private addForm(open: boolean): void {
    const form = pupilForm(null, (code) => {
      this.came.replaceChildren(`${code} is in the book.`);
      void this.open(code);
    });
    form.toggleAttribute("open", open);
    this.adding.replaceChildren(form);
  }

  private async show(): Promise<void> {
    this.next.forget();
    for (const task of this.tasks) task.forget();
    try {
      const record = await pupil(this.choice.value);
      this.record = record;
      this.told.replaceChildren(...this.sheetOf(record));
      if (record.home) void this.next.open();
    } catch (failure) {
      this.trouble(failure);
    }
  }

  private sheetOf(record: PupilRecord): HTMLElement[] {
    const home = record.home ? [this.next.element] : [make("p", {}, "The book has no home of this pupil: change what is kept to plan from there.")];
    const planned = record.lessons.filter((lesson) => lesson.state === "planned");
    this.logged.replaceChildren(...(planned.length ? planned : [null]).map((lesson) =>
      make("option", { value: String(lesson?.number ?? "") }, lesson ? `${lesson.number}, ${lesson.day} ${lesson.start}` : "none is planned")));
    this.moving.offer(planned);
    return [
      ...home, this.logForm, this.recorded.element,
      make("h3", {}, "Lessons"), lessonsOf(record), this.moving.element,
      make("h3", {}, "What was observed"), ...skillsOf(record),
      make("h3", {}, "In what was driven"), exposureOf(record),
      ...(record.home ? this.tasks.map((task) => task.element) : []),
      make("details", { class: "note" }, make("summary", {}, "The record in words"), make("pre", { class: "said" }, record.told)),
      pupilForm(record, (code) => { this.came.replaceChildren(`${code} is changed.`); void this.show(); }),
      make("h3", {}, "For the pupil"), papersOf(record),
      erasing(record, (said) => { this.came.replaceChildren(said); void this.open(""); }),
    ];
  }

  private async log(): Promise<void> {
    try {
      const { said } = await logLesson(this.choice.value, this.line.value.trim(), Number(this.logged.value) || null);
      this.line.value = "";
      await this.show();
      this.came.replaceChildren(said.trim());
      this.line.focus();
    } catch (failure) {
      this.came.replaceChildren(make("span", { class: "trouble" }, whatWentWrong(failure)));
    }
  }

  private trouble(failure: unknown): void {
    this.told.replaceChildren(make("p", { class: "trouble", role: "alert" }, whatWentWrong(failure)));
  }
}
