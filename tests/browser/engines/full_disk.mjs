// A disk that fills up while somebody types, and has room again: nothing that was on the shelf may be lost, and nothing
// may be called kept that is not.
//
//   node --experimental-websocket engines/full_disk.mjs Chromium FOLDER
//
// Run on request: FOLDER is a small file system of its own, such as `mount -t tmpfs -o size=160m none FOLDER`.

import assert from "node:assert/strict";
import { appendFile, mkdir, rm, statfs, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { ROOT, serve } from "../harness.mjs";
import { start } from "./engine.mjs";
import { ready, storedIn } from "./page.mjs";

const [engine, folder] = process.argv.slice(2);
const profile = join(folder, "profile");
const ballast = join(folder, "ballast");

async function fill(anew = true) {
  if (anew) await writeFile(ballast, "");
  for (const size of [1_048_576, 65_536, 4_096, 512]) {
    for (;;) {
      try {
        await appendFile(ballast, Buffer.alloc(size));
      } catch {
        break;
      }
    }
  }
}

const left = async () => {
  const { bavail, bsize } = await statfs(folder);
  return bavail * bsize;
};
const names = async (tab) => (await tab.eval(storedIn)).map(({ text }) => JSON.parse(text).piece.name).sort();
const notices = (tab) => tab.eval(() => [...document.querySelectorAll(".notice, part-photos [role=status]")].map((it) => it.textContent).join(" // "));
const go = (tab, route) =>
  tab.eval((to) => {
    location.hash = `#/${to}`;
  }, route);

await rm(profile, { recursive: true, force: true });
await rm(ballast, { force: true });
await mkdir(profile);
assert.ok((await left()) < 400_000_000, "the folder should be a small file system");
const site = await serve();
let browser = await start(engine, { profile });
let tab = await browser.tab();
await tab.open(site.url);
await tab.wait(ready);
for (const name of ["First pot", "Second pot", "Third pot"]) {
  await go(tab, "");
  await tab.wait(() => [...document.querySelectorAll("label")].some((it) => it.textContent.startsWith("What do you call it?")));
  const field = await tab.eval(() => {
    const label = [...document.querySelectorAll("label")].find((it) => it.textContent.startsWith("What do you call it?"));
    return label.htmlFor;
  });
  await tab.type(`#${CSSescape(field)}`, name);
  await tab.eval(() => [...document.querySelectorAll("button")].find((it) => it.textContent === "Start this piece").click());
  await tab.wait(() => location.hash === "#/piece");
  await pause(800);
}
assert.deepEqual(await names(tab), ["First pot", "Second pot", "Third pot"]);

await fill();
// Browsers give back what they can spare; that is taken too.
let filling = true;
const filled = (async () => {
  while (filling) {
    await pause(100);
    await fill(false);
  }
})();
console.log(`the disk has ${await left()} bytes left`);
await tab.type("#piece\\.name", `Third pot, typed while the disk was full, ${"so that it is long, ".repeat(20)}`);
await pause(3_000);
console.log(`while it is full, with ${await left()} bytes left:`, await notices(tab));
await go(tab, "condition");
const photo = 'part-photos input[type="file"]';
await tab.wait((it) => document.querySelector(it) !== null, photo);
await tab.choose(photo, join(ROOT, "www/icon-512.png"));
await pause(4_000);
const said = await notices(tab);
console.log("a photo:", said);
const photoSaidKept = said.includes("The photo is kept.");

filling = false;
await filled;
await rm(ballast);
console.log(`room again: ${await left()} bytes`);
await go(tab, "piece");
await tab.wait(() => document.getElementById("piece.name") !== null);
await tab.type("#piece\\.name", "Third pot, after");
await pause(7_000);
console.log("after:", await names(tab).catch(String), await notices(tab));
await browser.close();
browser = await start(engine, { profile });
tab = await browser.tab();
await tab.open(`${site.url}#/condition`);
await tab.wait(ready);
await pause(1_500);
const kept = await names(tab);
const shown = await tab.eval(() => document.querySelector(".photos img")?.naturalWidth ?? 0);
console.log("started again:", kept, "photo", shown);
await browser.close();
await site.close();
assert.deepEqual(kept, ["First pot", "Second pot", "Third pot, after"]);
if (photoSaidKept) assert.equal(shown, 512, "a photo that is called kept is kept");
process.exit(0);

function CSSescape(id) {
  return id.replace(/[^a-zA-Z0-9_-]/g, (letter) => `\\${letter}`);
}
