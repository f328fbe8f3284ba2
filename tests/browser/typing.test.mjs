// Typed text stays: while answers recompute, while messages come and go, and after a reload.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";

browserTest("an invalid number stays as typed, is explained, and loses nothing", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await go("#/money");
  const likely = page.getByLabel("Likely");
  await likely.fill("");
  await likely.pressSequentially("12o");
  await eventually(async () => assert.equal(await likely.inputValue(), "12o"));
  assert.ok(await likely.evaluate((element) => element === document.activeElement), "the field keeps the focus");
  const described = await likely.getAttribute("aria-describedby");
  assert.ok(described, "the field is tied to its message");
  await page.getByText(/is not a number/).first().waitFor();
  await page.reload();
  await page.getByLabel("Likely").waitFor();
  await eventually(async () => assert.equal(await page.getByLabel("Likely").inputValue(), "12o", "over a reload too"));
  await likely.fill("420");
  await page.getByText(/is not a number/).filter({ visible: true }).first().waitFor({ state: "detached" });
});

browserTest("answers elsewhere on the screen leave a half-typed field alone", async ({ page, go }) => {
  await go("#/");
  await page.getByLabel("What do you call it?").fill("Odd pot");
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
  const height = page.getByLabel("Height");
  await height.fill("-5");
  await page.getByRole("checkbox").first().check();
  await page.getByRole("radio", { name: "Yes", exact: true }).first().check();
  await eventually(async () => assert.equal(await height.inputValue(), "-5"));
  await page.getByText(/out of range/).first().waitFor();
});

browserTest("a broken file is refused with a reason, and the shelf is unchanged", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The cake basket/ }).click();
  await go("#/");
  const chooser = page.locator("input[type=file]");
  await chooser.setInputFiles({ name: "torn.json", mimeType: "application/json", buffer: Buffer.from('{"format":"leavewell-case","version":1,"pie') });
  await page.getByText(/breaks off/).first().waitFor();
  await chooser.setInputFiles({ name: "newer.json", mimeType: "application/json", buffer: Buffer.from('{"format":"leavewell-case","version":9}') });
  await page.getByText(/version 9/).first().waitFor();
  await page.getByText("Cake basket from the dining room").first().waitFor();
  const markup = '{"format":"leavewell-case","version":1,"piece":{"name":"<img src=x onerror=alert(1)><b>pot</b>"}}';
  await chooser.setInputFiles({ name: "markup.json", mimeType: "application/json", buffer: Buffer.from(markup) });
  await page.waitForURL(/#\/./);
  await page.getByText("<img src=x onerror=alert(1)><b>pot</b>").first().waitFor();
  await eventually(async () => assert.equal(await page.locator("main img").count(), 0, "text from a file never becomes markup"));
});
