// Measures how long each kind of change takes in this browser, until everything is computed and rendered. It prints
// figures and sets no limits.
//
// "answered": from the change until the whole answer has arrived from the worker.
// "drawn": from the change until the last change of the screen, including the pages that belong to the answer. The
// later announcement for screen readers does not count.

import { setTimeout as wait } from "node:timers/promises";
import { browser, serve } from "./harness.mjs";
import { fillShelf } from "./many.mjs";

const CHANGES = 90;
const WARM = 20;
const SETTLED_MS = 350;
// The topics of the report, and of the answer with an input moved.
const REPORT = 0;
const MOVED = 2;
const PIECES = 1_000;
const { CASE, NATIVE_MS } = process.env;

// The i-th change in the page, with the topic of its question to the worker.
const SORTS = [
  ["a look", "look", REPORT, (i) => {
    const finding = document.querySelectorAll(".finding")[i % 5];
    finding.querySelectorAll("input[type=radio]")[((i % 5) + Math.trunc(i / 5)) % 3].click();
  }],
  ["how much shows", "condition", REPORT, (i) =>
    document.querySelectorAll("input[name=body-bleed]")[(i * 3) % 5].click()],
  ["the tarnish", "condition", REPORT, (i) =>
    document.querySelectorAll("input[name=body-tarnish]")[(i * 3) % 8].click()],
  ["a value typed", "money", REPORT, (i) => {
    const field = document.getElementById("market.likely");
    field.value = String(55 + (i % 40));
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  }],
  ["a quote typed", "money", REPORT, (i) => {
    const field = document.getElementById("T14a-likely");
    field.value = String(120 + i);
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  }],
  ["an input moved to try it", "counsel", MOVED, (i) => {
    const slider = document.getElementById("move-value");
    slider.value = String([1, 2, 3, 2, 1, -1, -2, -1][i % 8]);
    slider.dispatchEvent(new InputEvent("input", { bubbles: true }));
    slider.dispatchEvent(new Event("change", { bubbles: true }));
  }],
];

const site = await serve();
const page = await (await (await browser()).newContext({ viewport: { width: 1280, height: 900 } })).newPage();
await page.goto(site.url);
await page.getByRole("button", { name: /Open a copy of: The teapot for every day/ }).click();
await page.locator(".answer-sentence").waitFor();
await page.evaluate(() => {
  window.marks = [];
  const mark = (what) => window.marks.push([what, performance.now()]);
  for (const type of ["leavewell-ask", "leavewell-answer"]) {
    window.addEventListener(type, ({ detail }) => mark(`${type} ${detail.topic}`));
  }
  new MutationObserver((changes) => {
    if (changes.some(({ target }) => !target.parentElement?.closest("[aria-live]"))) mark("changed");
  }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
});

const at = (list, share) => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))];
const both = (list) => `${at(list, 0.5).toFixed(1)} ms in the middle, ${at(list, 0.95).toFixed(1)} ms at the 95th percentile`;
const all = { answered: [], drawn: [], worker: [] };

for (const [what, screen, asked, change] of SORTS) {
  await page.goto(`${site.url}#/${screen}`);
  await wait(2_000);
  const times = { answered: [], drawn: [], worker: [] };
  for (let i = 0; i < CHANGES; i += 1) {
    const took = await page.evaluate(
      async ([change, i, asked, settled]) => {
        const act = new Function(`return (${change})`)();
        window.marks.length = 0;
        const start = performance.now();
        act(i);
        await new Promise((resolve) => setTimeout(resolve, settled));
        const first = (kind) => window.marks.find(([what]) => what === kind)?.[1] - start;
        const drawn = window.marks.findLast(([what]) => what === "changed")?.[1] - start;
        const answered = first(`leavewell-answer ${asked}`);
        return { answered, drawn, worker: answered - first(`leavewell-ask ${asked}`) };
      },
      [String(change), i, asked, SETTLED_MS],
    );
    // The first changes warm the programs up. A change that does not affect the answer asks nothing.
    if (i >= WARM && Number.isFinite(took.answered)) {
      for (const [which, list] of Object.entries(times)) list.push(took[which]);
    }
  }
  console.log(`${what} (${times.answered.length} changes)`);
  for (const [which, list] of Object.entries(times)) {
    all[which].push(...list);
    if (which !== "worker") console.log(`  ${which}: ${both(list)}`);
  }
}
console.log("all of them");
console.log(`  answered: ${both(all.answered)}`);
console.log(`  drawn: ${both(all.drawn)}`);
console.log(`  of that the worker, question and reply included: ${both(all.worker)}`);

const alone = await page.evaluate(async (text) => {
  const took = [];
  for (let i = 0; i < 20; i += 1) {
    const start = performance.now();
    await window.leavewell.weigh_json(text);
    took.push(performance.now() - start);
  }
  return took;
}, CASE);
console.log(`a whole answer with the search for what would change it: ${both(alone)}`);
if (NATIVE_MS) console.log(`the worker against native: ${(at(all.worker, 0.5) / Number(NATIVE_MS)).toFixed(1)} times as long`);

await plannedShelf();
await (await browser()).close();
await site.close();

/** The time to open the plan of a large shelf that was never weighed, and to change its limits. */
async function plannedShelf() {
  const shelf = await (await (await browser()).newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  await shelf.goto(site.url);
  await shelf.locator("#file").waitFor();
  await fillShelf(shelf, PIECES);
  await wait(3_000);
  const took = await shelf.evaluate(async () => {
    const until = async (done) => {
      const start = performance.now();
      while (!done()) await new Promise((resolve) => setTimeout(resolve, 5));
      return performance.now() - start;
    };
    const answer = () => document.querySelector(".leaf-answer")?.textContent ?? "";
    location.hash = "#/plan";
    const first = await until(() => answer() && !document.querySelector("progress"));
    const other = [];
    for (const money of ["2000", "5000", "20000", "8000", "3000"]) {
      const field = document.getElementById("plan-money");
      field.value = money;
      const start = performance.now();
      field.dispatchEvent(new InputEvent("input", { bubbles: true }));
      await until(() => answer().includes(`£${money} `));
      other.push(performance.now() - start);
    }
    return { first, other };
  });
  console.log(`a shelf of ${PIECES} pieces, from opening the plan until it stands: ${took.first.toFixed(0)} ms`);
  console.log(`  with other limits: ${at(took.other, 0.5).toFixed(0)} ms in the middle, ${Math.max(...took.other).toFixed(0)} ms at most`);
}
