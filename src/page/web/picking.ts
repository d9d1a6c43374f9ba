// What the map is clicked for while something is drawn on it: the corners of an area, or places in their order. A click is a
// point; by keyboard Enter takes the middle of the map. What it is for stands above the map, with the buttons that end it.
import DoubleClickZoom from "ol/interaction/DoubleClickZoom";
import Feature from "ol/Feature";
import LineString from "ol/geom/LineString";
import Point from "ol/geom/Point";
import Polygon from "ol/geom/Polygon";
import VectorLayer from "ol/layer/Vector";
import type OlMap from "ol/Map";
import { toLonLat } from "ol/proj";
import VectorSource from "ol/source/Vector";
import { outlineStyle } from "./marks";
import { make } from "./page_parts";

/** reach_m: how far a finger may have been off at that size of the map. */
export interface Spot { lat: number; lon: number; reach_m: number }

const finger = 12; // pixels, ours
const fewestCorners = 3;
const echo_ms = 600; // a click that ended something comes once more as a question to the map

interface Deed { added(at: number[]): void; done: (() => void) | null; takeBack: (() => void) | null; from: Element | null }

export class Picking {
  private readonly drawn = new VectorSource();
  private readonly bar = make("div", { class: "picking", hidden: true });
  private deed: Deed | null = null;
  private echoes = 0; // of what ended just now
  private before: { pixel: number[]; at: number } = { pixel: [], at: 0 };

  /** target: the element of the map, which has the focus while one picks. */
  constructor(private readonly map: OlMap, private readonly target: HTMLElement) {
    map.addLayer(new VectorLayer({ source: this.drawn, style: outlineStyle }));
    target.parentElement?.append(this.bar);
    map.on("click", (event) => {
      const [x = 0, y = 0] = event.pixel, { pixel, at } = this.before;
      const again = Math.hypot(x - (pixel[0] ?? -99), y - (pixel[1] ?? -99)) < finger;
      this.before = { pixel: event.pixel, at: event.originalEvent.timeStamp };
      if (again && this.deed?.done) this.deed.done(); // the last corner twice
      else if (!again || this.before.at - at > echo_ms) this.deed?.added(event.coordinate);
    });
    target.addEventListener("keydown", (event) => {
      const middle = map.getView().getCenter();
      if (!this.deed || event.target !== target) return;
      if (event.key === "Enter" && middle) this.deed.added(middle);
      if (event.key === "Escape") this.end();
    });
  }

  /** A click is for what is picked, and no question to the map. */
  get busy(): boolean {
    return this.deed !== null || this.echoes > 0;
  }

  /** Corners of an area, three or more; `then` is told them as LAT,LON. */
  outline(then: (corners: string[]) => void): void {
    const corners: number[][] = [];
    const draw = (): void => {
      this.drawn.clear();
      this.drawn.addFeatures(corners.map((corner) => new Feature(new Point(corner))));
      if (corners.length > 1) this.drawn.addFeature(new Feature(corners.length < fewestCorners ? new LineString(corners) : new Polygon([[...corners, corners[0]!]])));
      this.say(corners.length === 0 ? "Click the first corner of the area." : corners.length < fewestCorners ? `Corners: ${corners.length}. Click the next one.` : `Corners: ${corners.length}. Click the next one, or say done.`);
    };
    this.begin({
      added: (at) => { corners.push(at); draw(); },
      takeBack: () => { corners.pop(); draw(); },
      done: () => {
        if (corners.length < fewestCorners) return this.say(`An area has three corners or more; ${corners.length} so far.`);
        this.end();
        then(corners.map((corner) => this.degrees(corner)));
      },
      from: document.activeElement,
    });
    draw();
  }

  /** Places, one after the other, until one says that it is done; `then` is told each. */
  places(then: (spot: Spot) => void): void {
    let count = 0;
    this.begin({
      added: (at) => {
        const [lon = 0, lat = 0] = toLonLat(at);
        this.say(`Places: ${++count}. Click the next one, or say done.`);
        then({ lat, lon, reach_m: finger * (this.map.getView().getResolution() ?? 1) * Math.cos((lat * Math.PI) / 180) });
      },
      takeBack: null, done: null, from: document.activeElement,
    });
    this.say("Click the places of the drive in their order.");
  }

  /** Nothing is picked any more; what was begun is forgotten. */
  end(): void {
    const hadFocus = this.target.parentElement?.contains(document.activeElement);
    const from = this.deed?.from;
    this.deed = null;
    ++this.echoes;
    setTimeout(() => --this.echoes, echo_ms);
    this.drawn.clear();
    this.bar.hidden = true;
    this.zoomByDoubleClick(true);
    if (hadFocus && from instanceof HTMLElement) from.focus();
  }

  private begin(deed: Deed): void {
    this.end();
    this.deed = deed;
    this.before = { pixel: [], at: 0 };
    this.zoomByDoubleClick(false);
    const button = (text: string, onclick: () => void): HTMLElement => make("button", { type: "button", class: "also", onclick }, text);
    this.bar.replaceChildren(make("span", { role: "status" }), make("span", { class: "far" }, "Or arrows move the map, and Enter takes its middle."),
      make("span", { class: "pick" }, button("Done", () => (deed.done ?? (() => this.end()))()), deed.takeBack ? button("Take the last back", deed.takeBack) : null, deed.done ? button("Give up", () => this.end()) : null));
    this.bar.hidden = false;
    this.target.focus({ preventScroll: true });
    this.target.parentElement?.scrollIntoView({ block: "nearest" }); // on a narrow screen it lies far below what was clicked
  }

  private say(text: string): void {
    this.bar.firstElementChild?.replaceChildren(text);
  }

  private degrees(at: number[]): string {
    const [lon = 0, lat = 0] = toLonLat(at);
    return `${lat.toFixed(6)},${lon.toFixed(6)}`;
  }

  private zoomByDoubleClick(active: boolean): void {
    for (const each of this.map.getInteractions().getArray()) if (each instanceof DoubleClickZoom) each.setActive(active);
  }
}
