// Writes tests/files/profile-1.json: what a browser holds after a person has used the build of commit f2c1c5e.
//
//   node tests/browser/write_profile.mjs DIST FILE
//
// DIST is the site built from that commit. The script drives its screens, so it does not run on later builds; it is
// kept to show how the profile came about, and to write it again from a checkout of that commit.
//
// The person came with records of the first version, which lay in localStorage. They open a file, copy examples,
// start a piece, take photos, bin a piece, choose a reader and a theme, set limits for the plan, and lose two tabs
// while typing. All pieces are invented.

import { readFile, writeFile } from "node:fs/promises";
import { browser, serve, started } from "./harness.mjs";
import { layProfile, takeProfile } from "./profile.mjs";

const [dist, file] = process.argv.slice(2);

/** A record with something in every part of it, as a file that was saved elsewhere. */
const WHOLE = {
  format: "leavewell-case",
  version: 1,
  piece: {
    name: "Coffee pot from the sideboard",
    form: "coffee_pot",
    from_year: 1775,
    to_year: 1805,
    height_mm: 287.5,
    soldered_vessel: true,
    rare: false,
    documented: true,
  },
  findings: [
    { id: "C06", answer: "seen", part: "foot" },
    { id: "C08", answer: "seen", part: "border" },
    { id: "C09", answer: "absent" },
    { id: "C13", answer: "seen", part: "shield" },
    { id: "S02", answer: "unsure", part: "body" },
    { id: "S08", answer: "absent" },
    { id: "P01", answer: "absent" },
    { id: "M03", answer: "absent" },
  ],
  measures: {
    density: { in_air_g: 612.4, in_water_g: 541.1, water_c: 19, readable_g: 0.1, organic: "yes" },
    xrf: { spot: "sound", silver_pct: 96.2, copper_pct: 3.1 },
  },
  parts: [
    { part: "body", bleed: 0.03, tarnish: "brown", joint: "sound", dents: "minor", engraving: "softened", xrf_um: "14 15.5", xrf_error_um: 2, note: "Thin above the seam." },
    { part: "spout", joint: "grey_repair", joint_distance_mm: 22, lead: "unknown" },
    { part: "foot", bleed: { low: 0.02, likely: 0.05, high: 0.1 }, replaced: "doubtful", fill: "sealed" },
    { part: "cover", bleed: "slight", dents: "none", split: "crease" },
    { part: "handle", joint: "sound", note: "Dark wood, old." },
    { part: "border", mount: "grey_wear", loss: "small" },
    { part: "interior", interior: "tinned", corrosion: "none", lacquer: "none" },
  ],
  aim: { goal: "sell", food: true, store_food: false, household_child_or_pregnant: true, doer: "workshop", asked: "T14a", weights: { money: 40, originality: 35 } },
  market: {
    low: 280,
    likely: 460,
    high: 800,
    currency: "GBP",
    route: "auction",
    damping_pct: 60,
    fees: { commission_pct: 17.5, vat_pct: 20, lot: 15 },
    mix: { collector: 50, decorator: 30, user: 20 },
  },
  flaws: { monogram_later: "yes", part_replaced: "no" },
  consents: { loss: true, photo: true, disclose: false },
  comparables: [
    { price: 420, what: "hammer", on: "2025-03", similar: "close", note: "Same form, one repair" },
    { price: 690, what: "retail", on: "2024", kind: "replated", similar: "loose", left_out: "yes" },
  ],
  quotes: [
    { treatment: "T14a", low: 350, likely: 420, high: 560, post: 25 },
    { treatment: "T08", likely: 120, by: "A workshop in the next town", deposit: 30 },
  ],
  overrides: { "fee.lot": { value: 31, reason: "Our own sale room" } },
  earlier: [{ looked: { on: "2024-02-11", by: "The owner" }, note: "Before the move", parts: [{ part: "body", bleed: "none", tarnish: "bright" }] }],
  done: [{ what: "T02", by: "The owner", on: "2019", materials: "none", before: "Dull all over", after: "Bright" }],
  catalogue: {
    hard_repair: "yes",
    insulator: "no",
    fire_gilding: "no",
    organic: "yes",
    dark_work: "no",
    ammonia: "yes",
    failing_fill: "no",
  },
  looked: { on: "2026-05-30", by: "The owner", light: "North window", aids: "Loupe, 10 times", number: "SB 7", described: "Tall pot, gadroon border" },
  asked_on: "2026-05-31",
  // What no version knows stays, to the digit.
  later_field: { kept_as: 1.5, list: [1, "two"] },
};

const site = await serve({ folder: dist });
const context = await (await browser()).newContext({ serviceWorkers: "block", viewport: { width: 1280, height: 900 } });
const page = await context.newPage();
const go = async (route, tab = page) => {
  await tab.goto(site.url + route);
  await started(tab);
};

const firstVersion = JSON.parse(await readFile(new URL("../files/device-1.json", import.meta.url), "utf8"));
await layProfile(context, site, { localStorage: firstVersion, databases: [] });
await go("#/");
await page.getByRole("heading", { name: "Tray of the first version" }).waitFor();

// A file, with what screens add to it.
// Digits as somebody may write them: a reader that goes through floats changes them.
const text = JSON.stringify(WHOLE, null, 2).replace('"kept_as": 1.5', '"kept_as": 1.50').replace('"damping_pct": 60', '"damping_pct": 60.0');
await page.locator("#file").setInputFiles({ name: "pot.json", mimeType: "application/json", buffer: Buffer.from(text) });
await page.waitForURL(/#\/counsel/);
await page.locator(".answer-sentence").waitFor();
await go("#/treatments");
await page.locator("[id='catalogue.protected_part']").evaluate((list) => list.closest("details")?.setAttribute("open", ""));
await page.locator("[id='catalogue.protected_part']").selectOption("no");
await go("#/done");
await type("done[1].by", "A restorer, name lost");
await type("done[1].on", "about 1950");
await page.locator("[id='done[1].materials']").selectOption("solder_unknown");
await type("done[1].after", "Spout holds, seam grey");
await go("#/money");
await type("comparables[2].price", "£1,150");
await type("comparables[2].on", "2026-01-17");
await go("#/condition");
await page.locator("details").filter({ has: page.getByRole("button", { name: "Keep a copy" }).or(page.locator("[id='looked.why']")) }).first().evaluate((fold) => fold.setAttribute("open", ""));
await type("looked.why", "To decide on the seam");
await photo("Body", "body", [200, 160, 90]);
await photo("Body", "body", [120, 120, 150]);
await page.getByRole("button", { name: "Count bare metal on it" }).first().click();
await page.keyboard.press("Space");
await page.keyboard.press("ArrowRight");
await page.keyboard.press("Space");
await page.getByRole("button", { name: "Use this count" }).click();
await page.getByText(/Counted: 2 of 80/).waitFor();
await photo("Spout", "spout", [90, 90, 90]);
await go("#/figures");
await page.getByRole("button", { name: "Begin new pieces with mine" }).click();

// Copies of examples.
for (const title of ["The copper tureen", "The leaking teapot", "The worn tray"]) {
  await go("#/");
  await page.getByRole("button", { name: `Open a copy of: ${title}` }).click();
  await page.locator(".answer-sentence").waitFor();
}
await go("#/condition");
await photo("Border", "border", [190, 170, 120]);

// One for the bin.
await go("#/");
await page.getByRole("button", { name: "Open a copy of: The cake basket" }).click();
await page.locator(".answer-sentence").waitFor();
await go("#/condition");
await photo("Edges", "edge", [220, 220, 210]);
await go("#/");
await page.getByLabel("Remove: Cake basket from the dining room", { exact: true }).click();
await page.getByRole("button", { name: "Put into the bin: Cake basket from the dining room" }).click();
await page.getByRole("button", { name: "Put back: Cake basket from the dining room" }).waitFor();

// One begun by hand, with a year that is none.
await page.getByLabel("What do you call it?").fill("Sauceboat, just begun");
await page.getByLabel("What is it?").selectOption("sauceboat");
await page.getByRole("button", { name: "Start this piece" }).click();
await page.waitForURL(/#\/piece/);
await page.getByLabel("Not before").fill("about 1790");
await page.getByLabel("Not after").fill("1830");
await page.locator("#theme").selectOption("light");

// The plan, with limits, a piece left out and one that waits for another.
await go("#/plan");
await page.locator(".leaf-answer").waitFor();
await page.getByLabel("Money to spend").fill("£900");
await page.getByLabel("Hours of work").fill("12");
await page.getByText(/With £900 to spend and 12 hours of work/i).first().waitFor();
await page.getByText("Leave pieces out, or let one wait").click();
const choose = (label, name) => page.getByLabel(label).evaluate((list, begins) => {
  list.value = [...list.options].find(({ text: words }) => words.startsWith(begins)).value;
}, name);
await choose("Leave this piece out", "Teapot that leaks");
await page.getByRole("button", { name: "Leave it out" }).click();
await choose("Work on this piece", "Large tureen");
await choose("only if there is work on this one", "Coffee pot");
await page.getByRole("button", { name: "Let it wait" }).click();
await page.getByRole("button", { name: /^Take this back: Large tureen.* waits for/ }).waitFor();

// The reader.
await go("#/");
await page.getByRole("button", { name: "Open: Coffee pot from the sideboard" }).click();
await page.locator(".answer-sentence").waitFor();
await page.getByRole("radio", { name: "A restorer" }).check();
await page.waitForTimeout(1_000);

// Two tabs die while somebody types. What the first one typed grew from the record as it is; the piece of the second
// one is changed in a third tab at the same time.
const [pot, tureen, beside] = [await context.newPage(), await context.newPage(), await context.newPage()];
await open(pot, "Coffee pot from the sideboard");
await open(tureen, "Large tureen, copper showing");
await open(beside, "Large tureen, copper showing");
for (const tab of [pot, tureen, beside]) await go("#/piece", tab);
await typeAndDie(pot, "Coffee pot, top shelf");
await typeAndDie(tureen, "Tureen typed in a tab that died");
await beside.getByLabel("Not after").fill("1935");
await beside.waitForTimeout(1_500);
for (const tab of [beside, page, pot, tureen]) await tab.close();

const about = "What a browser held after a person had used the build of commit f2c1c5e; written by tests/browser/write_profile.mjs. The pieces are invented.";
const profile = { about, written_at: Date.now(), ...(await takeProfile(context, site)) };
const mirrors = Object.entries(profile.localStorage).filter(([key]) => key.startsWith("leavewell.mirror."));
const bursts = mirrors.map(([, mirror]) => JSON.parse(JSON.parse(mirror).text).piece.name);
if (bursts.sort().join() !== "Coffee pot, top shelf,Tureen typed in a tab that died") throw new Error(`the kill came at the wrong moment, run it again: ${bursts}`);
await writeFile(file, `${JSON.stringify(profile, null, 1)}\n`);
await context.close();
await (await browser()).close();
await site.close();

async function type(path, words) {
  const field = page.locator(`[id='${path}']`);
  await field.evaluate((it) => {
    for (let fold = it.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.setAttribute("open", "");
  });
  await field.fill(words);
}

async function open(tab, name) {
  await go("#/", tab);
  await tab.getByRole("button", { name: `Open: ${name}` }).click();
  await tab.locator(".answer-sentence").waitFor();
}

/** Types, and kills the tab before the typing is written. */
async function typeAndDie(tab, words) {
  const field = tab.getByLabel("What do you call it?");
  await field.fill("");
  await field.focus();
  await tab.keyboard.type(words);
  // Long enough for the browser to take the mirror, not long enough for the app to write the record.
  await tab.waitForTimeout(100);
  const session = await context.newCDPSession(tab);
  await Promise.race([session.send("Page.crash").catch(() => {}), new Promise((resolve) => setTimeout(resolve, 500))]);
}

/** Takes a photo of a part in: a small picture of two colours. */
async function photo(label, part, colour) {
  await page.locator(".part-button").filter({ hasText: label }).first().click();
  const png = await page.evaluate(async ([red, green, blue]) => {
    const canvas = new OffscreenCanvas(48, 36);
    const ink = canvas.getContext("2d");
    ink.fillStyle = `rgb(${red} ${green} ${blue})`;
    ink.fillRect(0, 0, 48, 36);
    ink.fillStyle = "#b06040";
    ink.fillRect(8, 8, 12, 9);
    const blob = await canvas.convertToBlob({ type: "image/png" });
    return [...new Uint8Array(await blob.arrayBuffer())];
  }, colour);
  const before = await page.locator(".photos img").count();
  await page.locator(`#photo-${part}`).setInputFiles({ name: "photo.png", mimeType: "image/png", buffer: Buffer.from(png) });
  await page.waitForFunction((count) => document.querySelectorAll(".photos img").length === count, before + 1);
}
