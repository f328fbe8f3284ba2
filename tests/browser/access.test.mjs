// Every screen is accessible: axe finds no fault and nothing scrolls sideways, in light, in dark and on a phone.

import assert from "node:assert/strict";
import { browserTest } from "./harness.mjs";

const SCREENS = [
  "", "piece", "look", "condition", "money", "counsel", "treatments", "bench", "done", "plan", "learning",
];
// Long pages, made of the same blocks as the others: one mode for each width is enough.
const MORE = ["closer", "sheet/client", "sheet/buyer", "sheet/file", "sheet/conservation", "figures"];
// The dark theme changes colours alone.
const COLOURS = ["color-contrast"];
const MODES = [
  { name: "light", options: { colorScheme: "light", viewport: { width: 1280, height: 900 } }, more: MORE },
  { name: "dark", options: { colorScheme: "dark", viewport: { width: 1280, height: 900 } }, only: COLOURS },
  { name: "a phone", options: { colorScheme: "light", viewport: { width: 320, height: 640 } }, more: MORE },
  { name: "a phone in the dark", options: { colorScheme: "dark", viewport: { width: 320, height: 640 } }, only: COLOURS },
];

for (const { name, options, more = [], only = [] } of MODES) {
  browserTest(`screens are accessible: ${name}`, { ...options, timeout: 400_000 }, async ({ page, go, checkAccess }) => {
    await go("#/");
    await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
    await page.waitForURL(/#\/./);
    for (const screen of [...SCREENS, ...more]) {
      await go(`#/${screen}`);
      await page.waitForTimeout(500);
      // The ledger's groups are alike, and a thousand rows take the checker a minute: the first few stand for all.
      const folds = screen === "figures" ? 4 : 10_000;
      await page.evaluate((most) => [...document.querySelectorAll("details")].slice(0, most).forEach((d) => d.setAttribute("open", "")), folds);
      await page.waitForFunction(() => [...document.querySelectorAll(".group, .leaf")].every((g) => g.querySelector(".finding, section, figure, p")));
      await checkAccess(`${screen || "shelf"} in ${name}`, only);
      const { wide, room } = await page.evaluate(() => ({
        wide: document.documentElement.scrollWidth,
        room: document.documentElement.clientWidth,
      }));
      assert.ok(wide <= room, `${screen || "shelf"} scrolls sideways in ${name}: ${wide} > ${room}`);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll("button, input, select, summary, nav a")]
          .filter((e) => e.getClientRects().length && e.type !== "hidden")
          .map((e) => ({ e, box: (e.closest("label") ?? e).getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
          .map(({ e }) => e.outerHTML.slice(0, 80)),
      );
      assert.deepEqual(small, [], `targets under 24 px on ${screen || "shelf"} in ${name}`);
    }
  });
}
