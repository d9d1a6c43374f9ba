// Junction sketches beside the rows of a loop, each drawn when it is first looked at.
import { asked } from "./ask";
import { make } from "./page_parts";

interface Sketched { row: number; text: string; passes: number[] }

export class Sketches {
  private readonly folds = new Map<number, HTMLDetailsElement>();

  private constructor(private readonly job: string, private readonly loop: number, private readonly rows: Sketched[]) {}

  /** Of a loop of a job that is over. */
  static async of(job: string, loop: number): Promise<Sketches> {
    const { rows } = await asked<{ rows: Sketched[] }>(`/jobs/${job}/sketches?loop=${loop}`);
    return new Sketches(job, loop, rows);
  }

  /** The fold with the sketch of a row; none where there is no junction. */
  foldOf(row: number): HTMLElement | null {
    const sketched = this.rows.find((each) => each.row === row);
    if (!sketched) return null;
    const picture = make("img", { class: "symbol", width: "348", height: "472", alt: `Sketch of row ${row}: ${sketched.text}` });
    const fold = make("details", { class: "sketch", id: `sketch-${row}` },
      make("summary", { "aria-label": `Sketch of row ${row}` }, "sketch"), picture);
    fold.addEventListener("toggle", () => {
      if (fold.open && !picture.src) picture.src = `/jobs/${this.job}/sketch?loop=${this.loop}&row=${row}`;
    });
    this.folds.set(row, fold);
    return fold;
  }

  /** Shows the sketch of the place where a pass of the loop begins; false when it has none. */
  showPass(pass: number): boolean {
    const fold = this.folds.get(this.rows.find((each) => each.passes.includes(pass))?.row ?? -1);
    if (!fold) return false;
    fold.open = true;
    fold.scrollIntoView({ block: "center" });
    return true;
  }
}
