// Vector tiles as another reader sees them (npm @mapbox/vector-tile): decode_tiles.mjs PARTS FOLDER
// For each file NAME.mvt of the folder a line of JSON: [NAME, {layer: [{values, lines}]}], lines in units of the tile.
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const [parts, folder] = process.argv.slice(2);
const load = createRequire(join(parts, "package.json"));
const { VectorTile } = await import(load.resolve("@mapbox/vector-tile"));
const { default: Pbf } = await import(load.resolve("pbf"));

for (const name of readdirSync(folder).filter((file) => file.endsWith(".mvt")).sort()) {
  const tile = new VectorTile(new Pbf(readFileSync(join(folder, name))));
  const layers = {};
  for (const [title, layer] of Object.entries(tile.layers)) {
    if (layer.version !== 2 || layer.extent !== 4096) throw new Error(`${name}, ${title}: version ${layer.version}, extent ${layer.extent}`);
    layers[title] = Array.from({ length: layer.length }, (_, row) => {
      const feature = layer.feature(row);
      return { values: feature.properties, type: feature.type, lines: feature.loadGeometry().map((line) => line.map((p) => [p.x, p.y])) };
    });
  }
  console.log(JSON.stringify([name.slice(0, -4), layers]));
}
