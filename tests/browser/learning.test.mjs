// A piece is closed, and what closed pieces teach is turned on and off again.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";

const main = (page) => page.locator("#main");

browserTest("a piece is closed with two taps and a number, and shows what we had said", async ({ page, go, checkAccess }) => {
  await go("#/");
  await page.getByRole("button", { name: "Open a copy of: The worn tray" }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/done");
  await page.getByLabel("Where it stands now").selectOption({ label: "For sale" });
  await page.getByText(/^We noted on [A-Z][a-z]+ \d{1,2}, \d{4} what we expect it to fetch as it is: £/).waitFor();
  await checkAccess("what happened, before");

  // An undo takes the choice back, and what was noted stays.
  await page.getByLabel("How it ended").selectOption({ label: "Sold" });
  await page.getByLabel("Sold for").fill("260");
  await page.getByText(/^We said £\d+ \(£\d+ to £\d+\)\. It fetched £260\.$/).waitFor();
  const said = await page.getByText(/^We said £/).innerText();

  // The guess typed after the sale changes nothing of what was said.
  await go("#/money");
  await page.getByLabel("Likely").fill("9000");
  await go("#/done");
  await page.getByText(said, { exact: true }).waitFor();

  await page.getByText("More about it, if you know").click();
  await page.getByLabel("Currency of the price").selectOption({ label: "Euros (€)" });
  await page.getByText("The price is in another currency than the piece").waitFor();
  await page.getByLabel("Currency of the price").selectOption({ label: "That of the piece" });
  await eventually(async () => assert.equal(await page.getByText("The price is in another currency").count(), 0));
  await checkAccess("what happened, after");
});

browserTest("what pieces teach is shown, turned on, heard and turned off", async ({ page, go, checkAccess }) => {
  await go("#/");
  await page.getByRole("button", { name: "Open a copy of: The leaking teapot" }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/treatments");
  await go("#/done");
  await page.getByLabel("What was done").first().selectOption("T09");
  await page.getByLabel("The bill").first().fill("400");
  await page.getByLabel("Hours of work").first().fill("6");
  await page.getByText(/The bill was £400\./).waitFor();

  await go("#/learning");
  await page.getByText("1 closed piece can be learnt from", { exact: false }).waitFor();
  await page.getByText(/^We judged it 100 \(50 to 240\)\. 1 piece of yours makes it /).waitFor();
  await page.getByText("Answers use our figures as shipped.").waitFor();
  await checkAccess("what pieces teach");

  await page.getByLabel("For bills and hours").check();
  await page.getByText("Answers now use what your pieces teach.").waitFor();
  const kept = await page.evaluate(() => [localStorage.getItem("leavewell.teaching"), localStorage.getItem("leavewell.taught")]);
  assert.equal(kept[0], "works");
  assert.match(kept[1], /^1\n(.*\n)*cost\.T09=/);

  // The ledger names the figure, and the setting outlives the page.
  await page.reload();
  await page.getByText("Answers now use what your pieces teach.").waitFor();
  await go("#/figures");
  await page.getByLabel("Find a figure").fill("cost.T09");
  await page.getByText(/^We judged it 100 \(50 to 240\)/).first().waitFor();

  await go("#/learning");
  await page.getByRole("button", { name: /^Leave out / }).first().click();
  await page.getByText("Answers use our figures as shipped.").waitFor();
  await page.getByRole("button", { name: /^Take in again / }).click();
  await page.getByText("Answers now use what your pieces teach.").waitFor();
  await page.getByRole("button", { name: "Go back to our figures as shipped" }).click();
  await page.getByText("Answers use our figures as shipped.").waitFor();
  await eventually(async () =>
    assert.equal(await page.evaluate(() => localStorage.getItem("leavewell.taught")), null),
  );

  await page.getByRole("button", { name: "Show it with forty invented pieces" }).click();
  await page.getByText("All of this is invented").waitFor();
  await main(page).getByText("Where the results fell within our range").first().click();
  await checkAccess("the invented pieces");
});
