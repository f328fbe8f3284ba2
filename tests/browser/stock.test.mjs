// The stock book: search, order, several at once, quick entry, tables in and out, labels and the stock list.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { browserTest, eventually, settled } from "./harness.mjs";
import { fillShelf } from "./many.mjs";

/** A keystroke in the search field of a full shelf is usually answered within this many milliseconds, all told. */
const STUTTER_MS = 100;
const FEWEST_STROKES = 200;

const rows = (page) => page.locator(".book-table tbody tr:not(.book-group)");
const names = (page) => page.locator(".book-table tbody th[scope=row]").allInnerTexts();

/** Presses keys and counts them. */
function counting(page) {
  let strokes = 0;
  return {
    press: async (key) => {
      strokes += 1;
      await page.keyboard.press(key);
    },
    type: async (text) => {
      strokes += text.length;
      await page.keyboard.type(text);
    },
    strokes: () => strokes,
  };
}

/** Adds pieces with the row for quick entry: name, form, number, paid. */
async function addQuickly(page, pieces) {
  await page.locator("#quick-title").evaluate((it) => (it.parentElement.open = true));
  for (const [name, form, number, paid] of pieces) {
    await page.locator("#quick-name").fill(name);
    await page.locator("#quick-form").selectOption({ label: form });
    await page.locator("#quick-number").fill(number);
    await page.locator("#quick-paid").fill(paid);
    await page.locator("#quick-currency").selectOption("GBP");
    await page.locator("#quick-name").press("Enter");
    await page.getByText(`${name} is on your shelf.`).waitFor();
  }
}

const THREE = [["Teapot, knob lost", "Teapot", "A10", "70"], ["Oval tray", "Tray or salver", "A2", "1,150"], ["Coffee pot", "Coffee pot", "", ""]];

async function saved(page, button) {
  const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

browserTest("the shelf is a table for who wants one, and the choice is kept", async ({ page, go, checkAccess }) => {
  await go("#/");
  await addQuickly(page, THREE);
  await eventually(async () => assert.equal(await page.locator(".shelf-line h3").filter({ hasText: "Oval tray" }).count(), 1));
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await eventually(async () => assert.equal(await rows(page).count(), 3));
  const heads = await page.locator(".book-table thead th").allInnerTexts();
  assert.deepEqual(heads.map((it) => it.trim()), ["No.", "Name", "What it is", "Where", "Lot", "Paid", "Spent", "Asking", "Most to pay", "Advised", "Status"]);
  await page.waitForTimeout(500);
  await page.reload();
  await eventually(async () => assert.equal(await rows(page).count(), 3));

  await page.getByRole("button", { name: "No.", exact: true }).click();
  await eventually(async () => assert.deepEqual(await names(page), ["Oval tray", "Teapot, knob lost", "Coffee pot"]));
  await page.getByRole("button", { name: "Paid", exact: true }).click();
  await page.getByRole("button", { name: "Paid", exact: true }).click();
  await eventually(async () => assert.deepEqual(await names(page), ["Oval tray", "Teapot, knob lost", "Coffee pot"]));
  await eventually(async () => assert.equal(await page.locator("th[aria-sort=descending]").innerText(), "Paid"));
  await page.getByText("£1,150", { exact: true }).waitFor();

  await page.locator("#book-search").fill("pot knob");
  await eventually(async () => assert.deepEqual(await names(page), ["Teapot, knob lost"]));
  await page.getByText("1 of 3 pieces").waitFor();
  await page.locator("#book-search").fill("nothing like it");
  await page.getByText("No piece has all of these words.").waitFor();
  await checkAccess("the stock book");
  await page.setViewportSize({ width: 390, height: 844 });
  await page.locator("#book-search").fill("");
  await eventually(async () => assert.equal(await rows(page).count(), 3));
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(wide <= 0, "nothing runs over the edge of a phone");
  await checkAccess("the stock book on a phone");
});

browserTest("several pieces change their status, are saved and are removed together", { acceptDownloads: true }, async ({ page, go }) => {
  await go("#/");
  await addQuickly(page, THREE);
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByLabel("Choose: Oval tray").check();
  await page.getByLabel("Choose: Coffee pot").check();
  await page.getByText("2 pieces chosen").waitFor();
  await page.locator("#book-set-status").selectOption("for_sale");
  await eventually(async () => assert.equal(await rows(page).filter({ hasText: "For sale" }).count(), 2));
  await page.locator("#book-set-status").selectOption("sold");
  await eventually(async () => assert.equal(await rows(page).filter({ hasText: "Sold" }).count(), 2));
  await page.locator("#book-status").selectOption("sold");
  await eventually(async () => assert.equal(await rows(page).count(), 2));
  await page.locator("#book-status").selectOption("");

  const file = await saved(page, page.getByRole("button", { name: "Save as one file" }));
  const shelf = JSON.parse(file.text);
  assert.deepEqual(shelf.cases.map((it) => it.case.piece.name).sort(), ["Coffee pot", "Oval tray"]);
  assert.ok(shelf.cases.every((it) => it.case.closed.outcome === "sold"), "sold is how a case was closed");

  await page.locator(".book-chosen summary").click();
  await page.getByRole("button", { name: "Move 2 pieces to the bin" }).click();
  await eventually(async () => assert.deepEqual(await names(page), ["Teapot, knob lost"]));
  await page.getByText("It stays here for 30 more days.").first().waitFor();
  await page.waitForTimeout(500);
  await page.reload();
  await eventually(async () => assert.deepEqual(await names(page), ["Teapot, knob lost"]));
});

browserTest("what several pieces were changed to is taken back with one press, but not what was changed since", async ({ page, go }) => {
  await go("#/");
  await addQuickly(page, THREE);
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByRole("button", { name: "Choose every piece found" }).click();
  await page.locator("#book-set-status").selectOption("bought");
  await page.getByText("3 pieces are changed.").waitFor();
  await eventually(async () => assert.equal(await rows(page).filter({ hasText: "Bought" }).count(), 3));
  await page.locator("#book-set-status").selectOption("for_sale");
  await eventually(async () => assert.equal(await rows(page).filter({ hasText: "For sale" }).count(), 3));
  // What each is expected to fetch is frozen at once, and stays when the change is taken back.
  const frozen = async () => {
    const file = await saved(page, page.getByRole("button", { name: "Save as one file" }));
    const records = JSON.parse(file.text).cases.map((it) => it.case);
    return records.map((record) => (record.predicted ?? []).map((one) => `${one.event} ${one.ln_level !== undefined}`).join());
  };
  await eventually(async () => assert.deepEqual(await frozen(), ["offered true", "offered true", "offered true"]));
  await page.locator(".notice").getByRole("button", { name: "Undo" }).click();
  await eventually(async () => assert.equal(await rows(page).filter({ hasText: "Bought" }).count(), 3));
  assert.deepEqual(await frozen(), ["offered true", "offered true", "offered true"]);

  await page.locator("#book-set-status").selectOption("at_workshop");
  await page.getByText("3 pieces are changed.").waitFor();
  await page.getByRole("button", { name: "Oval tray" }).click();
  await page.waitForURL(/#\/(counsel|piece|road)/);
  await go("#/piece");
  await page.locator("[id='piece.name']").fill("Oval tray, cleaned");
  await settled(page);
  await go("#/");
  await page.locator(".notice").getByRole("button", { name: "Undo" }).click();
  await eventually(async () => assert.equal(await rows(page).filter({ hasText: "Bought" }).count(), 2));
  assert.match(await rows(page).filter({ hasText: "Oval tray, cleaned" }).innerText(), /At the workshop/);
});

browserTest("the most to pay stands beside a piece that is not bought, on cards and in the table", async ({ page, go }) => {
  await go("#/");
  await page.locator("#quick-title").evaluate((it) => (it.parentElement.open = true));
  await page.locator("#quick-name").fill("Tray at a sale");
  await page.locator("#quick-form").selectOption("tray");
  await page.locator("#quick-looks").fill("M01 S04");
  await page.locator("#quick-bare").selectOption("slight");
  await page.locator("#quick-likely").fill("300");
  await page.locator("#quick-goal").selectOption("sell");
  await page.locator("#quick-currency").selectOption("GBP");
  await page.locator("#quick-name").press("Enter");
  await page.locator(".shelf-line").getByText(/^Most to pay: £\d/).waitFor({ timeout: 60_000 });
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await rows(page).locator("td[data-head='Most to pay']").getByText(/^£\d/).waitFor();
  await page.getByLabel("Choose: Tray at a sale").check();
  await page.locator("#book-set-status").selectOption("bought");
  await eventually(async () => assert.equal(await rows(page).locator("td[data-head='Most to pay']").innerText(), ""));
});

browserTest("a thousand pieces are searched, sorted and turned over without a stutter", { timeout: 200_000 }, async ({ page, go }) => {
  await go("#/");
  await fillShelf(page, 1_000);
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await eventually(async () => assert.equal(await rows(page).count(), 50, "a page of the book"));
  const search = page.locator("#book-search");
  await search.focus();
  // From the keystroke until the frame after it is on screen.
  const typed = async () => {
    const took = [];
    for (const key of ["p", "i", "e", "c", "e", " ", "9", "9", "9"]) {
      took.push(await page.evaluate((key) => new Promise((resolve) => {
        const field = document.querySelector("#book-search");
        const start = performance.now();
        field.value += key;
        field.dispatchEvent(new InputEvent("input", { bubbles: true }));
        requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - start)));
      }), key));
    }
    await eventually(async () => assert.deepEqual(await names(page), ["Piece 999"]));
    console.log(`search in 1,000 pieces, keystroke to settled frame: ${took.map((it) => it.toFixed(0)).join(" ")} ms`);
    return took.toSorted((a, b) => a - b)[Math.floor(took.length / 2)];
  };
  // Another test runs beside this one. If it holds the machine up, the word is typed again, twice at most.
  let usual = await typed();
  for (let again = 0; again < 2 && usual >= STUTTER_MS; again += 1) {
    await search.fill("");
    usual = await typed();
  }
  assert.ok(usual < STUTTER_MS, `a keystroke took ${usual} ms`);

  await search.fill("");
  await page.getByText("Page 1 of 20").waitFor();
  await page.getByRole("navigation", { name: "Pages of the stock" }).getByRole("button", { name: "Next" }).click();
  await page.getByText("Page 2 of 20").waitFor();
  await page.getByRole("button", { name: "Name", exact: true }).click();
  await eventually(async () => assert.deepEqual((await names(page)).slice(0, 3), ["Piece 1", "Piece 2", "Piece 3"]));
  // Everything found is chosen at once, and changed at once.
  await page.getByRole("button", { name: "Choose every piece found" }).click();
  await page.getByText("1000 pieces chosen").waitFor();
  await page.locator("#book-set-status").selectOption("bought");
  await page.locator("#book-status").selectOption("bought");
  await page.getByText("1000 pieces", { exact: true }).waitFor({ timeout: 60_000 });
});

browserTest("a piece is entered by keyboard in under 200 strokes", async ({ page, go }) => {
  await go("#/");
  await page.locator("#main h1").waitFor();
  const keys = counting(page);
  await keys.press("n");
  await eventually(async () => assert.ok(await page.locator("#quick-name").evaluate((it) => it === document.activeElement)));
  for (const text of ["Tray from the attic", "Tray", "A17", "", "1840", "40", "S03 C08 C07", "Much", "Shelf 2", "Bo", "60", "400", "120", "Sell", "Pou"]) {
    await keys.type(text);
    await keys.press("Tab");
  }
  await keys.press("Enter");
  await page.getByText("Tray from the attic is on your shelf.").waitFor();
  console.log(`a piece entered by keyboard: ${keys.strokes()} strokes`);
  assert.ok(keys.strokes() < FEWEST_STROKES, `${keys.strokes()} strokes`);
  // The row is ready for the next, with what it has in common.
  await eventually(async () => assert.ok(await page.locator("#quick-name").evaluate((it) => it === document.activeElement)));
  assert.deepEqual(
    await page.evaluate(() => ["name", "form", "where", "status", "paid"].map((it) => document.getElementById(`quick-${it}`).value)),
    ["", "tray", "Shelf 2", "bought", ""],
  );
  await page.getByRole("button", { name: "Open: Tray from the attic" }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/piece");
  await eventually(async () => assert.equal(await page.locator("[id='piece.to_year']").inputValue(), "1840"));
  await go("#/money");
  await eventually(async () => assert.equal(await page.locator("[id='market.likely']").inputValue(), "400"));
  await go("#/condition");
  await eventually(async () => assert.ok(await page.getByRole("radio", { name: "Much: about 20 in 100" }).isChecked()));
});

browserTest("what cannot be used in the quick row stays there and is said", async ({ page, go }) => {
  await go("#/");
  await page.keyboard.press("n");
  await page.keyboard.press("Enter");
  await page.getByText("Nothing is filled in yet.").waitFor();
  await page.locator("#quick-name").fill("Pot");
  await page.locator("#quick-looks").fill("C01 Z99");
  await page.locator("#quick-looks").press("Enter");
  await page.getByText("We do not know these letters: Z99.").waitFor();
  await page.locator("#quick-looks").fill("C01");
  await page.locator("#quick-paid").fill("lots");
  await page.locator("#quick-paid").press("Enter");
  await page.getByText(/^Paid: "lots" is not a number/).waitFor();
  assert.equal(await page.locator("#quick-name").inputValue(), "Pot");
  await eventually(async () => assert.ok(await page.locator("#quick-paid").evaluate((it) => it === document.activeElement)));
  await page.keyboard.type("40");
  await page.keyboard.press("Enter");
  await page.getByText("Pot is on your shelf.").waitFor();
});

browserTest("a piece is duplicated, and the next one begins like it", async ({ page, go }) => {
  await go("#/");
  await addQuickly(page, THREE);
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByLabel("Choose: Oval tray").check();
  await page.getByRole("button", { name: "Duplicate" }).click();
  await page.waitForURL(/#\/piece/);
  await eventually(async () => assert.equal(await page.locator("[id='piece.name']").inputValue(), "Oval tray"));
  await eventually(async () => assert.equal(await page.locator("[id='stock.number']").inputValue(), ""));
  await go("#/");
  await eventually(async () => assert.equal(await rows(page).count(), 4));
  await page.getByLabel("Choose: Teapot, knob lost").check();
  await page.getByLabel("Choose: Oval tray").nth(1).uncheck().catch(() => {});
  await page.getByRole("button", { name: "Choose none" }).click();
  await page.getByLabel("Choose: Teapot, knob lost").check();
  await page.getByRole("button", { name: "Start the next one like it" }).click();
  await page.waitForURL(/#\/piece/);
  await eventually(async () => assert.equal(await page.locator("[id='piece.form']").inputValue(), "teapot"));
  await eventually(async () => assert.equal(await page.locator("[id='piece.name']").inputValue(), ""));
});

browserTest("a table goes out and comes back, and its formulas are harmless", { acceptDownloads: true }, async ({ page, go, checkAccess }) => {
  await go("#/");
  await addQuickly(page, [...THREE, ["=1+1", "Basket", "@7", "5"]]);
  const table = await saved(page, page.getByRole("button", { name: "Save your pieces as a table (CSV)" }));
  assert.match(table.name, /^stock-\d{4}-\d\d-\d\d\.csv$/);
  assert.ok(table.text.startsWith("\ufeffStock number,Name,Form,"));
  assert.ok(table.text.includes("\r\n\"A10\",".replaceAll("\"", "")) && table.text.includes("\"Teapot, knob lost\""));
  assert.ok(table.text.includes("'=1+1") && table.text.includes("'@7"), "no cell that a spreadsheet would run");

  await page.getByRole("link", { name: "Take in a table from a spreadsheet" }).click();
  await page.locator("#table-file").setInputFiles({ name: "back.csv", mimeType: "text/csv", buffer: Buffer.from(table.text) });
  await page.getByText("4 pieces. Every cell can be used.").waitFor();
  await page.getByText(/^The stock number A10 is taken already, by Teapot, knob lost/).waitFor();
  await checkAccess("a table to be taken in");
  await page.getByRole("button", { name: "Add these pieces" }).click();
  await page.getByText("4 pieces were added to your shelf.").waitFor();
  await eventually(async () => assert.equal(await page.locator(".shelf-line h3").filter({ hasText: "Oval tray" }).count(), 2));
});

browserTest("a table with wrong columns, ragged rows and strange words says so before anything is added", async ({ page, go }) => {
  await go("#/stock/table");
  const give = (name, data) => page.locator("#table-file").setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(data, "latin1") });
  await give("wrong.csv", "colour,mood\nblue,good\n");
  await page.getByText("No heading of this table is one we know.").waitFor();
  await eventually(async () => assert.equal(await page.getByRole("button", { name: "Add these pieces" }).isVisible(), false));
  await page.getByLabel("What the column colour becomes").selectOption({ label: "Name" });
  await page.getByText("1 piece. Every cell can be used.").waitFor();

  await give("old.csv", "Ref;Title;Type;Price\nA1;Caf\xe9 pot;Teepot;\xa325\nA2;Box\nA3;Jug;Teapot;=2+2;more\n");
  await page.getByText(/read as Windows-1252/).waitFor();
  await page.getByText("Row 3 has 2 cells; the first row has 4. What is missing is left empty.").waitFor();
  await page.getByText(/These cells have no heading and are left out: more\./).waitFor();
  await page.getByText(/“Teepot” under “Form” is no word we know\. Did you mean “Teapot”\?/).waitFor();
  await page.getByText(/is a formula\. It is taken in as text and never worked out/).waitFor();
  await page.getByText("A1, Café pot").waitFor();
  await page.getByRole("button", { name: "Leave it" }).click();
  await eventually(async () => assert.equal(await page.locator("#preview-title").count(), 0));

  await give("book.xlsx", "PK\x03\x04 and so on");
  await page.getByText(/This is a spreadsheet file, not a table as text\./).waitFor();
  await give("empty.csv", "");
  await page.getByText(/There is nothing in this file but its headings\./).waitFor();
  await give("bytes.csv", "\xff\x00\x00\xfe\x81");
  await page.getByText("This file holds no text that can be read.").waitFor();
  await give("million.csv", `Name,Paid\n${"Spoon,1\n".repeat(1_000_000)}`);
  await page.getByText(/This table has 1000000 rows\. Up to 5000 pieces are taken in at once\./).waitFor({ timeout: 60_000 });
  await go("#/");
  await page.getByText("None yet.").waitFor();
});

browserTest("a piece from a file with a word nobody knows says so before it is added", async ({ page, go }) => {
  await go("#/");
  const text = JSON.stringify({ format: "leavewell-case", version: 1, piece: { name: "Strange pot", form: "teepot" } });
  await page.locator("#file").setInputFiles({ name: "pot.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await page.getByText(/Strange pot: What it is: "teepot" is not one of the choices/).waitFor();
  await eventually(async () => assert.equal(await page.locator(".shelf-line h3").filter({ hasText: "Strange pot" }).count(), 0));
  await page.getByRole("button", { name: "Take these in" }).click();
  await page.locator(".shelf-line h3").filter({ hasText: "Strange pot" }).waitFor();
});

browserTest("labels and the stock list are printed of the pieces chosen", async ({ page, go, checkAccess }) => {
  await go("#/");
  await addQuickly(page, THREE);
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByLabel("Choose: Teapot, knob lost").check();
  await page.getByLabel("Choose: Oval tray").check();
  await page.getByRole("link", { name: "Labels to print" }).click();
  await eventually(async () => assert.equal(await page.locator(".stock-label").count(), 2));
  await checkAccess("labels");
  await page.emulateMedia({ media: "print" });
  await eventually(async () => assert.equal(await page.getByRole("button", { name: "Print" }).isVisible(), false));
  await page.emulateMedia({ media: "screen" });
  await page.goBack();
  await page.getByRole("link", { name: "Stock list to print" }).click();
  await eventually(async () => assert.equal(await page.locator(".stock-list tbody tr").count(), 2));
  assert.match(await page.locator(".stock-list tfoot").innerText(), /£1,220/);
  await checkAccess("the stock list");
});

browserTest("single keys are shortcuts, stand in a list, and can be turned off", async ({ page, go }) => {
  await go("#/");
  await addQuickly(page, [...THREE, ["Box", "Box or caddy", "", ""]]);
  await page.locator("h1").first().focus();
  await page.keyboard.press("?");
  await page.getByText("They work while you are not typing in a field.").waitFor();
  await page.keyboard.press("t");
  await eventually(async () => assert.equal(await rows(page).count(), 4));
  await page.keyboard.press("/");
  await eventually(async () => assert.ok(await page.locator("#book-search").evaluate((it) => it === document.activeElement)));
  await page.keyboard.type("t");
  await eventually(async () => assert.equal(await page.locator("#book-search").inputValue(), "t", "a field keeps its letters"));
  await page.getByRole("button", { name: "Box", exact: true }).or(page.getByRole("button", { name: "Oval tray" })).first().click();
  await page.waitForURL(/#\/piece/);
  await page.keyboard.press("4");
  await page.waitForURL(/#\/money/);
  await page.keyboard.press("s");
  await page.waitForURL(/#\/$/);
  await page.locator("#shortcuts").evaluate((it) => (it.closest("details").open = true));
  await page.getByLabel("Use these shortcuts").uncheck();
  await page.locator("h1").first().focus();
  await page.keyboard.press("t");
  await page.waitForTimeout(300);
  assert.equal(await page.locator(".book-table").count(), 1, "it does nothing any more");
});

browserTest("sizes are typed in inches and troy ounces, and the choice is kept", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The teapot for every day/ }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/piece");
  await page.locator("summary").filter({ hasText: /^Units$/ }).click();
  await page.locator("[id='piece.length_unit']").selectOption("in");
  await page.locator("[id='piece.weight_unit']").selectOption("ozt");
  await eventually(async () => assert.equal(await page.locator("[id='piece.height_mm']").inputValue(), "5.91"));
  await page.locator("[id='piece.length_mm']").fill("9 3/4");
  await page.locator("[id='piece.weight_g']").fill("14.5");
  await settled(page);
  await eventually(async () => assert.equal(await page.locator("[id='piece.length_mm']").inputValue(), "9 3/4"));
  await go("#/sheet/buyer");
  await page.getByText(/Height 5\.91 in, length 9 3\/4 in, weight with all that is fixed to it 14\.5 oz t\./).waitFor({ timeout: 60_000 });
  await go("#/");
  await page.locator("#start-name").fill("Another pot");
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
  await eventually(async () => assert.equal(await page.locator("[id='piece.length_unit']").inputValue(), "in"));
  // The row for quick entry asks in the same unit.
  await go("#/");
  await page.locator("#quick-title").evaluate((it) => (it.parentElement.open = true));
  await page.locator("#quick-name").fill("Pot in inches");
  await page.getByLabel("Height (in)").fill("10");
  await page.locator("#quick-name").press("Enter");
  await page.getByText("Pot in inches is on your shelf.").waitFor();
  await page.getByRole("button", { name: /^Open.*Pot in inches/ }).click();
  await page.waitForURL(/#\/(counsel|piece|road)/);
  await go("#/piece");
  await eventually(async () => assert.equal(await page.locator("[id='piece.height_mm']").inputValue(), "10"));
  assert.equal(await page.locator("[id='piece.length_unit']").inputValue(), "in");
});
