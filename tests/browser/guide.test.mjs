// The guide opens from the first screen and shows its piece worked out, offline as well.

import assert from "node:assert/strict";
import { browserTest } from "./harness.mjs";

browserTest("the guide shows an invented piece from start to finish", async ({ page, go, checkAccess }) => {
  await go("#/");
  await page.getByRole("link", { name: "How it works, with one piece from start to finish" }).click();
  await page.getByRole("heading", { name: "A piece from start to finish" }).waitFor();
  assert.equal(await page.locator("h1").innerText(), "How it works");
  await page.getByText("This piece is invented").waitFor();
  // What it says of the piece is what the advice on a copy of it says.
  const advised = page.locator("#main").getByText(/^Have the dents taken out\./).first();
  const said = await advised.innerText();
  await checkAccess("the guide");
  for (const heading of ["What it cannot know", "Where to begin", "Safety"]) {
    await page.getByRole("heading", { name: heading }).waitFor();
  }
  await page.getByRole("link", { name: "Back to your pieces" }).click();
  await page.getByRole("button", { name: "Open a copy of: The dented tray" }).click();
  const answer = await page.locator(".answer-sentence").first().innerText();
  assert.ok(said.startsWith(answer.split(/[.\n]/)[0]), `${said} | ${answer}`);
});
