// The worker: fetched on the first question, never blocking typing, and harmless if it is missing.

import assert from "node:assert/strict";
import { browserTest, eventually } from "./harness.mjs";

const WORN_TRAY = /Open a copy of: The worn tray/;

browserTest("a first visit does not load it", async ({ page, go }) => {
  const asked = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await go("#/");
  await page.waitForTimeout(1_000);
  assert.deepEqual(asked.filter((path) => /worker|looks/.test(path)), []);
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/condition");
  await page.locator(".leaf section").first().waitFor({ state: "attached" });
  assert.ok(asked.some((path) => path.endsWith("leavewell-worker_bg.wasm")));
});

browserTest("a field on its pages keeps the typed text, updates the page, and is in the record", async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/condition");
  await page.getByText("How long the silver will last, depending on its care").click();
  const care = page.locator("details").filter({ has: page.locator("summary", { hasText: "How long the silver will last" }) }).locator(".leaf").first();
  const field = care.locator("input").first();
  await field.waitFor();
  const answers = care.locator("figcaption").first();
  const before = await answers.innerText();
  await field.fill("");
  await field.pressSequentially("3o");
  await eventually(async () => assert.equal(await field.inputValue(), "3o"));
  assert.ok(await field.evaluate((element) => element === document.activeElement), "the field keeps the focus");
  await page.getByText(/is not a number/).filter({ visible: true }).first().waitFor();
  await field.fill("37");
  await answers.filter({ hasText: "37 years" }).waitFor();
  await eventually(async () => assert.notEqual(await answers.innerText(), before));
  await eventually(async () => assert.equal(await page.getByText(/is not a number/).filter({ visible: true }).count(), 0));
  await page.reload();
  await page.getByText("How long the silver will last, depending on its care").click();
  await field.waitFor();
  await eventually(async () => assert.equal(await field.inputValue(), "37", "over a reload too"));
});

browserTest("if it cannot be loaded, each page says so and the rest works", async ({ page, go, troubles }) => {
  await page.route("**/leavewell-worker*", (route) => route.abort());
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/condition");
  await page.getByText("How long the silver will last, depending on its care").click();
  await page.getByText(/could not work out .*\. Reload the page/).filter({ visible: true }).first().waitFor();
  await go("#/counsel");
  await page.getByText(/could not work out .*\. Reload the page/).first().waitFor();
  await go("#/look");
  await page.locator("input[value=absent]").first().check();
  await page.getByText(/Date, judging by what shows/).first().waitFor();
  troubles.length = 0;
});

browserTest("one program runs in two workers with different addresses", async ({ page, go }) => {
  const programs = new Set();
  page.on("request", (request) => {
    const file = new URL(request.url()).pathname.split("/").at(-1);
    // The app's program has the digest of its bytes in its name.
    if (/^leavewell-[a-z]+_bg\.wasm$/.test(file)) programs.add(file);
  });
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await page.locator(".answer-sentence").waitFor();
  await go("#/sheet/client");
  await page.locator(".paper section").first().waitFor();
  const addresses = page.workers().map((worker) => worker.url());
  assert.equal(addresses.length, 2);
  assert.equal(new Set(addresses.map((address) => address.split("#")[0])).size, 2, addresses.join(" "));
  assert.ok(addresses.every((address) => /\/worker\.js\?[^&]+&(answers|long)$/.test(address)), addresses.join(" "));
  assert.deepEqual([...programs], ["leavewell-worker_bg.wasm"]);
});

/** Records the messages about the Closer screen in `window.messages`. */
async function listen(page) {
  await page.evaluate(() => {
    const CLOSER = 104;
    window.messages = [];
    window.addEventListener("leavewell-answer", ({ detail }) => {
      if (detail.topic === CLOSER) window.messages.push({ turn: detail.turn, share: detail.share });
    });
  });
}

browserTest("a long page shows progress, and a change abandons the previous page", async ({ page, go }) => {
  // Slices far enough apart that the change below falls between two of them on any machine.
  await page.route("**/worker.js*", async (route) => {
    const response = await route.fetch();
    const text = await response.text();
    assert.ok(text.includes("setTimeout(resolve)"));
    await route.fulfill({ response, body: text.replace("setTimeout(resolve)", "setTimeout(resolve, 150)") });
  });
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await page.locator(".answer-sentence").waitFor();
  await listen(page);
  await page.evaluate(() => (location.hash = "#/closer"));
  await page.locator(".leaf section").first().waitFor();
  const shares = await page.evaluate(() => window.messages.map(({ share }) => share).filter((share) => share !== undefined));
  assert.ok(shares.length > 4, `${shares}`);
  assert.ok(shares.every((share, at) => share > 0 && share < 1 && (at === 0 || share > shares[at - 1])), `${shares}`);

  const field = page.locator(".leaf input[inputmode=decimal]").first();
  await field.evaluate((input) => {
    window.messages.length = 0;
    const type = (text) => {
      input.value = text;
      input.dispatchEvent(new InputEvent("input", { bubbles: true }));
    };
    const again = ({ detail }) => {
      if (detail.share === undefined) return;
      window.removeEventListener("leavewell-answer", again);
      type("71");
    };
    window.addEventListener("leavewell-answer", again);
    type("70");
  });
  await page.waitForFunction(() => window.messages.some(({ share }) => share === undefined));
  await page.locator(".leaf[aria-busy=false]").waitFor();
  const messages = await page.evaluate(() => window.messages);
  const turns = [...new Set(messages.map(({ turn }) => turn))];
  assert.equal(turns.length, 2, "both were begun");
  const answered = messages.filter(({ share }) => share === undefined).map(({ turn }) => turn);
  assert.deepEqual(answered, [turns[1]], "the older one was given up");
  await eventually(async () => assert.equal(await field.inputValue(), "71"));
});

browserTest("one that dies is replaced, and the next answer is given", async ({ page, go, troubles }) => {
  let deaths = 0;
  await page.route("**/worker.js*", async (route) => {
    deaths += 1;
    if (deaths > 1) return route.continue();
    return route.fulfill({ contentType: "text/javascript", body: 'self.addEventListener("message", () => { throw new Error("it dies"); });' });
  });
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await go("#/counsel");
  await page.waitForFunction(() => document.querySelector("main").innerText.includes("Reload the page") || document.querySelector("main").innerText.includes("Leave it as it is"));
  await go("#/piece");
  await page.getByLabel("Not after").fill("1841");
  await page.evaluate(() => {
    location.hash = "#/counsel";
  });
  await page.getByText(/^Leave it as it is/).first().waitFor();
  assert.ok(deaths > 1, "another was started");
  troubles.length = 0;
});
