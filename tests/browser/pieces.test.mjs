// Several pieces in one record: said once, a fault on one of them, sold together or apart, bought in a lot.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";

async function pair(page, go) {
  await go("#/");
  await page.getByLabel("What do you call it?").fill("Pair from the landing");
  await page.getByLabel("What is it?").selectOption({ label: "Candlestick" });
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
  await page.getByLabel("One piece, or several?").selectOption({ label: "A pair" });
  await page.getByRole("group", { name: "What will become of it?" }).getByText("Sell it").click();
}

async function money(page, go) {
  await go("#/money");
  const undamaged = page.getByRole("region", { name: "What an undamaged one fetches" });
  await undamaged.getByLabel("Low").fill("250");
  await undamaged.getByLabel("Likely").fill("400");
  await undamaged.getByLabel("High").fill("640");
  await undamaged.getByLabel("Currency").selectOption({ label: "Pounds (£)" });
  await undamaged.getByText("give what all of them fetch together").waitFor();
  return undamaged;
}

browserTest("a pair with a dent in the second is advised, sold and described as one", async ({ page, go, checkAccess }) => {
  await pair(page, go);
  await checkAccess("the piece with a pair");
  await go("#/condition");
  const which = page.getByLabel("Which piece is it on?");
  await which.selectOption({ label: "The second" });
  await page.getByLabel("Dents").selectOption({ label: "Deep dents or out of shape" });
  await checkAccess("condition of the second");
  await which.selectOption({ label: "All of them" });
  await eventually(async () => assert.equal(await page.getByLabel("Dents").inputValue(), "", "the dent is on the second alone"));
  await which.selectOption({ label: "The second" });
  await eventually(async () => assert.equal(await page.getByLabel("Dents").inputValue(), "moderate"));
  const undamaged = await money(page, go);
  await checkAccess("money of a pair");
  await undamaged.getByRole("group", { name: "Sold together or apart?" }).getByText("Each by itself").click();
  await undamaged.getByRole("group", { name: "Sold together or apart?" }).getByText("Together, as one lot").click();
  await page.getByText(/^More: past sales/).click();
  const shares = page.getByRole("region", { name: "What each piece counts for" });
  await shares.getByLabel("The first").fill("80");
  await shares.getByLabel("The second").fill("70");
  await shares.getByText(/those given come to 150 %/).waitFor();
  await shares.getByLabel("The second").fill("20");
  await eventually(async () => assert.equal(await shares.getByText(/those given come to/).count(), 0));
  await go("#/counsel");
  await page.getByText(/Sold together they would leave you about £/).first().waitFor();
  await page.getByRole("heading", { name: "Fault by fault", exact: true }).click();
  await page.locator(".fault").filter({ hasText: "the second" }).first().waitFor();
  await go("#/sheet/buyer");
  await page.getByText(/A pair of candlesticks/).first().waitFor();
  await page.getByText(/dented.*: body of the second/i).first().waitFor();
  await go("#/sheet/file");
  await page.getByText("A seller keeps, sold one by one").first().waitFor();
  await page.getByRole("heading", { name: "Body of the second" }).waitFor();
});

browserTest("a lot bought at one price is shared out over its records", async ({ page, go }) => {
  const add = async (name, share) => {
    await go("#/");
    await page.getByLabel("What do you call it?").fill(name);
    await page.getByLabel("What is it?").selectOption({ label: "Tray or salver" });
    await page.getByRole("button", { name: "Start this piece" }).click();
    await page.waitForURL(/#\/piece/);
    await page.getByText("In your stock", { exact: true }).click();
    await page.getByText("Bought with others at one price", { exact: true }).click();
    await page.getByLabel("Name of the lot").fill("Sale 12");
    await page.getByLabel("Share it out").selectOption({ label: "By my own shares" });
    await page.getByLabel("My share for this one").fill(share);
  };
  await add("First tray", "220");
  await add("Second tray", "120");
  await add("Third tray", "60");
  await page.getByRole("button", { name: "Share the price out" }).click();
  await page.getByText("The price of the lot is not known.").first().waitFor();
  await page.getByLabel("Price of the whole lot").fill("300");
  await page.getByRole("button", { name: "Share the price out" }).click();
  await page.getByText("shared out over 3 pieces").first().waitFor();
  // No other message takes its place once the other records are stored.
  await page.waitForTimeout(500);
  await page.getByText("shared out over 3 pieces").first().waitFor();
  assert.equal(await page.getByText(/pieces are changed/).count(), 0);
  await eventually(async () => assert.equal(await page.getByLabel("What you paid").inputValue(), "45"));
  for (const [name, paid] of [["First tray", "165"], ["Second tray", "90"]]) {
    await go("#/");
    await page.getByRole("button", { name: new RegExp(`^Open: ${name}`) }).first().click();
    await page.waitForURL(/#\/./);
    await go("#/piece");
    await eventually(async () => assert.equal(await page.getByLabel("What you paid").inputValue(), paid, name));
  }
});
