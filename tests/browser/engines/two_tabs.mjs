// Two tabs with the same piece, and ten minutes of changes in one and the other: what is typed last in each field stands
// in the end, or the person was asked; nothing is lost without a word.
//
//   node --experimental-websocket engines/two_tabs.mjs Chromium 600
//
// Run on request.

import assert from "node:assert/strict";
import { setTimeout as pause } from "node:timers/promises";
import { serve } from "../harness.mjs";
import { start } from "./engine.mjs";
import { ready, storedIn } from "./page.mjs";

const [engine = "Chromium", seconds = "600"] = process.argv.slice(2);
const site = await serve();
const browser = await start(engine);
const tabs = [await browser.tab(), await browser.tab()];
await tabs[0].open(site.url);
await tabs[0].wait(ready);
await tabs[0].wait(() => document.querySelector('[aria-label^="Open a copy of: "]') !== null);
await tabs[0].click('[aria-label^="Open a copy of: "]');
await tabs[0].wait(() => location.hash.length > 2);
await pause(1_000);
for (const tab of tabs) {
  await tab.front();
  await tab.open(`${site.url}#/piece`);
  await tab.wait(ready);
  await tab.wait(() => document.getElementById("piece.name") !== null);
}

/** Runs in the page: types into a field as fast as the page can take it. */
const put = (id, value) => {
  const field = document.getElementById(id);
  field.value = value;
  field.dispatchEvent(new Event("input", { bubbles: true }));
};
const FIELDS = ["piece.name", "piece.from_year", "piece.to_year"];
const last = {};
let [edits, asked, turn] = [0, 0, 0];
const until = Date.now() + Number(seconds) * 1_000;
while (Date.now() < until) {
  const at = Math.floor(Math.random() * 2);
  const tab = tabs[at];
  for (let burst = 1 + Math.floor(Math.random() * 6); burst > 0; burst -= 1) {
    const id = FIELDS[Math.floor(Math.random() * FIELDS.length)];
    turn += 1;
    const value = id === "piece.name" ? `edit ${turn} in tab ${at}` : String(1750 + (turn % 200));
    await tab.eval(put, id, value);
    last[id] = value;
    edits += 1;
    await pause(Math.random() * 120);
  }
  await pause(Math.random() * 500);
  // Both changed the piece at the same time: the person is asked, and keeps both.
  for (const one of tabs) {
    const clash = await one.eval(() => {
      const button = [...document.querySelectorAll("kept-notices button")].find((it) => it.textContent === "Keep both");
      button?.click();
      return Boolean(button);
    });
    if (!clash) continue;
    asked += 1;
    await pause(400);
    for (const each of tabs) {
      await each.eval((id) => (sessionStorage.setItem("leavewell.open", id), (location.hash = "#/piece"), location.reload()), (await tabs[0].eval(storedIn))[0].id);
      await each.wait(ready);
      await each.wait(() => document.getElementById("piece.name") !== null);
    }
  }
}
await pause(2_000);
const records = await tabs[0].eval(storedIn);
const shown = await Promise.all(tabs.map((tab) => tab.eval((ids) => Object.fromEntries(ids.map((id) => [id, document.getElementById(id).value])), FIELDS)));
console.log(`${engine}: ${edits} edits in ${seconds} s, the person was asked ${asked} times, ${records.length} records, revision ${Math.max(...records.map(({ revision }) => revision))}`);
console.log("last typed", last, "tabs show", shown);
await browser.close();
await site.close();
const texts = records.map(({ text }) => JSON.parse(text).piece);
for (const id of FIELDS) {
  const field = id.split(".")[1];
  assert.ok(texts.some((piece) => String(piece[field]) === last[id]), `${id}: ${last[id]} is in no record`);
}
if (asked === 0) {
  assert.equal(records.length, 1);
  const { piece } = JSON.parse(records[0].text);
  assert.deepEqual([piece.name, String(piece.from_year), String(piece.to_year)], FIELDS.map((id) => last[id]));
  for (const one of shown) assert.deepEqual(one, last, "both tabs show what was typed last");
}
process.exit(0);
