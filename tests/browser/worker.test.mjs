// The worker: fetched when first asked, never in the way of typing, and missed without harm.

import assert from "node:assert/strict";
import { browserTest } from "./harness.mjs";

const WORN_TRAY = /Open a copy of: The worn tray/;

browserTest("a first visit does not load it", async ({ page, go }) => {
  const asked = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await go("#/");
  await page.waitForTimeout(1_000);
  assert.deepEqual(asked.filter((path) => /worker|looks/.test(path)), []);
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/condition");
  await page.locator(".leaf section").first().waitFor({ state: "attached" });
  assert.ok(asked.some((path) => path.endsWith("leavewell-worker_bg.wasm")));
});

browserTest("a field on its pages keeps what is typed, works out again, and is in the record", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/condition");
  await page.getByText("How long the silver will last, by how it is kept").click();
  const field = page.locator(".leaf").nth(1).locator("input").first();
  await field.waitFor();
  const answers = page.locator(".leaf").nth(1).locator("figcaption").first();
  const before = await answers.innerText();
  await field.fill("");
  await field.pressSequentially("3o");
  assert.equal(await field.inputValue(), "3o");
  assert.ok(await field.evaluate((element) => element === document.activeElement), "the field keeps the focus");
  await page.getByText(/is not a number/).filter({ visible: true }).first().waitFor();
  await field.fill("37");
  await answers.filter({ hasText: "37 years" }).waitFor();
  assert.notEqual(await answers.innerText(), before);
  assert.equal(await page.getByText(/is not a number/).filter({ visible: true }).count(), 0);
  await page.reload();
  await page.getByText("How long the silver will last, by how it is kept").click();
  await field.waitFor();
  assert.equal(await field.inputValue(), "37", "over a reload too");
});

browserTest("when it cannot be loaded, each page says so and the rest works", async ({ page, go, troubles }) => {
  await page.route("**/leavewell-worker*", (route) => route.abort());
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/condition");
  await page.getByText("How long the silver will last, by how it is kept").click();
  await page.getByText(/could not be worked out. Reload the page/).filter({ visible: true }).first().waitFor();
  await go("#/counsel");
  await page.getByText(/could not be worked out. Reload the page/).first().waitFor();
  await go("#/look");
  await page.locator("input[value=absent]").first().check();
  await page.getByText(/made between about/).first().waitFor();
  troubles.length = 0;
});
