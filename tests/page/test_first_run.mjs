// The page where there is no area yet, as a person uses it in headless Chromium: told where extracts come from, one chosen or
// dropped, built, and the page opened on it; what is no extract is told.
//
//   PROGRAM=build/loopwright PARTS=build/page-tests [APPROVE=1] [ROUNDS=40] node --test tests/page/test_first_run.mjs
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { button, here, launched, likeApproved, program, violations, windowOn } from "./browsing.mjs";

const extract = join(here, "../../maps/quillham.osm.pbf");
const rounds = Number(process.env.ROUNDS ?? 1);
const heard = { strangers: [], complaints: [] };
let folder, browser, server, address, context;

before(async () => {
  folder = mkdtempSync(join(tmpdir(), "first-"));
  browser = await launched();
});

after(async () => {
  await browser?.close();
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

async function began() {
  server = spawn(program, ["page"], { env: { ...process.env, TMPDIR: folder, XDG_DATA_HOME: folder } });
  address = await new Promise((done) => server.stdout.once("data", (line) => done(String(line).split(" ")[0])));
  await context?.close();
  context = await windowOn(browser, address, heard);
  const page = await context.newPage();
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto(new URL(address).origin + "/");
  return page;
}

test("a new user is told what to fetch, drops it, and the page opens on the roads", async () => {
  const page = await began();
  await page.getByText(/Up to .* GB\. The area is written to/).waitFor();
  assert.match(await page.locator("main").innerText(), /download\.geofabrik\.de/);
  assert.equal(await page.getByRole("link").count(), 0, "nothing is fetched, and nothing leads away");
  for (const [width, height] of [[1360, 860], [360, 740]]) {
    for (const colorScheme of ["dark", "light"]) {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
      await violations(page, `first-${width} ${colorScheme}`);
    }
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth));
    await page.locator("#extract-why").evaluate((line) => line.replaceChildren(line.textContent.replace(/written to \S+/, "written to …")));
    await likeApproved(page, `first-${width}`);
  }

  await page.getByLabel("The extract").setInputFiles(join(here, "package.json"));
  assert.match(await page.getByRole("alert").innerText(), /^package\.json: no extract by its name/);
  await page.getByLabel("The roads are in").selectOption("other");
  await page.getByLabel("Its two letters").fill("zz");
  await page.getByLabel("The extract").setInputFiles(extract);
  assert.equal(await page.getByRole("alert").count(), 0);
  await button(page, "Build the area").click();
  await page.getByRole("alert").filter({ hasText: /^region: GB-ENG/ }).waitFor();
  await page.getByLabel("The roads are in").selectOption("GB-ENG");
  await page.getByLabel("The extract").setInputFiles({ name: "half.osm.pbf", mimeType: "", buffer: readFileSync(extract).subarray(0, 150000) });
  await button(page, "Build the area").click();
  await page.getByRole("alert").filter({ hasText: /^half\.osm\.pbf: / }).waitFor();
  assert.equal(readdirSync(join(folder, "loopwright"), { recursive: true }).filter((name) => /osm|area/.test(name)).length, 0);

  const dropped = await page.evaluateHandle((bytes) => {
    const files = new DataTransfer();
    files.items.add(new File([Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0))], "quillham.osm.pbf"));
    return files;
  }, readFileSync(extract).toString("base64"));
  await page.dispatchEvent(".drop", "drop", { dataTransfer: dropped });
  await page.getByText("quillham.osm.pbf: 305 kB").waitFor();
  await button(page, "Build the area").click();
  await page.getByLabel("From and back to").waitFor({ timeout: 60000 });
  await page.setViewportSize({ width: 1360, height: 860 });
  await page.getByText("roads.area").waitFor();
  await page.close(); // or it asks a page that is no more for tiles
});

test("the new user adds a pupil, plans a lesson, changes it, keeps it, prints it and logs it, without a command", async () => {
  const page = await context.newPage();
  page.setDefaultTimeout(120000); // a busy machine is no fault
  await page.goto(new URL(address).origin + "/");
  await page.getByLabel("From and back to").waitFor();
  await button(page, "Pupil").click();
  await page.getByLabel("A code").fill("WREN");
  await page.getByLabel("Home").fill("4 Lantern Row");
  await button(page, "Add this pupil").click();
  await button(page, "Take it into the lesson").click();
  assert.equal(await page.getByLabel("From and back to").inputValue(), "4 Lantern Row");
  await page.getByLabel("Minutes", { exact: true }).fill("35");
  await page.getByLabel("Kind", { exact: true }).selectOption("zebra");
  await page.getByLabel("How many").fill("1");
  await button(page, "Add to the practice").click();
  await button(page, "Look for loops").click();
  const status = (text) => page.locator("#loops-status", { hasText: text });
  const untilFound = async () => {
    await status(/better ones|Looked for|Not all/).waitFor();
    await button(page, "break off").click({ timeout: 2000 }).catch(() => undefined); // the first will do
    await status(/Broken off|Looked for|Not all/).waitFor();
  };
  await untilFound();
  const row = page.locator("ol.rows li").nth(2), place = await row.locator(".far").innerText();
  await row.getByRole("button", { name: /^Forbid the place of row 3/ }).click();
  await status(/Looking/).waitFor();
  await untilFound();
  assert.equal(await page.getByLabel("What is kept away from").locator("li").count(), 1, place);
  await button(page, "Keep this loop").click();
  await page.getByText("Kept: WREN, lesson 1.").waitFor();
  const card = await page.getByRole("link", { name: "Print lesson 1" }).getAttribute("href");
  assert.equal(await page.evaluate(async (url) => (await (await fetch(url)).text()).slice(0, 5), card), "%PDF-");
  await button(page, "Pupil").click();
  const lessons = page.getByRole("region", { name: "Lessons" });
  await lessons.filter({ hasText: "planned" }).waitFor(); // the record is read anew, and nothing can be typed until it is there
  await page.getByLabel("In a line").fill("zebra 4; light day");
  await button(page, "Log it").click();
  const logged = page.getByText(/WREN, lesson 1 is logged/), sure = page.getByRole("button", { name: "It was driven: log it all the same" });
  await logged.or(sure).first().waitFor();
  if (await sure.isVisible()) await sure.click(); // where this computer's clock is before the browser's
  await logged.waitFor();
  assert.match(await lessons.innerText(), /driven/);
  assert.match(await page.getByRole("region", { name: "What was observed" }).innerText(), /pedestrian crossings\s+4 /);
  await page.close();
});

/** A page on which a build was begun and broken off, and what lets its answer come; null: the build was over before. */
async function brokenOff() {
  server.kill();
  rmSync(join(folder, "loopwright"), { recursive: true });
  const page = await began();
  await page.getByLabel("The roads are in").selectOption("GB-ENG");
  await page.getByLabel("The extract").setInputFiles(extract);
  // Asked slowly, so that there is time to press the button. That it is broken off is answered when the next build is begun.
  let begunAgain;
  const second = new Promise((done) => { begunAgain = done; });
  await page.route("**/build", async (route) => {
    const answer = await route.fetch();
    await (route.request().method() === "GET" ? pause(100) : second);
    await route.fulfill({ response: answer }).catch(() => undefined); // the page may be gone
  });
  await button(page, "Build the area").click();
  const over = page.getByLabel("From and back to"), broken = page.getByRole("alert").filter({ hasText: "Nothing is left behind" });
  await page.getByRole("progressbar").or(over).first().waitFor();
  await button(page, "break off").click({ timeout: 5000 }).catch(() => undefined);
  await broken.or(over).first().waitFor();
  if (await broken.isVisible()) return { page, begunAgain };
  await page.close();
  return null;
}

test("it can be broken off, and the next start finds the area", async () => {
  let broken = null;
  for (let times = 0; times < 5 && !broken; ++times) broken = await brokenOff();
  assert.ok(broken, "each build was over before it could be broken off");
  let { page } = broken;
  assert.ok(!existsSync(join(folder, "loopwright", "roads.area")));
  await page.route(/\/extract\?/, async (route) => {
    broken.begunAgain();
    await pause(300);
    await route.continue().catch(() => undefined);
  });
  await button(page, "Build the area").click();
  await page.getByLabel("From and back to").waitFor({ timeout: 60000 });
  await page.close();
  server.kill();
  page = await began();
  await page.getByLabel("From and back to").waitFor();
  await page.close();
});

test("broken off at any moment, and begun again at once, it is built in the end", async () => {
  for (let round = 0; round < rounds; ++round) {
    server.kill();
    rmSync(join(folder, "loopwright"), { recursive: true });
    const page = await began();
    await page.getByLabel("The roads are in").selectOption("GB-ENG");
    await page.getByLabel("The extract").setInputFiles(extract);
    for (let times = 0; times < 3; ++times) {
      await button(page, "Build the area").click();
      await pause(Math.random() * 250);
      const ended = page.getByRole("alert").filter({ hasText: "Nothing is left behind" }).or(page.getByLabel("From and back to"));
      await button(page, "break off").click({ timeout: 2000 }).catch(() => undefined); // it may be built by then
      await ended.waitFor({ timeout: 30000 });
      if (await page.getByLabel("From and back to").count() > 0) break;
    }
    if (await page.getByLabel("From and back to").count() === 0) await button(page, "Build the area").click();
    await page.getByLabel("From and back to").waitFor({ timeout: 30000 });
    await page.getByText("roads.area").waitFor();
    await page.close();
  }
});

test("nothing came from elsewhere, and nothing was complained of", () => {
  assert.deepEqual(heard.strangers, []);
  assert.deepEqual(heard.complaints.filter((text) => !/status of 4(00|09|15|22)/.test(text)), []); // 409: broken off while it was sent
});
