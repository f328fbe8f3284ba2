// The model gives the same bytes in the browser as on the command line.

import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { readFile, readdir } from "node:fs/promises";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { DEV, ROOT, browserTest } from "./harness.mjs";

const CASES = new URL("../cases/", import.meta.url);

const names = (await readdir(CASES).catch(() => [])).filter((name) => name.endsWith(".json")).sort();

test("there are cases to compare", () => assert.notEqual(names.length, 0));

for (const name of names) {
  const file = fileURLToPath(new URL(name, CASES));

  browserTest(`${name}: the browser weighs it to the same bytes`, async ({ page, go }) => {
    const text = await readFile(file, "utf8");
    const native = await weighNatively(file);
    await go();
    const inBrowser = await page.evaluate((it) => window.leavewell.weigh_json(it), text);
    assertSameText(`${inBrowser}\n`, native);

    const piece = parsed(text);
    if (piece === undefined) return;
    const fromObject = await page.evaluate(async (it) => JSON.stringify(await window.leavewell.weigh(it)), piece);
    assert.deepEqual(JSON.parse(fromObject), JSON.parse(native));

    // What a piece came to, and figures of which none is taught, change no byte.
    const closed = { ...piece, closed: { outcome: "sold", on: "2026-11", sale: { price: 140, what: "hammer" } } };
    const withClosed = await page.evaluate((it) => window.leavewell.weigh_json(it), JSON.stringify(closed));
    assertSameText(`${withClosed}\n`, native);
  });
}

/** The output of `cargo weigh`. Exit code 1 means a refusal, which is printed too. */
async function weighNatively(file) {
  const [program, before] = DEV;
  return new Promise((resolve, reject) => {
    execFile(program, [...before, "weigh", file], { cwd: ROOT, maxBuffer: 64 << 20 }, (error, out, errors) => {
      if (out === "") reject(new Error(`${program} printed nothing: ${errors || error}`));
      else resolve(out);
    });
  });
}

/** Fails with the place where two long texts first differ, not with all of both. */
function assertSameText(found, expected) {
  if (found === expected) return;
  let at = 0;
  while (found[at] === expected[at]) at += 1;
  const around = (text) => text.slice(Math.max(0, at - 60), at + 60);
  assert.fail(`they part at character ${at}:\n  browser: ${around(found)}\n  native:  ${around(expected)}`);
}

/** The parsed text, or `undefined` for a case file that is broken on purpose. */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
