// Every screen in every state is accessible: axe finds no fault and nothing scrolls sideways, on a desk, in the dark, on a
// phone, and with the few colours that a person forces on every page. What is pressed is large enough for a finger.

import assert from "node:assert/strict";
import { browserTest } from "./harness.mjs";
import { STATES } from "./screens.mjs";

/** How tall what is pressed must be. */
const FINGER_PX = 44;
const DESK = { width: 1280, height: 900 };
const PHONE = { width: 320, height: 640 };

// Only the colours differ between these, so only rules about colours can find anything new.
const COLOURS = ["color-contrast"];

/** The controls that are shorter than a finger and cannot be hit beside themselves either. */
function tooSmall(least) {
  const finds = (x, y, control) => {
    const hit = document.elementFromPoint(x, y);
    return hit !== null && (control.contains(hit) || hit.closest("label")?.control === control);
  };
  const small = [];
  for (const control of document.querySelectorAll("a[href], button, input, select, summary")) {
    const box = (control.closest("label") ?? control).getBoundingClientRect();
    if (box.width < 2 || box.height < 2 || control.type === "hidden" || control.closest(".skip, .unseen")) continue;
    // The cells of a grid over a photo are as large as the photo allows, and a link in a sentence as tall as its line.
    if (control.matches(".point, input[type=range]")) continue;
    const line = control.parentElement;
    if (control.matches("a") && getComputedStyle(control).display === "inline" && line.textContent.trim() !== control.textContent.trim()) continue;
    if (box.height >= least - 0.5) continue;
    control.scrollIntoView({ block: "center" });
    const now = control.getBoundingClientRect();
    const x = now.left + now.width / 2;
    const reach = [...Array(least).keys()].filter((step) => finds(x, now.top + now.height - least + 1 + step, control) || finds(x, now.top + step, control));
    if (reach.length < least - 1) small.push(`${Math.round(box.width)} x ${Math.round(box.height)}: ${control.outerHTML.slice(0, 100)}`);
  }
  return small;
}

const sideways = () => document.documentElement.scrollWidth - document.documentElement.clientWidth;

/** Shows every state one after the other, and checks each. */
function everyState(name, options, check, states = STATES) {
  browserTest(name, { timeout: 900_000, viewport: DESK, colorScheme: "light", ...options }, async (test) => {
    for (const state of states) {
      await state.show(test);
      await check(test, state);
    }
  });
}

everyState("every state is accessible on a desk, in light and in dark", {}, async ({ page, checkAccess }, { name }) => {
  await checkAccess(`${name} on a desk`);
  assert.ok((await page.evaluate(sideways)) <= 0, `${name} scrolls sideways on a desk`);
  const regions = await page.locator("[role=status], [aria-live=polite]").count();
  assert.equal(regions, 1, `${name} has one polite live region`);
  assert.equal(await page.locator("h1").count(), 1, `${name} has one main heading`);
  await page.emulateMedia({ colorScheme: "dark" });
  await checkAccess(`${name} in the dark`, COLOURS);
  await page.emulateMedia({ colorScheme: "light" });
});

everyState("every state is accessible on a phone", { viewport: PHONE }, async ({ page, checkAccess }, { name }) => {
  await checkAccess(`${name} on a phone`);
  assert.ok((await page.evaluate(sideways)) <= 0, `${name} scrolls sideways on a phone`);
  assert.deepEqual(await page.evaluate(tooSmall, FINGER_PX), [], `${name} has controls shorter than ${FINGER_PX} px`);
});

everyState("every state is accessible in forced colours", { forcedColors: "active" }, async ({ page, checkAccess }, { name }) => {
  await checkAccess(`${name} in forced colours`);
  // A drawing keeps its outlines: every shape has a fill or a line that differs from the page.
  const faint = await page.evaluate(() => {
    const page = getComputedStyle(document.documentElement).backgroundColor;
    const clear = new Set(["none", page, "rgba(0, 0, 0, 0)"]);
    const drawn = [...document.querySelectorAll("svg")].filter((it) => it.getClientRects().length);
    return drawn
      .filter((it) => {
        const shapes = [...it.querySelectorAll("path, circle, rect, line, text, use")];
        return shapes.length > 0 && shapes.every((shape) => {
          const { fill, stroke } = getComputedStyle(shape);
          return clear.has(fill) && clear.has(stroke);
        });
      })
      .map((it) => it.outerHTML.slice(0, 100));
  });
  assert.deepEqual(faint, [], `${name} has drawings that nobody can see`);
});
