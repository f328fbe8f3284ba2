// Photos of a part: stored on the device, scaled down, counted on by keyboard, and never blocking the page.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { deflateSync, crc32 } from "node:zlib";
import { browserTest, eventually } from "./harness.mjs";

/** A PNG of one colour, which is a small file at any size in pixels. */
function picture(width, height) {
  const chunk = (type, data) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crc32(body) >>> 0);
    return Buffer.concat([length, body, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc((width + 1) * height, 0x80);
  for (let row = 0; row < height; row += 1) rows[row * (width + 1)] = 0;
  const buffer = Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", head),
    chunk("IDAT", deflateSync(rows, { level: 1 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
  return { name: "foot.png", mimeType: "image/png", buffer };
}

async function atTheFoot(page, go) {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await go("#/condition");
  await page.locator(".part-button").filter({ hasText: "Border" }).click();
  return page.getByLabel(/Photo of the border/);
}

browserTest("a photo is scaled down, survives a reload, and can be removed", async ({ page, go }) => {
  const chooser = await atTheFoot(page, go);
  await chooser.setInputFiles(picture(3_200, 1_600));
  await page.getByText("The photo is kept.").waitFor();
  const image = page.locator(".photos img");
  assert.deepEqual(await image.evaluate((img) => img.decode().then(() => [img.naturalWidth, img.naturalHeight])), [1_600, 800]);
  await page.reload();
  const border = page.locator(".part-button").filter({ hasText: "Border" });
  await border.click();
  await image.waitFor();
  await page.locator(".part-button").filter({ hasText: "Edges" }).click();
  await page.getByLabel(/Photo of the edges/).waitFor();
  await eventually(async () => assert.equal(await image.count(), 0, "it belongs to the part it was taken of"));
  await border.click();
  await page.getByRole("button", { name: "Remove this photo" }).click();
  await page.getByText("The photo is removed.").waitFor();
  await eventually(async () => assert.equal(await image.count(), 0));
});

browserTest("where the browser takes no blobs into a database, the photo is kept as bytes", async ({ page, context, go }) => {
  await context.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (value, ...rest) {
      if (value.blob instanceof Blob) throw new DOMException("no blobs here", "DataCloneError");
      return put.call(this, value, ...rest);
    };
  });
  const chooser = await atTheFoot(page, go);
  await chooser.setInputFiles(picture(400, 320));
  await page.getByText("The photo is kept.").waitFor();
  const image = page.locator(".photos img");
  await page.reload();
  await page.locator(".part-button").filter({ hasText: "Border" }).click();
  assert.equal(await image.evaluate((img) => img.decode().then(() => img.naturalWidth)), 400);
  await go("#/");
  const [saved] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the whole shelf as a file" }).click()]);
  const { photos } = JSON.parse(await readFile(await saved.path(), "utf8"));
  assert.match(photos[0].data, /^data:image\/jpeg;base64,/);
});

browserTest("bare metal is counted on a photo by keyboard, and the count is in the record", async ({ page, go }) => {
  const chooser = await atTheFoot(page, go);
  await chooser.setInputFiles(picture(400, 320));
  await page.getByRole("button", { name: "Count bare metal on it" }).click();
  assert.match(await page.evaluate(() => document.activeElement.getAttribute("aria-label")), /Row 1, column 1: silver/);
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Space");
  await page.keyboard.press("Space");
  assert.match(await page.evaluate(() => document.activeElement.getAttribute("aria-label")), /Row 2, column 2: not this part/);
  await page.getByText("2 of 79 points on bare metal.").waitFor();
  await page.getByRole("button", { name: "Use this count" }).click();
  await page.getByText(/Counted: 2 of 79/).waitFor();
  await page.locator(".part-button").filter({ hasText: "Border" }).getByText(/counted/).waitFor();
});

browserTest("a very large photo does not block the page", async ({ page, go }) => {
  const chooser = await atTheFoot(page, go);
  await chooser.setInputFiles(picture(8_000, 7_500));
  await page.getByText(/Making the photo smaller|The photo is kept/).first().waitFor();
  await page.getByText("The photo is kept.").waitFor({ timeout: 60_000 });
});

browserTest("a file that is not a picture is refused with a reason, and nothing else changes", async ({ page, go }) => {
  const chooser = await atTheFoot(page, go);
  await chooser.setInputFiles({ name: "notes.jpg", mimeType: "image/jpeg", buffer: Buffer.from("not a picture") });
  await page.getByText(/could not be read as a picture/).waitFor();
  await eventually(async () => assert.equal(await page.locator(".photos img").count(), 0));
});
