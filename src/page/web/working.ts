// Something that takes a while: what it is, how far it is, and how to break it off.
import { breakOff, Trouble, whenOver, type Job } from "./ask";
import { make } from "./page_parts";

/** In the form's words: a list of a day is rows here. */
export const whatWentWrong = (failure: unknown): string =>
  (failure instanceof Trouble ? failure.message.replace(/^list, line (\d+): /, "row $1: ") : String(failure));

/** The folded paragraphs in which a command told what to mind: clashes, and what isn't as the book would have it. */
export function toMind(said: string): string[] {
  const all: string[] = [];
  let minding = false;
  for (const line of said.split("\n")) {
    const goesOn = /^ {2,}\S/.test(line);
    if (!goesOn) minding = /^(clash|note): /.test(line);
    if (minding) all.push(goesOn ? `${all.pop()} ${line.trim()}` : line);
  }
  return all;
}

export class Working {
  readonly status = make("p", { role: "status", class: "far" });
  private now = 0; // which is the last one
  private running: string | null = null;

  /** The job when it is over; none when it was broken off, or another took its place. Trouble is told, and none. */
  async done(text: string, begin: () => Promise<{ job: string }>, told: (said: string) => string = () => ""): Promise<{ id: string; job: Job } | null> {
    const now = ++this.now;
    this.stopRunning();
    this.tell(text, now);
    try {
      const id = (await begin()).job;
      if (now !== this.now) return void breakOff(id).catch(() => undefined), null;
      this.running = id;
      const job = await whenOver(id, (said) => now === this.now && told(said) && this.tell(`${text} ${told(said)}`, now));
      if (now !== this.now || !job) return null;
      this.status.replaceChildren();
      return { id, job };
    } catch (failure) {
      if (now === this.now) this.fail(failure);
      return null;
    } finally {
      if (now === this.now) this.running = null;
    }
  }

  fail(failure: unknown): void {
    this.status.replaceChildren(make("span", { class: "trouble" }, whatWentWrong(failure)));
  }

  say(text: string): void {
    this.status.replaceChildren(text);
  }

  /** Nothing is waited for any more. */
  forget(): void {
    ++this.now;
    this.stopRunning();
    this.status.replaceChildren();
  }

  private stopRunning(): void {
    if (this.running) void breakOff(this.running).catch(() => undefined);
    this.running = null;
  }

  private tell(text: string, now: number): void {
    this.status.replaceChildren(text, " ", make("button", {
      type: "button", class: "small", onclick: () => {
        if (now !== this.now) return;
        this.forget();
        this.say("Broken off.");
      },
    }, "break off"));
  }
}
