// The condition and treatment record: a fault shown where it is, consent, the work, photos before and after, on paper
// and as a page of its own.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { extractText, getDocumentProxy } from "unpdf";
import { browserTest, eventually } from "./harness.mjs";

async function photo(page, colour) {
  const made = await page.evaluate(async (fill) => {
    const canvas = new OffscreenCanvas(320, 240);
    const pen = canvas.getContext("2d");
    pen.fillStyle = fill;
    pen.fillRect(20, 20, 280, 200);
    const blob = await canvas.convertToBlob({ type: "image/png" });
    return [...new Uint8Array(await blob.arrayBuffer())];
  }, colour);
  return { name: "photo.png", mimeType: "image/png", buffer: Buffer.from(made) };
}

async function openTray(page, go) {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await page.locator(".answer-sentence").waitFor();
}

async function sheet(page, go, whom = "conservation") {
  await go(`#/sheet/${whom}`);
  await page.locator(".paper .leaf[aria-busy=false] section").first().waitFor({ timeout: 60_000 });
  return page.locator(".paper");
}

const partButton = (page, name) => page.locator(".part-button").filter({ hasText: name });
const places = (page) => page.locator("fault-places");

async function place(page, { fault, count, note, at }) {
  const picture = page.locator(".place-picture");
  await picture.waitFor();
  const box = await picture.locator("svg").boundingBox();
  if (at) await page.mouse.click(box.x + box.width * at[0], box.y + box.height * at[1]);
  await page.getByLabel("What is wrong there").selectOption(fault);
  if (count) await page.getByLabel("How many there").fill(count);
  if (note) await places(page).getByLabel("Note").fill(note);
  await page.getByRole("button", { name: "Keep this place" }).click();
}

browserTest("from a fault where it is to consent, work, and photos before and after", { timeout: 240_000 }, async ({ page, go }) => {
  await openTray(page, go);
  await go("#/piece");
  await page.getByLabel("Photo of the whole piece").setInputFiles(await photo(page, "#c0c4c8"));
  await page.getByText("The photo is kept.").waitFor();
  await go("#/condition");
  await partButton(page, "Border").click();
  await page.getByLabel(/Photo of the border/).setInputFiles(await photo(page, "#b9835a"));
  await page.getByText("The photo is kept.").waitFor();

  // By tapping the drawing.
  await page.getByRole("button", { name: /Show a fault of the border.* on the drawing/ }).click();
  await place(page, { fault: "small_dent", count: "3", note: "near the maker's mark", at: [0.25, 0.5] });
  await places(page).getByText(/Small dent \(3\), border.*, on the drawing: near the maker's mark/).waitFor();
  // On the photo, by keyboard alone.
  await page.getByRole("button", { name: /Show one on photo 1 of the border/ }).click();
  await page.locator(".place-picture").waitFor();
  assert.ok(await page.locator(".place-picture").evaluate((it) => it === document.activeElement), "the picture has the focus");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowUp");
  assert.equal(await page.getByLabel("From the left").inputValue(), "51");
  assert.equal(await page.getByLabel("From the top").inputValue(), "40");
  await place(page, { fault: "scratch" });
  await places(page).getByText(/Scratch, border.*, on a photo/).waitFor();
  await partButton(page, "Border").getByText(/2 shown where they are/).waitFor();
  // A place that does not fit is named, kept, and mended.
  await page.getByRole("button", { name: /^Change: Small dent/ }).click();
  await page.getByLabel("From the left").fill("130");
  await page.getByLabel("How many there").fill("0");
  await page.getByRole("button", { name: "Keep this place" }).click();
  await places(page).locator(".problem").getByText(/130 is out of range/).waitFor();
  await places(page).locator(".problem").getByText(/0 is out of range/).waitFor();
  await page.getByRole("button", { name: /^Change: Small dent/ }).click();
  await page.getByLabel("From the left").fill("25");
  await page.getByLabel("How many there").fill("3");
  await page.getByRole("button", { name: "Keep this place" }).click();
  await eventually(async () => assert.equal(await places(page).locator(".problem").count(), 0));
  // One undo takes one place back, and a redo brings it again.
  await page.getByRole("button", { name: /^Remove: Scratch/ }).click();
  await eventually(async () => assert.equal(await places(page).getByText(/^Scratch/).count(), 0));
  await page.keyboard.press("Control+z");
  await places(page).getByText(/Scratch, border/).waitFor();

  // A proposal to consent to, step by step.
  await go("#/counsel");
  const proposal = page.locator("section").filter({ has: page.locator("#proposal-title") }).last();
  await page.locator("#proposal-title").click();
  for (const [step, work] of [[1, "T08"], [2, "T15"]]) {
    await proposal.getByRole("button", { name: "Add a step" }).click();
    await proposal.getByRole("group", { name: `Step ${step}` }).getByLabel("What is done").selectOption(work);
  }
  await proposal.getByRole("group", { name: "Step 1" }).getByLabel("The owner agreed to this step").check();

  let paper = await sheet(page, go);
  await paper.locator("#places\\.drawing .place-mark").waitFor();
  await paper.getByText(/1\. Small dent \(3\), at the left of the drawing: near the maker's mark/).waitFor();
  await paper.locator("[id='places.photo.0'] svg image").waitFor();
  const consent = paper.locator(".conservation-consent");
  assert.equal(await consent.locator("tbody tr").count(), 2, "there is a line for each step");
  assert.match(await consent.locator("tbody tr").first().innerText(), /recorded as agreed/);

  await go("#/done");
  await page.locator("[id='done[0].what']").selectOption("T08");
  await page.locator("[id='done[0].method']").fill("Pushed out by hand over wood");
  await page.locator("[id='done[0].kept']").fill("Nothing was taken off");
  await page.getByRole("group", { name: "On which parts" }).getByLabel("Border or mount").check().catch(async () => {
    await page.locator("fieldset").filter({ hasText: "On which parts" }).getByLabel(/Border/).check();
  });
  await page.getByLabel("Photo of the piece after work 1").setInputFiles(await photo(page, "#7a9a6a"));
  await page.getByText("The photo is kept.").waitFor();

  paper = await sheet(page, go);
  await paper.getByText("“Pushed out by hand over wood”").waitFor();
  const pair = paper.locator(".conservation-treatment .side-by-side sheet-photos");
  await eventually(async () => assert.equal(await pair.locator("img").count(), 2, "before beside after"));
  const tops = await pair.evaluateAll((all) => all.map((it) => Math.round(it.getBoundingClientRect().left)));
  assert.notEqual(tops[0], tops[1], "they stand side by side");

  // On paper: what is signed stands whole on one page, and the photos are there.
  await page.emulateMedia({ media: "print" });
  for (const format of ["A4", "Letter"]) {
    const pdf = await page.pdf({ format });
    assert.ok((pdf.toString("latin1").match(/\/Subtype\s*\/Image/g) ?? []).length >= 3, "the photos are in the PDF");
    const document = await getDocumentProxy(new Uint8Array(pdf));
    const { text } = await extractText(document, { mergePages: false });
    const on = (words) => text.findIndex((each) => each.replace(/\s+/g, " ").includes(words));
    assert.ok(on("Consent, step by step") >= 0 && on("Consent, step by step") === on("Who does the work, name and date"), `${format}: the consent stands whole`);
  }
  await page.emulateMedia({ media: "screen" });

  // As a page of its own: the drawing and every photo are in it, and nothing is fetched.
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save as a page" }).click()]);
  const saved = await readFile(await download.path(), "utf8");
  assert.ok((saved.match(/(src|href)="data:image\//g) ?? []).length >= 4, "every photo is in the page");
  assert.match(saved, /class="place-mark"/);
  assert.doesNotMatch(saved, /blob:|class="shown"/);
  assert.match(saved, /near the maker's mark|near the maker&#39;s mark/);

  // A photo of the whole piece leads the client's sheet.
  const client = await sheet(page, go, "client");
  await client.locator("sheet-photos img").first().waitFor();
  const first = await client.locator("sheet-photos").first().getAttribute("id");
  assert.equal(first, "client.photo");
});

browserTest("a photo that is not in this browser is said to be missing, and the fault stays", async ({ page, go }) => {
  await go("#/");
  const text = JSON.stringify({
    format: "leavewell-case", version: 2, asked_on: "2026-05-31",
    piece: { name: "Invented tray", form: "tray" },
    findings: [{ id: "M01", answer: "seen" }],
    parts: [
      { part: "body", photos: "gone1", spots: [{ id: "e1", fault: "split", photo: "body/gone1", x: 20, y: 30 }] },
      { part: "foot", spots: [{ id: "e1", fault: "split", photo: "foot/never", x: 20, y: 30 }] },
    ],
  });
  await page.locator("#file").setInputFiles({ name: "tray.json", mimeType: "application/json", buffer: Buffer.from(text) });
  // What cannot be used is said before the piece is added.
  await page.getByText(/There is no photo "foot\/never"/).waitFor();
  await page.getByRole("button", { name: "Take these in" }).click();
  await page.getByRole("button", { name: /^Open: Invented tray|^Open Invented tray|Open/ }).filter({ hasText: /^Open$/ }).first().click();
  await page.waitForURL(/#\/(counsel|piece|road)/);
  await go("#/condition");
  await places(page).locator(".problem").getByText(/There is no photo "foot\/never"/).waitFor();
  await page.getByRole("button", { name: /^Change: Split or crack, body/ }).click();
  await places(page).getByText(/The photo is not in this browser/).waitFor();
  const paper = await sheet(page, go);
  await paper.locator("[id='places.photo.0']").getByText(/One photo is recorded/).waitFor();
  await paper.getByText(/1\. Split or crack, at the upper left of the photo/).waitFor();
  await paper.getByText(/2\. Split or crack/).waitFor();
});

browserTest("photos and places are fetched only once the first screen stands", async ({ page, go }) => {
  const asked = [];
  page.on("request", (request) => asked.push([new URL(request.url()).pathname, page.url()]));
  const ready = page.evaluate(() => document.documentElement.dataset.leavewell).catch(() => "");
  await go("#/");
  await ready;
  await page.waitForFunction(() => customElements.get("fault-places"));
  assert.equal(asked.filter(([path]) => path.endsWith("/pictures.js")).length, 1);
});
