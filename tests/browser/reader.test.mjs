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
  await page.locator(".answer-firmness").waitFor();
  const said = await answer.innerText();
  const opening = page.locator(".opening");
  const group = page.getByRole("group", { name: "Who is reading?" });
  await eventually(async () => assert.ok(await group.getByRole("radio", { name: "The owner" }).isChecked(), "the owner is the default reader"));
  // An owner has read the same in the answer, so it is folded.
  await opening.locator("summary").click();
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

browserTest("on a narrow screen every section further down is a fold in sight of its heading, opened by keyboard", { viewport: { width: 390, height: 844 } }, async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await page.locator(".answer-firmness").waitFor();
  await go("#/counsel");
  const below = await sections(page);
  assert.ok(below.length >= 9, below.join(", "));
  for (const title of ["What to look at next", "Every plan we weighed"]) {
    const fold = page.locator("details").filter({ has: page.getByRole("heading", { name: title, exact: true }) });
    await fold.locator("summary").first().focus();
    await page.keyboard.press("Enter");
    assert.equal(await fold.first().getAttribute("open"), "");
    const { y } = await page.getByRole("heading", { name: title, exact: true }).boundingBox();
    assert.ok(y >= 0 && y < 844, `${title} is in sight`);
  }
  // A link of a line about a fault opens its section.
  await page.getByRole("link", { name: "The choice in full" }).first().click();
  const faults = page.getByRole("heading", { name: "Fault by fault", exact: true });
  assert.ok(await faults.evaluate((element) => element === document.activeElement), "it has the focus");
  assert.ok(await faults.evaluate((element) => element.closest("details").open), "it is open");
  assert.equal(new URL(page.url()).hash, "#/counsel");
});

for (const [name, width, height, bottom] of [
  ["a phone", 390, 844, 844],
  ["a small phone", 320, 568, 568],
  ["a phone on its side", 844, 390, 390],
]) {
  browserTest(`the first screen answers, and the page is short, on ${name}`, { viewport: { width, height } }, async ({ page, go }) => {
    await go("#/");
    await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
    await page.locator(".answer-firmness").waitFor();
    await page.evaluate(() => window.scrollTo(0, 0));
    const measured = await page.evaluate(() => {
      const box = (selector) => document.querySelector(selector).getBoundingClientRect();
      const range = document.createRange();
      // The answer's first sentence: the text before the contrast.
      range.selectNode(document.querySelector(".answer-sentence").firstChild);
      return {
        head: box(".places").bottom,
        sentence: range.getBoundingClientRect().bottom,
        page: document.documentElement.scrollHeight,
        lines: document.querySelectorAll(".owner-lines > div").length,
      };
    });
    console.log(`${name}: ${JSON.stringify(measured)}`);
    if (width >= 390) assert.ok(measured.head < 120, `header and navigation are ${measured.head} px tall`);
    assert.ok(measured.sentence <= bottom, `the answer ends at ${measured.sentence}`);
    if (width === 390) assert.ok(measured.page < 4_000, `the page is ${measured.page} px tall`);
    assert.ok(measured.lines >= 7, `${measured.lines} lines`);
  });
}

browserTest("with nothing looked at there is no advice, but what to look at", async ({ page, go, checkAccess }) => {
  await go("#/");
  await page.getByLabel("What is it?").selectOption("teapot");
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
  await go("#/counsel");
  await page.getByRole("heading", { level: 1, name: "Too little is recorded to advise." }).waitFor();
  await page.getByRole("heading", { name: "Look at these first" }).waitFor();
  await eventually(async () => assert.equal(await page.locator(".answer-firmness, .counsel-folds").count(), 0));
  assert.ok((await page.locator(".look-first li").count()) >= 2);
  assert.match(await page.getByRole("navigation").getByRole("link", { name: /^Advice/ }).first().textContent(), /not yet/);
  await checkAccess("Advice with too little recorded");
  await page.getByRole("link", { name: "Answer a few short questions" }).click();
  await page.waitForURL(/#\/road\/letters/);
  await go("#/");
  await page.getByText("Too little is recorded to advise.").waitFor();
});
