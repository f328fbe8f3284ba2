// Faults, quotes and proposals: what is recorded of a part and a price is weighed, and shown back as typed.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";

async function start(page, go, name, form) {
  await go("#/");
  await page.getByLabel("What do you call it?").fill(name);
  await page.getByLabel("What is it?").selectOption({ label: form });
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
}

browserTest("a dent and its quote are answered as a choice", async ({ page, go, checkAccess }) => {
  await start(page, go, "Dented tray", "Tray or salver");
  await go("#/condition");
  await page.getByLabel("Dents").selectOption({ label: "Deep dents or out of shape" });
  await checkAccess("condition with a dent");
  await go("#/money");
  const undamaged = page.getByRole("region", { name: "What an undamaged one fetches" });
  await undamaged.getByLabel("Likely").fill("400");
  await undamaged.getByLabel("Currency").selectOption({ label: "Pounds (£)" });
  await page.getByRole("group", { name: "Dents taken out" }).getByLabel("Price asked").fill("65");
  await checkAccess("money with a quote");
  await go("#/counsel");
  await page.getByRole("heading", { name: "Fault by fault", exact: true }).click();
  const dent = page.locator(".fault").filter({ hasText: "Dents: body" });
  await dent.getByText(/Leave it, or dents taken out at £65, as quoted/).waitFor();
  const row = dent.locator("dl > div").filter({ hasText: "Dents taken out" });
  const said = await row.locator("dd").innerText();
  const word = said.split(".")[0];
  // The page of all treatments says the same word for the same state.
  await go("#/treatments");
  await page.getByText("Everything else that could be done").click();
  const listed = page.locator("section").filter({ has: page.getByRole("heading", { name: "Dents taken out", exact: true }) }).last();
  await listed.getByText(`${word}.`, { exact: true }).first().waitFor();
});

browserTest("one price for several treatments is kept and can be removed", async ({ page, go }) => {
  await start(page, go, "Loose pot", "Teapot");
  await go("#/money");
  await page.getByRole("button", { name: "Add a price for other work" }).click();
  const fresh = page.getByRole("group", { name: "A price for other work" });
  await fresh.getByText("Choose what it is for").click();
  await fresh.getByLabel("Dents taken out").check();
  const both = page.locator("fieldset.quote").first();
  await both.getByLabel("Pin, screw or glued fix").check();
  await both.getByLabel("Price asked").fill("120");
  await page.waitForTimeout(500);
  await page.reload();
  const kept = page.getByRole("group", { name: "Dents taken out and Pin, screw or glued fix" });
  await eventually(async () => assert.equal(await kept.getByLabel("Price asked").inputValue(), "120"));
  await kept.getByRole("button", { name: "Remove this price" }).click();
  await kept.waitFor({ state: "detached" });
});

browserTest("a proposal with a barred step says which and why, weighs the rest and can be removed", async ({ page, go, checkAccess }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The dented tray/ }).click();
  await page.waitForURL(/#\/./);
  await go("#/counsel");
  const proposal = page.locator("section").filter({ has: page.locator("#proposal-title") }).last();
  const unfold = () => page.locator("#proposal-title").click();
  await unfold();
  await proposal.getByRole("button", { name: "Add a step" }).click();
  await proposal.getByRole("group", { name: "Step 1" }).getByLabel("What is done").selectOption("T08");
  await proposal.getByRole("group", { name: "Step 1" }).getByLabel("Price").fill("75");
  await proposal.getByRole("button", { name: "Add a step" }).click();
  await proposal.getByRole("group", { name: "Step 2" }).getByLabel("What is done").selectOption("T05");
  await proposal.getByText("What rules it out").waitFor();
  await proposal.locator(".proposal-problems li").filter({ hasText: /silver dip/i }).first().waitFor();
  await proposal.getByText(/^Dents taken out.*compared with leaving it as it is/).waitFor();
  await checkAccess("counsel with a proposal");
  await page.waitForTimeout(500);
  await page.reload();
  await unfold();
  await eventually(async () => assert.equal(await proposal.getByRole("group", { name: "Step 1" }).getByLabel("Price").inputValue(), "75"));
  await proposal.getByRole("group", { name: "Step 2" }).getByRole("button", { name: "Remove this step" }).click();
  await proposal.getByRole("group", { name: "Step 2" }).waitFor({ state: "detached" });
  await eventually(async () => assert.equal(await proposal.locator(".proposal-problems").isVisible(), false));
});
