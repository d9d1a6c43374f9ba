// What a pupil's sheet shows as what could come next, in headless Chromium: written to standard output, a JSON list of texts.
//
//   PROGRAM=… PARTS=build/page-tests node tests/school/night_page.mjs ADDRESS CODE…
//
// Its clock stands on Saturday 28 November 2026 (tests/page/browsing.mjs).
import { button, launched, windowOn } from "../page/browsing.mjs";

const [address, ...codes] = process.argv.slice(2);
const heard = { strangers: [], complaints: [] };
const browser = await launched();
try {
  const page = await (await windowOn(browser, address, heard)).newPage();
  page.setDefaultTimeout(120000); // a busy machine is no fault
  await page.goto(new URL(address).origin + "/");
  await button(page, "Pupil").click();
  const told = [];
  for (const code of codes) {
    await page.getByRole("combobox", { name: "Code" }).selectOption(code);
    await page.getByText(new RegExp(`^${code}, in the book since`)).waitFor({ state: "attached" });
    await button(page, "Take it into the lesson").waitFor();
    told.push(await page.getByLabel("What could come next").innerText());
  }
  console.log(JSON.stringify({ told, complaints: heard.complaints }));
} finally {
  await browser.close();
}
