// What the tests in a browser share: headless Chromium with a clock that stands, axe-core, and pictures held against those
// approved by looking (tests/page/golden; APPROVE=1 keeps them as they are now).
import assert from "node:assert/strict";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

export const here = dirname(fileURLToPath(import.meta.url));
export const program = resolve(process.env.PROGRAM);
const load = createRequire(join(resolve(process.env.PARTS), "package.json"));
const { chromium } = load("playwright-core");
const { PNG } = load("pngjs");
const { default: pixelmatch } = await import(load.resolve("pixelmatch"));
const axe = readFileSync(load.resolve("axe-core/axe.min.js"), "utf-8");
const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

export const launched = () =>
  chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--force-color-profile=srgb", "--font-render-hinting=none"] });

/** A browser's window on a page; what was asked for elsewhere, and what was complained of, is taken down in `heard`. */
export async function windowOn(browser, address, heard) {
  const context = await browser.newContext({ viewport: { width: 1360, height: 860 }, locale: "en-GB", timezoneId: "Europe/London" });
  await context.clock.setFixedTime(new Date("2026-11-28T13:10:00Z"));
  context.on("request", (request) => {
    if (/^(http|ws)/.test(request.url()) && !request.url().startsWith(new URL(address).origin)) heard.strangers.push(request.url());
  });
  context.on("console", (message) => message.type() === "error" && heard.complaints.push(message.text()));
  context.on("weberror", (error) => heard.complaints.push(String(error.error())));
  const first = await context.newPage();
  await first.goto(address);
  await first.close();
  return context;
}

export const button = (page, name) => page.getByRole("button", { name, exact: true });

export async function settled(page) {
  await page.evaluate(() => document.fonts.ready);
  await page.waitForLoadState("networkidle");
  await page.waitForTimeout(400); // the map draws its tiles over a few frames
}

export async function violations(page, where) {
  await page.evaluate(axe); // not as a script of the page, which its policy forbids
  const told = await page.evaluate((tags) => globalThis.axe.run(document, { runOnly: tags }), rules);
  assert.deepEqual(told.violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.html).join(" ").slice(0, 300)}`), [], where);
  return told.passes.length;
}

export async function likeApproved(page, name) {
  await settled(page);
  const now = await page.screenshot();
  const file = join(here, "golden", `${name}.png`);
  if (process.env.APPROVE) {
    mkdirSync(dirname(file), { recursive: true });
    return writeFileSync(file, now);
  }
  assert.ok(existsSync(file), `${file}: approve it with APPROVE=1, after you looked`);
  const a = PNG.sync.read(readFileSync(file)), b = PNG.sync.read(now);
  assert.deepEqual([b.width, b.height], [a.width, a.height], name);
  const other = pixelmatch(a.data, b.data, null, a.width, a.height, { threshold: 0.25 });
  const share = other / (a.width * a.height);
  if (share > 0.02) writeFileSync(join(tmpdir(), `${name}-now.png`), now);
  assert.ok(share <= 0.02, `${name}: ${(100 * share).toFixed(1)} % of it looks other than approved; see ${join(tmpdir(), `${name}-now.png`)}`);
}
