// A planned lesson at another start: by the same drive when that still fits, else by another, and why.
import { beginTask, type LessonRow } from "./ask_book";
import { field, make } from "./page_parts";
import { Working } from "./working";

export class MoveLesson {
  readonly element: HTMLDetailsElement;
  private readonly lesson = make("select", { id: "move-lesson" });
  private readonly start = make("input", { type: "datetime-local", id: "move-start", required: true });
  private readonly working = new Working();
  private planned: LessonRow[] = [];

  /** code: of the pupil that is shown. moved: told what came of it. */
  constructor(private readonly code: () => string, private readonly moved: (said: string) => Promise<void>) {
    this.lesson.addEventListener("change", () => this.takeStart());
    this.element = make("details", { class: "note" }, make("summary", {}, "Move a planned lesson"),
      make("form", { onsubmit: (event) => { event.preventDefault(); void this.move(); } },
        make("div", { class: "fields" }, field("Lesson", this.lesson), field("New start", this.start)),
        make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, "Move it"))), this.working.status);
  }

  offer(planned: LessonRow[]): void {
    this.working.forget();
    this.planned = planned;
    this.element.hidden = planned.length === 0;
    this.lesson.replaceChildren(...planned.map((each) => make("option", { value: String(each.number) }, `${each.number}, ${each.day} ${each.start}`)));
    this.takeStart();
  }

  private takeStart(): void {
    const lesson = this.planned.find((each) => String(each.number) === this.lesson.value);
    if (lesson) this.start.value = `${lesson.day}T${lesson.start}`;
  }

  private async move(): Promise<void> {
    const number = this.lesson.value;
    const done = await this.working.done("Holding the drive to the new start …", () => beginTask(this.code(), "again", [["lesson", number], ["start", this.start.value]]));
    if (!done) return;
    if (/nothing is planned/.test(done.job.said)) return this.working.say("Nothing could be planned then; the lesson stays as it was.");
    const said = done.job.said.split(/^Loop 1:/m)[0]!.replace(/^(\S.* taken for: |planned all the same; ).*(\n {2}.*)*/gm, "").replace(/\s+/g, " ").trim();
    await this.moved(`Lesson ${number} is moved: ${said}.`);
  }
}
