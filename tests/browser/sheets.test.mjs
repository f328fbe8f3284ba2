// The sheets, and the screens behind the answer: figures, treatments, the bench.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { browserTest, eventually, settled } from "./harness.mjs";

const TEAPOT = /Open a copy of: The teapot for every day/;
const DEFERRAL = "They decide, not this tool.";

async function open(page, go, example = TEAPOT) {
  await go("#/");
  await page.getByRole("button", { name: example }).click();
  await page.locator(".answer-sentence").waitFor();
}

async function saved(page, button) {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

browserTest("each sheet is shown, printed and saved", { acceptDownloads: true, timeout: 200_000 }, async ({ page, go }) => {
  await open(page, go);
  for (const whom of ["client", "buyer", "file"]) {
    await go(`#/sheet/${whom}`);
    const paper = page.locator(".paper");
    await paper.locator("section").first().waitFor({ timeout: 30_000 });
    await eventually(async () => assert.match(await paper.innerText(), new RegExp(DEFERRAL)));

    await page.emulateMedia({ media: "print" });
    await eventually(async () => assert.ok(await paper.isVisible()));
    for (const part of [".places", ".top", ".sheet-choice", ".foot"]) {
      await eventually(async () => assert.equal(await page.locator(part).first().isVisible(), false, `${part} is not printed`));
    }
    const { wide, room } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      room: document.documentElement.clientWidth,
    }));
    assert.ok(wide <= room, "nothing runs over the edge of the page");
    for (const format of ["A4", "Letter"]) {
      const pdf = (await page.pdf({ format })).toString("latin1");
      assert.ok((pdf.match(/\/Type\s*\/Page\b/g) ?? []).length >= 1, `${whom} prints on ${format}`);
    }
    await page.emulateMedia({ media: "screen" });

    const letter = await saved(page, "Save as plain text");
    assert.match(letter.name, new RegExp(`-${whom}\\.md$`));
    assert.ok(letter.text.startsWith("# ") && letter.text.includes(DEFERRAL));
    const whole = await saved(page, "Save as a page");
    assert.match(whole.name, new RegExp(`-${whom}\\.html$`));
    assert.ok(whole.text.startsWith("<!DOCTYPE html>") && whole.text.includes(DEFERRAL));
    assert.doesNotMatch(whole.text, /<script|javascript:/i);
  }
});

browserTest("a person's figures go from piece to piece by file", { acceptDownloads: true }, async ({ page, go }) => {
  await open(page, go);
  await go("#/figures");
  const save = page.getByRole("button", { name: "Save my figures as a file" });
  await save.waitFor();
  await eventually(async () => assert.ok(await save.isDisabled(), "there are none yet"));
  const give = (text) =>
    page.locator("#figures-file").setInputFiles({ name: "f.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await give("{\"format\":\"something\"}");
  await page.getByText("This is no file of figures.").waitFor();
  await give(JSON.stringify({
    format: "leavewell-figures", version: 1, overrides: { "fee.lot": { value: 31, reason: "Our own sale room" } },
  }));
  await page.getByText("1 figure was added to this piece.").waitFor();
  const reason = page.locator("[id='overrides.{fee.lot}.reason']");
  await reason.first().waitFor({ state: "attached" });
  await eventually(async () => assert.equal(await reason.first().inputValue(), "Our own sale room"));
  const file = await saved(page, "Save my figures as a file");
  assert.deepEqual(Object.keys(JSON.parse(file.text).overrides), ["fee.lot"]);

  // New pieces on this device can start with them.
  await page.getByRole("button", { name: "Use my figures for new pieces" }).click();
  await page.getByText("New pieces on this device begin with your figures").waitFor();
  await go("#/");
  await page.locator("#start-name").fill("Another invented pot");
  await page.getByRole("button", { name: "Start this piece" }).click();
  await page.waitForURL(/#\/piece/);
  await go("#/figures");
  await eventually(async () => assert.equal(await page.locator("[id='overrides.{fee.lot}.reason']").first().inputValue(), "Our own sale room"));
  await page.getByRole("button", { name: "Use Leavewell's figures for new pieces again" }).click();
  await page.getByText("New pieces on this device begin with Leavewell's figures.").waitFor();

  await page.getByText("Go back to Leavewell's figures").click();
  await page.getByRole("button", { name: "Remove all of mine" }).click();
  await page.waitForFunction(() => document.querySelector("#figures-file") && [...document.querySelectorAll("button")]
    .some((b) => b.textContent.startsWith("Save my figures") && b.disabled));
});

browserTest("an input can be moved by keyboard to try it, and the record stays the same", async ({ page, go }) => {
  await open(page, go, /Open a copy of: The worn tray/);
  await page.locator(".answer-firmness").waitFor();
  const answer = await page.locator(".answer-sentence").innerText();
  await page.locator("#would-change-title").click();
  const slider = page.locator("#move-value");
  await slider.focus();
  await page.keyboard.press("End");
  await page.getByText(/^At £[\d,]+: /).waitFor();
  await page.keyboard.press("Home");
  const far = await page.getByText(/^At £\d\d: /).innerText();
  assert.match(far, /\.$/);
  await eventually(async () => assert.equal(await page.locator(".answer-sentence").innerText(), answer));
  await go("#/money");
  await eventually(async () => assert.equal(await page.locator("[id='market.likely']").inputValue(), "420"));
});

browserTest("a person who asks about a treatment reads why, or why not", async ({ page, go }) => {
  await open(page, go, /Open a copy of: The worn tray/);
  await go("#/piece");
  const asked = page.getByRole("group", { name: "Did you come with something in mind?" });
  await asked.getByLabel("Full replating").check();
  await go("#/counsel");
  await page.locator(".answer-sentence").filter({ hasText: /replating/i }).waitFor();
  await page.locator("#options-title").click();
  const row = page.locator(".options-table tbody tr").filter({ hasText: "Full replating" }).first();
  await row.getByText("Barred.", { exact: true }).waitFor();
  await page.locator("#lost-title").click();
  await page.locator("dt").filter({ hasText: "With full replating" }).waitFor();
});

browserTest("the bench and the treatments give answers, and nonsense gets a message", { timeout: 200_000 }, async ({ page, go }) => {
  await open(page, go);
  await go("#/bench");
  const bench = page.locator(".screen > .leaf");
  const field = bench.locator("[id='bench.heat.thickness_mm']");
  await field.waitFor({ timeout: 30_000 });
  for (const typed of ["0", "-3", "1e999", "abc", "0,8"]) {
    await field.fill(typed);
    await settled(page);
    await eventually(async () => assert.equal(await field.inputValue(), typed));
    await eventually(async () => assert.doesNotMatch(await page.locator("#main").innerText(), /NaN|\binf\b|undefined/));
  }
  await field.fill("0");
  await bench.locator(".problem").filter({ visible: true }).first().waitFor();
  // The count made here appears on Condition too.
  await page.getByText("Count the bare metal").click();
  const points = page.locator("[id$='.count_points']").first();
  await points.fill("50");
  await go("#/condition");
  await page.waitForFunction(() => document.querySelector("[id$='.count_points']")?.value === "50");
  await go("#/treatments");
  await page.getByRole("heading", { name: "Full replating" }).waitFor({ timeout: 30_000 });
  const text = await page.locator(".leaf").innerText();
  assert.match(text, new RegExp(DEFERRAL));
});

browserTest("the reach of heat is drawn on the piece, with all its numbers in a table", { timeout: 200_000 }, async ({ page, go, checkAccess }) => {
  await open(page, go);
  await go("#/bench");
  const drawing = page.locator(".heat-piece");
  await drawing.waitFor({ timeout: 30_000 });
  const joint = () => page.locator(".heat-joint").evaluate((it) => [it.getAttribute("cx"), it.getAttribute("cy")].join(" "));
  const places = new Set();
  for (const part of ["spout", "foot", "handle"]) {
    await page.locator("[id='bench.heat.on_part']").selectOption(part);
    await page.waitForFunction((it) => document.querySelector(".heat-piece title").textContent.includes(`on the ${it}`), part);
    places.add(await joint());
  }
  assert.equal(places.size, 3, "the drawing follows the part");

  const thresholds = ["96", "138", "183", "232", "260", "303.7", "327.46", "779.1"].map((it) => `${it} °C`);
  const twin = page.locator("figure", { has: drawing }).locator("table");
  const cells = await twin.locator("tbody td:nth-child(2)").allTextContents();
  assert.deepEqual(cells, thresholds);

  // Labels stay inside the drawing and never overlap, whatever is typed; every coordinate is a number.
  for (const [path, typed] of [
    ["piece.height_mm", "150"], ["bench.heat.joint_c", "320"], ["piece.height_mm", "1"], ["piece.height_mm", "3000"],
    ["piece.height_mm", "1e9"], ["piece.height_mm", "0"], ["piece.height_mm", "tall"], ["bench.heat.joint_c", "5"],
  ]) {
    const field = page.locator(`[id='${path}']`);
    await field.fill(typed);
    await settled(page);
    const markup = await drawing.evaluate((it) => it.outerHTML);
    assert.doesNotMatch(markup, /NaN|Infinity|undefined/, `${path} ${typed}`);
    const { frame, words } = await drawing.evaluate((it) => {
      const box = (each) => each.getBoundingClientRect().toJSON();
      return { frame: box(it), words: [...it.querySelectorAll("text")].filter((t) => t.textContent).map(box) };
    });
    words.forEach((a, i) => {
      assert.ok(a.left >= frame.left && a.right <= frame.right && a.top >= frame.top && a.bottom <= frame.bottom, `${path} ${typed}`);
      for (const b of words.slice(0, i)) {
        const clear = 2;
        assert.ok(a.right < b.left + clear || b.right < a.left + clear || a.bottom < b.top + clear || b.bottom < a.top + clear, `${path} ${typed}`);
      }
    });
  }
  await page.getByText("which is only assumed").waitFor();
  await eventually(async () => assert.equal(await page.locator(".heat-ring").count(), 0, "a joint colder than the room reaches nothing"));
  await page.locator("[id='bench.heat.thickness_mm']").fill("0");
  await page.getByText("We cannot use one field").waitFor();
  await eventually(async () => assert.equal(await drawing.count(), 0));
  await page.locator("[id='bench.heat.thickness_mm']").fill("");
  await drawing.waitFor();
  await checkAccess("the bench");
});
