// How long an answer takes in this browser, from a click on Look: until the screen has changed, until
// the whole answer has come back, and the weighing by itself. Figures are printed, none is judged.

import { setTimeout as wait } from "node:timers/promises";
import { browser, serve } from "./harness.mjs";

const CLICKS = 60;
const { CASE, NATIVE_MS } = process.env;

const site = await serve();
const page = await (await (await browser()).newContext({ viewport: { width: 1280, height: 900 } })).newPage();
await page.goto(site.url);
await page.getByRole("button", { name: /Open a copy of: The teapot for every day/ }).click();
await page.locator(".answer-sentence").waitFor();
await page.goto(`${site.url}#/look`);
await wait(2_000);
await page.evaluate(() => {
  window.marks = [];
  for (const type of ["leavewell-ask", "leavewell-answer"]) {
    window.addEventListener(type, ({ detail }) => window.marks.push([type, detail.name, performance.now()]));
  }
});

const times = { changed: [], answered: [] };
for (let i = 0; i < CLICKS; i += 1) {
  const answer = page.locator(".finding").nth(i % 5).locator("input[type=radio]").nth((i + Math.trunc(i / 5)) % 3);
  const { changed, answered } = await answer.evaluate(async (input) => {
    window.marks.length = 0;
    const start = performance.now();
    input.click();
    await new Promise((resolve) => setTimeout(resolve, 300));
    // The app asks for the next answer once the screen has changed.
    const at = (type) => window.marks.find(([kind, name]) => kind === type && name === "report")?.[2] - start;
    return { changed: at("leavewell-ask"), answered: at("leavewell-answer") };
  });
  if (Number.isFinite(answered)) {
    times.changed.push(changed);
    times.answered.push(answered);
  }
}

const alone = await page.evaluate(async (text) => {
  const took = [];
  for (let i = 0; i < 20; i += 1) {
    const start = performance.now();
    await window.leavewell.weigh_json(text);
    took.push(performance.now() - start);
  }
  return took;
}, CASE);

const at = (list, share) => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))];
const line = (what, list) =>
  console.log(`${what}: ${at(list, 0.5).toFixed(1)} ms in the middle, ${at(list, 0.95).toFixed(1)} ms at the 95th percentile`);
line("a click, until the screen has changed", times.changed);
line("a click, until the whole answer is back", times.answered);
line("a whole answer with the search for what would change it", alone);
const weighing = times.answered.map((answered, i) => answered - times.changed[i]);
line("the answer by itself, question and reply included", weighing);
if (NATIVE_MS) console.log(`against native: ${(at(weighing, 0.5) / Number(NATIVE_MS)).toFixed(1)} times as long`);

await (await browser()).close();
await site.close();
