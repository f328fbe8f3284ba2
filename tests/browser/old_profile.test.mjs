// A profile that an earlier build left in a browser opens completely: nothing stored is lost, and nothing untouched
// is rewritten.

import assert from "node:assert/strict";
import { browserTest, eventually, settled, started } from "./harness.mjs";
import { layProfile, openAt, savedProfile, takeProfile } from "./profile.mjs";

const PROFILE = await savedProfile("profile-1.json");
const SOON_AFTER = PROFILE.written_at + 3_600_000;

const CASES = PROFILE.databases.find(({ name }) => name === "leavewell").stores[0].records;
const MIRRORS = Object.entries(PROFILE.localStorage).filter(([key]) => key.startsWith("leavewell.mirror.")).map(([, text]) => JSON.parse(text));

const whole = (text) => (text.$lines ? text.$lines.join("\n") : text);
const parsed = ({ text }) => JSON.parse(whole(text));
const named = (records, name) => records.find((record) => whole(record.text).includes(JSON.stringify(name)));

const POT = named(CASES, "Coffee pot from the sideboard");
const TUREEN = named(CASES, "Large tureen, copper showing");
const TRAY = named(CASES, "Worn tray from the sale room");
const BASKET = named(CASES, "Cake basket from the dining room");
const TORN = CASES.find(({ text }) => !whole(text).endsWith("}"));
// Text typed into two tabs that died. One burst belongs to the pot as stored, the other to a tureen that has changed
// since.
const POT_BURST = MIRRORS.find(({ id }) => id === POT.id);
const TUREEN_BURST = MIRRORS.find(({ id }) => id === TUREEN.id);

/** A test in a browser with the old profile, before the app opens. */
function profileTest(name, body) {
  browserTest(name, async ({ page, context, site, ...rest }) => {
    await openAt(context, SOON_AFTER);
    await layProfile(context, site, PROFILE);
    await body({ page, context, site, ...rest });
  });
}

/** The current profile, after the page has written everything and closed. */
async function profileAfter(page, context, site) {
  await page.waitForTimeout(1_000);
  await page.close();
  return takeProfile(context, site);
}

const casesOf = (profile) => profile.databases.find(({ name }) => name === "leavewell").stores[0].records;
const form = ({ databases }) => databases.map(({ stores, ...database }) => ({ ...database, stores: stores.map(({ records, ...store }) => store) }));
const photosOf = ({ databases }) => databases.filter(({ name }) => name.startsWith("leavewell-photos-"));


/** A record as stored. Starting the app may rewrite the shelf line of the last open piece, but never its text. */
function asKept({ entry, revision, ...record }) {
  return record.id === PROFILE.localStorage["leavewell.open"] ? record : { ...record, entry, revision };
}

async function openPiece(page, go, button) {
  await go("#/");
  await page.getByRole("button", { name: button }).click();
  await page.waitForURL(/#\/./);
}

/** The value of the control with this path, even inside a fold. */
const inField = (page, path) => page.locator(`[id='${path}']`).first().inputValue();

/** Waits until the controls with these paths have these values. */
async function holds(page, fields) {
  await page.locator(`[id='${Object.keys(fields)[0]}']`).first().waitFor({ state: "attached" });
  await settled(page);
  const found = {};
  for (const path of Object.keys(fields)) found[path] = await inField(page, path);
  assert.deepEqual(found, fields);
}

profileTest("every piece, the bin, the bursts and the settings of an old profile are present", async ({ page, go, site, context }) => {
  await go("#/");
  const titles = await page.locator(".shelf-line h3").allInnerTexts();
  for (const { entry, binned, ...record } of CASES) {
    if (binned || [POT.id, TORN.id].includes(record.id)) continue;
    assert.ok(titles.includes(parsed(record).piece.name), parsed(record).piece.name);
  }
  assert.ok(titles.includes("A record that cannot be read"));
  // The tureen changed elsewhere after its burst: both versions stay, and the page says so.
  const other = JSON.parse(TUREEN_BURST.text).piece.name;
  assert.ok(titles.includes(other), `${other} among ${titles}`);
  await page.getByText("A tab was closed before its last changes were kept").waitFor();
  await page.getByRole("button", { name: "Put back: Cake basket from the dining room" }).waitFor();
  await page.getByText(/^It stays here for 30 more days\.$/).waitFor();
  assert.equal(await page.locator("html").getAttribute("data-theme"), "light");

  const after = await profileAfter(page, context, site);
  assert.deepEqual(form(after), form(PROFILE), "databases, versions, stores and keys");
  assert.deepEqual(photosOf(after), photosOf(PROFILE));
  const now = casesOf(after);
  assert.equal(now.length, CASES.length + 1, "one copy was made, of the burst that had no place");
  for (const record of CASES) {
    const { id } = record;
    const found = now.find((one) => one.id === id);
    if (id === POT.id) assert.equal(whole(found.text), POT_BURST.text);
    else assert.deepEqual(asKept(found), asKept(record), `${record.entry?.name ?? id} is as it was`);
  }
  const copy = now.find(({ id }) => !CASES.some((record) => record.id === id));
  assert.equal(whole(copy.text), TUREEN_BURST.text);
  const { localStorage: texts } = PROFILE;
  for (const [key, text] of Object.entries(texts)) {
    if (key.startsWith("leavewell.mirror.")) assert.ok(!(key in after.localStorage), "a burst that is in the database is not kept twice");
    else assert.equal(after.localStorage[key], text, key);
  }
});

profileTest("every screen shows what was typed, and the photos", async ({ page, go }) => {
  // The pot continues from its burst. Its shelf line may show that only once the piece is opened.
  await openPiece(page, go, /^Open: Coffee pot/);
  await page.locator(".answer-sentence").waitFor();
  await eventually(async () => assert.ok(await page.getByRole("radio", { name: "A restorer" }).isChecked(), "who reads"));

  await go("#/piece");
  await eventually(async () => assert.equal(await page.getByLabel("What do you call it?").inputValue(), "Coffee pot, top shelf"));
  await eventually(async () => assert.equal(await page.getByLabel("Not before").inputValue(), "1775"));
  await eventually(async () => assert.equal(await page.getByLabel("Not after").inputValue(), "1805"));
  await eventually(async () => assert.ok(await page.getByRole("radio", { name: "Sell it", exact: true }).isChecked()));

  await go("#/look");
  const edges = page.locator("details").filter({ hasText: "Edges and rim" }).first();
  await edges.locator("summary").first().click();
  await eventually(async () => assert.ok(await edges.getByRole("group", { name: /Copper between two layers/ }).getByRole("radio", { name: "Seen", exact: true }).isChecked()));

  await go("#/condition");
  await holds(page, { "looked.by": "The owner", "looked.why": "To decide on the seam", "looked.described": "Tall pot, gadroon border" });
  await page.getByText("Before the move").first().waitFor({ state: "attached" });
  for (const [part, photos] of [["Body", 2], ["Spout", 1]]) {
    await page.locator(".part-button").filter({ hasText: part }).first().click();
    const images = page.locator(".photos img");
    await page.waitForFunction((count) => document.querySelectorAll(".photos img").length === count, photos);
    for (const image of await images.all()) {
      assert.deepEqual(await image.evaluate((img) => img.decode().then(() => [img.naturalWidth, img.naturalHeight])), [48, 36]);
    }
  }

  await go("#/money");
  await holds(page, {
    "market.likely": "460",
    "market.fees.commission_pct": "17.5",
    "comparables[0].price": "420",
    "comparables[0].note": "Same form, one repair",
    "comparables[1].left_out": "yes",
    "comparables[2].price": "£1,150",
  });
  await eventually(async () => assert.equal(await page.getByRole("group", { name: "Full replating" }).getByLabel("Price asked").inputValue(), "420"));

  await go("#/treatments");
  await holds(page, Object.fromEntries(Object.entries(parsed(POT).catalogue).map(([id, answer]) => [`catalogue.${id}`, answer])));
  await go("#/done");
  await holds(page, { "done[0].by": "The owner", "done[0].on": "2019", "done[1].on": "about 1950", "done[1].materials": "solder_unknown" });
  await go("#/figures");
  await holds(page, { "overrides.{fee.lot}.reason": "Our own sale room" });
  await page.getByText("New pieces on this device begin with your figures").waitFor();
  await go("#/sheet/file");
  await page.locator(".paper").getByText("Spout holds, seam grey").first().waitFor();

  await openPiece(page, go, "Open: Worn tray from the sale room");
  await go("#/condition");
  await page.locator(".part-button").filter({ hasText: "Border" }).click();
  await page.locator(".photos img").waitFor();
  await openPiece(page, go, "Open: Sauceboat, just begun");
  await go("#/piece");
  await eventually(async () => assert.equal(await page.getByLabel("Not before").inputValue(), "about 1790", "what is no year stays as typed"));
});

profileTest("every piece of an old profile can be weighed", async ({ page, go }) => {
  await go("#/");
  for (const record of CASES.filter(({ id }) => id !== TORN.id)) {
    const report = await page.evaluate((text) => window.leavewell.weigh_json(text).then(JSON.parse), whole(record.text));
    assert.ok(report.counsel, record.entry?.name ?? record.id);
    assert.ok(report.options.length > 0);
  }
});

profileTest("the plan keeps its limits, the piece left out and the one that waits", async ({ page, go }) => {
  await go("#/plan");
  await page.getByText(/With £900 to spend and 12 hours of work/i).first().waitFor();
  const limits = JSON.parse(PROFILE.localStorage["leavewell.plan"]);
  await eventually(async () => assert.equal(await page.getByLabel("Money to spend").inputValue(), limits.money));
  await eventually(async () => assert.equal(await page.getByLabel("Hours of work").inputValue(), limits.hours));
  await page.getByText(/^Teapot that leaks is left out\./).first().waitFor({ state: "attached" });
  await page.getByText(/^Large tureen, copper showing waits for Coffee pot, top shelf\./).waitFor({ state: "attached" });
});

profileTest("the piece in the bin comes back with its photo", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: "Put back: Cake basket from the dining room" }).click();
  await openPiece(page, go, "Open: Cake basket from the dining room");
  await go("#/condition");
  await page.locator(".part-button").filter({ hasText: "Edges" }).click();
  await page.locator(".photos img").waitFor();
  assert.equal(parsed(BASKET).piece.name, "Cake basket from the dining room");
});

profileTest("a change and a reload affect only that piece", async ({ page, go, site, context }) => {
  await openPiece(page, go, "Open: Worn tray from the sale room");
  await go("#/piece");
  await page.getByLabel("Not after").fill("1825");
  await page.waitForTimeout(1_000);
  await page.reload();
  await started(page);
  await eventually(async () => assert.equal(await page.getByLabel("Not after").inputValue(), "1825"));

  const after = await profileAfter(page, context, site);
  assert.deepEqual(form(after), form(PROFILE));
  assert.deepEqual(photosOf(after), photosOf(PROFILE));
  for (const record of CASES) {
    const found = casesOf(after).find(({ id }) => id === record.id);
    if (record.id === POT.id) continue;
    if (record.id !== TRAY.id) {
      assert.deepEqual(asKept(found), asKept(record));
      continue;
    }
    const { piece: { to_year: now }, ...rest } = parsed(found);
    const { piece: { to_year: before, ...piece }, ...kept } = parsed(record);
    assert.notEqual(now, before);
    assert.equal(String(now), "1825");
    assert.deepEqual({ ...parsed(found).piece, to_year: undefined }, { ...piece, to_year: undefined });
    assert.deepEqual({ ...rest, piece: undefined }, { ...kept, piece: undefined });
    assert.equal(found.made, record.made);
    assert.ok(found.revision > record.revision);
  }
});
