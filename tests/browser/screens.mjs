// Every screen of the app, and the states that a screen takes: empty, with errors, folds open, several pieces chosen, the
// questions of the road. Tests of how screens look and read walk through all of them.

import { fillShelf } from "./many.mjs";

const PIECE = [
  "piece", "look", "condition", "money", "counsel", "treatments", "bench", "done", "closer", "figures",
  "sheet/client", "sheet/buyer", "sheet/file", "sheet/conservation",
];

/** The road's questions, by address: one of each kind of drawing and answer. */
const QUESTIONS = [
  "form", "letters", "bare-metal", "magnet", "where-bare", "how-bare", "damage", "missing", "use", "offer",
  "price", "seam", "peeling",
];

/** Waits for what the workers answer. Only the pages about one piece say that they are waited for. */
export async function drawn(page) {
  await page.waitForTimeout(50);
  await page.waitForFunction(() => [...document.querySelectorAll(".leaf[aria-busy]")].every((it) => it.getAttribute("aria-busy") === "false"), null, { timeout: 60_000 });
}

/** Opens the folds. What a fold holds is drawn when it opens. The ledger's groups are alike, so the first few stand for all. */
export async function unfold(page, most = 10_000) {
  await page.evaluate((some) => [...document.querySelectorAll("details")].slice(0, some).forEach((it) => it.setAttribute("open", "")), most);
  await page.waitForFunction(() => [...document.querySelectorAll("details[open] .group")].every((it) => it.childElementCount > 0));
  await drawn(page);
}

async function openExample(page, go, name) {
  await go("#/");
  await page.getByRole("button", { name: `Open a copy of: ${name}` }).click();
  await page.locator(".answer-sentence").waitFor();
}

const screen = (route, most) => ({
  name: route || "shelf",
  async show({ page, go }) {
    await go(`#/${route}`);
    await page.locator("#main h1").waitFor();
    await drawn(page);
    await unfold(page, most);
  },
});

/** The states of the app, in an order in which one leads to the next. `show` brings the page into the state. */
export const STATES = [
  screen(""),
  ...["guide", "plan", "learning", "stock/table", "stock/labels", "stock/list"].map((route) => screen(route)),
  {
    name: "a piece with nothing recorded",
    async show({ page, go }) {
      await go("#/");
      await page.getByRole("button", { name: "Start this piece" }).click();
      await page.waitForURL(/#\/piece/);
      await drawn(page);
      await unfold(page);
    },
  },
  { ...screen("look"), name: "look, nothing recorded" },
  { ...screen("condition"), name: "condition, nothing recorded" },
  { ...screen("counsel"), name: "counsel, nothing recorded" },
  { ...screen("sheet/client"), name: "sheet, nothing recorded" },
  {
    name: "fields that cannot be read",
    async show({ page, go }) {
      await go("#/money");
      await drawn(page);
      await unfold(page);
      const fields = page.locator("#main input.is-number:visible");
      const count = Math.min(4, await fields.count());
      for (let at = 0; at < count; at += 1) await fields.nth(at).fill("about ten");
      await page.locator(".problem:visible").first().waitFor();
    },
  },
  ...QUESTIONS.map((question) => ({
    name: `the road: ${question}`,
    async show({ page, go }) {
      await go(`#/road/${question}`);
      await page.locator(".road h1").waitFor();
      await drawn(page);
    },
  })),
  {
    name: "an example",
    async show({ page, go }) {
      await openExample(page, go, "The worn tray");
      await drawn(page);
    },
  },
  ...PIECE.map((route) => screen(route, route === "figures" ? 4 : undefined)),
  {
    name: "the advice, for a restorer",
    async show({ page, go }) {
      await go("#/counsel");
      await page.locator(".reader input[type=radio]").nth(1).check();
      await drawn(page);
      await unfold(page);
    },
  },
  {
    name: "what pieces teach, invented",
    async show({ page, go }) {
      await go("#/learning");
      await page.getByRole("button", { name: "Show it with forty invented pieces" }).click();
      await page.getByText("All of this is invented").waitFor();
      await unfold(page);
    },
  },
  {
    name: "the stock book, several chosen",
    async show({ page, go }) {
      await go("#/");
      await fillShelf(page, 12);
      await page.getByRole("button", { name: "Table", exact: true }).click();
      await page.locator(".book-table tbody tr").nth(9).waitFor();
      await page.getByLabel("Choose: Piece 2", { exact: true }).check();
      await page.getByLabel("Choose: Piece 3", { exact: true }).check();
      await page.getByText("2 pieces chosen").waitFor();
      await unfold(page);
    },
  },
  ...["plan", "stock/labels", "stock/list"].map((route) => ({ ...screen(route), name: `${route}, twelve pieces` })),
];
