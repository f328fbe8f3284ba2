// How long an answer takes in this browser, from a click on Look: until the screen has changed, until
// the whole answer stands on it, and how long the desk has the question. Figures are printed, none is
// judged.

import { setTimeout as wait } from "node:timers/promises";
import { browser, serve } from "./harness.mjs";

const CLICKS = 70;
const WARM = 10;
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
  const mark = (what) => window.marks.push([what, performance.now()]);
  for (const type of ["leavewell-ask", "leavewell-answer"]) {
    window.addEventListener(type, ({ detail }) => {
      if (detail.name !== "report") return;
      mark(type);
      // Once everything that the answer sets off has run, the screen shows it.
      if (type === "leavewell-answer") setTimeout(() => mark("shown"));
    });
  }
  new MutationObserver(() => mark("changed")).observe(document.getElementById("main"), {
    subtree: true, childList: true, attributes: true, characterData: true,
  });
});

const times = { changed: [], shown: [], desk: [] };
for (let i = 0; i < CLICKS; i += 1) {
  const answer = page.locator(".finding").nth(i % 5).locator("input[type=radio]").nth(((i % 5) + Math.trunc(i / 5)) % 3);
  const took = await answer.evaluate(async (input) => {
    window.marks.length = 0;
    const start = performance.now();
    input.click();
    await new Promise((resolve) => setTimeout(resolve, 300));
    const at = (what) => window.marks.find(([kind]) => kind === what)?.[1] - start;
    return { changed: at("changed"), shown: at("shown"), desk: at("leavewell-answer") - at("leavewell-ask") };
  });
  // The first clicks warm the programs up, and one that changes no answer asks nothing.
  if (i >= WARM && Number.isFinite(took.shown)) {
    for (const [what, list] of Object.entries(times)) list.push(took[what]);
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
line("a click, until the whole answer stands on the screen", times.shown);
line("of that the desk, question and reply included", times.desk);
line("a whole answer with the search for what would change it", alone);
if (NATIVE_MS) console.log(`the desk against native: ${(at(times.desk, 0.5) / Number(NATIVE_MS)).toFixed(1)} times as long`);

await (await browser()).close();
await site.close();
