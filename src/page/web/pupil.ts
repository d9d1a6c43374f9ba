// A pupil: what the book knows, what could come next and why, and what came of a lesson.
import { logLesson, pupil, pupils, Trouble, type Record } from "./ask";
import { field, make } from "./page_parts";
import { RecordedDrive } from "./recorded";

export class PupilSheet {
  readonly element = make("div", {});
  private readonly choice = make("select", {});
  private readonly told = make("div", {});
  private readonly line = make("input", { type: "text", autocomplete: "off", "aria-describedby": "log-how" });
  private readonly came = make("p", { role: "status" });
  private readonly logForm = make("form", { onsubmit: (event) => { event.preventDefault(); void this.log(); } },
    make("h3", {}, "What came of the lesson"),
    make("div", { class: "fields" }, field("In a line", this.line, true)),
    make("p", { id: "log-how", class: "far" }, "All that was planned counts as driven; say what was different: roundabout right 2 pedals; rest 4; minutes 52; said: the big ones still scare me"),
    make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, "Log it")), this.came);

  private readonly recorded = new RecordedDrive(() => this.choice.value, async (said) => {
    await this.show();
    this.came.replaceChildren(said);
  });

  /** take: what is done with a pupil's proposal, "into the lesson". */
  constructor(private readonly day: () => string, private readonly take: (record: Record) => void) {
    this.choice.addEventListener("change", () => { this.came.replaceChildren(); this.recorded.clear(); void this.show(); });
    this.element.append(make("h2", {}, "A pupil"), make("div", { class: "fields" }, field("Code", this.choice)), this.told);
  }

  /** Reads the book anew. */
  async open(): Promise<void> {
    try {
      const known = this.choice.value;
      const all = (await pupils()).pupils;
      this.choice.replaceChildren(...all.map(({ code }) => make("option", { value: code, selected: code === known }, code)));
      if (all.length === 0) this.told.replaceChildren(make("p", {}, "The book has no pupil yet: 'loopwright pupil add CODE' adds one."));
      else await this.show();
    } catch (failure) {
      this.trouble(failure);
    }
  }

  private async show(): Promise<void> {
    try {
      const record = await pupil(this.choice.value, this.day());
      this.told.replaceChildren(...this.next(record), this.logForm, this.recorded.element,
        make("h3", {}, "Lessons"), make("pre", { class: "columns", tabindex: "0", role: "region", "aria-label": "Lessons" }, record.lessons),
        make("h3", {}, "Record"), make("pre", { class: "said" }, record.record));
    } catch (failure) {
      this.trouble(failure);
    }
  }

  private next(record: Record): HTMLElement[] {
    const next = record.next;
    if (!next) return [];
    return [
      make("h3", {}, "What could come next"),
      make("p", {}, make("strong", {}, next.goal || "Nothing that a map can serve is due: drive what the pupil asks for.")),
      make("ul", {}, ...next.topics.map((topic) => make("li", {}, `${topic.what}, ${topic.passes}: ${topic.why}`)),
        ...next.hints.map((hint) => make("li", { class: "far" }, `think of: ${hint}`))),
      make("p", { class: "far" }, "By the record alone: what the roads from the door can't give, the search says."),
      make("div", { class: "deeds" }, make("button", { type: "button", class: "deed", onclick: () => this.take(record) }, "Take it into the lesson")),
    ];
  }

  private async log(): Promise<void> {
    try {
      const { said } = await logLesson(this.choice.value, this.line.value.trim());
      this.line.value = "";
      await this.show();
      this.came.replaceChildren(said.trim());
    } catch (failure) {
      this.came.replaceChildren(make("span", { class: "trouble" }, failure instanceof Trouble ? failure.message : String(failure)));
    }
  }

  private trouble(failure: unknown): void {
    this.told.replaceChildren(make("p", { class: "trouble", role: "alert" }, failure instanceof Trouble ? failure.message : String(failure)));
  }
}
