// Going back returns to the place and the scroll it was left at, also after a jump within a screen and after a reload; an
// undo says what it undid.

import assert from "node:assert/strict";
import { browserTest, eventually, settled } from "./harness.mjs";

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

const scrolled = (page) => page.evaluate(() => window.scrollY);
/** Longer than it takes until a scroll is noted. */
const rest = (page) => page.waitForTimeout(300);

async function openTray(page, go) {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await page.waitForURL(/#\/counsel/);
  await page.getByRole("heading", { level: 1 }).waitFor();
  await settled(page);
}

browserTest("Back returns to a screen where it was left, with the folds that were open", PHONE, async ({ page, go }) => {
  await openTray(page, go);
  const fold = page.locator("details").filter({ has: page.locator("#options-title") });
  await fold.locator("summary").first().click();
  await page.evaluate(() => window.scrollTo(0, 2_400));
  await rest(page);
  const left = await scrolled(page);
  assert.ok(left > 2_000, `${left}`);
  await page.evaluate(() => (location.hash = "#/money"));
  await page.getByLabel("Likely").waitFor();
  await eventually(async () => assert.equal(await scrolled(page), 0, "a new screen begins at its top"));
  await page.goBack();
  await page.waitForURL(/#\/counsel/);
  await eventually(async () => {
    assert.ok(await fold.evaluate((it) => it.open), "the fold is open again");
    assert.ok(Math.abs((await scrolled(page)) - left) < 3, `${await scrolled(page)} instead of ${left}`);
  });
  await page.goForward();
  await page.getByLabel("Likely").waitFor();
  await eventually(async () => assert.ok((await scrolled(page)) < 3));
});

browserTest("Back returns from a jump within a screen, and a reload stays where it was", PHONE, async ({ page, go }) => {
  await openTray(page, go);
  const door = page.locator(".owner-lines a").filter({ hasText: /avoid|Safety|cautions/i }).first();
  await door.scrollIntoViewIfNeeded();
  await rest(page);
  const left = await scrolled(page);
  await door.click();
  await eventually(async () => assert.ok(Math.abs((await scrolled(page)) - left) > 200, "the door jumps"));
  await rest(page);
  const jumped = await scrolled(page);
  await page.goBack();
  await eventually(async () => assert.ok(Math.abs((await scrolled(page)) - left) < 3, `${await scrolled(page)} instead of ${left}`));
  assert.match(page.url(), /#\/counsel/);
  await page.goForward();
  await eventually(async () => assert.ok(Math.abs((await scrolled(page)) - jumped) < 3));
  await rest(page);
  await page.reload();
  await page.getByRole("heading", { level: 1 }).waitFor();
  await eventually(async () => assert.ok(Math.abs((await scrolled(page)) - jumped) < 3, `${await scrolled(page)} instead of ${jumped}`));
});

browserTest("choosing a part brings its questions into view, and Back returns to the list", PHONE, async ({ page, go }) => {
  await openTray(page, go);
  await go("#/condition");
  const part = page.locator(".part-button").filter({ hasText: "Handle" }).first();
  await part.scrollIntoViewIfNeeded();
  await rest(page);
  await part.click();
  const title = page.locator("#part-title").filter({ hasText: "Handle" });
  await title.waitFor();
  await eventually(async () => {
    const { y } = await title.boundingBox();
    assert.ok(y > -2 && y < 844 / 2, `the questions begin at ${y}`);
  });
  await rest(page);
  await page.goBack();
  // The drawing of the chosen part may have grown meanwhile, so the button counts and not the scroll.
  await eventually(async () => {
    const { y } = await part.boundingBox();
    assert.ok(y > 0 && y < 844, `the button that was pressed is at ${y}`);
  });
});

browserTest("an undo and a redo say what they changed", async ({ page, go }) => {
  await openTray(page, go);
  await go("#/condition");
  const stage = page.locator(".swatches input:not(:checked):not([value=''])").first();
  await stage.check();
  await settled(page);
  const said = page.locator("#undone");
  assert.equal(await said.innerText(), "");
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await eventually(async () => assert.match(await said.innerText(), /^Undone\. \w+: Tarnish: /));
  const undone = await said.innerText();
  await page.getByRole("button", { name: "Redo", exact: true }).click();
  await eventually(async () => {
    assert.match(await said.innerText(), /^Done again\. \w+: Tarnish: /);
    assert.notEqual(await said.innerText(), undone);
  });
});
