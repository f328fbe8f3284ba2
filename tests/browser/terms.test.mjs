// Trade words show their meaning: by keyboard, by pointer, on a phone, and to screen readers.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";
import { tabTo } from "./keyboard.mjs";

const meaning = (page) => page.locator(".meaning");

/** Opens a worked example on a screen. */
async function open(page, go, example, screen) {
  await go("#/");
  await page.getByRole("button", { name: new RegExp(`Open a copy of: ${example}`) }).click();
  await page.waitForURL(/#\/./);
  await go(screen);
  await page.locator(".term").filter({ visible: true }).first().waitFor();
}

/** Checks that the meaning is shown and fits inside the window. */
async function isShownWhole(page, words) {
  await meaning(page).waitFor();
  await eventually(async () => assert.equal(await meaning(page).innerText(), words));
  const box = await meaning(page).boundingBox();
  const { width, height } = page.viewportSize();
  assert.ok(box.x >= 0 && box.x + box.width <= width, `across: ${JSON.stringify(box)}`);
  assert.ok(box.y >= 0 && box.y + box.height <= height, `down: ${JSON.stringify(box)}`);
}

for (const screen of ["#/look", "#/counsel"]) {
  browserTest(`a word is reached by keyboard and shows its meaning: ${screen}`, async ({ page, context, go, checkAccess }) => {
    await open(page, go, "The worn tray", screen);
    const term = page.locator(".term").filter({ visible: true }).first();
    await tabTo(page, term);
    const said = await term.getAttribute("aria-description");
    assert.ok(said.endsWith("."));
    await isShownWhole(page, said);
    await checkAccess(`${screen} with a meaning shown`);

    // Screen readers get the meaning as the word's description.
    const tools = await context.newCDPSession(page);
    const { result } = await tools.send("Runtime.evaluate", { expression: "document.activeElement" });
    const { nodes } = await tools.send("Accessibility.getPartialAXTree", { objectId: result.objectId, fetchRelatives: false });
    assert.equal(nodes[0].description?.value, said);

    // It closes on Escape without losing the focus, and when the focus moves on.
    await page.keyboard.press("Escape");
    await meaning(page).waitFor({ state: "hidden" });
    assert.ok(await term.evaluate((element) => element === document.activeElement));
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Tab");
    await meaning(page).waitFor();
    await page.keyboard.press("Shift+Tab");
    await meaning(page).waitFor({ state: "hidden" });
  });
}

browserTest("the pointer may rest on a word and on its meaning, and print shows neither mark nor box", async ({ page, go }) => {
  await open(page, go, "The worn tray", "#/counsel");
  const term = page.locator(".term").filter({ visible: true }).first();
  await term.hover();
  await isShownWhole(page, await term.getAttribute("aria-description"));
  await meaning(page).hover();
  await page.waitForTimeout(500);
  await eventually(async () => assert.ok(await meaning(page).isVisible(), "it stays to be read"));
  await page.emulateMedia({ media: "print" });
  await eventually(async () => assert.ok(!(await meaning(page).isVisible())));
  await page.emulateMedia({ media: "screen" });
  await page.locator("h1").hover();
  await meaning(page).waitFor({ state: "hidden" });
});

browserTest("each word is marked once on a screen, never in a heading or a control", async ({ page, go }) => {
  await open(page, go, "The worn tray", "#/counsel");
  for (const screen of ["piece", "look", "condition", "money", "counsel", "treatments", "bench", "plan"]) {
    await go(`#/${screen}`);
    await page.waitForTimeout(400);
    const meanings = await page.locator(".term").evaluateAll((all) => all.map((term) => term.getAttribute("aria-description")));
    assert.equal(new Set(meanings).size, meanings.length, screen);
    await eventually(async () => assert.equal(await page.locator(":is(h1, h2, h3, a, button, label, legend, summary, caption, svg) .term").count(), 0, screen));
  }
});

browserTest("on a phone a touch shows the meaning within the screen", { viewport: { width: 320, height: 640 }, hasTouch: true }, async ({ page, go }) => {
  await open(page, go, "The worn tray", "#/counsel");
  const terms = page.locator(".term").filter({ visible: true });
  await eventually(async () => assert.ok((await terms.count()) > 2, "there are words to touch"));
  const count = Math.min(await terms.count(), 12);
  for (let place = 0; place < count; place += 1) {
    // The box of the last word may lie over this one; a touch closes it.
    if (await meaning(page).isVisible()) await meaning(page).tap();
    await terms.nth(place).tap();
    await isShownWhole(page, await terms.nth(place).getAttribute("aria-description"));
    const { wide, room } = await page.evaluate(() => ({ wide: document.documentElement.scrollWidth, room: document.documentElement.clientWidth }));
    assert.ok(wide <= room, `nothing scrolls sideways: ${wide} > ${room}`);
  }
});

browserTest("marking new words leaves a half-typed field alone", async ({ page, go }) => {
  await open(page, go, "The worn tray", "#/money");
  const likely = page.getByLabel("Likely");
  await likely.fill("");
  await likely.pressSequentially("4x", { delay: 60 });
  await page.getByText(/is not a number/).first().waitFor();
  await likely.press("Backspace");
  await likely.pressSequentially("20", { delay: 60 });
  await page.waitForTimeout(700);
  await eventually(async () => assert.equal(await likely.inputValue(), "420"));
  assert.ok(await likely.evaluate((element) => element === document.activeElement));
});
