// The page: map on the left, loops in the middle, the sheet on the right.
import { area as askArea, Trouble } from "./ask";
import { Day } from "./day";
import { Lesson } from "./lesson";
import { Look } from "./look";
import { RoadMap } from "./map";
import { make, part } from "./page_parts";
import { PupilSheet } from "./pupil";
import { nextHour, usualMinutes, WishForm } from "./wish_form";
import { clock } from "./words";

/** Once the map has asked for its tiles; in a window nobody sees no frame comes. */
const nextFrame = (): Promise<void> => new Promise((done) => {
  requestAnimationFrame(() => setTimeout(done));
  setTimeout(done, 100);
});

type View = "lesson" | "day" | "pupil" | "map";

async function begin(): Promise<void> {
  const area = await askArea();
  part("where").replaceChildren(`${area.file} · works offline`);
  part("credit").replaceChildren(`map © OpenStreetMap contributors (ODbL)${area.map ? `, as of ${area.map.slice(0, 10)}` : ""}`);
  const metBy = new Map(area.kinds.map((kind) => [kind.name, kind.met_by]));
  const map = new RoadMap(part("map"), area);
  map.showTime(nextHour(), usualMinutes); // as the form begins
  await nextFrame(); // the tiles are on their way while the form is made
  const form: WishForm = new WishForm(area, () => wishChanged(), () => void lesson.plan(), map);
  const lesson = new Lesson(form, map, metBy);
  /** What is taken from the map is seen in the lesson's form. */
  const intoLesson = <T extends unknown[]>(deed: (...words: T) => void) => (...words: T): void => {
    deed(...words);
    show("lesson");
    form.element.open = true;
    part("sheet").focus(); // the button that was pressed is gone
  };
  const look = new Look(map, area, () => form.moment(), {
    forbid: intoLesson((value: string, text: string) => form.forbid(value, text)),
    mustTake: intoLesson((value: string, text: string) => form.mustTake(value, text)),
    beginAt: intoLesson((value: string) => form.beginAt(value)),
  });
  const lessonSheet = make("div", {}, form.element, lesson.sheet);
  const day = new Day(area, () => form.moment().slice(0, 10));
  const pupilSheet = new PupilSheet(area.kinds.map((kind) => kind.name), () => form.moment(), (lat, lon) => { map.showSpot(lat, lon); map.goTo(lat, lon); }, (record, words) => {
    form.take(record.home, words);
    lesson.setPupil(record.code);
    show("lesson");
  }, (runs) => map.showRecording(runs));
  const sheets: Record<View, HTMLElement> = { lesson: lessonSheet, day: day.element, pupil: pupilSheet.element, map: look.element };

  /** The map shows the time and the practice that are asked for. */
  function wishChanged(): void {
    map.showTime(form.moment(), form.duration());
    map.showKinds(form.kinds().flatMap((kind) => metBy.get(kind) ?? []));
    const at = `${form.moment()}:00`;
    part("lanes-when").replaceChildren(`${clock(at, 0)} to ${clock(at, 60 * form.duration())}`);
    lesson.checkWish();
  }

  function show(view: View): void {
    document.body.classList.toggle("map-only", view !== "lesson");
    document.body.dataset["view"] = view;
    for (const each of Object.keys(sheets)) part(`to-${each}`).setAttribute("aria-pressed", String(view === each));
    part("sheet").replaceChildren(sheets[view]);
    if (view === "pupil") void pupilSheet.open();
    if (view === "day") void day.open();
    if (view === "lesson" && area.book) void lesson.keeping.open();
    map.resized();
  }
  part("to-pupil").hidden = part("to-day").hidden = !area.book;
  for (const view of Object.keys(sheets) as View[]) part(`to-${view}`).addEventListener("click", () => show(view));
  map.whenAsked((lat, lon) => {
    show("map");
    void look.at(lat, lon);
  });
  wishChanged();
  show("lesson");
}

begin().catch((failure: unknown) => {
  part("sheet").replaceChildren(make("p", { class: "trouble", role: "alert" }, failure instanceof Trouble ? failure.message : String(failure)));
});
