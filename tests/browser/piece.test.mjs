// The drawn piece: its parts can be clicked, and the list beside it does the same by keyboard.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";

const FORMS = ["coffee_pot", "teapot", "tankard", "tray", "candlestick", "basket", "tureen", "sauceboat", "cooler", "box", "other"];

browserTest("the list and the drawing select the same part", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await go("#/condition");
  const drawing = page.locator(".piece-drawing");
  await drawing.waitFor();
  const buttons = page.locator(".part-button");
  const names = await buttons.locator(".part-name").allInnerTexts();
  assert.ok(names.length >= 5, names.join(", "));
  for (const [at, name] of names.entries()) {
    await buttons.nth(at).focus();
    await page.keyboard.press("Enter");
    await page.locator("#part-title").filter({ hasText: name }).waitFor();
    assert.equal(await buttons.nth(at).getAttribute("aria-pressed"), "true");
    await eventually(async () => assert.equal(await page.locator(".part-button[aria-pressed=true]").count(), 1));
  }
  await eventually(async () => assert.equal(await drawing.locator(".is-lit").count() > 0, true, "the part is lit in the drawing"));
});

browserTest("every form is drawn with visible metal", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  for (const form of FORMS) {
    await go("#/piece");
    const list = page.locator("select").filter({ has: page.locator(`option[value="${form}"]`) });
    await list.selectOption(form);
    await go("#/condition");
    const paths = page.locator(".piece-drawing path");
    await paths.first().waitFor();
    const box = await page.locator(".piece-drawing").boundingBox();
    await eventually(async () => assert.ok(await paths.count() > 5 && box.width > 150 && box.height > 80, `${form}: ${JSON.stringify(box)}`));
  }
});

browserTest("the stages of tarnish have colours and labels, and can be chosen by keyboard", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await go("#/condition");
  const stages = page.locator(".swatches input[type=radio]");
  const colours = await stages.evaluateAll((inputs) =>
    inputs.filter((i) => i.value).map((i) => getComputedStyle(i.nextElementSibling, "::before").background),
  );
  assert.equal(new Set(colours).size, 8, "eight stages, eight colours");
  await page.locator('.swatches input[value="brown"]').focus();
  await page.keyboard.press("ArrowRight");
  assert.equal(await page.locator(".swatches input:checked").getAttribute("value"), "purple");
  await page.locator(".part-button[aria-pressed=true]").getByText(/purple tarnish/i).waitFor();
});
