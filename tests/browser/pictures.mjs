// Takes the pictures of the main screens that the README shows: `cargo run -p leavewell-dev -- pictures`.
// They come from the site in `dist` and go into `pictures`, as small as they stay legible.

import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { browser, ROOT, serve, settled, started } from "./harness.mjs";
import { fillShelf } from "./many.mjs";

const FOLDER = join(ROOT, "pictures");
const DESK = { width: 1120, height: 760 };
const PHONE = { width: 390, height: 760 };
const QUALITY = 0.72;

/** Name, window, route, and what has to be done before. */
const PICTURES = [
  ["first", DESK, "#/"],
  ["question", PHONE, "#/road/letters", (page) => page.locator("main").getByRole("button", { name: "Teapot", exact: true }).click()],
  ["look", DESK, "#/look", open("The worn tray")],
  ["condition", DESK, "#/condition", open("The worn tray")],
  ["advice", DESK, "#/counsel", open("The worn tray")],
  ["advice-phone", PHONE, "#/counsel", open("The teapot without its knob")],
  ["money", DESK, "#/money", open("The cake basket")],
  ["sheet", DESK, "#/sheet/client", open("The dented tray")],
  ["stock", DESK, "#/", stock],
];

function open(name) {
  return async (page) => {
    await page.getByRole("button", { name: `Open a copy of: ${name}` }).click();
    await page.locator(".answer-sentence").waitFor();
  };
}

async function stock(page) {
  await fillShelf(page, 9);
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.locator(".book-table tbody tr").nth(8).waitFor();
  await page.locator("#book-search").evaluate((it) => it.scrollIntoView());
}

/** The picture as WebP, which is half the size of PNG. */
async function smaller(page, png) {
  const webp = await page.evaluate(
    async ([text, quality]) => {
      const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      canvas.getContext("2d").drawImage(bitmap, 0, 0);
      const blob = await canvas.convertToBlob({ type: "image/webp", quality });
      return [...new Uint8Array(await blob.arrayBuffer())];
    },
    [png.toString("base64"), QUALITY],
  );
  return Buffer.from(webp);
}

await mkdir(FOLDER, { recursive: true });
const site = await serve();
const chromium = await browser();
for (const [name, viewport, route, before] of PICTURES) {
  const context = await chromium.newContext({ viewport, locale: "en-GB", colorScheme: "light", reducedMotion: "reduce", serviceWorkers: "block" });
  const page = await context.newPage();
  await page.goto(`${site.url}#/`);
  await started(page);
  // As from the second visit on.
  await page.evaluate(async () => {
    const face = new FontFace("Brygada 1918", "url(brygada-1918.woff2)", { weight: "400 700" });
    document.fonts.add(await face.load());
    document.getElementById("app").style.setProperty("--serif", '"Brygada 1918", serif');
  });
  await before?.(page);
  if (name !== "stock") await page.evaluate((hash) => (location.hash = hash), route);
  await settled(page);
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(800);
  if (name !== "stock") await page.evaluate(() => scrollTo(0, 0));
  const made = await smaller(page, await page.screenshot());
  await writeFile(join(FOLDER, `${name}.webp`), made);
  console.log(`${name}.webp ${made.length} bytes`);
  await context.close();
}
await site.close();
await chromium.close();
