// What came of a lesson, in a line: said once, said anew, or taken back. A lesson that is still to come is logged only when
// that is meant.
import { logLesson, unlogLesson, type LessonRow, type PupilRecord } from "./ask_book";
import { LogClicks } from "./log_clicks";
import { field, make } from "./page_parts";
import { whatWentWrong } from "./working";

const mostLogged = 5; // of those that may be said anew: the latest

export class LogLesson {
  readonly element: HTMLFormElement;
  private readonly line = make("input", { type: "text", autocomplete: "off", "aria-describedby": "log-how" });
  private readonly lesson = make("select", { id: "log-lesson" });
  private readonly takeBack = make("button", { type: "button", class: "also", hidden: true, onclick: () => void this.unlog() }, "Take back what is logged");
  private readonly trouble = make("div", { role: "alert" });
  private readonly clicks = new LogClicks(() => { this.clicked.replaceChildren(this.clicks.words() ? `Marked: ${this.clicks.words()}` : ""); });
  private readonly clicked = make("p", { role: "status" });
  private offered: LessonRow[] = [];

  /** code: of the pupil that is shown. came: told what the book says of it then. */
  constructor(private readonly code: () => string, private readonly came: (said: string) => Promise<void>) {
    this.lesson.addEventListener("change", () => this.showLesson());
    this.element = make("form", { onsubmit: (event) => { event.preventDefault(); void this.log(false); } },
      make("h3", {}, "What came of the lesson"),
      make("div", { class: "fields" }, field("Of lesson", this.lesson, "double"), field("In a line", this.line, true)), this.clicks.element, this.clicked,
      make("p", { id: "log-how", class: "far" }, "All that was planned counts as driven; say what was different: roundabout right 2 pedals; rest 4; minutes 52; said: the big ones still scare me. Or: not driven"),
      make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, "Log it"), this.takeBack), this.trouble);
  }

  /** The next one that is planned first, then the latest that are logged. */
  offer(record: PupilRecord): void {
    const planned = record.lessons.filter((lesson) => lesson.state === "planned");
    const logged = record.lessons.filter((lesson) => lesson.state === "driven").reverse().slice(0, mostLogged);
    this.offered = [...planned, ...logged];
    this.lesson.replaceChildren(
      ...(planned.length ? [] : [make("option", { value: "" }, "none is planned")]),
      ...this.offered.map((lesson) => make("option", { value: String(lesson.number) },
        `${lesson.number}, ${lesson.day} ${lesson.start}${lesson.state === "planned" ? "" : ", logged: say it anew"}`)));
    this.trouble.replaceChildren();
    this.showLesson();
  }

  focus(): void {
    this.line.focus();
  }

  private showLesson(): void {
    this.trouble.replaceChildren();
    const lesson = this.offered.find((each) => String(each.number) === this.lesson.value);
    this.takeBack.hidden = lesson?.state !== "driven";
    this.clicks.offer(lesson?.practice ?? []);
    this.clicked.replaceChildren();
  }

  /** evenIf: it is still to come. */
  private async log(evenIf: boolean): Promise<void> {
    await this.told(() => logLesson(this.code(), [this.clicks.words(), this.line.value.trim()].filter(Boolean).join("; "), Number(this.lesson.value) || null, evenIf), (failure) =>
      /still to come by this computer's clock/.test(failure) ? [make("button", { type: "button", class: "also", onclick: () => void this.log(true) }, "It was driven: log it all the same")] : []);
  }

  private async unlog(): Promise<void> {
    await this.told(() => unlogLesson(this.code(), Number(this.lesson.value)), () => []);
  }

  /** Does it; what fails is told beside what may be done then. */
  private async told(done: () => Promise<{ said: string }>, then: (failure: string) => HTMLElement[]): Promise<void> {
    this.trouble.replaceChildren();
    try {
      const { said } = await done();
      this.line.value = "";
      await this.came(said.trim());
    } catch (failure) {
      const text = whatWentWrong(failure);
      // What is said there of options stands here as a button.
      this.trouble.replaceChildren(make("p", { class: "trouble" }, text.replace(/(nothing is logged);.*$/, "$1.")), ...then(text));
    }
  }
}
