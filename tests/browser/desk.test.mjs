// The second program: fetched when first asked, never in the way of typing, and missed without harm.

import assert from "node:assert/strict";
import { browserTest } from "./harness.mjs";

const WORN_TRAY = /Open a copy of: The worn tray/;

browserTest("a first visit does not load it", async ({ page, go }) => {
  const asked = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await go("#/");
  await page.waitForTimeout(1_000);
  assert.deepEqual(asked.filter((path) => /desk|looks/.test(path)), []);
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/bench");
  await page.locator(".leaf section").first().waitFor();
  assert.ok(asked.some((path) => path.endsWith("leavewell-desk_bg.wasm")));
});

browserTest("a field on its pages keeps what is typed, works out again, and is in the record", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/bench");
  const field = page.locator(".leaf input").first();
  await field.waitFor();
  const answers = page.locator(".leaf-answer").first();
  const before = await answers.innerText();
  await field.fill("");
  await field.pressSequentially("3o");
  await page.locator(".leaf [aria-busy], .leaf[aria-busy='false']").first().waitFor();
  assert.equal(await field.inputValue(), "3o");
  assert.ok(await field.evaluate((element) => element === document.activeElement), "the field keeps the focus");
  await page.getByText(/is not a number/).filter({ visible: true }).first().waitFor();
  await field.fill("3.7");
  await page.waitForFunction((old) => document.querySelector(".leaf-answer").innerText !== old, before);
  assert.equal(await page.getByText(/is not a number/).filter({ visible: true }).count(), 0);
  await page.reload();
  await page.locator(".leaf input").first().waitFor();
  assert.equal(await page.locator(".leaf input").first().inputValue(), "3.7", "over a reload too");
});

browserTest("when it cannot be loaded, its page says so and the rest works", async ({ page, go, troubles }) => {
  await page.route("**/leavewell-desk*", (route) => route.abort());
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/bench");
  await page.getByText(/could not be worked out. Reload the page/).waitFor();
  await go("#/counsel");
  await page.locator(".answer-sentence").waitFor();
  troubles.length = 0;
});
