// Each worked example opens and gives the same answer as the command line.

import assert from "node:assert/strict";
import { readFile, readdir } from "node:fs/promises";
import { browserTest, eventually } from "./harness.mjs";

const CASES = new URL("../cases/", import.meta.url);

browserTest("every worked example opens, and its counsel is the model's", async ({ page, go }) => {
  await go("#/");
  const buttons = page.getByRole("button", { name: /^Open a copy of: / });
  const count = await buttons.count();
  const files = (await readdir(CASES)).filter((name) => name.endsWith(".json"));
  assert.equal(count, files.length, "each case file is an example on the shelf");
  const sentences = new Set();
  for (const name of files) {
    const text = await readFile(new URL(name, CASES), "utf8");
    sentences.add(await page.evaluate(async (t) => JSON.parse(await window.leavewell.weigh_json(t)).counsel.sentence, text));
  }
  for (let at = 0; at < count; at += 1) {
    await go("#/");
    await buttons.nth(at).click();
    await go("#/counsel");
    // The model's answer, word for word, appears a moment after the screen.
    await page.waitForFunction((known) => {
      // The answer and its contrast are one heading on two lines.
      const said = document.querySelector("main").innerText.replace(/\s+/g, " ");
      return known.some((sentence) => said.includes(sentence));
    }, [...sentences]);
    for (const other of ["piece", "look", "condition", "money"]) {
      await go(`#/${other}`);
      await eventually(async () => assert.ok(await page.getByRole("heading", { level: 1 }).isVisible()));
    }
  }
});
