// The single-file edition, opened from a disk: the whole job works, without any request.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { copyFile, mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { execFileSync } from "node:child_process";
import { DEV, ROOT, browser, checkPageAccess, started, watch } from "./harness.mjs";

let folder;
let file;

// It is made from the site under test and copied alone into another folder.
before(async () => {
  const [program, first] = DEV;
  execFileSync(program, [...first, "one-file"], { cwd: ROOT });
  folder = await mkdtemp(join(tmpdir(), "leavewell one file "));
  file = join(folder, "leavewell.html");
  await copyFile(join(ROOT, "dist-one/leavewell.html"), file);
});
after(() => rm(folder, { recursive: true, force: true }));

function oneFileTest(name, options, body) {
  test(name, { timeout: 120_000 }, async () => {
    const context = await (await browser()).newContext({ ...options, offline: true });
    try {
      const troubles = [];
      const address = pathToFileURL(file).href;
      watch(context, ({ href }) => href.split(/[?#]/)[0] === address, troubles);
      const page = await context.newPage();
      const go = async (route) => {
        await page.goto(address + route);
        await started(page);
      };
      await body({ page, go, troubles });
      assert.deepEqual(troubles, [], "the page ran into trouble");
    } finally {
      await context.close();
    }
  });
}

oneFileTest("it opens from a disk and does the whole job", {}, async ({ page, go }) => {
  await go("#/");
  await page.getByText(/Leavewell in one file\. It cannot be installed/).waitFor();
  await checkPageAccess(page, "the shelf of the edition in one file");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await page.waitForURL(/#\/counsel/);
  await page.getByText(/^Leave it as it is\./).first().waitFor();

  await go("#/look");
  await page.evaluate(() => document.querySelectorAll("details.group").forEach((group) => group.setAttribute("open", "")));
  await page.waitForFunction(() => [...document.querySelectorAll(".group")].every((group) => group.querySelector(".finding")));
  const drawn = await page.evaluate(() =>
    [...document.querySelectorAll(".look-drawing use")]
      .filter((use) => use.checkVisibility())
      .map((use) => [use.getAttribute("href"), use.getBoundingClientRect().width, use.getBoundingClientRect().height]),
  );
  assert.ok(drawn.length >= 57, `${drawn.length} drawings`);
  for (const [of, wide, high] of drawn) assert.ok(of.startsWith("#look-") && wide > 100 && high > 30, `${of} is ${wide} by ${high}`);
  await checkPageAccess(page, "Look in the edition in one file");

  await go("#/condition");
  await page.getByText("How long the silver will last, depending on its care").click();
  await page.locator(".leaf figcaption").filter({ visible: true }).first().waitFor();
  assert.ok(await page.evaluate(() => customElements.get("part-photos") !== undefined), "photos work");

  // The record survives a reload, as far as this browser stores it.
  await go("#/counsel");
  await page.reload();
  await started(page);
  await page.getByText(/^Leave it as it is\./).first().waitFor();
});

oneFileTest("its first screen and its advice are accessible in the dark", { colorScheme: "dark" }, async ({ page, go }) => {
  await go("#/");
  await page.getByRole("button", { name: /Open a copy of: The worn tray/ }).click();
  await page.waitForURL(/#\/counsel/);
  await page.getByText(/^Leave it as it is\./).first().waitFor();
  await checkPageAccess(page, "the advice in the edition in one file, dark");
});

oneFileTest("its policy lets run what it came with and nothing else", {}, async ({ page, go, troubles }) => {
  const text = await readFile(file, "utf8");
  const policy = text.match(/http-equiv="Content-Security-Policy" content="([^"]*)"/)[1];
  const scripts = [...text.matchAll(/<script type="module">([\s\S]*?)<\/script>/g)].map(([, body]) => body);
  const sum = (body) => `'sha256-${createHash("sha256").update(body).digest("base64")}'`;
  assert.equal(scripts.length, 1);
  assert.match(policy, /^default-src 'none';/);
  assert.ok(policy.includes(`script-src ${sum(scripts[0])} 'wasm-unsafe-eval';`));
  assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|\*|https?:/);
  assert.doesNotMatch(text.replace(/<script[\s\S]*?<\/script>/g, ""), / src=| on[a-z]+=| style=/);

  await go("#/");
  const outcome = await page.evaluate(async () => {
    // Code evaluated by the test driver may evaluate text until its first await.
    await new Promise((resolve) => setTimeout(resolve));
    const script = document.createElement("script");
    const tried = { inline: false, fetched: true, evaluated: true, worker: true };
    try {
      script.append("globalThis.injected = true");
      document.body.append(script);
    } catch {
      // A refusal at construction is enough.
    }
    tried.inline = globalThis.injected === true;
    tried.fetched = await fetch("http://127.0.0.1:9/").then(() => true, () => false);
    try {
      (0, eval)("1");
    } catch {
      tried.evaluated = false;
    }
    try {
      new Worker(URL.createObjectURL(new Blob(["1"])));
    } catch {
      tried.worker = false;
    }
    return tried;
  });
  assert.deepEqual(outcome, { inline: false, fetched: false, evaluated: false, worker: false });
  troubles.length = 0;
});
