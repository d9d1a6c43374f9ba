// The map: roads of the area's tiles, the loop that is looked at, and what was clicked.
import GeoJSON from "ol/format/GeoJSON";
import { defaults as interactions } from "ol/interaction/defaults";
import Zoom from "ol/control/Zoom";
import MVT from "ol/format/MVT";
import VectorLayer from "ol/layer/Vector";
import VectorTileLayer from "ol/layer/VectorTile";
import OlMap from "ol/Map";
import Feature from "ol/Feature";
import LineString from "ol/geom/LineString";
import Point from "ol/geom/Point";
import Polygon from "ol/geom/Polygon";
import { fromLonLat, toLonLat, transformExtent } from "ol/proj";
import VectorSource from "ol/source/Vector";
import VectorTileSource from "ol/source/VectorTile";
import View from "ol/View";
import type { Area, Drive } from "./ask";
import { centreStyle, driveStyle, forgetColours, noteStyle, placeOfDriveStyle, recordingStyle, spotStyle, tileStyle, type Shown } from "./marks";
import { Picking, type Spot } from "./picking";

export class RoadMap {
  private readonly map: OlMap;
  private readonly tiles: VectorTileLayer;
  private readonly drive = new VectorSource();
  private readonly recording = new VectorSource();
  private readonly noted = new VectorSource();
  private readonly centres = new VectorSource();
  private readonly askedAbout = new VectorSource();
  private readonly shown: Shown = { kinds: new Set(), everything: false };
  private readonly ownDrive = new VectorSource();
  private readonly picking: Picking;
  private readonly whole: number[];
  private isWhole = true; // all of the area is seen, until somebody looks closer
  private at = "";
  private redraw: () => void = () => undefined; // the tiles of the time that is shown, asked for anew
  private asked: (lat: number, lon: number) => void = () => undefined;

  constructor(target: HTMLElement, area: Area) {
    this.tiles = new VectorTileLayer({ declutter: true, style: (feature, resolution) => tileStyle(feature, resolution, this.shown) });
    const [minZoom, maxZoom] = area.zooms;
    this.map = new OlMap({
      target,
      layers: [this.tiles, new VectorLayer({ source: this.centres, style: centreStyle, declutter: true }), new VectorLayer({ source: this.noted, style: noteStyle, declutter: true }), new VectorLayer({ source: this.drive, style: driveStyle, declutter: true }), new VectorLayer({ source: this.recording, style: recordingStyle }), new VectorLayer({ source: this.ownDrive, style: placeOfDriveStyle }), new VectorLayer({ source: this.askedAbout, style: spotStyle })],
      controls: [new Zoom({ zoomInLabel: "closer", zoomOutLabel: "farther", zoomInTipLabel: "", zoomOutTipLabel: "" })],
      interactions: interactions({ altShiftDragRotate: false, pinchRotate: false }),
      view: new View({ minZoom: minZoom, maxZoom: maxZoom + 3, extent: transformExtent(area.extent, "EPSG:4326", "EPSG:3857"), smoothExtentConstraint: false, showFullExtent: true }),
    });
    this.source = (at, minutes) => new VectorTileSource({
      format: new MVT(), minZoom, maxZoom,
      tileUrlFunction: ([zoom, column, row]) => `/tiles/${zoom}/${column}/${row}?at=${encodeURIComponent(at)}&minutes=${minutes}`,
    });
    this.whole = transformExtent(area.extent, "EPSG:4326", "EPSG:3857");
    this.showWhole();
    // The view learns of the size after this is told.
    this.map.on("change:size", () => { if (this.isWhole) queueMicrotask(() => this.showWhole()); });
    for (const deed of ["pointerdown", "wheel", "keydown"]) target.addEventListener(deed, () => { this.isWhole = false; });
    this.map.on("singleclick", (event) => {
      if (!this.picking.busy) this.ask(event.coordinate);
    });
    target.addEventListener("keydown", (event) => {
      const middle = this.map.getView().getCenter();
      if (event.key === "Enter" && event.target === target && middle && !this.picking.busy) this.ask(middle);
    });
    this.picking = new Picking(this.map, target);
    window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => {
      forgetColours();
      for (const layer of this.map.getAllLayers()) layer.changed();
    });
  }

  private showWhole(): void {
    this.map.getView().fit(this.whole, { padding: [20, 40, 20, 40] }); // names at the edges are wider than roads
  }

  private readonly source: (at: string, minutes: number) => VectorTileSource;

  private ask(coordinate: number[]): void {
    const [lon = 0, lat = 0] = toLonLat(coordinate);
    this.asked(lat, lon);
  }

  /** What is done when a place of the map is clicked. */
  whenAsked(then: (lat: number, lon: number) => void): void {
    this.asked = then;
  }

  /** Bus lanes as they are all through these minutes. */
  showTime(at: string, minutes: number): void {
    const now = `${at} ${minutes}`;
    if (now === this.at) return;
    this.at = now;
    this.redraw = () => this.tiles.setSource(this.source(at, minutes));
    this.redraw();
  }

  /** Draws the roads anew: what is noted of them has changed. */
  notesChanged(): void {
    this.redraw();
  }

  /** Which kinds of practice are marked. */
  showKinds(kinds: Iterable<string>): void {
    this.shown.kinds = new Set(kinds);
    this.tiles.changed();
  }

  /** Marks every place to practise at, whichever its kind. */
  showEverything(everything: boolean): void {
    this.shown.everything = everything;
    this.tiles.changed();
  }

  /** Marks the place that is spoken of. */
  showSpot(lat: number, lon: number): void {
    this.askedAbout.clear();
    this.askedAbout.addFeature(new Feature(new Point(fromLonLat([lon, lat]))));
  }

  showDrive(drive: Drive | null): void {
    this.drive.clear();
    if (!drive) return;
    this.isWhole = false;
    this.drive.addFeatures(new GeoJSON({ featureProjection: "EPSG:3857" }).readFeatures(drive));
    this.map.getView().fit(this.drive.getExtent() ?? [], { padding: [50, 50, 80, 50], duration: 0 });
  }

  /** A recorded drive, a line for each run of [lon, lat]; none of them: it is taken away. */
  showRecording(runs: number[][][]): void {
    this.recording.clear();
    if (runs.length === 0) return;
    this.isWhole = false;
    this.recording.addFeatures(runs.map((run) => new Feature(new LineString(run.map((point) => fromLonLat(point))))));
    this.map.getView().fit(this.recording.getExtent() ?? [], { padding: [50, 50, 80, 50], duration: 0 });
  }

  showNotes(notes: Drive): void {
    this.noted.clear();
    this.noted.addFeatures(new GeoJSON({ featureProjection: "EPSG:3857" }).readFeatures(notes));
  }

  /** Surroundings of test centres, corners as [lat, lon]. */
  showCentres(all: { name: string; outline: [number, number][] }[]): void {
    this.centres.clear();
    this.centres.addFeatures(all.map(({ name, outline }) => new Feature({
      name, geometry: new Polygon([[...outline, ...outline.slice(0, 1)].map(([lat, lon]) => fromLonLat([lon, lat]))]),
    })));
  }

  /** Lets an outline be drawn, corner by corner; `then` is told its corners as LAT,LON. */
  drawOutline(then: (corners: string[]) => void): void {
    this.picking.outline(then);
  }

  /** Lets places be picked, one after the other; `then` is told each. */
  pickPlaces(then: (spot: Spot) => void): void {
    this.picking.places(then);
  }

  /** Marks the places of a drive of one's own, numbered in their order; those without a place on the map are null. */
  showPlaces(places: ({ lat: number; lon: number } | null)[]): void {
    this.ownDrive.clear();
    this.ownDrive.addFeatures(places.flatMap((place, row) => place ? [new Feature({ number: row + 1, geometry: new Point(fromLonLat([place.lon, place.lat])) })] : []));
  }

  goTo(lat: number, lon: number): void {
    this.isWhole = false;
    this.map.getView().setCenter(fromLonLat([lon, lat]));
    this.map.getView().setZoom(16);
    this.map.getTargetElement()?.parentElement?.scrollIntoView({ block: "nearest" }); // on a narrow screen it lies far below
  }

  /** "LAT,LON" of what is in the middle. */
  middle(): string {
    const [lon = 0, lat = 0] = toLonLat(this.map.getView().getCenter() ?? [0, 0]);
    return `${lat.toFixed(6)},${lon.toFixed(6)}`;
  }

  resized(): void {
    this.map.updateSize();
  }
}
