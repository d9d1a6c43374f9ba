// A mock test for a pupil: planned and kept in one go, for it says itself what is driven.
import { beginTask, lessonAddress } from "./ask_book";
import { field, make } from "./page_parts";
import { Working } from "./working";

/** What it is and how long, a line for each paragraph; where the command names a command, the page has a sheet. What is set in below
 * "mock test:" is a paragraph of its own each; elsewhere it goes on with the line above. */
export function told(said: string): string[] {
  const lines: string[] = [];
  let below = false;
  for (const line of said.split("\n")) {
    if (/^\S/.test(line)) below = line.startsWith("mock test:");
    const goesOn = below ? /^ {3,}\S/.test(line) : /^ {2,}\S/.test(line);
    if (goesOn && lines.length > 0) lines.push(`${lines.pop()} ${line.trim()}`);
    else if (line.trim()) lines.push(line.trim());
  }
  return lines.filter((line) => /^(mock test:|no route|left out|keeps off|no tests|not kept off|no test centre|Loop 1:|Not met:|lesson of|clash:|note:)/.test(line))
    .map((line) => line.replace(/^Loop 1: (.*?; \d\d:\d\d to \d\d:\d\d)\b.*$/, "$1")
      .replace(/^(no test centre is kept off): .*$/, "$1: they are kept on the map's sheet")
      .replace(/^not kept off, look at it with '[^']*': /, "not kept off, look at it on the map's sheet: "));
}

export class MockTest {
  readonly element: HTMLDetailsElement;
  private readonly start = make("input", { type: "datetime-local", id: "mock-start", required: true });
  private readonly length = make("input", { type: "number", id: "mock-length", min: "40", max: "600", value: "60", required: true });
  private readonly working = new Working();

  /** code: of the pupil that is shown. start: of the lesson that is wished for. planned: told what came of it, and where the new
   * lesson is printed. */
  constructor(private readonly code: () => string, private readonly when: () => string, private readonly planned: (said: string[], print: HTMLElement) => Promise<void>) {
    this.element = make("details", { class: "note" }, make("summary", {}, "A mock test"),
      make("p", { class: "far" }, "A mixed drive from home with stops, a manoeuvre and finding the way. It keeps off the test centres that are kept on the map's sheet, follows no route of a real test, and is no sign of passing one."),
      make("form", { onsubmit: (event) => { event.preventDefault(); void this.plan(); } },
        make("div", { class: "fields" }, field("It begins", this.start), field("Lesson, talk and all, minutes", this.length)),
        make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, "Plan the mock test"))), this.working.status);
  }

  forget(): void {
    this.working.forget();
    this.start.value = this.when();
    this.element.open = false;
  }

  private async plan(): Promise<void> {
    const code = this.code();
    const done = await this.working.done("Looking for a mixed drive …", () => beginTask(code, "mock", [["start", this.start.value], ["length", this.length.value]]));
    if (!done) return;
    const words = done.job.said.replace(/\s+/g, " ");
    const number = new RegExp(`${code}, lesson (\\d+), [^:]*[\\d:]+: planned;`).exec(words)?.[1];
    if (!number) return this.working.say("Nothing could be planned then: see Lesson for what these roads have.");
    await this.planned(told(done.job.said), make("a", { class: "deed", target: "_blank", href: lessonAddress(code, Number(number), "pdf") }, `Print lesson ${number}`));
  }
}
