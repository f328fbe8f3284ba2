// The whole job in Chromium, Firefox and WebKit, each with the service worker on: start, examples, typing, reload, two
// tabs, photos, every screen and sheet, offline, an update. What the screens say has to be the same in all three.
//
//   node --experimental-websocket engines/jobs.mjs            all three
//   ENGINES=WebKit node --experimental-websocket engines/jobs.mjs

import assert from "node:assert/strict";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { ROOT, serve } from "../harness.mjs";
import { ENGINES, start } from "./engine.mjs";
import { ready, storedIn } from "./page.mjs";

const CHOSEN = process.env.ENGINES?.split(",") ?? ENGINES;

/** The screens of an open piece, beside the advice. */
const SCREENS = ["piece", "look", "condition", "money", "treatments", "closer", "bench", "sheet/client", "sheet/buyer", "sheet/file", "sheet/conservation", "done", "figures"];
/** The screens that speak of no piece. */
const OTHERS = ["guide", "learning", "plan", "stock/labels", "stock/list"];
const WIDTHS = [420, 500, 640, 820];
/** What the text of a screen has at least, where it comes in several steps. */
const LEAST = { plan: 3_000 };
const TYPED = "Grüße 银器 <b>";

const folder = await mkdtemp(join(tmpdir(), "leavewell-engines-"));
after(() => rm(folder, { recursive: true, force: true }));

const controlled = () => navigator.serviceWorker.controller?.state === "activated";
const failed = /could not be worked out|could not be loaded|There is no page called/;

/** What each engine said, by engine and screen. */
const said = Object.fromEntries(CHOSEN.map((engine) => [engine, {}]));

const scriptsAreThere = () => document.querySelector(":not(:defined)") === null;

// The photos of a screen are read from the store after it is drawn; where there are none to show it stays empty.
const photosAreRead = () =>
  new Promise((resolve) => {
    const end = performance.now() + 3_000;
    const look = () => {
      if (document.querySelector("part-photos:empty") && performance.now() < end) setTimeout(look, 50);
      else resolve(true);
    };
    look();
  });

async function go(tab, route) {
  await tab.eval((to) => {
    location.hash = `#/${to}`;
  }, route);
  // Scripts that no first screen needs come late, and their elements are empty until then.
  await tab.wait(scriptsAreThere);
  await tab.eval(photosAreRead);
  if (LEAST[route]) await tab.wait((least) => document.querySelector("main").textContent.length > least, LEAST[route]);
  const text = await tab.text();
  assert.doesNotMatch(text, failed, route);
  return text;
}

const named = (tab) => tab.wait(() => document.getElementById("piece.name") !== null);
const nameIn = (tab) => tab.eval(() => document.getElementById("piece.name")?.value);
const nameIs = (tab, value) => tab.wait((wanted) => document.getElementById("piece.name")?.value === wanted, value);

async function job(t, engine) {
  const site = await serve();
  const browser = await start(engine);
  const step = (name, work) => t.test(name, { timeout: 300_000 }, work);
  t.diagnostic(`${engine} ${browser.version}`);
  try {
    const tab = await browser.tab();
    await step("starts, and makes its offline copy", async () => {
      await tab.open(site.url);
      await tab.wait(ready);
      await tab.wait(controlled);
      await tab.reload();
      await tab.wait(ready);
      assert.ok(await tab.eval(controlled), "the service worker is on");
    });
    await step("opens every example and advises on it", async () => {
      const examples = () => [...document.querySelectorAll("button")].filter((it) => it.getAttribute("aria-label")?.startsWith("Open a copy of: "));
      await tab.wait(`() => (${examples})().length > 0`);
      const names = await tab.eval(`() => (${examples})().map((it) => it.getAttribute("aria-label"))`);
      for (const name of names) {
        await tab.eval(() => {
          location.hash = "#/";
        });
        await tab.wait((label) => document.querySelector(`[aria-label="${label}"]`) !== null, name);
        await tab.click(`[aria-label="${name}"]`);
        await tab.wait(() => location.hash.length > 2);
        said[engine][name] = await go(tab, "counsel");
      }
    });
    await step("draws every screen and sheet", async () => {
      for (const screen of [...SCREENS, ...OTHERS]) said[engine][screen] = await go(tab, screen);
    });
    await step("keeps what is typed", async () => {
      await go(tab, "piece");
      await named(tab);
      await tab.type("#piece\\.name", TYPED);
      await nameIs(tab, TYPED);
      await tab.reload();
      await tab.wait(ready);
      await nameIs(tab, TYPED);
      const records = await tab.eval(storedIn);
      assert.ok(records.some(({ text }) => JSON.parse(text).piece.name === TYPED));
    });
    await step("follows another tab", async () => {
      const other = await browser.tab();
      await other.open(`${site.url}#/piece`);
      await other.wait(ready);
      await nameIs(other, TYPED);
      await other.front();
      // What comes late moves the field, and a click would miss it.
      await other.wait(scriptsAreThere);
      await other.eval(photosAreRead);
      await other.type("#piece\\.name", "From the other tab");
      await nameIs(other, "From the other tab");
      await tab.front();
      await nameIs(tab, "From the other tab");
      await other.close();
      await tab.front();
    });
    await step("marks trade words, and never scrolls sideways", async () => {
      await go(tab, "money");
      assert.match(await tab.eval(() => getComputedStyle(document.querySelector(".term")).textDecorationLine), /underline/);
      for (const screen of ["", "look", "condition", "money", "counsel", "sheet/file"]) {
        await go(tab, screen);
        for (const width of WIDTHS) {
          await tab.size(width, 800);
          // A window cannot be as narrow as that in every engine.
          await tab.wait((wanted) => Math.abs(innerWidth - wanted) < 60, width);
          const [whole, shown] = await tab.eval(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
          assert.ok(whole <= shown, `${screen || "shelf"} is ${whole} wide in ${shown}`);
        }
      }
      await tab.size(1100, 800);
    });
    await step("keeps a photo", async () => {
      await go(tab, "condition");
      const chooser = '.leaf ~ part-photos input, part-photos input[type="file"]';
      await tab.wait((it) => document.querySelector(it) !== null, chooser);
      await tab.choose(chooser, join(ROOT, "www/icon-512.png"));
      const shown = () => document.querySelector(".photos img")?.naturalWidth;
      assert.equal(await tab.wait(shown), 512);
      assert.match(await tab.eval(() => document.querySelector("part-photos").textContent), /The photo is kept\./);
      await tab.reload();
      assert.equal(await tab.wait(shown), 512);
    });
    await step("saves everything as a file, and opens files", async () => {
      await go(tab, "");
      assert.match(await tab.text(), /The browser has (promised|made no promise)/);
      await tab.eval(() => {
        const made = URL.createObjectURL;
        URL.createObjectURL = (blob) => {
          if (blob.type === "application/json") blob.text().then((text) => (window.saved = text));
          return made.call(URL, blob);
        };
        [...document.querySelectorAll("shelf-keeping button")].find((it) => it.textContent === "Save the whole shelf as a file").click();
      });
      const { cases, photos } = JSON.parse(await tab.wait(() => window.saved));
      assert.equal(cases.length, (await tab.eval(storedIn)).length);
      assert.equal(photos.length, 1);
      for (const [kind, mark] of [["utf16le", "\ufeff"], ["utf8", ""]]) {
        const text = await readFile(join(ROOT, "tests/files/case-1.json"), "utf8");
        const file = join(folder, `${engine}-${kind}.json`);
        await writeFile(file, mark + text.replace("Tray of the first version", `Tray in ${kind}`).replace(/"kept": ?\{[^}]*\},?/, ""), kind);
        await go(tab, "");
        await tab.choose("#file", file);
        await tab.wait(() => location.hash === "#/counsel");
        await tab.wait((name) => document.querySelector("main").textContent.includes(name), `Tray in ${kind}`);
      }
    });
    await step("works with the server stopped", async () => {
      await site.close();
      for (const screen of ["counsel", "treatments", "sheet/client", "closer", "plan"]) {
        await go(tab, screen);
        await tab.reload();
        await tab.wait(ready);
        assert.doesNotMatch(await tab.text(), failed, screen);
      }
    });
    await step("says nothing went wrong", () => assert.deepEqual(browser.errors, []));
  } finally {
    await browser.close();
    await site.close().catch(() => {});
  }
}

test("the job in every engine", { concurrency: CHOSEN.length }, async (t) => {
  await Promise.all(CHOSEN.map((engine) => t.test(engine, (inner) => job(inner, engine))));
});

test("every engine says the same", { skip: CHOSEN.length < 2 }, () => {
  const [first, ...others] = CHOSEN;
  assert.ok(Object.keys(said[first]).length > 30);
  for (const engine of others) {
    for (const [screen, text] of Object.entries(said[first])) assert.equal(said[engine][screen], text, `${engine} on ${screen}`);
  }
});
