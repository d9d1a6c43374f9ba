// The loop that is looked at as a pupil's lesson: kept in the book as it is, then printed from there.
import { keepLoop, lessonAddress, pupils } from "./ask_book";
import { Trouble } from "./ask";
import { field, make } from "./page_parts";
import { toMind, whatWentWrong } from "./working";

interface Picked { job: string; loop: number; minutes: number }

function isSame(one: Picked | null, other: Picked | null): boolean {
  return one?.job === other?.job && one?.loop === other?.loop;
}

export class Keep {
  readonly element = make("form", { class: "keep", hidden: true, onsubmit: (event) => { event.preventDefault(); void this.keep(false); } });
  private readonly code = make("select", { id: "keep-for" });
  private readonly length = make("input", { type: "number", id: "keep-length", min: "20", max: "600", value: "60", required: true });
  private readonly came = make("div", { role: "status" });
  private picked: Picked | null = null;
  private isKeeping = false; // what comes of it is told, whatever loop is shown by then
  private wished = ""; // for whom the lesson is planned
  private hasPupils = false;

  constructor(private readonly changedCode: (code: string) => void) {
    this.code.addEventListener("change", () => { this.wished = this.code.value; this.changedCode(this.code.value); });
    this.element.append(make("h3", {}, "Keep it as a lesson"),
      make("div", { class: "fields" }, field("Of pupil", this.code), field("Lesson, talk and all, minutes", this.length)),
      make("div", { class: "deeds" }, make("button", { type: "submit", class: "also" }, "Keep this loop")), this.came);
  }

  /** Reads who is in the book. */
  async open(): Promise<void> {
    try {
      const all = (await pupils()).pupils;
      this.hasPupils = all.length > 0;
      this.code.replaceChildren(...all.map(({ code }) => make("option", { value: code, selected: code === this.wished }, code)));
    } catch {
      this.hasPupils = false; // the pupil's sheet says why
    }
    this.show();
  }

  setPupil(code: string): void {
    this.wished = code;
    for (const option of this.code.options) option.selected = option.value === code;
  }

  /** The loop that may be kept; null: none, for what is shown isn't what is asked for. */
  offer(picked: Picked | null): void {
    if (!this.isKeeping && !isSame(picked, this.picked)) this.came.replaceChildren();
    if (picked && picked.minutes !== this.picked?.minutes) this.length.value = String(Math.max(60, picked.minutes));
    this.picked = picked;
    this.show();
  }

  private show(): void {
    this.element.hidden = !this.picked || !this.hasPupils;
  }

  private async keep(elsewhere: boolean): Promise<void> {
    const picked = this.picked, code = this.code.value;
    if (!picked || !code || this.isKeeping) return;
    this.came.replaceChildren("Proving it, and keeping it …");
    this.isKeeping = true;
    try {
      const kept = await keepLoop(picked.job, { pupil: code, loop: picked.loop, length: Number(this.length.value), elsewhere });
      const link = (form: string, look: string, text: string): HTMLElement => make("a", { class: look, target: "_blank", href: lessonAddress(kept.code, kept.lesson, form) }, text);
      this.came.replaceChildren(
        make("p", {}, make("strong", {}, `Kept: ${kept.code}, lesson ${kept.lesson}.`)),
        ...toMind(kept.said).map((line) => make("p", { class: "trouble" }, line)),
        make("div", { class: "deeds" }, link("pdf", "deed", `Print lesson ${kept.lesson}`), link("html", "also", "Read it here")));
    } catch (failure) {
      this.refused(failure, code, isSame(picked, this.picked));
    } finally {
      this.isKeeping = false;
    }
  }

  /** offered: that loop is still the one that may be kept. */
  private refused(failure: unknown, code: string, offered: boolean): void {
    const far = offered && failure instanceof Trouble ? /begins (\d+) m from the home of/.exec(failure.message) : null;
    if (!far) return this.came.replaceChildren(make("p", { class: "trouble" }, whatWentWrong(failure)));
    this.came.replaceChildren(
      make("p", { class: "trouble" }, `This loop begins ${far[1]} m from the door of ${code}. Look for loops from there; or, when the lesson is meant to begin here:`),
      make("button", { type: "button", class: "also", onclick: () => void this.keep(true) }, "Keep it, it begins here"));
  }
}
