// The reader decides which words come first; the answer is the same for everyone.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";
import { check } from "./keyboard.mjs";

/** The headings of the sections below the answer, in order. Those of closed folds, drawn when idle, have no text. */
const sections = async (page) => (await page.locator(".counsel section h2").allInnerTexts()).filter((title) => title !== "");

browserTest("another reader gets a different order and the same answer, and is remembered", async ({ page, go, checkAccess }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The copper tureen/ }).click();
  await go("#/counsel");
  const answer = page.locator(".answer-sentence");
  await answer.waitFor();
  const said = await answer.innerText();
  const opening = page.locator(".opening");
  const group = page.getByRole("group", { name: "Who is reading?" });
  await eventually(async () => assert.ok(await group.getByRole("radio", { name: "The owner" }).isChecked(), "the owner is the default reader"));
  await opening.getByText("What to ask").waitFor();
  const forOwner = await sections(page);

  await check(page, group, "A restorer");
  await opening.getByText("Before work begins").waitFor();
  await eventually(async () => assert.equal(await answer.innerText(), said));
  assert.equal(await opening.getByRole("link", { name: /client's sheet/ }).getAttribute("href"), "#/sheet/client");
  const forRestorer = await sections(page);
  assert.notDeepEqual(forRestorer, forOwner, "in another order");
  assert.deepEqual([...forRestorer].sort(), [...forOwner].sort(), "and nothing left out");

  await check(page, group, "A dealer");
  await opening.getByText("Time off the shelf").waitFor();
  await eventually(async () => assert.equal(await answer.innerText(), said));
  await opening.getByText(/If the work cost more than/).waitFor();
  assert.equal(await opening.getByRole("link", { name: /buyer's sheet/ }).getAttribute("href"), "#/sheet/buyer");
  await checkAccess("Counsel for a dealer");

  await page.reload();
  await opening.getByText("Time off the shelf").waitFor();
  await eventually(async () => assert.ok(await group.getByRole("radio", { name: "A dealer" }).isChecked(), "kept on the device"));
  await eventually(async () => assert.equal(await answer.innerText(), said));
});

browserTest("on a narrow screen links lead to every section further down", { viewport: { width: 390, height: 844 } }, async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/counsel");
  const ways = page.getByRole("navigation", { name: "Further down" }).getByRole("link");
  const named = await ways.allInnerTexts();
  // In page order. The first is the answer itself.
  const [, ...below] = await sections(page);
  assert.deepEqual(named, below);
  for (const title of ["What to look at next", "Every plan we weighed"]) {
    const way = ways.filter({ hasText: title });
    await way.focus();
    await page.keyboard.press("Enter");
    const heading = page.getByRole("heading", { name: title, exact: true });
    assert.ok(await heading.evaluate((element) => element === document.activeElement), `${title} has the focus`);
    const { y } = await heading.boundingBox();
    assert.ok(y >= 0 && y < 844, `${title} is in sight`);
    assert.equal(new URL(page.url()).hash, "#/counsel");
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await eventually(async () => assert.equal(await ways.first().isVisible(), false, "a wide screen needs no such links"));
});
