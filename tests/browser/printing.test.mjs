// Printing: the sheets of every worked example, read back from the printed pages.

import assert from "node:assert/strict";
import { extractText, getDocumentProxy } from "unpdf";
import { browserTest, eventually } from "./harness.mjs";

const DEFERRAL = "They decide, not this tool.";
const SHEETS = ["client", "buyer", "file", "conservation"];
/** The margin of `@page`, and the overhang of a rounded letter, in points. */
const MARGIN = (15 / 25.4) * 72;
const SLACK = 2;
/** The pages of a client's sheet that are signed, and the pages of the sheet for the file. */
const MOST_CLIENT_PAGES = 2;
const MOST_FILE_PAGES = 12;
/** The pages of a client's sheet together with those behind the signatures. */
const MOST_CLIENT_PAGES_IN_ALL = 12;

/** Letters and digits only, because the printer decides line breaks and hyphenation. */
const bare = (text) => text.normalize("NFKC").replace(/[^\p{L}\p{N}]/gu, "");

async function printed(page, format) {
  // A copy, because the PDF reader takes the bytes over.
  const paper = await getDocumentProxy(new Uint8Array(await page.pdf({ format })));
  const { text: each } = await extractText(paper, { mergePages: false });
  const outside = [];
  for (let number = 1; number <= paper.numPages; number += 1) {
    const sheet = await paper.getPage(number);
    const [, , width] = sheet.view;
    const { items } = await sheet.getTextContent();
    assert.ok(items.some(({ str }) => str.trim() !== ""), `page ${number} is not empty`);
    for (const { str, transform, width: long } of items) {
      const left = transform[4];
      if (str.trim() !== "" && (left < MARGIN - SLACK || left + long > width - MARGIN + SLACK)) {
        outside.push(`page ${number}: ${str}`);
      }
    }
  }
  return { text: bare(each.join(" ")), outside, pages: each.map(bare) };
}

/** The text on screen that must reach the paper: every heading, every caution, every table cell. */
async function shown(page) {
  return page.locator(".paper").evaluate((paper) => {
    const texts = (query) => [...paper.querySelectorAll(query)].map((it) => it.textContent).filter((text) => text.trim() !== "");
    return {
      headings: texts("h2, h3"),
      cautions: texts(".said-stop, .said-care, .said-note"),
      cells: texts("table:not(details table) :is(th, td)"),
      cut: [...paper.querySelectorAll("tr, .said-stop, .said-care, .said-note")].filter((it) => getComputedStyle(it).breakInside !== "avoid").length,
    };
  });
}

for (const whom of SHEETS) {
  browserTest(`the ${whom}'s sheet of every example is complete on paper`, { timeout: 300_000 }, async ({ page, go }) => {
    await go("#/");
    const examples = page.getByRole("button", { name: /^Open a copy of: / });
    const count = await examples.count();
    assert.ok(count >= 8, "there are examples");
    for (let at = 0; at < count; at += 1) {
      await go("#/");
      const name = await examples.nth(at).getAttribute("aria-label");
      await examples.nth(at).click();
      await page.locator("#main h1").waitFor();
      await go(`#/sheet/${whom}`);
      await page.locator(".paper .leaf[aria-busy=false] section").first().waitFor({ timeout: 60_000 });
      await page.emulateMedia({ media: "print" });
      const wanted = await shown(page);
      assert.ok(wanted.headings.length > 2, `${name} has headings: ${wanted.headings}`);
      // A buyer's description of an untreated piece names no treatment.
      if (whom !== "buyer") assert.ok(wanted.cautions.length > 0, `${name} has cautions`);
      assert.equal(wanted.cut, 0, `${name}: no row and no caution is cut by the end of a page`);
      for (const format of ["A4", "Letter"]) {
        const { text, outside, pages } = await printed(page, format);
        assert.deepEqual(outside, [], `${name} on ${format} stays within the margins`);
        const what = `${name} on ${format}`;
        if (whom === "buyer") assert.equal(pages.length, 1, `${what} is one page`);
        if (whom === "file") assert.ok(pages.length <= MOST_FILE_PAGES, `${what} is ${pages.length} pages`);
        if (whom === "conservation") {
          const on = (words) => pages.findIndex((text) => text.includes(bare(words)));
          assert.equal(on("Consent, step by step"), on("Who does the work, name and date"), `${what} has the consent whole on one page`);
        }
        if (whom === "client") {
          const on = (words) => pages.findIndex((text) => text.includes(bare(words)));
          const [sign, signed, behind] = ["Choose and sign", "Workshop, with date", "What this rests on, and what it means"].map(on);
          assert.ok(sign >= 0 && sign === signed, `${what} has its signatures whole on one page`);
          assert.ok(pages.length <= MOST_CLIENT_PAGES_IN_ALL, `${what} is ${pages.length} pages`);
          assert.ok(behind <= MOST_CLIENT_PAGES, `${what} begins what is behind on page ${behind + 1}`);
          assert.equal(behind, signed + 1, `${what} has nothing between the signatures and what is behind them`);
        }
        for (const said of [DEFERRAL, ...wanted.headings, ...wanted.cautions, ...wanted.cells]) {
          assert.ok(text.includes(bare(said)), `${name} on ${format} says: ${said}`);
        }
      }
      await page.emulateMedia({ media: "screen" });
    }
  });
}

browserTest("photos are printed: on the client's sheet, and on the buyer's if that is wanted", { timeout: 120_000 }, async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/condition");
  const made = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(320, 240);
    const pen = canvas.getContext("2d");
    pen.fillStyle = "#b9835a";
    pen.fillRect(40, 40, 240, 160);
    const blob = await canvas.convertToBlob({ type: "image/png" });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  const photo = { name: "tray.png", mimeType: "image/png", buffer: Buffer.from(made) };
  await page.locator("part-photos input[type=file]").first().setInputFiles(photo, { force: true });
  await page.getByText("The photo is kept.").waitFor({ state: "attached" });
  const images = async () => ((await page.pdf({ format: "A4" })).toString("latin1").match(/\/Subtype\s*\/Image/g) ?? []).length;
  const shown = async (whom) => {
    await go(`#/sheet/${whom}`);
    await page.locator(".paper .leaf[aria-busy=false] section").first().waitFor({ timeout: 60_000 });
  };
  await shown("client");
  await page.locator("sheet-photos img").waitFor();
  await eventually(async () => assert.ok((await images()) > 0, "the photo is in the PDF"));
  await shown("buyer");
  assert.equal(await images(), 0, "a buyer sees no photo unless that is wanted");
  await go("#/piece");
  await page.locator("summary").filter({ hasText: "In your stock" }).click();
  await page.getByLabel("Print the photos on the buyer's sheet").check();
  await page.getByLabel("Print the asking price on the buyer's sheet").check();
  await page.locator("[id='stock.asking']").fill("480");
  await page.locator("[id='stock.number']").fill("T 12");
  await page.locator("[id='stock.seller']").fill("An invented shop");
  await shown("buyer");
  await page.locator(".paper").getByText("£480").waitFor();
  await eventually(async () => assert.ok((await images()) > 0, "now it is in the PDF"));
  const text = await page.locator(".paper").innerText();
  assert.match(text, /Stock number\s+T 12/);
  assert.match(text, /Offered by\s+An invented shop/);
  assert.doesNotMatch(text, /Worn tray from the sale room/, "the owner's name for it stays at home");
  assert.doesNotMatch(await page.title(), /Worn tray from the sale room/);
});

browserTest("the law of a sale is named on Money and on the buyer's sheet", async ({ page, go }) => {
  await go("#/");
  const text = JSON.stringify({
    format: "leavewell-case", version: 2, asked_on: "2026-05-31",
    piece: { name: "Invented teapot", form: "teapot" },
    findings: [{ id: "M03", answer: "seen", part: "body" }, { id: "C05", answer: "seen" }, { id: "C15", answer: "seen" }],
    parts: [{ part: "body", dents: "minor" }, { part: "finial", material: "ivory" }, { part: "handle", replaced: "replaced" }],
  });
  await page.locator("#file").setInputFiles({ name: "pot.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await page.waitForURL(/#\/(counsel|piece)/);
  await go("#/money");
  const law = page.locator("section[aria-labelledby=law-title]");
  await law.getByText(/Ivory is recorded on it: finial or knob\. Dealing in ivory is restricted or banned in many countries/).waitFor();
  await law.getByText(/It carries hallmarks of silver, and something on it was altered or added/).waitFor();
  await go("#/sheet/buyer");
  await page.locator(".paper").getByText(/Dealing in ivory is restricted or banned/).waitFor({ timeout: 60_000 });
  await page.locator(".paper").getByText(/may not be sold until an assay office has seen it/).waitFor();
});
