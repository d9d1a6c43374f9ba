// A pupil: what the book knows, what could come next and why, what came of a lesson, and what else may be asked.
import { pupil, pupils, type PupilRecord, type Words } from "./ask_book";
import { field, make } from "./page_parts";
import { LogLesson } from "./log_lesson";
import { MockTest } from "./mock_test";
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
  private readonly came = make("p", { role: "status", tabindex: "-1" });
  private readonly moving: MoveLesson;
  private readonly mock: MockTest;
  private readonly logging = new LogLesson(() => this.choice.value, async (said) => {
    await this.show();
    this.came.replaceChildren(said);
    this.logging.focus();
  });
  private readonly recorded = new RecordedDrive(() => this.choice.value, (runs) => this.drawRuns(runs), async (said) => {
    await this.show();
    this.came.replaceChildren(said);
  });
  private readonly next: NextLesson;
  private readonly tasks: (NotMet | LikeIt | AtHome)[];
  private record: PupilRecord | null = null;

  /** kinds: what may be kept off a pupil. take: what is done with words for a pupil's lesson. start: the lesson's. drawRuns: shows a recorded
   * drive on the map. */
  constructor(private readonly kinds: string[], start: () => string, goTo: GoTo, take: (record: PupilRecord, words: Words) => void, private readonly drawRuns: (runs: number[][][]) => void) {
    const asked = {
      code: () => this.choice.value, start, goTo,
      take: (words: Words) => { if (this.record) take(this.record, withRecord(this.record, words)); },
    };
    this.next = new NextLesson(asked);
    this.moving = new MoveLesson(() => this.choice.value, async (said) => {
      await this.show();
      this.came.replaceChildren(said);
    });
    this.mock = new MockTest(() => this.choice.value, start, async (said, print) => {
      await this.show();
      this.came.replaceChildren(...said.map((line) => make("span", { class: "line" }, line)), print);
      this.came.focus(); // what is told stands far above what was asked
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
    const form = pupilForm(null, this.kinds, (code) => {
      this.came.replaceChildren(`${code} is in the book.`);
      void this.open(code);
    });
    form.toggleAttribute("open", open);
    this.adding.replaceChildren(form);
  }

  /** Until the record is there, nothing can be done on the sheet: it may still be another pupil's. */
  private async show(): Promise<void> {
    const code = this.choice.value;
    this.told.inert = true;
    this.next.forget();
    this.mock.forget();
    for (const task of this.tasks) task.forget();
    try {
      const record = await pupil(code);
      if (code !== this.choice.value) return; // whose sheet comes next
      this.record = record;
      this.told.replaceChildren(...this.sheetOf(record));
      if (record.home) void this.next.open();
    } catch (failure) {
      if (code === this.choice.value) this.trouble(failure);
    } finally {
      if (code === this.choice.value) this.told.inert = false;
    }
  }

  private sheetOf(record: PupilRecord): HTMLElement[] {
    const home = record.home ? [this.next.element] : [make("p", {}, "The book has no home of this pupil: change what is kept to plan from there.")];
    const planned = record.lessons.filter((lesson) => lesson.state === "planned");
    this.logging.offer(record);
    this.moving.offer(planned);
    return [
      ...home, this.logging.element, this.recorded.element,
      make("h3", {}, "Lessons"), lessonsOf(record), this.moving.element,
      make("h3", {}, "What was observed"), ...skillsOf(record),
      make("h3", {}, "In what was driven"), exposureOf(record),
      ...(record.home ? [this.mock, ...this.tasks].map((task) => task.element) : []),
      make("details", { class: "note" }, make("summary", {}, "The record in words"), make("pre", { class: "said" }, record.told)),
      pupilForm(record, this.kinds, (code) => { this.came.replaceChildren(`${code} is changed.`); void this.show(); }),
      make("h3", { class: "screen" }, "For the pupil"), papersOf(record),
      erasing(record, (said) => { this.came.replaceChildren(said); void this.open(""); }),
    ];
  }

  private trouble(failure: unknown): void {
    this.told.replaceChildren(make("p", { class: "trouble", role: "alert" }, whatWentWrong(failure)));
  }
}
