// A shelf with very many pieces: copies of the records in tests/cases with different findings, values and bare
// metal.

import { readFile, readdir } from "node:fs/promises";
import { join } from "node:path";
import { ROOT } from "./harness.mjs";

/** The text of a shelf file with this many pieces, named "Piece 1" onwards. It is the same each time. */
export async function shelfOf(count) {
  const folder = join(ROOT, "tests/cases");
  const names = (await readdir(folder)).filter((name) => name.endsWith(".json")).sort();
  const records = await Promise.all(names.map(async (name) => JSON.parse(await readFile(join(folder, name), "utf8"))));
  let seed = 1;
  // The minimal standard generator (Park and Miller 1988).
  const random = () => (seed = (seed * 16_807) % 2_147_483_647) / 2_147_483_647;
  const cases = Array.from({ length: count }, (_, at) => {
    const record = structuredClone(records[at % records.length]);
    record.piece = { ...record.piece, name: `Piece ${at + 1}` };
    const { low, high, ...market } = record.market ?? {};
    record.market = { ...market, currency: "GBP", likely: Math.round(40 + 900 * random() * random()) };
    record.findings = (record.findings ?? []).filter(() => random() < 0.8);
    for (const part of Object.values(record.parts ?? {})) {
      if ("bleed" in part) part.bleed = Math.round(40 * random()) / 100;
    }
    return { id: `many-${at + 1}`, revision: 1, case: record };
  });
  return JSON.stringify({ format: "leavewell-shelf", version: 1, saved_on: "2026-11-28", cases, photos: [] });
}

/** Puts this many pieces on the page's shelf. */
export async function fillShelf(page, count) {
  const buffer = Buffer.from(await shelfOf(count));
  await page.locator("#file").setInputFiles({ name: "many.leavewell.json", mimeType: "application/json", buffer });
  await page.getByRole("button", { name: "Take these in" }).click({ timeout: 60_000 });
  await page.getByText(new RegExp(`^${count} pieces? (was|were) taken in`)).waitFor({ timeout: 60_000 });
}
