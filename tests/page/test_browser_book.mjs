// The parts of the page that go with the pupils' book, as a person uses them in headless Chromium: a day planned and
// printed, a loop kept as a lesson, a pupil added, looked after, exported and erased; by keyboard, at every width, on paper.
//
//   PROGRAM=build/loopwright PARTS=build/page-tests [APPROVE=1] node --test tests/page/test_browser_book.mjs
//
// What was kept is read from the book by the program itself. Pages of paper are counted in Chromium's own PDF (ISO 32000:
// a page is an object of /Type /Page).
import assert from "node:assert/strict";
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { button, here, launched, likeApproved, program, violations, windowOn } from "./browsing.mjs";

const shapes = [[1360, 860, "light"], [1360, 860, "dark"], [360, 740, "light"], [1920, 1080, "light"]];
let folder, book, server, address, browser, context;
const heard = { strangers: [], complaints: [] };

const run = (...words) => {
  const done = spawnSync(program, [...words, "--book", book], { encoding: "utf-8", maxBuffer: 1 << 28 });
  assert.equal(done.status, 0, done.stderr);
  return done.stdout;
};
const kept = (code) => JSON.parse(run("pupil", "export", code));

before(async () => {
  folder = mkdtempSync(join(tmpdir(), "page-book-"));
  book = join(folder, "pupils.book");
  const area = join(folder, "quillham.area");
  const built = spawnSync(program, ["build", join(here, "../../maps/quillham.osm.pbf"), "-o", area, "--region", "GB-ENG"]);
  assert.equal(built.status, 0, String(built.stderr));
  run("pupil", "add", "WREN", "--home", "4 Lantern Row", "--test", "2027-02-03", "--today", "2026-09-01");
  run("lesson", "plan", "WREN", area, "--start", "2026-11-20T10:00", "--length", "45", "--want", "roundabout:right=2");
  run("lesson", "log", "--yes", "WREN", "roundabout right 2 pedals: late for a lorry; rest 4; minutes 30; light dusk");
  run("pupil", "add", "WRYNECK", "--home", "4 Lantern Row", "--test", "2027-02-03", "--today", "2026-09-01"); // nothing of hers hangs on a search
  for (const [day, line] of [["14", "turn-off left x4 3; emerge left x4 4; emerge right x4 3; light day"], ["21", "turn-off left x3 4; roundabout right x2 2 pedals: late for a lorry; light dusk"]])
    run("lesson", "log", "--yes", "WRYNECK", "--start", `2026-11-${day}T10:00`, line);
  run("pupil", "add", "FINCH", "--home", "19 Cooper's Reach", "--today", "2026-09-01");
  server = spawn(program, ["page", area, "--book", book], { env: { ...process.env, TMPDIR: folder } });
  address = await new Promise((done) => server.stdout.once("data", (line) => done(String(line).split(" ")[0])));
  browser = await launched();
  context = await windowOn(browser, address, heard);
});

after(async () => {
  await browser?.close();
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

async function opened(view) {
  const page = await context.newPage();
  page.setDefaultTimeout(120000); // a busy machine is no fault
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto(new URL(address).origin + "/");
  await page.getByLabel("From and back to").waitFor();
  if (view) await button(page, view).click();
  return page;
}

async function pagesOfPaper(page) {
  const paper = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  return [...paper.matchAll(/\/Type \/Page\b/g)].length;
}

async function readWithoutMovingSideways(page, width) {
  await page.setViewportSize({ width, height: 860 });
  const [across, inside] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  assert.ok(across <= inside, `${width}: ${across} pixels of sheet in ${inside}`);
}

/** Each shape of window is looked at: nothing is violated, nothing has to be read sideways; two of them are pictures. */
async function looked(page, view) {
  for (const [width, height, scheme] of shapes) {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: "reduce" });
    const name = `${view}-${width}${scheme === "dark" ? "-dark" : ""}`;
    await violations(page, name);
    await readWithoutMovingSideways(page, width);
    await page.setViewportSize({ width, height });
    await page.locator(`#sheet h2`).last().evaluate((heading) => heading.scrollIntoView({ block: "start" }));
    if (scheme === "light" && width !== 1920) await likeApproved(page, name);
  }
  for (const width of [680, 320]) await readWithoutMovingSideways(page, width); // 1360 at 200 %; WCAG 1.4.10
  await page.setViewportSize({ width: 1360, height: 860 });
  await page.emulateMedia({ colorScheme: "light", reducedMotion: "reduce" });
}

test("a day is written by keyboard, planned, told on a sheet of one page, and printed", async () => {
  const page = await opened();
  const reach = async (name) => {
    for (let step = 0; step < 40; ++step) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.textContent ?? "");
      if (at.startsWith(name)) return;
    }
    assert.fail(`${name} can't be reached with Tab`);
  };
  await reach("The day");
  await page.keyboard.press("Enter");
  await page.getByLabel("Practise", { exact: true }).waitFor();
  await page.getByLabel("Minutes").and(page.locator(".day-rows input")).fill("30");
  await reach("Practise");
  await page.keyboard.type("roundabout, a");
  await reach("Add a row");
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement?.getAttribute("aria-label")), "Start", "one goes on writing in the new row");
  await page.locator(".day-rows input[type=time]").nth(1).fill("09:15");
  await button(page, "Plan these lessons").click();
  await page.getByText(/clash: FINCH 09:00 to 09:30, WREN 09:15: they overlap by 15 min/).waitFor();
  assert.equal(kept("FINCH").lesson.length, 0, "of a day that clashes nothing is planned");
  await page.locator(".day-rows input[type=time]").nth(1).fill("10:00");
  await button(page, "Plan these lessons").focus();
  await page.keyboard.press("Enter");
  await page.getByRole("link", { name: "Print all lessons, one PDF" }).waitFor();
  assert.match(await page.evaluate(() => document.activeElement?.textContent ?? ""), /Saturday.* 28 November 2026/, "one reads on at the day");
  const sheet = page.getByLabel("Lessons of the day");
  assert.match(await sheet.innerText(), /09:00 to 09:30\s+FINCH lesson 1\s+roundabout: \d+, as many as fit\s+away \d+ min, likely between/);
  assert.match(await sheet.innerText(), /30 min between, \d+ to drive/);
  assert.match(await sheet.innerText(), /10:00 to 10:30\s+WREN lesson 2\s+roundabout right: \d, asked \d/, "nothing said is what comes next");
  assert.match(await sheet.innerText(), /and \d+ more to look at, on its sheet/);
  assert.deepEqual([kept("FINCH").lesson.length, kept("WREN").lesson.length], [1, 2]);
  assert.equal(await pagesOfPaper(page), 1, "the sheet is one page");
  await page.emulateMedia({ media: "print" });
  assert.ok(await page.getByText("Plan when parked.").isVisible());
  assert.ok(!await button(page, "Plan these lessons").isVisible());
  await page.emulateMedia({ media: "screen" });
  const all = await page.getByRole("link", { name: "Print all lessons, one PDF" }).getAttribute("href");
  assert.equal(await page.evaluate(async (url) => (await (await fetch(url)).text()).slice(0, 5), all), "%PDF-");
  await page.close();
});

/** What a search finds changes with the search: the pictures are of a day that stays. */
const day = (lessons) => ({ day: "2026-11-28", lessons, between: lessons.slice(1).map((lesson, k) => k === 1
  ? { free_minutes: -10, drive_minutes: null, clash: `WREN 10:15 to 11:15, ${lesson.code} 11:05: they overlap by 10 min` }
  : { free_minutes: 15, drive_minutes: 6, clash: "" }) });
const lesson = (code, start, end, more) => ({ code, number: 3, state: "planned", start, end, minutes: 60, practice: ["roundabout right: 4, asked 4", "zebra: 9, as many as fit"],
  away_minutes: { low: 38, likely: 41, high: 45 }, back_by: end, trouble: "", unsure: ["A: Station Road, bus lane on the left: hours not known; read the days and hours on the plate; no times means at all times",
    "B: Market Place: shut Friday and Saturday, ten at night till two in the morning; read the days and hours on the sign at each end", "C: limit 30 in Hazel Crescent, inferred: read the sign"], ...more });
const four = [lesson("FINCH", "09:00", "10:00", { state: "driven", away_minutes: null, practice: [], unsure: [], back_by: "" }), lesson("WREN", "10:15", "11:15", {}),
  lesson("HERON", "11:05", "12:05", { unsure: ["A: limit 30 in Fuller Street, inferred: read the sign"] }),
  lesson("ROBIN", "12:20", "13:20", { trouble: "Don't drive this card as printed: Mill Street may be shut then.", unsure: [] })];

async function shown(page, sheet) {
  await page.route(/\/jobs\/\d+\/day$/, (route) => route.fulfill({ json: sheet }));
  await page.getByLabel("Day", { exact: true }).fill("2026-11-29");
  await page.getByLabel("Day", { exact: true }).fill("2026-11-28");
  await page.locator(".day-sheet .lesson").nth(sheet.lessons.length - 1).waitFor();
}

test("a day looks as approved at any width, and a full one still prints as one page", async () => {
  const page = await opened("The day");
  await shown(page, day(four));
  await looked(page, "day");
  await page.unroute(/\/jobs\/\d+\/day$/);
  await shown(page, day(Array.from({ length: 9 }, (_, k) => four[k % 4 || 1])));
  assert.equal(await pagesOfPaper(page), 1);
  await page.close();
});

test("the loop that was picked is kept as a pupil's lesson, and printed from the book", async () => {
  const page = await opened();
  await page.getByLabel("From and back to").fill("4 Lantern Row");
  await page.getByLabel("Start").fill("2026-12-01T15:00");
  await page.getByLabel("Minutes").and(page.locator("#field-minutes")).fill("35");
  await page.getByLabel("Kind", { exact: true }).selectOption("zebra");
  await page.getByLabel("How many").fill("1");
  await button(page, "Add to the practice").click();
  await button(page, "Look for loops").click();
  const status = (text) => page.locator("#loops-status", { hasText: text });
  await status(/better ones|Looked for/).waitFor();
  // The first will do, unless all are found already; test_book_routes.py keeps the last of several.
  await button(page, "break off").click({ timeout: 2000 }).catch(() => undefined);
  await status(/Broken off|Looked for/).waitFor();
  await page.waitForLoadState("networkidle");  // an answer that came just before is drawn yet
  const job = (await page.getByRole("link", { name: "Print the pack" }).getAttribute("href")).match(/jobs\/\d+/)[0];
  const drives = await page.evaluate(async (url) => (await (await fetch(url)).json()).loops, `/${job}/loops`);
  await page.getByLabel("Of pupil").selectOption("FINCH");
  await button(page, "Keep this loop").click();
  await page.getByText(/This loop begins \d+ m from the door of FINCH/).waitFor();
  await page.getByLabel("Of pupil").selectOption("WREN");
  await button(page, "Keep this loop").click();
  await page.getByText("Kept: WREN, lesson 3.").waitFor();
  await violations(page, "kept");
  const lesson = kept("WREN").lesson.find((each) => each.number === 3);
  const [drive] = JSON.parse(lesson.loop_file).loops;
  assert.deepEqual(drive.stretches.map((row) => [row.way, row.from, row.to]), drives[0].stretches.map((row) => [row.way, row.from, row.to]));
  assert.match(lesson.start, /^2026-12-01T15:00/);
  const card = await page.getByRole("link", { name: "Print lesson 3" }).getAttribute("href");
  assert.equal(await page.evaluate(async (url) => (await (await fetch(url)).text()).slice(0, 5), card), "%PDF-");
  await page.close();
});

test("a pupil's sheet tells the record, what comes next, what isn't met, a place like it, and what may be done at home", async () => {
  const page = await opened("Pupil");
  await page.getByRole("combobox", { name: "Code" }).selectOption("WREN");
  await button(page, "Take it into the lesson").waitFor();
  assert.match(await page.getByLabel("What could come next").innerText(), /roundabout right: from helped \(2\) to prompted \(3\)/);
  assert.match(await page.getByRole("region", { name: "What was observed" }).innerText(), /roundabouts\s+\d \w+, 2026-11-20/);
  assert.match(await page.getByRole("region", { name: "In what was driven" }).innerText(), /town\s+dusk/);
  let answer;
  await page.route("**/pupils/WRYNECK", async (route) => {
    await new Promise((done) => { answer = done; });
    await route.continue();
  });
  await page.getByRole("combobox", { name: "Code" }).selectOption("WRYNECK");
  while (!answer) await page.waitForTimeout(10);
  assert.ok(await page.locator("button", { hasText: "Log it" }).evaluate((one) => one.closest("[inert]") !== null), "nothing is logged while another pupil's record is on its way");
  answer();
  await page.getByText(/^WRYNECK, in the book since/).waitFor({ state: "attached" });
  assert.ok(await page.locator("button", { hasText: "Log it" }).evaluate((one) => one.closest("[inert]") === null));
  await page.unroute("**/pupils/WRYNECK");
  await button(page, "Take it into the lesson").waitFor();
  await looked(page, "pupil");
  await page.getByRole("combobox", { name: "Code" }).selectOption("WREN");
  await page.getByText(/^WREN, in the book since/).waitFor({ state: "attached" });
  await page.getByText("Move a planned lesson").click();
  await page.getByLabel("New start").fill("2026-11-28T10:05");
  await button(page, "Move it").click();
  await page.getByText(/^Lesson 2 is moved: the (same|kept) drive/).waitFor();
  assert.match(await page.getByRole("region", { name: "Lessons" }).innerText(), /2026-11-28 10:05/);
  await page.getByLabel("Of lesson").selectOption("2");
  await page.getByText("Mark it by clicks, as on the after-sheet").click();
  assert.match((await page.locator("fieldset.clicked legend").allTextContents()).join(" | "), /^[a-z ]*roundabout/, "what was asked for stands first");
  await page.locator("fieldset.clicked").first().getByLabel("3", { exact: true }).check();
  await page.getByLabel(/: you stepped in by$/).first().selectOption("pedals");
  await page.getByRole("group", { name: "All else that was planned" }).getByLabel("4", { exact: true }).check();
  await page.getByLabel("Weather").selectOption("dull-wet");
  await page.getByText(/^Marked: [a-z-]*roundabout \w+ 3 pedals; rest 4; weather dull-wet$/).waitFor();
  await violations(page, "clicks");
  const mostRows = await page.locator("fieldset.clicked").evaluateAll((rows) => rows.filter((row) => row.checkVisibility()).length);
  assert.ok(mostRows <= 12, `${mostRows} rows to look through`);
  await button(page, "Log it").click();
  const all = page.getByRole("button", { name: "It was driven: log it all the same" });
  const logged = page.locator(".pupil > p", { hasText: /WREN, lesson 2 is logged/ });
  await all.or(logged).waitFor();
  if (await all.isVisible()) await all.click();
  await logged.waitFor();
  const marks = kept("WREN").lesson.find((each) => each.number === 2);
  assert.equal(marks.weather, "dull-wet");
  await page.getByText("Not met yet", { exact: true }).click();
  await button(page, "See what isn't met").click();
  await page.getByRole("button", { name: /^Take (?!it ).* into the lesson$/ }).waitFor();
  assert.match(await page.locator("details", { hasText: "Not met yet" }).innerText(), /not met yet within 25 min of home/);
  await page.getByText("A sheet for home", { exact: true }).click();
  await button(page, "Make the sheet").click();
  await page.getByText(/WREN, practice at home|nothing for home yet/).waitFor(); // by the clock of this computer
  await page.getByText("Another like it", { exact: true }).click();
  await button(page, "Find places like it").click();
  await page.getByRole("button", { name: /^Take this drive into the lesson/ }).waitFor();
  await violations(page, "tasks");
  await page.getByRole("button", { name: /^Take this drive into the lesson/ }).click();
  assert.notEqual(await page.getByLabel("Places of your own drive, in order").locator("li").count(), 0);
  await page.close();
});

test("a test centre is drawn on the map, kept, kept off by a mock test, and taken out", async () => {
  const page = await opened("The map");
  await page.getByText("Test centres", { exact: true }).click();
  await page.getByText("None is kept yet").waitFor();
  await page.getByLabel("What you call it").fill("Quill Lane");
  await page.getByLabel(/^Outline/).fill("54.3,2.6;54.31,2.6;54.31,2.61");
  await page.getByLabel("Hours of tests").fill("sometimes");
  await button(page, "Keep this test centre").click();
  assert.match(await page.locator(".trouble", { hasText: "sometimes" }).innerText(), /^“hours” takes hours such as/, "the page's words, no command's");
  await page.getByLabel("Hours of tests").fill("Mo-Fr 08:00-16:30");
  await button(page, "Draw it on the map").click();
  const map = await page.locator("#map").boundingBox();
  const corners = [[0.4, 0.4], [0.6, 0.4], [0.5, 0.6]].map(([x, y]) => [map.x + x * map.width, map.y + y * map.height]);
  for (const [x, y] of corners) await page.mouse.click(x, y, { delay: 20 });
  await page.mouse.dblclick(...corners[2]);
  await page.getByText("Drawn, 3 corners.").waitFor();
  await page.getByLabel("Since", { exact: true }).fill("2026-11-01");
  await button(page, "Keep this test centre").click();
  await page.getByText(/Quill Lane: kept; mock tests from/).waitFor();
  assert.match(run("centre", "list"), /2026-11-01\s+Mo-Fr 08:00-16:30\s+Quill Lane/);
  await looked(page, "centres");
  const outline = (await (await page.request.get(`${new URL(address).origin}/centres`)).json()).centres[0].outline;
  const [said, job] = ["keeps off the surroundings of the test centre Quill Lane, Mo-Fr 08:00-16:30", 4711];
  assert.ok(outline.length === 3 && outline[0][0] > outline[2][0] && outline[0][1] < outline[1][1], "north first, west before east");
  // What a mock test's search finds is held to the book by test_book_routes.py; here is what one reads of it.
  await page.route("**/pupils/WREN/mock", (route) => route.fulfill({ json: { job: String(job) } }));
  await page.route(`**/jobs/${job}`, (route) => route.fulfill({ json: { stage: "over", code: 0, warned: [], trouble: "", said:
    `mock test: a mixed drive\n  no route of a real test,\n    and no sign of passing one\n  ${said}\nLoop 1: 30 min driving, likely 27 to 33; 9 miles; 15:00 to 15:41\n  asked signals=1: 8\nNot met: loop 1 has no independent stretch\n  of 20 minutes\n12 claims checked\nlesson of 60 min: 11 to talk, 30\n  to drive\nWREN, lesson 2, Tuesday 1 December\n  2026, 10:15: planned; 'loopwright lesson print WREN'\n` } }));
  await button(page, "Pupil").click();
  await page.getByRole("combobox", { name: "Code" }).selectOption("WREN");
  await page.getByText(/^WREN, in the book since/).waitFor({ state: "attached" });
  await page.getByText("A mock test", { exact: true }).click();
  await button(page, "Plan the mock test").click();
  await page.getByText(said).waitFor();
  assert.deepEqual(await page.locator(".pupil .line").allInnerTexts(), ["mock test: a mixed drive", "no route of a real test, and no sign of passing one", said,
    "30 min driving, likely 27 to 33; 9 miles; 15:00 to 15:41", "Not met: loop 1 has no independent stretch of 20 minutes", "lesson of 60 min: 11 to talk, 30 to drive"], "whole sentences, each its own line");
  assert.equal(await page.getByText("Print lesson 2", { exact: true }).getAttribute("href"), "/pupils/WREN/card?lesson=2&form=pdf");
  await button(page, "The map").click();
  await page.getByRole("button", { name: "Take out Quill Lane" }).click();
  await page.getByRole("button", { name: "No, keep Quill Lane" }).click();
  await page.getByRole("button", { name: "Take out Quill Lane" }).click();
  await violations(page, "taking out");
  assert.match(run("centre", "list"), /Quill Lane/, "asked first");
  await page.getByRole("button", { name: /^Yes, take out Quill Lane/ }).click();
  await page.getByText("Quill Lane: taken out").waitFor();
  assert.match(run("centre", "list"), /no test centre is kept/);
  await page.close();
});

test("a pupil is added, changed, exported and erased", async () => {
  const page = await opened("Pupil");
  await page.getByText("Add a pupil").click();
  await page.getByLabel("A code").fill("ROBIN");
  await page.getByLabel("Home").and(page.locator("#add-home")).fill("8 Signal Terrace");
  await page.locator("#add-avoids").selectOption(["tram", "zebra"]);
  await button(page, "Add this pupil").click();
  await page.getByText("ROBIN is in the book.").waitFor();
  assert.deepEqual(kept("ROBIN").avoided.map((each) => each.kind).sort(), ["tram", "zebra"]);
  assert.equal(await page.getByRole("combobox", { name: "Code" }).inputValue(), "ROBIN");
  await page.getByText("Change what is kept of ROBIN").click();
  await page.locator("#change-test").fill("2027-03-01");
  await button(page, "Change it").click();
  await page.getByText("ROBIN is changed.").waitFor();
  assert.equal(kept("ROBIN").pupil[0].test_day, "2027-03-01");
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name: "All that is kept, for programs" }).click()]);
  assert.equal(download.suggestedFilename(), "ROBIN.json");
  await page.getByRole("button", { name: /^Erase ROBIN/ }).click();
  await violations(page, "erase");
  await page.getByLabel("Type ROBIN to erase it").fill("WREN");
  await button(page, "Erase it for good").click();
  await page.getByText(/type the code ROBIN/).waitFor();
  await page.getByLabel("Type ROBIN to erase it").fill("ROBIN");
  await button(page, "Erase it for good").click();
  await page.getByText(/ROBIN is erased/).waitFor();
  assert.doesNotMatch(run("pupil", "list"), /ROBIN/);
  assert.deepEqual(await page.getByRole("combobox", { name: "Code" }).locator("option").allInnerTexts(), ["FINCH", "WREN", "WRYNECK"]);
  await page.close();
});

test("nothing came from elsewhere, and nothing was complained of", () => {
  assert.deepEqual(heard.strangers, []);
  assert.deepEqual(heard.complaints.filter((text) => !/status of 4(00|04|22)/.test(text)), []);
});
