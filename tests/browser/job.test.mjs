// The whole job by keyboard: from an empty shelf to a reasoned answer and its sheet, and everything again after a
// reload.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";
import { check, choose, tabTo, typeInto } from "./keyboard.mjs";

/** Follows a link of the navigation, or the next step, by keyboard. */
async function follow(page, name) {
  await tabTo(page, page.getByRole("link", { name }).first());
  await page.keyboard.press("Enter");
}

browserTest("an owner gets from an empty shelf to the counsel by keyboard", async ({ page, go }) => {
  await go("#/");
  await typeInto(page, page.getByLabel("What do you call it?"), "Tray from the attic");
  await choose(page, page.getByLabel("What is it?"), "Tray");
  await tabTo(page, page.getByRole("button", { name: "Start this piece" }));
  await page.keyboard.press("Enter");

  // Piece
  await page.waitForURL(/#\/piece/);
  await eventually(async () => assert.equal(await page.getByLabel("What do you call it?").inputValue(), "Tray from the attic"));
  await typeInto(page, page.getByLabel("Not after"), "1840");
  await check(page, page.getByRole("radio", { name: "Sell it", exact: true }).locator("xpath=ancestor::fieldset"), "Sell it");

  // Look
  await follow(page, /^Look/);
  await page.waitForURL(/#\/look/);
  const wear = page.locator("details").filter({ hasText: "Where it has worn" }).first();
  await tabTo(page, wear.locator("summary").first());
  await page.keyboard.press("Enter");
  const copper = wear.getByRole("group", { name: /Copper showing through/ });
  await check(page, copper, "Seen");
  const edges = page.locator("details").filter({ hasText: "Edges and rim" }).first();
  await tabTo(page, edges.locator("summary").first());
  await page.keyboard.press("Enter");
  await check(page, edges.getByRole("group", { name: /Copper between two layers/ }), "Seen");
  await check(page, edges.getByRole("group", { name: /Silver wire along the edge/ }), "Seen");
  await page.locator("#main").getByText(/fused plate \(old Sheffield plate\)/i).first().waitFor();

  // Condition
  await follow(page, /^Condition/);
  await page.waitForURL(/#\/condition/);
  await check(page, page.getByRole("group", { name: "Base metal showing through" }), "Much: about 20 in 100");

  // Money
  await follow(page, /^Money/);
  await page.waitForURL(/#\/money/);
  await typeInto(page, page.getByLabel("Likely"), "400");
  await typeInto(page, page.getByRole("group", { name: "Full replating" }).getByLabel("Price asked"), "450");

  // Counsel
  await follow(page, /^Advice/);
  await page.waitForURL(/#\/counsel/);
  await page.getByText(/^Leave it as it is.*\. Replating \(450 in your currency, as quoted\) is ruled out by what you recorded/).waitFor();
  await page.getByText(/^Clear: it does as well as any option in .* of 100 cases/).waitFor();
  // A folded one may come first.
  await page.getByText(/They decide, not this tool\./).filter({ visible: true }).first().waitFor();

  // All treatments
  await follow(page, /^Treatments/);
  await page.waitForURL(/#\/treatments/);
  await page.getByRole("heading", { name: "Full replating", exact: true }).waitFor();

  // A sheet to hand on
  await follow(page, /^Papers/);
  await page.waitForURL(/#\/sheet\//);
  const sheet = page.locator(".paper");
  await sheet.getByText("Tray from the attic").first().waitFor();
  await sheet.getByText(/They decide, not this tool\./).first().waitFor();

  // After a reload everything is still there, and on the shelf.
  await page.waitForTimeout(500);
  await page.reload();
  await sheet.getByText("Tray from the attic").first().waitFor();
  await go("#/piece");
  await eventually(async () => assert.equal(await page.getByLabel("What do you call it?").inputValue(), "Tray from the attic"));
  await eventually(async () => assert.equal(await page.getByLabel("Not after").inputValue(), "1840"));
  await eventually(async () => assert.ok(await page.getByRole("radio", { name: "Sell it", exact: true }).isChecked()));
  await go("#/look");
  await wear.locator("summary").first().click();
  await eventually(async () => assert.ok(await copper.getByRole("radio", { name: "Seen", exact: true }).isChecked()));
  await go("#/condition");
  await eventually(async () => assert.ok(await page.getByRole("radio", { name: "Much: about 20 in 100" }).isChecked()));
  await go("#/money");
  await eventually(async () => assert.equal(await page.getByLabel("Likely").inputValue(), "400"));
  await eventually(async () => assert.equal(await page.getByRole("group", { name: "Full replating" }).getByLabel("Price asked").inputValue(), "450"));
  await go("#/counsel");
  await page.getByText(/^Leave it as it is\. Replating \(450 in your currency, as quoted\) is ruled out by what you recorded/).waitFor();
  await go("#/");
  await page.getByText("Tray from the attic").first().waitFor();
});

browserTest("every screen puts the focus on its heading and names itself", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The cake basket/ }).click();
  const titles = new Set();
  for (const screen of ["piece", "look", "condition", "money", "counsel"]) {
    const before = await page.title();
    await go(`#/${screen}`);
    // The heading of the previous screen has the focus until the new one is rendered.
    await page.waitForFunction((before) => document.title !== before, before);
    await eventually(async () => assert.equal(await page.getByRole("heading", { level: 1 }).count(), 1));
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
    titles.add(await page.title());
  }
  assert.equal(titles.size, 5, "each screen has a different title");
});
