// The plan for the whole shelf: limits and their effect, and a shelf with many pieces.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";
import { tabTo } from "./keyboard.mjs";
import { fillShelf } from "./many.mjs";

const DEFERRAL = "They decide, not this tool.";

/** Puts copies of these worked examples on the shelf and opens the plan. */
async function planFor(page, go, titles) {
  await go("#/");
  for (const title of titles) {
    await page.getByRole("button", { name: `Open a copy of: ${title}` }).click();
    await page.locator(".answer-sentence").waitFor();
    await go("#/");
  }
  await page.getByRole("link", { name: "Plan the work on all of them" }).click();
  await answer(page).waitFor();
}

const answer = (page) => page.locator(".leaf-answer");
const row = (page, name) => page.getByRole("row").filter({ has: page.getByRole("rowheader", { name }) });

browserTest("limits reduce the work, and the plan says what more of each would bring", async ({ page, go, checkAccess }) => {
  await planFor(page, go, ["The copper tureen", "The leaking teapot", "The worn tray"]);
  await page.getByText(/^Without a limit, work on 2 of 3 pieces and leave the other as it is/).waitFor();
  await page.getByText("the plan follows the advice for each piece").first().waitFor();
  await row(page, "Large tureen").getByText("Full replating").waitFor();
  await row(page, "Teapot that leaks").getByText("A specialist should see it first.").waitFor();
  await eventually(async () => assert.equal(await page.locator("#main").getByText(DEFERRAL).count(), 1));
  await page.getByText(/^Full replating: Polishing first may remove all/).waitFor();

  await page.getByLabel("Money to spend").fill("200");
  await page.getByText(/^With £200 to spend, work on 1 of 3 pieces/).waitFor();
  await page.getByText(/ more would bring (about £|nothing)/).waitFor();
  await page.getByRole("heading", { name: "Not now, or done differently" }).waitFor();
  await row(page, "Large tureen").getByText("Left for now").waitFor();
  await page.getByText("your limit", { exact: true }).waitFor();
  await page.getByText("The same as a table").click();
  const table = page.getByRole("region", { name: /The best plan for each sum of money/ });
  const sums = await table.locator("tbody td").allInnerTexts();
  const brings = sums.map((said) => Number(said.replace(/[^\d]/g, "")));
  assert.ok(brings.length >= 3 && brings.every((sum, at) => at === 0 || sum >= brings[at - 1]), sums.join(" "));
  await checkAccess("the plan");

  await page.getByLabel("Hours of work").fill("1");
  await page.getByText(/^(With £200 to spend and 1 hour of work|Leave every piece as it is: with £200 to spend and 1 hour of work)/).waitFor();
  await page.getByLabel("Money to spend").fill("£200");
  await page.getByText(/with £200 to spend and 1 hour of work/i).waitFor();
  await page.getByLabel("Hours of work").fill("many");
  await page.getByText(/is not a number|number from 0/i).first().waitFor();
  await eventually(async () => assert.equal(await page.getByLabel("Hours of work").inputValue(), "many"));
  await page.getByLabel("Hours of work").fill("");
  await page.getByText(/^With £200 to spend, work on 1 of 3 pieces/).waitFor();

  await page.reload();
  await page.getByText(/^With £200 to spend, work on 1 of 3 pieces/).waitFor();
  await eventually(async () => assert.equal(await page.getByLabel("Money to spend").inputValue(), "£200"));
});

browserTest("a piece can be left out or wait for another, by keyboard, and both can be undone", async ({ page, go }) => {
  await planFor(page, go, ["The copper tureen", "The leaking teapot", "The worn tray"]);
  await tabTo(page, page.locator("shelf-plan summary"));
  await page.keyboard.press("Enter");
  const choose = async (label, name) => {
    await tabTo(page, page.getByLabel(label));
    await page.keyboard.type(name, { delay: 20 });
  };
  const press = async (name) => {
    await tabTo(page, page.getByRole("button", { name }));
    await page.keyboard.press("Enter");
  };
  await press("Leave it out");
  await page.getByText("Choose the piece to leave out first.").waitFor();
  await choose("Leave this piece out", "Large");
  await press("Leave it out");
  await page.getByText(/^Without a limit, work on 1 of 2 pieces/).waitFor();
  await page.getByText("Not in the plan: 1").click();
  await page.getByText("left out by you.").waitFor();
  await press(/^Take this back: .*tureen.* is left out/);
  await page.getByText(/^Without a limit, work on 2 of 3 pieces/).waitFor();

  // The tray is best left as it is, so a piece that waits for work on it waits forever.
  await choose("Work on this piece", "Large");
  await choose("only if there is work on this one", "Worn");
  await press("Let it wait");
  await page.getByText(/^Without a limit, work on 1 of 3 pieces/).waitFor();
  await page.getByText("Work that waits for another piece is done only together with that piece.").waitFor();
  await row(page, "Large tureen").getByText("Left for now").waitFor();
  await choose("Work on this piece", "Worn");
  await choose("only if there is work on this one", "Large");
  await press("Let it wait");
  await page.getByText(/tureen.* waits for Worn tray.* already/).waitFor();
  await press(/^Take this back: .*tureen.* waits for /);
  await page.getByText(/^Without a limit, work on 2 of 3 pieces/).waitFor();
});

browserTest("weighing a large shelf shows progress, and can be stopped and resumed", async ({ page, go }) => {
  await go("#/");
  await fillShelf(page, 400);
  await page.getByRole("link", { name: "Plan the work on all of them" }).click();
  const progress = page.getByRole("progressbar", { name: "Pieces weighed" });
  await progress.waitFor();
  await page.getByRole("button", { name: "Stop" }).click();
  const stopped = await page.getByText(/^Stopped\. \d+ of 400 pieces are in the plan\.$/).innerText();
  const [, weighed] = stopped.match(/^Stopped\. (\d+)/);
  assert.ok(Number(weighed) < 400, stopped);
  await page.getByRole("button", { name: "Go on" }).click();
  await page.getByText(/^Without a limit, work on \d+ of 400 pieces/).waitFor({ timeout: 60_000 });
  await progress.waitFor({ state: "detached" });
  await page.getByLabel("Money to spend").fill("3000");
  await page.getByLabel("Hours of work").fill("150");
  await page.getByText(/^With £3,000 to spend and 150 hours of work, work on \d+ of 400 pieces/).waitFor({ timeout: 60_000 });
});

browserTest("with an empty shelf the plan says what to do", async ({ page, go }) => {
  await go("#/plan");
  await page.getByText("There is no piece on the shelf to plan for yet.").waitFor();
  await page.getByRole("link", { name: "Back to your pieces" }).click();
  await page.getByRole("heading", { level: 1 }).waitFor();
});
