// A browser killed in mid-typing, again and again: how much of what was typed is lost, and whether a copy is made.
//
//   node --experimental-websocket engines/kill.mjs Chromium 50
//
// Run on request. It stops with an error if more than the last half second is lost.

import assert from "node:assert/strict";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { serve } from "../harness.mjs";
import { start } from "./engine.mjs";
import { ready, storedIn } from "./page.mjs";

const [engine = "Chromium", rounds = "50"] = process.argv.slice(2);
const GAPS = [30, 90, 180, 260];
const LONGEST_LOSS_MS = 500;

const profile = await mkdtemp(join(tmpdir(), "leavewell-kill-"));
const site = await serve();
const all = [];

async function opened(route = "#/piece") {
  for (const lock of ["SingletonLock", "SingletonSocket", "SingletonCookie", "lock", ".parentlock"]) await rm(join(profile, lock), { force: true });
  const browser = await start(engine, { profile });
  const tab = await browser.tab();
  await tab.open(`${site.url}${route}`);
  await tab.wait(ready);
  return { browser, tab };
}

let { browser, tab } = await opened("#/");
await tab.wait(() => document.querySelector('[aria-label^="Open a copy of: "]') !== null);
await tab.click('[aria-label^="Open a copy of: "]');
await tab.wait(() => location.hash.length > 2);
await pause(1_000);
await tab.eval(() => {
  location.hash = "#/piece";
});
for (let round = 0; round < Number(rounds); round += 1) {
  await tab.wait(() => document.getElementById("piece.name") !== null);
  await tab.type("#piece\\.name", `${round}:`);
  const gap = GAPS[round % GAPS.length];
  let typed = `${round}:`;
  const times = [...typed].map(() => Date.now());
  for (let letters = 8 + Math.floor(Math.random() * 40); letters > 0; letters -= 1) {
    const letter = "abcdefghijklmnopqrstuvwxyz"[Math.floor(Math.random() * 26)];
    await tab.keys(letter);
    typed += letter;
    times.push(Date.now());
    await pause(gap);
  }
  const killed = Date.now();
  await browser.kill();
  await pause(300);
  ({ browser, tab } = await opened());
  await tab.wait(() => document.getElementById("piece.name") !== null);
  const records = await tab.eval(storedIn);
  const found = await tab.eval(() => document.getElementById("piece.name").value);
  assert.ok(typed.startsWith(found), `round ${round}: "${found}" is not how "${typed}" began`);
  const lost = found.length < typed.length ? killed - times[found.length] : 0;
  all.push({ gap, letters: typed.length - found.length, lost, records: records.length });
  console.log(JSON.stringify(all.at(-1)));
}
await browser.close();
await site.close();
await rm(profile, { recursive: true, force: true, maxRetries: 5 });
const worst = Math.max(...all.map(({ lost }) => lost));
const some = all.filter(({ letters }) => letters > 0).length;
console.log(`${engine}: ${rounds} kills, ${some} lost something, at most the last ${worst} ms; records at the end: ${all.at(-1).records}`);
assert.ok(worst <= LONGEST_LOSS_MS, `${worst} ms were lost`);
assert.equal(all.at(-1).records, 1, "no copies were made");
process.exit(0);
