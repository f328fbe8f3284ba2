// Printing: the sheets of every worked example, read back from the printed pages.

import assert from "node:assert/strict";
import { extractText, getDocumentProxy } from "unpdf";
import { browserTest } from "./harness.mjs";

const DEFERRAL = "They decide, not this tool.";
const SHEETS = ["client", "buyer", "file"];
/** The margin of `@page`, and the overhang of a rounded letter, in points. */
const MARGIN = (15 / 25.4) * 72;
const SLACK = 2;

/** Letters and digits only, because the printer decides line breaks and hyphenation. */
const bare = (text) => text.normalize("NFKC").replace(/[^\p{L}\p{N}]/gu, "");

async function printed(page, format) {
  // A copy, because the PDF reader takes the bytes over.
  const paper = await getDocumentProxy(new Uint8Array(await page.pdf({ format })));
  const { text } = await extractText(paper, { mergePages: true });
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
  return { text: bare(text), outside, pages: paper.numPages };
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
        assert.ok(pages >= 1);
        for (const said of [DEFERRAL, ...wanted.headings, ...wanted.cautions, ...wanted.cells]) {
          assert.ok(text.includes(bare(said)), `${name} on ${format} says: ${said}`);
        }
      }
      await page.emulateMedia({ media: "screen" });
    }
  });
}
