// The boxes of the Look screen: what is struck and how the piece is described suggest findings, which count only
// once a person confirms them.

import assert from "node:assert/strict";
import { browserTest, eventually, settled, started } from "./harness.mjs";

const suggested = (page) => page.locator(".suggested li");
const verdict = (page) => page.locator(".verdict-sentence").innerText();

/** The record the browser keeps that holds this text, once there is one. */
async function kept(page, text) {
  let record = "";
  for (let tries = 0; tries < 50 && !record.includes(text); tries += 1) {
    await page.waitForTimeout(100);
    record = await page.evaluate(
      () =>
        new Promise((resolve, reject) => {
          const opening = indexedDB.open("leavewell");
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const names = [...opening.result.objectStoreNames];
            const all = names.map(
              (name) =>
                new Promise((done) => {
                  const asked = opening.result.transaction(name).objectStore(name).getAll();
                  asked.onsuccess = () => done(asked.result);
                }),
            );
            Promise.all(all).then((found) => {
              opening.result.close();
              resolve(JSON.stringify(found));
            });
          };
        }),
    );
  }
  const records = JSON.parse(record).flat().filter((row) => row.text?.includes(text));
  assert.equal(records.length, 1, `one record holds ${text}`);
  return JSON.parse(records[0].text);
}

async function begin(page, go) {
  await go("#/");
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
  await go("#/look");
}

browserTest("a mark as read proposes a finding, and the confirmed finding changes the answer", async ({ page, go, checkAccess }) => {
  await begin(page, go);
  const before = await verdict(page);
  await page.getByLabel("The mark, as you read it").fill("E P N S");
  const one = suggested(page).filter({ hasText: "EPNS" });
  await one.waitFor();
  assert.equal(await verdict(page), before, "nothing counts before it is confirmed");
  const waiting = page.getByText("Not counted yet: “EPNS” as read in a mark.");
  await waiting.waitFor();
  await page.getByLabel("Where mark 1 is struck").selectOption("base");
  await checkAccess("a mark with its suggestion");
  await one.getByRole("button", { name: /^Yes/ }).click();
  await settled(page);
  const after = await verdict(page);
  assert.match(after, /electroplate/i);
  assert.notEqual(after, before);
  await eventually(async () => assert.equal(await waiting.count(), 0));
  const record = await kept(page, "M01");
  assert.deepEqual(record.marks, [{ id: "1", part: "base", text: "E P N S" }]);
  const [finding] = record.findings;
  assert.deepEqual([finding.id, finding.answer, finding.part, String(finding.from)], ["M01", "seen", "base", "1"]);

  await page.reload();
  await started(page);
  await eventually(async () => assert.equal(await page.getByLabel("The mark, as you read it").inputValue(), "E P N S"));
  await eventually(async () => assert.equal(await page.getByLabel("Where mark 1 is struck").inputValue(), "base"));
  assert.equal(await verdict(page), after);

  // A second mark has a place of its own; taking the first away leaves what was confirmed.
  await page.getByRole("button", { name: "Add another mark" }).click();
  const marks = page.getByLabel("The mark, as you read it");
  await marks.nth(1).pressSequentially("QUADRUPLE PLATE");
  await eventually(async () => assert.equal(await marks.nth(1).inputValue(), "QUADRUPLE PLATE"));
  await page.getByRole("button", { name: "Remove mark 1" }).click();
  await eventually(async () => assert.equal(await marks.count(), 1));
  await eventually(async () => assert.equal(await marks.inputValue(), "QUADRUPLE PLATE"));
  assert.equal(await verdict(page), after);
});

browserTest("the words of a description are confirmed one by one, or put aside", async ({ page, go }) => {
  await begin(page, go);
  await page.getByLabel("In a few words").fill("rolled edge, re-silvered");
  await suggested(page).nth(1).waitFor();
  await eventually(async () => assert.equal(await suggested(page).count(), 2));
  await suggested(page).filter({ hasText: "ROLLED EDGE" }).getByRole("button", { name: /^Yes/ }).click();
  await suggested(page).filter({ hasText: "RE SILVERED" }).getByRole("button", { name: /^Not sure/ }).click();
  await page.waitForFunction(() => document.querySelector(".suggested").hidden);
  const { findings: answers } = await kept(page, "S18");
  const answer = Object.fromEntries(answers.map((one) => [one.id, one.answer]));
  assert.deepEqual(answer, { C06: "seen", S18: "unsure" });
  assert.ok(answers.every((one) => one.from === "description"));
});

browserTest("instruments at hand are kept, and none is taken for granted", async ({ page, go }) => {
  await begin(page, go);
  const xrf = page.getByLabel("An X-ray analyser (XRF)");
  await eventually(async () => assert.equal(await xrf.isChecked(), false));
  await xrf.check();
  await kept(page, "instruments");
  await page.reload();
  await started(page);
  await eventually(async () => assert.equal(await xrf.isChecked(), true));
});
