// The drawings of the findings: only the Look screen fetches them, and it really renders them.

import assert from "node:assert/strict";
import { browserTest } from "./harness.mjs";

const isSheet = (request) => new URL(request.url()).pathname.endsWith("/looks.svg");

/** The size on screen of the content of each visible drawing. */
const drawn = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll(".look-drawing use")]
      .filter((use) => use.checkVisibility())
      .map((use) => ({ of: use.getAttribute("href"), wide: use.getBoundingClientRect().width, high: use.getBoundingClientRect().height })),
  );

/** The colours in a screenshot of an element, as "r,g,b", with the number of pixels of each. */
async function colours(page, element) {
  const png = (await element.screenshot()).toString("base64");
  return page.evaluate(async (data) => {
    const bytes = Uint8Array.from(atob(data), (c) => c.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(image.width, image.height).getContext("2d");
    canvas.drawImage(image, 0, 0);
    const { data: dots } = canvas.getImageData(0, 0, image.width, image.height);
    const found = {};
    for (let i = 0; i < dots.length; i += 4) {
      const key = `${dots[i]},${dots[i + 1]},${dots[i + 2]}`;
      found[key] = (found[key] ?? 0) + 1;
    }
    return found;
  }, png);
}

const MODES = [
  { name: "light", options: { colorScheme: "light" }, silver: "185,194,201", copper: "201,121,75" },
  { name: "dark", options: { colorScheme: "dark" }, silver: "141,152,161", copper: "184,109,64" },
  { name: "forced colours", options: { forcedColors: "active" } },
];

for (const { name, options, silver, copper } of MODES) {
  browserTest(`the Look screen renders every finding, and only it requests the drawings: ${name}`, options, async ({ page, go }) => {
    const asked = [];
    page.on("request", (request) => isSheet(request) && asked.push(request.url()));
    await go("#/");
    await page.waitForTimeout(500);
    await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
    await page.waitForURL(/#\/./);
    assert.deepEqual(asked, [], "neither the shelf nor a case just opened needs drawings");

    const came = page.waitForResponse((response) => isSheet(response.request()));
    await go("#/look");
    assert.equal((await came).status(), 200);
    await page.evaluate(() => document.querySelectorAll("details.group").forEach((d) => d.setAttribute("open", "")));
    // A group is rendered once it has been opened.
    await page.waitForFunction(() => [...document.querySelectorAll(".group")].every((g) => g.querySelector(".finding")));
    await page.locator('.group use[href="looks.svg#C08"]').scrollIntoViewIfNeeded();
    await page.waitForTimeout(300);
    assert.equal(new Set(asked).size, 1, "one file serves all");

    const shown = await drawn(page);
    assert.ok(shown.length >= 57, `${shown.length} drawings`);
    for (const { of, wide, high } of shown) assert.ok(wide > 100 && high > 30, `${of} is ${wide} by ${high}`);

    const sandwich = page.locator('.group .look-drawing:has(use[href="looks.svg#C08"])');
    const found = await colours(page, sandwich);
    if (silver) {
      assert.ok(found[silver] > 500, "silver is drawn in the theme's silver");
      assert.ok(found[copper] > 200, "copper is drawn in the theme's copper");
    } else {
      assert.ok(Object.keys(found).length > 1, "lines differ from the page");
      assert.equal(found["201,121,75"], undefined, "a forced palette is kept to");
    }
  });
}
