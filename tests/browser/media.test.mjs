// What a reader asks of every screen: less motion, more contrast, a page to print. And tables that compare on a phone.

import assert from "node:assert/strict";
import { browserTest } from "./harness.mjs";
import { drawn, unfold } from "./screens.mjs";

const SCREENS = ["", "guide", "piece", "look", "condition", "money", "counsel", "treatments", "bench", "done", "closer"];

async function openExample(page, go, name = "The worn tray") {
  await go("#/");
  await page.getByRole("button", { name: `Open a copy of: ${name}` }).click();
  await page.locator(".answer-sentence").waitFor();
}

async function show(page, go, route) {
  await go(`#/${route}`);
  await page.locator("#main h1").waitFor();
  await drawn(page);
}

for (const [reducedMotion, moves] of [["reduce", false], ["no-preference", true]]) {
  browserTest(`where a reader asks for less motion nothing moves: ${reducedMotion}`, { reducedMotion }, async ({ page, go }) => {
    await openExample(page, go);
    await show(page, go, "counsel");
    // What a later rule may set in motion: a rule for everything has to stop it where it is asked for.
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync("@keyframes turn { to { rotate: 1turn } } .answer-sentence { transition: color 1s; animation: turn 1s infinite; scroll-behavior: smooth }");
      document.adoptedStyleSheets = [sheet];
    });
    const found = await page.locator(".answer-sentence").first().evaluate((it) => {
      const { animationName, transitionDuration, transitionProperty, scrollBehavior } = getComputedStyle(it);
      const changes = transitionProperty !== "none" && parseFloat(transitionDuration) > 0;
      return { turns: animationName !== "none", changes, glides: scrollBehavior === "smooth", running: document.getAnimations().length };
    });
    assert.deepEqual(found, { turns: moves, changes: moves, glides: moves, running: moves ? 1 : 0 });
  });
}

for (const colorScheme of ["light", "dark"]) {
  browserTest(`where a reader asks for more contrast quiet text and lines are in full ink: ${colorScheme}`, { colorScheme, timeout: 200_000 }, async ({ page, go, checkAccess }) => {
    await openExample(page, go);
    const inks = () =>
      page.evaluate(() => {
        const colour = (selector, property) => {
          const it = [...document.querySelectorAll(selector)].find((one) => one.getClientRects().length);
          return it && getComputedStyle(it)[property];
        };
        return { ink: getComputedStyle(document.documentElement).color, quiet: colour(".hint", "color"), edge: colour("#main input[type=text], #main select", "borderTopColor") };
      });
    await page.emulateMedia({ contrast: "no-preference" });
    await show(page, go, "money");
    const before = await inks();
    assert.notEqual(before.quiet, before.ink, "without the wish, hints are quieter than text");
    await page.emulateMedia({ contrast: "more" });
    for (const route of SCREENS) {
      await show(page, go, route);
      const { ink, quiet, edge } = await inks();
      if (quiet) assert.equal(quiet, ink, `hints on #/${route}`);
      if (edge) assert.equal(edge, ink, `edges of fields on #/${route}`);
    }
    await show(page, go, "money");
    await checkAccess(`Money with more contrast, ${colorScheme}`);
  });
}

browserTest("a screen is printed with its answer and its cautions, and without what only a screen can use", { timeout: 200_000 }, async ({ page, go }) => {
  await openExample(page, go);
  await show(page, go, "counsel");
  const answer = await page.locator(".answer-sentence").first().innerText();
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  assert.ok(await page.locator(".answer-sentence").first().isVisible(), answer);
  for (const gone of [".top", ".places", ".buttons", "#main button.quiet"]) {
    for (const it of await page.locator(gone).all()) assert.equal(await it.isVisible(), false, gone);
  }
  const paper = await page.evaluate(() => {
    const { color, backgroundColor } = getComputedStyle(document.documentElement);
    const light = (css) => css.match(/\d+/g).slice(0, 3).reduce((sum, it) => sum + Number(it), 0) / 765;
    return { ink: light(color), paper: light(backgroundColor), wide: document.documentElement.scrollWidth - document.documentElement.clientWidth };
  });
  assert.ok(paper.ink < 0.3 && paper.paper > 0.9, `dark ink on light paper, also where the screen is dark: ${JSON.stringify(paper)}`);
  assert.equal(paper.wide, 0);
  const { extractText, getDocumentProxy } = await import("unpdf");
  const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ format: "A4" })));
  const { text } = await extractText(pdf, { mergePages: true });
  const plain = (words) => words.replace(/\s+/g, " ").trim();
  assert.ok(plain(text).includes(plain(answer)), `the paper says the answer: ${answer}`);
});

for (const width of [320, 390]) {
  browserTest(`tables become blocks that compare, and none scrolls sideways at ${width} px`, { viewport: { width, height: 844 }, timeout: 300_000 }, async ({ page, go }) => {
    await openExample(page, go);
    for (const route of SCREENS) {
      await show(page, go, route);
      await unfold(page);
      const wide = await page.evaluate(() =>
        [...document.querySelectorAll(".table-scroll")]
          .filter((it) => it.getClientRects().length && it.scrollWidth > it.clientWidth + 1)
          .map((it) => `${it.getAttribute("aria-label")}: ${it.scrollWidth} > ${it.clientWidth}`),
      );
      assert.deepEqual(wide, [], `#/${route}`);
    }
    await show(page, go, "counsel");
    await unfold(page);
    const plan = page.locator(".table-scroll").filter({ hasText: "Leaves less money" }).first();
    const cell = plan.locator("tbody td").first();
    const head = await cell.evaluate((it) => getComputedStyle(it, "::before").content);
    assert.match(head, /Money/, "each figure says what it is");
  });
}

browserTest("where another plan is as good as any more often than the one advised, a sentence says why", { timeout: 300_000 }, async ({ page, go }) => {
  await go("#/");
  const names = await page.getByRole("button", { name: /^Open a copy of: / }).evaluateAll((all) => all.map((it) => it.getAttribute("aria-label").replace("Open a copy of: ", "")));
  assert.ok(names.length > 10);
  let compared = 0;
  for (const name of names) {
    await openExample(page, go, name);
    await unfold(page);
    const { advised, best } = await page.evaluate(() => {
      const of = (cell) => (/never/.test(cell) ? 0 : /always/.test(cell) ? 100 : Number(cell.match(/(\d+) of 100/)?.[1]));
      const table = [...document.querySelectorAll("#main .table-scroll table")].find((it) => /Leaves less money/.test(it.tHead?.textContent));
      const shares = [...table.tBodies[0].rows].map((row) => of(row.cells[2].textContent));
      return { advised: shares[0], best: Math.max(...shares) };
    });
    const sentence = page.getByText("Another plan is as good as any in more cases than the one we advise.", { exact: false }).first();
    assert.equal(await sentence.isVisible(), best > advised, `${name}: advised ${advised}, best ${best}`);
    compared += Number(best > 0);
  }
  assert.equal(compared, names.length, "the table of plans says how often each is as good as any");
});
