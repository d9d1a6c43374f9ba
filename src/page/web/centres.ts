// The surroundings of test centres: said once, drawn on the map, and kept off by every mock test at the hours of tests.
import { centres, dropCentre, keepCentre, type Centre } from "./ask_book";
import type { RoadMap } from "./map";
import { field, make } from "./page_parts";
import { today } from "./words";
import { whatWentWrong } from "./working";

export class Centres {
  readonly element: HTMLDetailsElement;
  private readonly list = make("ul", { class: "wants", tabindex: "-1", "aria-label": "Test centres that are kept off" });
  private readonly name = make("input", { type: "text", id: "centre-name", required: true, maxlength: "60", autocomplete: "off" });
  private readonly outline = make("input", { type: "text", id: "centre-outline", required: true, autocomplete: "off", placeholder: "LAT,LON;LAT,LON;LAT,LON", "aria-describedby": "centre-how" });
  private readonly hours = make("input", { type: "text", id: "centre-hours", required: true, autocomplete: "off", value: "Mo-Fr 08:00-16:30" });
  private readonly since = make("input", { type: "date", id: "centre-since", required: true, value: today() });
  private readonly how = make("span", { id: "centre-how", class: "far wide", role: "status" });
  private readonly came = make("p", { role: "status" });

  constructor(private readonly map: RoadMap) {
    this.element = make("details", { class: "note" }, make("summary", {}, "Test centres"),
      make("p", { class: "far" }, "Examiners are at work there: a mock test keeps off these surroundings at the hours of tests of its day. All of it is what you say; the map knows no test centre and no route of a test."),
      this.list,
      make("form", { onsubmit: (event) => { event.preventDefault(); void this.keep(); } },
        make("div", { class: "fields" }, field("What you call it", this.name), field("Hours of tests", this.hours), field("Since", this.since),
          field("Outline of its surroundings, three corners or more", this.outline, true), this.how),
        make("div", { class: "deeds" }, make("button", { type: "button", class: "also", onclick: () => this.draw() }, "Draw it on the map"),
          make("button", { type: "submit", class: "also" }, "Keep this test centre"))), this.came);
  }

  /** Reads the book anew. */
  async open(): Promise<void> {
    try {
      const all = (await centres()).centres;
      this.map.showCentres(all);
      this.list.replaceChildren(...all.map((one) => this.row(one)));
      if (all.length === 0) this.list.replaceChildren(make("li", {}, "None is kept yet: a mock test may go by any road."));
    } catch (failure) {
      this.fail(failure);
    }
  }

  private row(centre: Centre): HTMLElement {
    const [lat, lon] = [0, 1].map((which) => centre.outline.reduce((sum, corner) => sum + corner[which]!, 0) / centre.outline.length) as [number, number];
    return make("li", {},
      make("span", {}, make("strong", {}, centre.name), `, ${centre.hours}, since ${centre.since}`),
      make("button", { type: "button", class: "small", "aria-label": `Show ${centre.name} on the map`, onclick: () => this.map.goTo(lat, lon) }, "show"),
      this.takingOut(centre.name));
  }

  /** Asked twice: it goes with all its days. */
  private takingOut(name: string): HTMLElement {
    const ask = make("button", { type: "button", class: "small", "aria-label": `Take out ${name}`, onclick: () => { ask.replaceWith(sure); sure.querySelector("button")?.focus(); } }, "take out");
    const sure = make("span", { role: "group", "aria-label": `Really take out ${name}?` }, "with all its days? ",
      make("button", { type: "button", class: "small", "aria-label": `Yes, take out ${name} with all its days`, onclick: () => void this.drop(name) }, "yes"), " ",
      make("button", { type: "button", class: "small", "aria-label": `No, keep ${name}`, onclick: () => { sure.replaceWith(ask); ask.focus(); } }, "no"));
    return ask;
  }

  private draw(): void {
    this.how.replaceChildren("Click the corners on the map, and say done there; or write them here.");
    this.map.drawOutline((corners) => {
      this.how.replaceChildren(`Drawn, ${corners.length} corners.`);
      this.outline.value = corners.join(";");
    });
  }

  private async keep(): Promise<void> {
    try {
      const { said } = await keepCentre(this.name.value.trim(), [["outline", this.outline.value.trim()], ["hours", this.hours.value.trim()], ["since", this.since.value]]);
      this.came.replaceChildren(said);
      this.name.value = this.outline.value = "";
      this.how.replaceChildren();
      await this.open();
    } catch (failure) {
      this.fail(failure);
    }
  }

  private async drop(name: string): Promise<void> {
    try {
      this.came.replaceChildren((await dropCentre(name)).said);
      await this.open();
      this.list.focus();
    } catch (failure) {
      this.fail(failure);
    }
  }

  private fail(failure: unknown): void {
    this.came.replaceChildren(make("span", { class: "trouble" }, whatWentWrong(failure)));
  }
}
