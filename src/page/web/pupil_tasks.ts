// What the map and the record together say for a pupil: what comes next, what isn't met yet, another place like it,
// practice at home. Each is a command of the program, run beside the page and broken off at will.
import { beginTask, wishOf, type Task, type Words } from "./ask_book";
import { field, make, spokenFirst } from "./page_parts";
import { toldBlocks, type GoTo } from "./told_blocks";
import { Working } from "./working";

/** Takes words of a wish into the lesson. */
export type Take = (words: Words) => void;

interface Asked { code: () => string; start: () => string; take: Take; goTo: GoTo }

/** Items of a told list: those set in by two blanks, with what is set in further joined to them. */
function items(said: string): string[] {
  const all: string[] = [];
  for (const line of said.split("\n")) {
    if (/^ {2}\S/.test(line)) all.push(line.trim());
    else if (/^ {3,}\S/.test(line) && all.length) all.push(`${all.pop()} ${line.trim()}`);
  }
  return all;
}

/** Without the commands that would do the next thing: here that is a button, or another fold. */
const paragraphs = (said: string): string => said.replace(/^(plan one|plan it|paper\.pdf|\S*\/paper\.pdf).*(\n {2,}\S.*)*/gm, "")
  .replace(/When\s+you\s+have\s+seen\s+it:\s+'loopwright\s+pupil\s+change\s+(\S+)\s+--licence-seen\s+DATE'/, "When you have seen it, write the day under “Change what is kept of $1”.")
  .replace(/--at\s+names\s+another/, "the field above names another").trim();

export class NextLesson {
  readonly element = make("section", { "aria-labelledby": "next-head" });
  private readonly working = new Working();
  private readonly told = make("div", {});

  constructor(private readonly asked: Asked) {
    this.element.append(make("h3", { id: "next-head" }, "What could come next"), this.working.status, this.told);
  }

  /** Holds what the record proposes to the roads from the door. */
  async open(): Promise<void> {
    this.told.replaceChildren();
    const day = this.asked.start().slice(0, 10);
    const done = await this.working.done("Holding the record to the map …", () => beginTask(this.asked.code(), "next", [["today", day]]));
    if (!done) return;
    const all = items(done.job.said).filter((item) => !/^(plan it|a mock test): /.test(item));
    const goal = all.find((item) => item.startsWith("goal: "))?.slice(6);
    const hints = all.filter((item) => item.startsWith("think of: ")).map((item) => item.replace(/ \(--drive-out\)|, such as --want [a-z-]+/, ""));
    const night = all.find((item) => item.startsWith("proposed in the night"));
    const topics = goal ? all.filter((item) => item !== night && !item.startsWith("goal: ") && !item.startsWith("think of: ")) : [];
    const { words } = await wishOf(done.id);
    this.told.replaceChildren(
      make("p", {}, make("strong", {}, goal ? spokenFirst(goal) : "Nothing that these roads can serve is due: drive what the pupil asks for.")),
      make("ul", {}, ...topics.map((topic) => make("li", {}, spokenFirst(topic))), ...hints.map((hint) => make("li", { class: "far" }, hint))),
      ...(night ? [make("p", { class: "far" }, `${night.charAt(0).toUpperCase()}${night.slice(1)}.`)] : []),
      make("div", { class: "deeds" }, make("button", { type: "button", class: "deed", onclick: () => this.asked.take(words) }, goal ? "Take it into the lesson" : "Plan a lesson")));
  }

  forget(): void {
    this.working.forget();
    this.told.replaceChildren();
  }
}

/** A task that is asked for with a button. */
class Questioned {
  readonly element: HTMLElement;
  protected readonly working = new Working();
  protected readonly told = make("div", {});
  protected readonly more = make("div", { class: "fields" }); // what else may be said
  private readonly details: HTMLDetailsElement;

  constructor(protected readonly asked: Asked, private readonly task: Task, heading: string, why: string, deed: string) {
    this.details = make("details", { class: "note" }, make("summary", {}, heading), make("p", { class: "far" }, why), this.more,
      make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => void this.ask() }, deed)), this.working.status, this.told);
    this.element = this.details;
  }

  forget(): void {
    this.working.forget();
    this.told.replaceChildren();
    this.details.open = false;
  }

  protected words(): Words {
    return [["start", this.asked.start()]];
  }

  protected show(said: string, _job: string, _code: number): void {
    this.told.replaceChildren(...toldBlocks(paragraphs(said), this.asked.goTo));
  }

  private async ask(): Promise<void> {
    this.told.replaceChildren();
    const done = await this.working.done("Looking round the door …", () => beginTask(this.asked.code(), this.task, this.words()));
    if (done) this.show(done.job.said, done.id, done.job.code);
  }
}

export class NotMet extends Questioned {
  constructor(asked: Asked) {
    super(asked, "not-met", "Not met yet", "What the record has nothing of, with the nearest place or two within 25 minutes of home, the easiest first.", "See what isn't met");
  }

  protected override show(said: string, job: string, code: number): void {
    super.show(said, job, code);
    const want = /--want ([a-z-]+(?::[a-z-]+)?)/.exec(said.replace(/\s+/g, " "))?.[1];
    if (want) this.told.append(make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => this.asked.take([["want", `${want}=1`]]) }, `Take ${want.replaceAll("-", " ").replace(":", ", ")} into the lesson`)));
  }
}

export class LikeIt extends Questioned {
  private readonly at = make("input", { type: "text", autocomplete: "off" });

  constructor(asked: Asked) {
    super(asked, "like-it", "Another like it", "Where you stepped in last: places of the same form, the easiest first, then back to the first.", "Find places like it");
    this.more.append(field("At this place, when it was another", this.at, true));
  }

  protected override words(): Words {
    const at = this.at.value.trim();
    return [...super.words(), ...(at ? [["at", at]] as Words : [])];
  }

  protected override show(said: string, job: string, code: number): void {
    super.show(said, job, code);
    const drive = /plan it \((\d+) min to drive\): .* --through "([^"]+)"/.exec(said.replace(/\s+/g, " "));
    if (drive) this.told.append(make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => this.asked.take([["through", drive[2]!]]) }, `Take this drive into the lesson, ${drive[1]} min`)));
  }
}

export class AtHome extends Questioned {
  constructor(asked: Asked) {
    super(asked, "at-home", "A sheet for home", "For who sits beside the pupil there: a short drive or two of what the pupil does without help, at the next quiet hour.", "Make the sheet");
  }

  protected override words(): Words {
    return [];
  }

  protected override show(said: string, job: string, code: number): void {
    super.show(said, job, code);
    if (code === 0) this.told.append(make("div", { class: "deeds" }, make("a", { class: "deed", target: "_blank", href: `/jobs/${job}/paper` }, "Print the sheet for home")));
  }
}
