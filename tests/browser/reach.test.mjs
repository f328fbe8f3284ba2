// Screens hold when text grows: zoomed to twice the size, with larger letters, with the spacing that a reader may set
// (WCAG 1.4.12), and with the longer words of another language. Labels of charts never meet. Days and amounts follow the
// browser's locale.

import assert from "node:assert/strict";
import { browserTest, eventually, settled } from "./harness.mjs";
import { STATES } from "./screens.mjs";

const LONG_MS = 900_000;
const PHONE = { width: 390, height: 844 };
/** A window of 1280 px, zoomed to 200 %. */
const ZOOMED = { width: 640, height: 450 };
const LARGE_LETTERS = "html { font-size: 32px }";
/** The least that a page must bear by WCAG 1.4.12. */
const SPACED = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-block-end: 2em !important }";
/** How much longer another language is than English: for a label of one word, and for a sentence. */
const LONGER_WORD = 0.5;
const LONGER_SENTENCE = 0.35;

/** Sets a style of the reader's own, in place of the one before. */
function wear(css) {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets = [sheet];
}

/** What is cut off, and what makes the page scroll sideways. */
function cut() {
  const { scrollWidth, clientWidth } = document.documentElement;
  const named = (it) => `${it.tagName.toLowerCase()}.${it.getAttribute("class") ?? ""} "${it.textContent.trim().slice(0, 40)}"`;
  const found = [];
  if (scrollWidth > clientWidth) {
    const wide = [...document.querySelectorAll("body *")].filter((it) => it.getBoundingClientRect().right > clientWidth + 1 && !it.closest(".table-scroll"));
    found.push(`scrolls sideways by ${scrollWidth - clientWidth} px: ${wide.slice(-2).map(named).join("; ")}`);
  }
  for (const it of document.querySelectorAll("body *")) {
    const style = getComputedStyle(it);
    if (style.clipPath !== "none" || it.closest("svg, select") || !it.getClientRects().length) continue;
    const hides = (overflow) => overflow === "hidden" || overflow === "clip";
    const across = hides(style.overflowX) && it.scrollWidth > it.clientWidth + 1;
    const down = hides(style.overflowY) && it.scrollHeight > it.clientHeight + 1;
    // A button whose words are wider than itself is cut, or runs over its neighbour.
    const over = it.matches("button, .button, summary, legend, label") && it.scrollWidth > it.clientWidth + 1 && style.display !== "inline";
    if (it.textContent.trim() && (across || down || over)) found.push(named(it));
  }
  return found;
}

/** Makes every word of the page longer and gives its vowels accents, as a translation would. Returns how many texts. */
function translate([word, sentence]) {
  const accents = { a: "á", e: "ë", i: "ï", o: "ö", u: "ü", A: "Å", E: "É", I: "Î", O: "Ø", U: "Û" };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  window.untranslated = [];
  for (let text = walker.nextNode(); text; text = walker.nextNode()) {
    const words = text.nodeValue;
    if (!/\p{L}{2}/u.test(words) || text.parentElement.closest("script, style, svg")) continue;
    window.untranslated.push([text, words]);
    text.nodeValue = words.replace(/\p{L}+/gu, (it) => {
      const longer = Math.ceil(it.length * (words.trim().includes(" ") ? sentence : word));
      return it.replace(/[aeiouAEIOU]/g, (vowel) => accents[vowel]) + "ëöü".repeat(longer).slice(0, longer);
    });
  }
  return window.untranslated.length;
}

function translateBack() {
  for (const [text, words] of window.untranslated) text.nodeValue = words;
}

browserTest("no text is cut when it grows, and nothing scrolls sideways", { timeout: LONG_MS, viewport: PHONE }, async (test) => {
  const { page } = test;
  const faults = [];
  const look = async (name, how) => {
    for (const fault of await page.evaluate(cut)) faults.push(`${name}, ${how}: ${fault}`);
  };
  for (const state of STATES) {
    await page.setViewportSize(PHONE);
    await page.evaluate(wear, "").catch(() => {});
    await state.show(test);
    await look(state.name, "on a phone");
    await page.evaluate(wear, SPACED);
    await look(state.name, "spaced");
    await page.evaluate(wear, LARGE_LETTERS);
    await look(state.name, "with large letters");
    await page.evaluate(wear, "");
    assert.ok((await page.evaluate(translate, [LONGER_WORD, LONGER_SENTENCE])) > 5, `${state.name} has words to translate`);
    await look(state.name, "translated");
    await page.evaluate(translateBack);
    await page.setViewportSize(ZOOMED);
    await look(state.name, "zoomed to 200 %");
  }
  assert.deepEqual(faults, []);
});

/** Labels of one drawing that meet, and labels outside the screen. */
function meeting() {
  const found = [];
  const { clientWidth } = document.documentElement;
  for (const drawing of document.querySelectorAll("svg")) {
    const labels = [...drawing.querySelectorAll("text")]
      .filter((it) => it.textContent.trim() && it.getClientRects().length)
      .map((it) => ({ words: it.textContent, box: it.getBoundingClientRect() }));
    labels.forEach(({ words, box }, at) => {
      if (box.left < -1 || box.right > clientWidth + 1) found.push(`"${words}" leaves the screen`);
      for (const other of labels.slice(at + 1)) {
        const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
        const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
        // A box of text is taller than its letters.
        if (across > 1 && down > 3) found.push(`"${words}" meets "${other.words}"`);
      }
    });
  }
  return found;
}

const WITH_CHARTS = ["counsel", "look", "condition", "money", "closer", "bench"];

for (const width of [390, 1280]) {
  browserTest(`labels of charts never meet at ${width} px`, { timeout: LONG_MS, viewport: { width, height: 900 } }, async ({ page, go }) => {
    const faults = [];
    let drawings = 0;
    const look = async (name) => {
      await settled(page);
      await page.evaluate(() => document.querySelectorAll("details").forEach((it) => it.setAttribute("open", "")));
      await settled(page);
      drawings += await page.locator("svg text").count();
      for (const fault of await page.evaluate(meeting)) faults.push(`${name}: ${fault}`);
    };
    await go("#/");
    const examples = page.getByRole("button", { name: /^Open a copy of: / });
    const count = await examples.count();
    assert.ok(count >= 8, "there are examples");
    for (let at = 0; at < count; at += 1) {
      await go("#/");
      const name = await examples.nth(at).getAttribute("aria-label");
      await examples.nth(at).click();
      await page.locator(".answer-sentence").waitFor();
      for (const screen of WITH_CHARTS) {
        await go(`#/${screen}`);
        await look(`${name}, ${screen}`);
      }
    }
    await go("#/learning");
    await page.getByRole("button", { name: "Show it with forty invented pieces" }).click();
    await page.getByText("All of this is invented").waitFor();
    await look("learning");
    await go("#/guide");
    await page.getByRole("heading", { name: "What it cannot know" }).waitFor();
    await look("the guide");
    assert.ok(drawings > 100, `only ${drawings} labels were looked at`);
    assert.deepEqual(faults, []);
  });
}

/** A piece for sale, with sums of four digits and the day on which its price was noted. */
async function forSale(page, go) {
  await go("#/");
  await page.getByRole("button", { name: "Open a copy of: The worn tray" }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/piece");
  await page.locator("summary").filter({ hasText: "In your stock" }).click();
  await page.locator("[id='stock.asking']").fill("1150");
  await go("#/done");
  await page.getByLabel("Where it stands now").selectOption({ label: "For sale" });
  await page.getByText(/^We noted on .* what we expect it to fetch as it is: £/).waitFor();
}

for (const { locale, day, asking } of [
  { locale: "en-GB", day: /^\d{1,2} [A-Z][a-z]+ \d{4}$/, asking: "£1,150" },
  { locale: "en-US", day: /^[A-Z][a-z]+ \d{1,2}, \d{4}$/, asking: "£1,150" },
  { locale: "de-DE", day: /^\d\d\.\d\d\.\d{4}$/, asking: "£1.150" },
]) {
  browserTest(`days and amounts that stand alone follow the browser: ${locale}`, { locale }, async ({ page, go }) => {
    await forSale(page, go);
    const said = await page.getByText(/^We noted on /).innerText();
    assert.match(said.replace(/^We noted on (.*) what we expect.*$/, "$1"), day);
    // What was typed, the sentences, the sheets and the record stay the same everywhere.
    await go("#/piece");
    await eventually(async () => assert.equal(await page.locator("[id='stock.asking']").inputValue(), "1150"));
    await go("#/sheet/file");
    await page.locator(".paper .leaf[aria-busy=false] section").first().waitFor({ timeout: 60_000 });
    assert.match(await page.locator(".paper").innerText(), /\d{4}-\d\d-\d\d/);
    await go("#/");
    await page.getByRole("button", { name: "Table", exact: true }).click();
    await page.locator(".book-table td.is-amount").getByText(asking, { exact: true }).waitFor();
  });
}
