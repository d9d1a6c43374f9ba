// How roads, practice and the drive are drawn: ink on paper, the way as a thick line that ends in a bar.
import type { FeatureLike } from "ol/Feature";
import { LineString, Point } from "ol/geom";
import { Circle, Fill, RegularShape, Stroke, Style, Text } from "ol/style";
import { spoken } from "./page_parts";

export interface Shown { kinds: Set<string>; everything: boolean }

const colours = new Map<string, string>(); // as read: a map is thousands of lines, and to ask the style sheet takes long

/** The colours of the sheet, as the style sheet has them now. */
function colour(name: string): string {
  let text = colours.get(name);
  if (text === undefined) colours.set(name, text = getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim());
  return text;
}

/** To be called when the style sheet has others: a screen goes dark. */
export function forgetColours(): void {
  colours.clear();
}

const font = (size: number, bold = false): string => `${bold ? "700 " : ""}${size}px Sheet, sans-serif`;

/** Pixels across, by importance: 0 motorway … 7 service. */
function widthOf(rank: number, resolution: number, metres: number): number {
  const least = [4, 3.5, 3, 2.6, 2, 1.6, 1.2, 0.8][rank] ?? 1;
  const closer = resolution < 10 ? 1.5 : 1;
  return Math.max(least * closer, metres / resolution);
}

/** What your notes change of a road, in words; empty: nothing. */
function notedOf(feature: FeatureLike): string {
  const shut = feature.get("shut"), limit = feature.get("noted_limit");
  return [shut ? `noted: shut${shut === "one way" ? " one way" : ""}` : "", limit ? `noted: limit ${limit}` : "", feature.get("noted_humps") ? "noted: humps" : ""]
    .filter(Boolean).join(", ");
}

function roadStyle(feature: FeatureLike, resolution: number): Style[] {
  const rank = Number(feature.get("rank"));
  const metres = Number(feature.get("width_dm") ?? [140, 90, 80, 75, 70, 60, 55, 40][rank]) / 10;
  const across = widthOf(rank, resolution, metres);
  const stroke = new Stroke({
    color: colour(rank <= 3 ? "main" : "pale"), width: across, lineCap: "round",
    ...(feature.get("drive") ? {} : { lineDash: [2, 5] }),
  });
  const styles = [new Style({ stroke, zIndex: 10 - rank })];
  const noted = notedOf(feature);
  if (noted)
    styles.push(new Style({
      zIndex: 21, stroke: new Stroke({ color: colour("deed"), ...(feature.get("shut") ? { width: 5, lineDash: [2, 7], lineCap: "butt" } : { width: 2 }) }),
      ...(resolution < 3 ? { text: new Text({ text: noted, placement: "line", font: font(11, true), offsetY: 12, fill: new Fill({ color: colour("deed") }), stroke: new Stroke({ color: colour("paper"), width: 3 }) }) } : {}),
    }));
  const name = String(feature.get("name") ?? feature.get("ref") ?? "");
  if (name && resolution < 3)
    styles.push(new Style({
      zIndex: 20,
      // Beside its road, where a drive leaves it readable, unless it fits into the road.
      text: new Text({ text: name, placement: "line", font: font(12), offsetY: across < 16 ? -across / 2 - 8 : 0, fill: new Fill({ color: colour("grey") }), stroke: new Stroke({ color: colour("paper"), width: 3 }) }),
    }));
  return styles;
}

/** Kept off: dashes. May be used: one thin line. To be looked for: dots. */
function busLaneStyle(feature: FeatureLike, resolution: number): Style[] {
  const ink = colour("ink");
  const verdict = feature.get("verdict");
  if (verdict === "usable") return [new Style({ zIndex: 12, stroke: new Stroke({ color: ink, width: 1 }) })];
  const dash = verdict === "in force" ? [8, 4] : [1, 5];
  return [new Style({
    zIndex: 12, stroke: new Stroke({ color: ink, width: verdict === "in force" ? 3 : 2, lineDash: dash }),
    ...(resolution < 2 ? { text: new Text({ text: `bus lane: ${verdict}`, placement: "line", font: font(11), offsetY: -9, fill: new Fill({ color: ink }), stroke: new Stroke({ color: colour("paper"), width: 3 }) }) } : {}),
  })];
}

function practiceStyle(feature: FeatureLike, resolution: number, shown: Shown): Style[] {
  const kind = String(feature.get("kind"));
  if (!shown.kinds.has(kind)) return [];
  return [new Style({
    zIndex: 11, stroke: new Stroke({ color: colour(feature.get("sure") === "noted" ? "deed" : "grey"), width: Math.max(2, 4 / resolution), lineDash: [1, 4] }),
    ...(resolution < 3 ? { text: new Text({ text: spoken(kind), placement: "line", font: font(11), offsetY: 10, fill: new Fill({ color: colour("grey") }), stroke: new Stroke({ color: colour("paper"), width: 3 }) }) } : {}),
  })];
}

function placeStyle(feature: FeatureLike, resolution: number, shown: Shown): Style[] {
  const kind = String(feature.get("kind"));
  if (!shown.everything && !shown.kinds.has(kind)) return [];
  const ink = colour(feature.get("noted") ? "deed" : "ink");
  const hardest = feature.get("hardest");
  return [new Style({
    zIndex: 15,
    image: new Circle({ radius: 4, fill: new Fill({ color: colour("paper") }), stroke: new Stroke({ color: ink, width: 2 }) }),
    ...(resolution < 5 ? { text: new Text({ text: spoken(kind) + (hardest ? ` ${hardest}` : ""), font: font(11), offsetY: 13, fill: new Fill({ color: ink }), stroke: new Stroke({ color: colour("paper"), width: 3 }) }) } : {}),
  })];
}

function nameStyle(feature: FeatureLike): Style[] {
  const large = ["city", "town"].includes(String(feature.get("what")));
  return [new Style({
    zIndex: 30,
    text: new Text({ text: String(feature.get("name")), font: font(large ? 17 : 13, true), fill: new Fill({ color: colour("ink") }), stroke: new Stroke({ color: colour("paper"), width: 4 }) }),
  })];
}

export function tileStyle(feature: FeatureLike, resolution: number, shown: Shown): Style[] {
  switch (feature.get("layer")) {
    case "roads": return roadStyle(feature, resolution);
    case "bus_lanes": return busLaneStyle(feature, resolution);
    case "practice": return practiceStyle(feature, resolution, shown);
    case "places": return placeStyle(feature, resolution, shown);
    case "names": return nameStyle(feature);
    case "pull_ups": return [new Style({ zIndex: 9, stroke: new Stroke({ color: colour("deed"), width: 1.5, lineDash: [6, 3] }) })];
    default: return [];
  }
}

/** A recorded drive: a thin line of dots beside the roads, since it is good to some metres. */
export function recordingStyle(): Style[] {
  return [new Style({ zIndex: 45, stroke: new Stroke({ color: colour("deed"), width: 3, lineDash: [1, 6], lineCap: "round" }) })];
}

/** A ring round the place that is spoken of. */
export function spotStyle(): Style[] {
  return [new Style({ zIndex: 50, image: new Circle({ radius: 12, stroke: new Stroke({ color: colour("deed"), width: 3 }) }) })];
}

/** A place of a drive of one's own: a ring with its number, so that it isn't taken for a row of a loop. */
export function placeOfDriveStyle(feature: FeatureLike): Style[] {
  const ink = colour("deed");
  return [new Style({
    zIndex: 46, image: new Circle({ radius: 11, fill: new Fill({ color: colour("paper") }), stroke: new Stroke({ color: ink, width: 3 }) }),
    text: new Text({ text: String(feature.get("number")), font: font(12, true), fill: new Fill({ color: ink }) }),
  })];
}

/** An area that is being drawn: its corners, and the line round it. */
export function outlineStyle(feature: FeatureLike): Style[] {
  const ink = colour("deed");
  if (feature.getGeometry() instanceof Point)
    return [new Style({ zIndex: 48, image: new Circle({ radius: 6, fill: new Fill({ color: colour("paper") }), stroke: new Stroke({ color: ink, width: 3 }) }) })];
  return [new Style({ zIndex: 47, stroke: new Stroke({ color: ink, width: 3, lineDash: [8, 6] }) })];
}

/** The surroundings of a test centre: a broken line with its name, for roads in it are as they are. */
export function centreStyle(feature: FeatureLike): Style[] {
  const ink = colour("deed");
  return [new Style({
    zIndex: 34, stroke: new Stroke({ color: ink, width: 2, lineDash: [10, 6] }),
    text: new Text({ text: `test centre ${String(feature.get("name"))}`, font: font(11, true), overflow: true, fill: new Fill({ color: ink }), stroke: new Stroke({ color: colour("paper"), width: 3 }) }),
  })];
}

/** What the instructor noted: a square, so that it isn't taken for the map's. */
export function noteStyle(feature: FeatureLike, resolution: number): Style[] {
  const ink = colour("deed");
  const says = String(feature.get("says")) + (feature.get("kind") ? `: ${spoken(String(feature.get("kind")))}` : "");
  return [new Style({
    zIndex: 35, stroke: new Stroke({ color: ink, width: 3 }),
    image: new RegularShape({ points: 4, radius: 7, angle: Math.PI / 4, fill: new Fill({ color: colour("paper") }), stroke: new Stroke({ color: ink, width: 2.5 }) }),
    ...(resolution < 5 ? { text: new Text({ text: `noted ${says}`, font: font(11, true), offsetY: 14, fill: new Fill({ color: ink }), stroke: new Stroke({ color: colour("paper"), width: 3 }) }) } : {}),
  })];
}

/** A bar across the end of a line, as the sheets have it. */
function barAtEnd(line: LineString): Style {
  const points = line.getCoordinates();
  const [x = 0, y = 0] = points.at(-1) ?? [];
  const [fromX = 0, fromY = 0] = points.at(-2) ?? [];
  return new Style({
    zIndex: 42, geometry: new Point([x, y]),
    image: new RegularShape({ points: 2, radius: 9, angle: 0, rotation: Math.PI / 2 - Math.atan2(y - fromY, x - fromX), rotateWithView: true, stroke: new Stroke({ color: colour("ink"), width: 5 }) }),
  });
}

export function driveStyle(feature: FeatureLike, resolution: number): Style[] {
  const geometry = feature.getGeometry();
  const ink = colour("ink");
  const what = feature.get("what");
  if (what === "drive" && geometry instanceof LineString)
    return [new Style({ zIndex: 40, stroke: new Stroke({ color: ink, width: 4, lineJoin: "round" }) }), barAtEnd(geometry)];
  if (what === "row" && resolution < 30)
    return [new Style({
      zIndex: 41,
      image: new Circle({ radius: 9, fill: new Fill({ color: ink }), stroke: new Stroke({ color: colour("paper"), width: 1.5 }) }),
      text: new Text({ text: String(feature.get("number")), font: font(11, true), fill: new Fill({ color: colour("paper") }) }),
    })];
  return [];
}
