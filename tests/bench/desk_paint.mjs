// `tools/bench desk`: how soon the page at the desk is there, and how soon a loop is on it, in headless Chromium.
//
//   node tests/bench/desk_paint.mjs PROGRAM PARTS AREA [RUNS]
//
// PARTS: where tests/page/fetch_parts put playwright-core. Prints JSON: of each thing the milliseconds of all runs. A run is a
// window that has kept nothing, beside a page of one word from a bare server of Node (its paint is what browser and machine
// need in any case) and the same search by the command (what the first loop needs without a browser).
//   blank    first contentful paint of that one word (W3C Paint Timing)
//   paint    first contentful paint of the page
//   roads    from the navigation until the form is there and roads are drawn on the map
//   command  `loops --quick`, the whole command
//   loop     from the click on "Look for loops" to the frame after the first row of a loop
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const [program, parts, area, runs = "7"] = process.argv.slice(2);
const { chromium } = createRequire(join(resolve(parts), "package.json"))("playwright-core");
const home = "4 Lantern Row", start = "2026-11-28T15:00";

/** In the page, before anything of it: takes down when roads are first on the map, and when a click led to a row. */
function watch() {
  const drawn = () => [...document.querySelectorAll("#map canvas")].some((canvas) => canvas.width > 0 &&
    canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data.some((byte, k) => k % 4 === 3 && byte > 0));
  const look = () => {
    if (!globalThis.roadsAt && document.querySelector("#sheet form") && drawn()) globalThis.roadsAt = performance.now();
    if (globalThis.clickedAt && !globalThis.rowAt && document.querySelector("ol.rows li"))
      requestAnimationFrame(() => { globalThis.rowAt ??= performance.now(); });
    if (!globalThis.rowAt) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  addEventListener("submit", () => { globalThis.clickedAt = performance.now(); }, true);
}

const firstPaint = async (page) => {
  await page.waitForFunction(() => performance.getEntriesByName("first-contentful-paint").length > 0);
  return page.evaluate(() => performance.getEntriesByName("first-contentful-paint")[0].startTime);
};

const folder = mkdtempSync(join(tmpdir(), "desk-paint-"));
const bare = createServer((_, reply) => reply.setHeader("Content-Type", "text/html").end("<!DOCTYPE html><title>blank</title><p>blank"));
await new Promise((done) => bare.listen(0, "127.0.0.1", done));
const server = spawn(program, ["page", area], { env: { ...process.env, TMPDIR: folder } });
const address = await new Promise((done) => server.stdout.once("data", (line) => done(String(line).split(" ")[0])));
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
const key = await browser.newContext();
await (await key.newPage()).goto(address);
const entered = await key.storageState(); // the key is good once, its cookie from then on
await key.close();

async function opened(state, watched) {
  const context = await browser.newContext({ viewport: { width: 1360, height: 860 }, locale: "en-GB", timezoneId: "Europe/London", ...state });
  if (watched) await context.addInitScript(watch);
  return [context, await context.newPage()];
}

const told = { blank: [], paint: [], roads: [], command: [], loop: [] };
for (let run = 0; run < Number(runs); ++run) {
  const [alone, blank] = await opened({}, false);
  await blank.goto(`http://127.0.0.1:${bare.address().port}/`);
  told.blank.push(await firstPaint(blank));
  await alone.close();

  const begun = performance.now();
  const done = spawnSync(program, ["loops", area, "--home", home, "--start", start, "--minutes", "60", "--reserve", "5", "--want", "roundabout=3", "--quick", "-o", join(folder, "loops.json")]);
  if (done.status !== 0) throw new Error(String(done.stderr));
  told.command.push(performance.now() - begun);

  const [context, page] = await opened({ storageState: entered }, true);
  await page.goto(new URL(address).origin + "/");
  told.paint.push(await firstPaint(page));
  told.roads.push(await (await page.waitForFunction(() => globalThis.roadsAt)).jsonValue());
  await page.getByLabel("From and back to").fill(home);
  await page.getByLabel("Start").fill(start);
  await page.getByRole("button", { name: "Add to the practice" }).click();
  await page.waitForLoadState("networkidle");
  await page.getByRole("button", { name: "Look for loops" }).click();
  told.loop.push(await (await page.waitForFunction(() => globalThis.rowAt && globalThis.rowAt - globalThis.clickedAt)).jsonValue());
  await context.close();
}
console.log(JSON.stringify(told));
await browser.close();
server.kill();
bare.close();
rmSync(folder, { recursive: true, force: true });
