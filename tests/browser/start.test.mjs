// The first seconds: the page before the app, the app's start, and the message if it cannot start.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";

browserTest("the app starts and replaces the first paint", async ({ page, go }) => {
  await go();
  await eventually(async () => assert.equal(await page.locator("#first").count(), 0));
  await eventually(async () => assert.ok((await page.locator("#app > *").count()) > 0));
  await eventually(async () => assert.notEqual((await page.locator("#app").innerText()).trim(), ""));
});

browserTest("scripts can call the app's functions", async ({ page, go }) => {
  await go();
  const kinds = await page.evaluate(() => [typeof window.leavewell.weigh, typeof window.leavewell.weigh_json]);
  assert.deepEqual(kinds, ["function", "function"]);
});

browserTest("the app also runs from a folder of another site", { base: "/pieces/of/silver/" }, async ({ page, go }) => {
  await go("?from=a-link#/");
  await eventually(async () => assert.ok((await page.locator("#app > *").count()) > 0));
});

browserTest("without scripts the page says what it is and what it needs", { javaScriptEnabled: false }, async ({ page, site }) => {
  await page.goto(site.url);
  await page.getByRole("heading", { name: "Leavewell" }).waitFor();
  const text = await page.locator("main").innerText();
  assert.match(text, /needs JavaScript/);
  assert.match(text, /may be lead/);
});

browserTest("if the program cannot be loaded, the page says what to do", async ({ page, site, troubles }) => {
  await page.route("**/*.wasm", (route) => route.abort());
  await page.goto(site.url);
  const alert = page.getByRole("alert");
  await alert.waitFor();
  await eventually(async () => assert.match(await alert.innerText(), /could not start.*up-to-date browser.*saved cases are untouched/s));
  assert.equal(await page.locator("html").getAttribute("data-leavewell"), "failed");
  troubles.length = 0;
});

browserTest("a browser whose locale is none starts, and writes days in English", async ({ page, context, go }) => {
  await context.addInitScript(() => Object.defineProperty(Navigator.prototype, "language", { get: () => "C" }));
  await go("#/");
  assert.match(await page.evaluate(() => globalThis.leavewellLocale.day("2026-05-31")), /May.*2026|2026.*May/);
});

for (const colorScheme of ["light", "dark"]) {
  browserTest(`the first paint is accessible (${colorScheme})`, { colorScheme, viewport: { width: 320, height: 640 } }, async ({ page, site, checkAccess, troubles }) => {
    // While the program never arrives, the first paint stays.
    await page.route("**/*.wasm", () => {});
    await page.goto(site.url);
    await page.getByText("Starting").waitFor();
    await checkAccess("the first paint");
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    assert.ok(overflow <= 0, "nothing should need sideways scrolling");
    troubles.length = 0;
  });
}
