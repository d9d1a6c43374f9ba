// The page as a person uses it, in headless Chromium: planned, changed, printed, looked at, by keyboard alone; WCAG 2.2
// AA by axe-core; pictures against those approved by looking (tests/page/golden).
//
//   PROGRAM=build/loopwright PARTS=build/page-tests [APPROVE=1] node --test tests/page/test_browser.mjs
//
// APPROVE=1 keeps the pictures as they are now. Times are printed, not asserted: machines differ.
import assert from "node:assert/strict";
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { button, here, launched, likeApproved, program, settled, violations, windowOn } from "./browsing.mjs";

const start = "2026-11-28T15:00";

let folder, server, address, browser, context;
const heard = { strangers: [], complaints: [] };

before(async () => {
  folder = mkdtempSync(join(tmpdir(), "page-"));
  const area = join(folder, "quillham.area");
  const built = spawnSync(program, ["build", join(here, "../../maps/quillham.osm.pbf"), "-o", area, "--region", "GB-ENG"]);
  assert.equal(built.status, 0, String(built.stderr));
  const book = join(folder, "pupils.book");
  for (const words of [["pupil", "add", "WREN", "--home", "4 Lantern Row", "--test", "2027-02-03", "--today", "2026-09-01"],
    ["lesson", "log", "--yes", "WREN", "--start", "2026-11-14T10:00", "turn-off left x4 4; emerge left x4 4; emerge right x4 3; light day"]])
    assert.equal(spawnSync(program, [...words, "--book", book]).status, 0, words.join(" "));
  server = spawn(program, ["page", area, "--book", book, "--notes", join(folder, "notes.geojson")], { env: { ...process.env, TMPDIR: folder } });
  address = await new Promise((done) => server.stdout.once("data", (line) => done(String(line).split(" ")[0])));
  browser = await launched();
  context = await windowOn(browser, address, heard);
});

after(async () => {
  await browser?.close();
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

async function opened(width = 1360, height = 860, scheme = "light") {
  const page = await context.newPage();
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ colorScheme: scheme, reducedMotion: "reduce" });
  await page.goto(new URL(address).origin + "/");
  await page.getByLabel("From and back to").waitFor();
  return page;
}

async function wished(page, kind = "roundabout", count = "3") {
  await page.getByLabel("From and back to").fill("4 Lantern Row");
  await page.getByLabel("Start").fill(start);
  await page.getByLabel("Kind", { exact: true }).selectOption(kind);
  await page.getByLabel("How many").fill(count);
  await button(page, "Add to the practice").click();
}

async function found(page, click = "Look for loops") {
  await button(page, click).click();
  await page.locator("#loops-status", { hasText: /Looked for as long as usual|Not all/ }).waitFor({ timeout: 180000 });
}

/** The first loops are enough: what is looked for beyond them is broken off, as one may. */
async function foundFirst(page) {
  await button(page, "Look for loops").click();
  const status = (text) => page.locator("#loops-status", { hasText: text });
  await status(/better ones|Looked for as long as usual|Not all/).waitFor({ timeout: 180000 });
  // A quick search may be done before it is broken off.
  await button(page, "break off").click({ timeout: 2000 }).catch(() => undefined);
  await status(/Broken off|Looked for as long as usual|Not all/).waitFor({ timeout: 180000 });
}

test("a new user plans a lesson, changes it and prints it", async () => {
  const page = await opened();
  const unhurried = await browser.newContext({ storageState: await context.storageState() }); // the clock of `context` stands still
  const fresh = await unhurried.newPage();
  await fresh.goto(new URL(address).origin + "/");
  await settled(fresh);
  const paint = await fresh.evaluate(() => performance.getEntriesByName("first-contentful-paint")[0]?.startTime);
  await unhurried.close();
  await wished(page);
  const begin = Date.now();
  await button(page, "Look for loops").click();
  await page.locator("ol.rows li").first().waitFor({ timeout: 180000 });
  const firstLoop = Date.now() - begin;
  await page.locator("#loops-status", { hasText: /Looked for as long as usual/ }).waitFor({ timeout: 180000 });
  console.log(`first paint ${Math.round(paint)} ms, first loop on screen ${firstLoop} ms after the click`);
  assert.match(await page.locator("#verdicts").innerText(), /Nothing better exists|At most|at most/);
  assert.equal(await page.locator("#ribbons button").count(), 3);

  await page.getByRole("button", { name: /^Loop B/ }).click();
  await page.getByRole("heading", { name: /^Loop B:/ }).waitFor();
  await page.getByRole("button", { name: /^Loop A/ }).click();
  await page.getByRole("heading", { name: /^Loop A:/ }).waitFor();

  const table = page.getByRole("table", { name: "Side by side" });
  assert.deepEqual(await table.getByRole("columnheader").allInnerTexts(), ["A", "B", "C"]);
  const counts = (await table.getByRole("row", { name: /^roundabout, 3 asked/ }).getByRole("cell").allInnerTexts()).map(Number);
  assert.match(await page.locator("#loop-sheet").innerText(), new RegExp(`roundabout: ${counts[0]} of 3 asked`), "as the sheet counts them");
  assert.ok(counts.every((count) => count >= 3), String(counts));
  const tops = await page.locator("#ribbons line:first-of-type").evaluateAll((lines) => lines.map((line) => Math.round(line.getBoundingClientRect().top)));
  assert.equal(new Set(tops).size, 1, "one scale of time");

  await page.locator("#ribbons button").first().locator("[data-pass]").last().locator("circle").click({ force: true });
  const sketch = page.locator("details.sketch[open] img");
  await sketch.waitFor();
  await page.waitForFunction((picture) => picture.complete && picture.naturalWidth > 200, await sketch.elementHandle());
  const row = page.locator("ol.rows li", { has: sketch });
  assert.match(await sketch.getAttribute("alt"), /^Sketch of row \d+: /);
  const words = (await sketch.getAttribute("alt")).replace(/^Sketch of row \d+: /, "");
  assert.ok(words.startsWith(await row.locator(".say").innerText()), `${words}: says what is said`);
  assert.match(words, /roundabout/, "the pass that was clicked");
  await violations(page, "sketch");

  const forbidden = await page.locator("ol.rows li").nth(5).locator(".far").innerText();
  await page.getByRole("button", { name: /^Forbid the place of row 6/ }).click();
  await page.locator("#loops-status", { hasText: /better ones/ }).waitFor({ timeout: 180000 });
  await button(page, "break off").click();
  await page.locator("#loops-status", { hasText: /Broken off/ }).waitFor();
  await page.locator("details.wish > summary").click();
  assert.equal(await page.getByLabel("What is kept away from").locator("li").count(), 1, forbidden);
  assert.equal(await page.getByRole("link", { name: "Print the pack" }).count(), 1);
  await page.getByRole("button", { name: /^No longer keep away/ }).click();
  await page.getByText("These loops are for the wish as it was").waitFor();
  assert.equal(await page.getByRole("link", { name: "Print the pack" }).count(), 0, "no sheet of another wish is printed");
  await foundFirst(page);

  const pinned = await page.locator("ol.rows li").nth(2).locator(".say").innerText();
  await page.getByRole("button", { name: /^Go by the place of row 3 / }).click();
  await page.locator("#loops-status", { hasText: /better ones/ }).waitFor({ timeout: 180000 });
  await button(page, "break off").click();
  await page.locator("#loops-status", { hasText: /Broken off/ }).waitFor();
  await page.locator("details.wish > summary").click();
  assert.match(await page.getByLabel("What must be gone by").locator("li").innerText(), new RegExp(pinned.slice(0, 12)));
  assert.doesNotMatch(await page.locator("#loop-sheet").innerText(), /Not met/, "the first loop goes by it");

  await page.getByLabel("Code on the sheets").fill("WREN");
  const sheet = await page.getByRole("link", { name: "Print the pack" }).getAttribute("href");
  assert.match(sheet, /form=pdf&pupil=WREN/);
  const pdf = await page.evaluate(async (url) => (await (await fetch(url)).text()).slice(0, 5), sheet);
  assert.equal(pdf, "%PDF-");
  const [read] = await Promise.all([context.waitForEvent("page"), page.getByRole("link", { name: "Read it here" }).click()]);
  await read.getByText("overrule the map").first().waitFor();
  await read.close();
  await page.close();
});

test("a beginner whose door lies among hard roads begins where the page says, by one click", async () => {
  const page = await opened();
  await wished(page, "turn-off");
  await page.getByLabel("From and back to").fill("54.309722,2.666064"); // Clover Close
  await page.getByLabel("Level of the learner").selectOption("2");
  await foundFirst(page);
  await page.getByText(/^Not from this door: begun in .*it is met\./).first().waitFor();
  assert.doesNotMatch(await page.locator("#loop-sheet").innerText(), /--drive/, "no words of the command line");
  await violations(page, "begin elsewhere");
  const asked = page.waitForRequest((request) => request.url().endsWith("/loops") && request.method() === "POST");
  await button(page, "begin there").click();
  const { words } = JSON.parse((await asked).postData());
  const place = (name) => words.find((each) => each[0] === name)?.[1];
  assert.match(place("drive-out"), /^54\.\d+,2\.\d+$/);
  assert.equal(place("drive-back"), place("drive-out"));
  await page.locator("#loop-sheet", { hasText: /you drive to .*: \d+ min/ }).waitFor({ timeout: 180000 });
  assert.doesNotMatch(await page.locator("#loop-sheet").innerText(), /Not met/);
  await page.close();
});

test("parts, who drives where and the rest are said without a command, planned so, and said again from a file", async () => {
  const page = await opened();
  await page.getByLabel("From and back to").fill("4 Lantern Row");
  await page.getByLabel("Start").fill(start);
  await page.getByText("In parts", { exact: true }).click();
  const part = async (kind, movement, minutes, roads) => {
    await page.getByLabel("Kind", { exact: true }).selectOption(kind);
    await page.getByLabel("Movement", { exact: true }).selectOption(movement);
    await page.getByLabel("How many").fill("2");
    await button(page, "Add to the practice").click();
    await page.getByLabel("Minutes of the part").fill(minutes);
    await page.getByLabel("Roads of the part").selectOption(roads);
    await button(page, "Make the practice above a part").click();
  };
  await part("turn-off", "left", "20", "quiet");
  await part("roundabout", "", "25", "any");
  await page.getByText(/^More to say/).click();
  await page.getByLabel("You drive to here first").fill("8 Signal Terrace");
  await page.getByLabel("Kind of which more is said").selectOption("zebra");
  await button(page, "Welcome on the way").click();
  await page.getByLabel("Minutes of a talk near the end").fill("4");
  await violations(page, "more to say");
  const asked = page.waitForRequest((request) => request.url().endsWith("/loops") && request.method() === "POST");
  await foundFirst(page);
  const { words } = JSON.parse((await asked).postData());
  for (const word of [["part", "20 quiet: turn-off:left=2"], ["part", "25: roundabout=2"], ["drive-out", "8 Signal Terrace"], ["welcome", "zebra"], ["talk", "4"]])
    assert.ok(words.some((each) => each[0] === word[0] && each[1] === word[1]), `${word} in ${words.join(" | ")}`);
  const sheet = await page.locator("#loop-sheet").innerText();
  assert.match(sheet, /you drive to Signal Terrace: \d+ min/);
  assert.match(sheet, /part 1: \d+ min, 20 asked, quiet roads\n/);
  assert.match(sheet, /talk, 4 min: pull up in /);
  assert.match(sheet, /turn off, left: \d+ of 2 asked · roundabout: \d+ of 2 asked/);
  assert.match(sheet, /turn off: \d+ left, \d+ right · emerge: \d+ left, \d+ right/);
  await page.getByText("Passes by kind and movement").click();
  const loops = await page.evaluate(async (url) => (await (await fetch(url)).json()).loops, `/${(await page.getByRole("link", { name: "Print the pack" }).getAttribute("href")).match(/jobs\/\d+/)[0]}/loops`);
  const left = loops[0].passes.filter((pass) => pass.kind === "turn-off" && pass.movement === "left").length;
  assert.match(await page.getByRole("row", { name: /^turn off / }).last().innerText(), new RegExp(`^turn off\\s+${left}\\s`));

  await page.locator("details.wish > summary").click();
  await page.getByText("The same wish again, another day").click();
  const [kept] = await Promise.all([page.waitForEvent("download"), button(page, "Keep this wish in a file").click()]);
  const text = readFileSync(await kept.path(), "utf-8");
  assert.doesNotMatch(text, /^start/m);
  await page.close();
  const again = await opened();
  await again.getByText("The same wish again, another day").click();
  await again.getByLabel("Take a wish from a file").setInputFiles({ name: "lesson.wish", mimeType: "text/plain", buffer: Buffer.from(`# Tuesday's\n${text}`) });
  await again.getByLabel("Parts of the lesson, in order").locator("li").nth(1).waitFor();
  await again.getByLabel("Start").fill(start);
  await again.route("**/loops", (route) => route.fulfill({ status: 422, json: { trouble: "not looked for" } }));
  const [second] = await Promise.all([again.waitForRequest((request) => request.url().endsWith("/loops")), button(again, "Look for loops").click()]);
  const sorted = (all) => all.map((each) => each.join(" ")).sort();
  assert.deepEqual(sorted(JSON.parse(second.postData()).words), sorted(words));
  await again.close();
});

test("a drive of one's own, place after place, is told like any other", async () => {
  const page = await opened();
  await page.getByLabel("From and back to").fill("4 Lantern Row");
  await page.getByLabel("Start").fill(start);
  await page.getByText(/^More to say/).click();
  for (const place of ["Mill Street", "8 Signal Terrace"]) {
    await page.getByLabel("Next place of your own drive").fill(place);
    await button(page, "Drive by this place next").click();
  }
  await foundFirst(page);
  assert.match(await page.locator("details.wish > summary").innerText(), /your own drive by Mill Street and 8 Signal Terrace/);
  assert.match(await page.locator("#loop-sheet h2").innerText(), /^Loop A: \d+ min/);
  await page.close();
});

test("a wish that can't be had says why, and a place that isn't there is told", async () => {
  const page = await opened();
  await wished(page, "ford", "2");
  await found(page);
  assert.match(await page.locator("#sheet").innerText(), /Not met/);
  assert.doesNotMatch(await page.locator("#sheet").innerText(), /written;/, "nothing of files");
  assert.match(await page.locator("#verdicts").innerText(), /Not all that is asked for/);
  assert.doesNotMatch(await page.locator("#verdicts").innerText(), /Nothing better|All that is asked for/);
  await page.locator("details.wish > summary").click();
  await page.getByLabel("From and back to").fill("99 Nowhere Street");
  await button(page, "Look for loops").click();
  await page.getByRole("alert").waitFor();
  assert.match(await page.getByRole("alert").innerText(), /^home/, "the form's words, not a file's");
  await page.close();
});

test("the map tells what it holds, and finds places", async () => {
  const page = await opened();
  await button(page, "The map").click();
  await page.getByLabel("Find a place").fill("Mill Street");
  await button(page, "Find").click();
  await page.getByText(/Mill Street.*way\//).first().waitFor();
  await page.getByLabel("Find a place").fill("Lantrn Row");
  await button(page, "Find").click();
  await page.getByText(/Lantern Row/).first().waitFor();
  await page.getByLabel("Find a place").fill("Station Road / Candle Street");
  await button(page, "Find").click();
  await button(page, "Go by this junction in every loop").click();
  assert.match(await page.getByLabel("What must be gone by").innerText(), /^the junction at /);
  await button(page, "The map").click();
  await button(page, "Keep the lesson off this junction").click();
  assert.match(await page.getByLabel("What is kept away from").innerText(), /^the junction at /);
  await page.getByRole("button", { name: /^No longer keep away/ }).click();
  await button(page, "The map").click();
  await page.getByText("What is near a door", { exact: true }).click();
  await page.locator("#near-home").fill("4 Lantern Row");
  await page.getByLabel("Kind to practise near there").selectOption("level-crossing");
  await button(page, "See what is near").click();
  await page.getByRole("row", { name: /level crossing/ }).first().waitFor();
  await page.getByText("What to check on the ground", { exact: true }).click();
  await page.getByLabel("Round which place").fill("Station Road / Candle Street");
  await button(page, "See what to check").click();
  await page.getByText(/Bus lanes: \d+/).waitFor();
  await page.getByText("Streets your drives use most", { exact: true }).click();
  await button(page, "See the streets").click();
  await page.getByText(/no quiet street was driven|lessons/).first().waitFor();
  await violations(page, "questions");
  await page.locator("#map").focus();
  await page.keyboard.press("Enter");
  await page.getByText(/a learner may drive this way/).first().waitFor();
  await page.getByRole("button", { name: /^Keep the lesson off the whole of/ }).click();
  assert.equal(await page.getByLabel("What is kept away from").locator("li").count(), 1);
  await page.close();
});

test("an area drawn on the map is kept off", async () => {
  const page = await opened();
  await wished(page, "zebra", "1");
  await button(page, "Draw an area on the map").click();
  const map = page.locator("#map");
  for (const [x, y] of [[300, 200], [400, 200], [350, 300]]) {
    await map.click({ position: { x, y } });
    await page.waitForTimeout(400); // two clicks in a row are taken for one that is double
  }
  await map.dblclick({ position: { x: 350, y: 300 } });
  await page.getByText("an area of 3 corners").waitFor();
  await page.waitForTimeout(800);
  assert.equal(await button(page, "The map").getAttribute("aria-pressed"), "false", "drawing asked the map nothing");
  await button(page, "Draw an area on the map").focus(); // the same by keyboard, and one corner taken back
  await page.keyboard.press("Enter");
  for (const key of ["Enter", "ArrowRight", "Enter", "ArrowRight", "Enter", "ArrowDown"]) {
    await page.keyboard.press(key);
    await page.waitForTimeout(300); // the map glides
  }
  await button(page, "Done").click();
  await page.getByText("Corners: 3. Click the next one, or say done.").waitFor({ state: "hidden" });
  assert.equal(await page.getByText("an area of 3 corners").count(), 2);
  assert.equal(await page.evaluate(() => document.activeElement?.textContent), "Draw an area on the map", "one goes on where one was");
  await button(page, "Draw an area on the map").click();
  await map.click({ position: { x: 200, y: 200 } });
  await button(page, "Done").click();
  await page.getByText("An area has three corners or more; 1 so far.").waitFor();
  await violations(page, "drawing");
  await page.locator("#map").focus();
  await page.keyboard.press("Escape");
  await button(page, "Give up").waitFor({ state: "hidden" });
  await page.getByRole("button", { name: /^No longer keep away from an area/ }).last().click();
  await page.waitForTimeout(800);
  await map.click({ position: { x: 250, y: 250 } });
  await page.getByText(/ringed on the map|no road/).first().waitFor(); // drawn or given up, a click is a question again
  await button(page, "Lesson").click();
  await foundFirst(page);
  assert.match(await page.locator("#loop-sheet").innerText(), /zebra/);
  await page.close();
});

test("one's own drive is picked on the map, place by place, and driven", async () => {
  const page = await opened();
  await page.getByLabel("From and back to").fill("4 Lantern Row");
  await page.getByLabel("Start").fill(start);
  await page.getByText(/^More to say/).click();
  await page.getByLabel("Next place of your own drive").fill("Mill Street / Farrier Street");
  await button(page, "Drive by this place next").click();
  await button(page, "Pick the places on the map").click();
  const map = page.locator("#map"), list = page.getByLabel("Places of your own drive, in order").getByRole("listitem");
  const { width, height } = await map.boundingBox();
  await map.click({ position: { x: width / 2, y: height / 2 + 20 } });
  await page.keyboard.press("ArrowDown");
  await page.waitForTimeout(400); // the map glides
  await page.keyboard.press("Enter");
  await page.getByText("Places: 2. Click the next one, or say done.").waitFor();
  await violations(page, "picking");
  await button(page, "Done").click();
  assert.equal(await list.count(), 3);
  await page.waitForFunction(() => [...document.querySelectorAll("[aria-label^='Places of your own drive'] li")].slice(1).every((row) => !/\d+\.\d+,/.test(row.textContent)));
  assert.match((await list.allInnerTexts()).join(" | "), /^1 Mill Street \/ Farrier Street\s+leave out \| 2 [^|]+ \| 3 /);
  assert.equal(await button(page, "The map").getAttribute("aria-pressed"), "false", "picking asked the map nothing");
  const asked = page.waitForRequest((request) => request.url().endsWith("/loops") && request.method() === "POST");
  await button(page, "Look for loops").click();
  const through = JSON.parse((await asked).postData()).words.find(([name]) => name === "through")[1].split(";");
  assert.equal(through[0], "Mill Street / Farrier Street");
  assert.ok(through.length === 3 && through.slice(1).every((place) => /^54\.\d+,2\.\d+$/.test(place)), String(through));
  await page.locator("ol.rows li").first().waitFor({ timeout: 180000 });
  const job = (await page.getByRole("link", { name: "Print the pack" }).getAttribute("href")).match(/jobs\/\d+/)[0];
  const drive = await page.evaluate(async (url) => (await fetch(url)).json(), `/${job}/drive?loop=1`);
  const line = drive.features.filter((feature) => feature.geometry.type === "LineString").flatMap((feature) => feature.geometry.coordinates);
  const nearest = ([lat, lon]) => line.map(([x, y]) => Math.hypot((y - lat) * 111195, (x - lon) * 111195 * Math.cos((lat * Math.PI) / 180))).reduce((best, far, k) => far < best.far ? { far, k } : best, { far: Infinity, k: -1 });
  const met = through.slice(1).map((place) => nearest(place.split(",").map(Number)));
  for (const { far } of met) assert.ok(far <= 200, `driven ${Math.round(far)} m off`); // snapped up to 150 m away (DECISIONS), and points of the line lie apart
  await page.locator("details.wish > summary").click();
  await page.getByRole("button", { name: /^No longer drive by/ }).first().click();
  assert.match((await list.allInnerTexts())[0], /^1 /);
  await page.close();
});

test("a note is written where it was seen, and the next lesson knows it", async (t) => {
  t.after(() => rmSync(join(folder, "notes.geojson"), { force: true })); // the others know none
  const page = await opened();
  await button(page, "The map").click();
  await page.getByLabel("Find a place").fill("Ostler Street");
  await button(page, "Find").click();
  await page.getByText(/a learner may drive this way/).first().waitFor();
  await page.getByText("Note what you know better").click();
  await page.getByLabel("It is").selectOption("limit");
  await button(page, "Note this").click();
  await page.getByRole("alert").waitFor();
  assert.match(await page.getByRole("alert").innerText(), /limit/, "a note that lacks something is refused");
  await page.getByLabel("It is").selectOption("never");
  const [tile] = await Promise.all([page.waitForResponse(/\/tiles\//), button(page, "Note this").click()]);
  assert.equal(tile.status(), 200, "the roads are drawn anew");
  await page.locator(".set-in", { hasText: /your note: .*never/ }).waitFor();
  const notes = () => JSON.parse(readFileSync(join(folder, "notes.geojson"), "utf-8")).features;
  assert.equal(notes().length, 1);
  await page.getByText("Your notes", { exact: true }).click();
  await page.getByRole("button", { name: /^Change: never/ }).click();
  await page.getByLabel("Your notes").getByLabel("Hours").fill("Mo-Fr 08:00-09:00");
  await button(page, "Change it").click();
  await page.getByText(/^Note 1 changed: never Mo-Fr 08:00-09:00/).waitFor();
  assert.equal(notes()[0].properties.hours, "Mo-Fr 08:00-09:00");
  await page.getByRole("button", { name: /^Change: never/ }).click();
  await page.getByLabel("Your notes").getByLabel("Remark").fill("school run");
  await button(page, "Change it").click();
  await page.getByRole("button", { name: /^Change: never .*school run/ }).click();
  assert.equal(notes()[0].properties.remark, "school run");
  await page.getByLabel("Your notes").getByLabel("Remark").fill("");
  await page.getByLabel("Your notes").getByLabel("Hours").fill("");
  await button(page, "Change it").click();
  await page.getByText(/^Note 1 changed: never, seen/).waitFor();
  assert.deepEqual(Object.keys(notes()[0].properties), ["says", "seen"], "a remark and hours that are emptied are gone");
  await page.getByRole("button", { name: /^Take out: never/ }).click();
  await violations(page, "notes");
  await page.getByRole("button", { name: /^No, keep: never/ }).click();
  await button(page, "Lesson").click();
  await wished(page, "zebra", "1");
  await foundFirst(page);
  const job = (await page.getByRole("link", { name: "Print the pack" }).getAttribute("href")).match(/jobs\/\d+/)[0];
  const answer = await page.evaluate(async (address) => (await fetch(address)).json(), `/${job}/loops`);
  assert.equal(answer.notes.file, "notes.geojson");
  await button(page, "The map").click();
  await page.getByRole("button", { name: /^Take out: never/ }).click();
  await page.getByRole("button", { name: /^Yes, take out: never/ }).click();
  await page.getByText(/^Note 1 taken out/).waitFor();
  assert.equal(notes().length, 0);
  await page.close();
});

test("a lesson is planned by keyboard alone", async () => {
  const page = await opened();
  const reach = async (name) => {
    for (let step = 0; step < 250; ++step) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => {
        const element = document.activeElement;
        return element?.getAttribute("aria-label") ?? document.querySelector(`label[for="${element?.id}"]`)?.textContent ?? element?.textContent ?? "";
      });
      if (at.startsWith(name)) return;
    }
    assert.fail(`${name} can't be reached with Tab`);
  };
  await reach("From and back to");
  await page.keyboard.type("4 Lantern Row");
  await reach("Minutes");
  await page.keyboard.press("Control+A");
  await page.keyboard.type("40");
  await reach("Add to the practice");
  await page.keyboard.press("Enter");
  await reach("Look for loops");
  await page.keyboard.press("Enter");
  await page.locator("ol.rows li").first().waitFor({ timeout: 180000 });
  const at = () => page.evaluate(() => document.activeElement?.textContent ?? "");
  assert.match(await at(), /^Loop A/, "one goes on reading where the loop begins");
  await page.locator("#loops-status", { hasText: /Looked for as long as usual|Not all/ }).waitFor({ timeout: 180000 });
  await reach("closer");
  await page.keyboard.press("Enter");
  assert.equal(await button(page, "The map").getAttribute("aria-pressed"), "false", "closer is no question to the map");
  await page.close();
});

test("a pupil's record leads to the next lesson, and the lesson back to the record", async () => {
  const page = await opened();
  await page.getByLabel("Start").fill(start);
  await button(page, "Pupil").click();
  await button(page, "Take it into the lesson").waitFor();
  await violations(page, "pupil");
  await button(page, "Take it into the lesson").click();
  assert.equal(await page.getByLabel("From and back to").inputValue(), "4 Lantern Row");
  assert.notEqual(await page.getByLabel("What is practised").locator("li").count(), 0);
  await foundFirst(page);
  assert.match(await page.getByRole("link", { name: "Print the pack" }).getAttribute("href"), /pupil=WREN/);
  await button(page, "Pupil").click();
  await page.getByLabel("In a line").fill("zebra 4");
  await button(page, "Log it").click();
  await page.locator(".trouble", { hasText: /lesson/ }).waitFor(); // none is planned, and that is said
  await page.close();
});

test("a recorded drive is told, and logged when one says so", async () => {
  const page = await opened();
  await wished(page, "roundabout", "2");
  await foundFirst(page);
  const sheet = await page.getByRole("link", { name: "Print the pack" }).getAttribute("href");
  const track = await page.evaluate(async (url) => (await fetch(url)).text(), sheet.replace("form=pdf", "form=gpx"));
  const points = [...track.matchAll(/<trkpt lat="([-\d.]+)" lon="([-\d.]+)"/g)].map(([, lat, lon]) => [Number(lat), Number(lon)]);
  const far = ([lat, lon], [toLat, toLon]) => Math.hypot(toLat - lat, (toLon - lon) * Math.cos((lat * Math.PI) / 180));
  const along = points.map((_, k) => points.slice(0, k).reduce((sum, point, row) => sum + far(point, points[row + 1]), 0));
  const fixes = points.map(([lat, lon], k) => `<trkpt lat="${lat}" lon="${lon}"><time>${new Date(Date.UTC(2026, 10, 20, 10, 0, (50 * 60 * along[k]) / along.at(-1))).toISOString()}</time></trkpt>`);
  const gpx = `<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${fixes.join("")}</trkseg></trk></gpx>`;
  await button(page, "Pupil").click();
  await page.getByText("From a recorded drive").click();
  const file = page.getByLabel("GPX file of the drive");
  await file.setInputFiles({ name: "noise.gpx", mimeType: "", buffer: Buffer.from("15:00 north") });
  await button(page, "Read the drive").click();
  await page.locator(".trouble", { hasText: /^noise\.gpx: / }).waitFor();
  await file.setInputFiles({ name: "wren.gpx", mimeType: "", buffer: Buffer.from(gpx) });
  await button(page, "Read the drive").click();
  await page.getByRole("region", { name: "What was driven" }).filter({ hasText: /^wren\.gpx: \d+ points/ }).filter({ hasText: /roundabout/ }).waitFor();
  await violations(page, "recorded");
  const lessons = page.getByRole("region", { name: "Lessons" });
  assert.doesNotMatch(await lessons.innerText(), /2026-11-20/, "nothing is written yet");
  await page.getByLabel("Said of it besides").fill("rest nine");
  await button(page, "Log it as driven").click();
  await page.locator(".trouble", { hasText: /rest nine/ }).waitFor();
  await page.getByLabel("Said of it besides").fill("rest 4");
  await button(page, "Log it as driven").click();
  await page.getByText(/WREN, lesson \d+ is logged/).waitFor();
  assert.match(await lessons.innerText(), /2026-11-20|20 November/);
  await page.getByLabel("Of lesson").selectOption({ index: 1 }); // the latest that is logged
  await button(page, "Take back what is logged").click();
  await page.getByText(/taken back; it wasn't planned here/).waitFor();
  assert.match(await lessons.innerText(), /not driven/);
  await page.close();
});

test("what is typed while better loops are looked for stays", async () => {
  const page = await opened();
  await wished(page, "roundabout", "2");
  await button(page, "Look for loops").click();
  await page.locator("ol.rows li").first().waitFor({ timeout: 180000 });
  await page.getByLabel("Code on the sheets").fill("WREN");
  await page.locator("#loops-status", { hasText: /Looked for as long as usual/ }).waitFor({ timeout: 180000 });
  assert.match(await page.getByRole("link", { name: "Print the pack" }).getAttribute("href"), /pupil=WREN/);
  await page.getByLabel("Code on the sheets").fill("Jenny Wren of Mill Street");
  assert.equal(await page.getByRole("link", { name: "Print the pack" }).count(), 0, "a name is no code");
  await page.close();
});

test("two tabs work side by side", async () => {
  const [a, b] = [await opened(), await opened()];
  await wished(a, "zebra", "2");
  await wished(b, "level-crossing", "1");
  await Promise.all([foundFirst(a), foundFirst(b)]);
  assert.match(await a.locator("#loop-sheet").innerText(), /zebra: \d+ of 2 asked/);
  assert.match(await b.locator("#loop-sheet").innerText(), /level crossing: \d+ of 1 asked/);
  await a.close();
  await b.close();
});

async function readWithoutMovingSideways(page, where) {
  const [across, inside] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  assert.ok(across <= inside, `${where}: ${across} pixels of sheet in ${inside}`);
}

test("nothing on it breaks WCAG 2.2 AA, it looks as approved, and nothing has to be read sideways", async () => {
  let passed = 0;
  const shapes = [[1360, 860, "light"], [1360, 860, "dark"], [360, 740, "light"]];
  const name = (view, [width, , scheme]) => `${view}-${width}${scheme === "dark" ? "-dark" : ""}`;
  const page = await opened(); // one search for all: a window is made smaller, and a screen goes dark, while it is read
  const taken = async ([width, height, scheme]) => {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: "reduce" });
  };
  for (const shape of shapes) {
    await taken(shape);
    passed += await violations(page, name("begin", shape));
  }
  await taken(shapes[0]);
  await wished(page);
  await found(page);
  for (const shape of shapes) {
    await taken(shape);
    await page.locator("#loop-sheet h2").evaluate((heading) => heading.scrollIntoView({ block: "center" }));
    passed += await violations(page, name("lesson", shape));
    await likeApproved(page, name("lesson", shape));
  }
  for (const width of [680, 320]) { // 1360 at 200 %; WCAG 1.4.10
    await taken([width, 700, "light"]);
    await readWithoutMovingSideways(page, width);
  }
  await button(page, "The map").click();
  for (const shape of shapes) {
    await taken(shape);
    await page.getByLabel("Find a place").fill("Lantern Row");
    await button(page, "Find").click();
    await page.getByText(/a learner may drive this way/).first().waitFor();
    passed += await violations(page, name("map", shape));
    if (shape[2] === "light") await likeApproved(page, name("map", shape));
  }
  console.log(`${passed} rules of axe-core passed, none violated`);
  await page.close();
});

test("nothing came from elsewhere, and nothing was complained of", () => {
  assert.deepEqual(heard.strangers, []);
  assert.deepEqual(heard.complaints.filter((text) => !/status of 4(00|22)/.test(text)), []);
});
