// The page: map on the left, loops in the middle, the sheet on the right.
import { area as askArea, Trouble } from "./ask";
import { Lesson } from "./lesson";
import { Look } from "./look";
import { RoadMap } from "./map";
import { make, part } from "./page_parts";
import { WishForm } from "./wish_form";

type View = "lesson" | "map";

async function begin(): Promise<void> {
  const area = await askArea();
  part("where").replaceChildren(`${area.file} · works offline`);
  part("credit").replaceChildren(`map © OpenStreetMap contributors (ODbL)${area.map ? `, as of ${area.map.slice(0, 10)}` : ""}`);
  const metBy = new Map(area.kinds.map((kind) => [kind.name, kind.met_by]));
  const map = new RoadMap(part("map"), area);
  const form: WishForm = new WishForm(area, () => {
    map.showMoment(form.moment());
    map.showKinds(form.kinds().flatMap((kind) => metBy.get(kind) ?? []), false);
  }, () => void lesson.plan(), (then) => map.drawOutline(then));
  const lesson = new Lesson(form, map, metBy);
  const look = new Look(map, area, () => form.moment(), (lat, lon, text) => {
    form.forbid(lat, lon, text);
    show("lesson");
  });
  const lessonSheet = make("div", {}, form.element, lesson.sheet);

  function show(view: View): void {
    document.body.classList.toggle("map-only", view === "map");
    part("to-lesson").setAttribute("aria-pressed", String(view === "lesson"));
    part("to-map").setAttribute("aria-pressed", String(view === "map"));
    part("sheet").replaceChildren(view === "lesson" ? lessonSheet : look.element);
    map.resized();
  }
  part("to-lesson").addEventListener("click", () => show("lesson"));
  part("to-map").addEventListener("click", () => show("map"));
  map.whenAsked((lat, lon) => {
    show("map");
    void look.at(lat, lon);
  });
  map.showMoment(form.moment());
  show("lesson");
}

begin().catch((failure: unknown) => {
  part("sheet").replaceChildren(make("p", { class: "trouble", role: "alert" }, failure instanceof Trouble ? failure.message : String(failure)));
});
