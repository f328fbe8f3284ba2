// Offline: after one visit the whole job works with the server stopped. A newer build is offered, never forced,
// and files of two builds never mix.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { appendFile, cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after } from "node:test";
import { browserTest, DEV, DIST, eventually, ROOT, started } from "./harness.mjs";

const WITH_WORKER = { serviceWorkers: "allow" };
const WORN_TRAY = /Open a copy of: The worn tray/;
const NAME = JSON.parse(await readFile(join(ROOT, "tests/cases/worn_tray.json"), "utf8")).piece.name;

/** Waits until the offline copy is complete and serves this page. */
const copied = (page) => page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated", null, { timeout: 20_000 });

const kept = (page) => page.evaluate(() => caches.keys());

const folders = [];
after(() => Promise.all(folders.map((folder) => rm(folder, { recursive: true, force: true }))));

/** A second build of the site, with a change in each of its scripts. */
async function nextBuild() {
  const folder = await mkdtemp(join(tmpdir(), "leavewell-next-"));
  folders.push(folder);
  await cp(DIST, folder, { recursive: true });
  const page = await readFile(join(folder, "index.html"), "utf8");
  await writeFile(join(folder, "index.html"), page.replace(/data-build="[^"]*"/, 'data-build="@build@"'));
  await cp(join(ROOT, "www/sw.js"), join(folder, "sw.js"));
  await appendFile(join(folder, "boot.js"), '\ndocument.documentElement.dataset.scripts = "next";\n');
  await appendFile(join(folder, "worker.js"), "\nself.build = \"next\";\n");
  const [program, before] = DEV;
  execFileSync(program, [...before, "finish"], { cwd: ROOT, env: { ...process.env, TRUNK_STAGING_DIR: folder } });
  return folder;
}

/** The build of the page, and the build of the worker program it gets. */
async function builds(page) {
  return page.evaluate(async () => {
    const build = document.getElementById("boot").dataset.build;
    const worker = await fetch(`worker.js?${build}`).then((answer) => answer.text(), () => "refused");
    return {
      page: document.documentElement.dataset.scripts ?? "first",
      worker: worker === "refused" ? worker : worker.includes("self.build") ? "next" : "first",
    };
  });
}

async function wholeJob(page, go) {
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await page.waitForURL(/#\/./);
  await go("#/look");
  await page.locator("details.group").first().evaluate((group) => group.setAttribute("open", ""));
  const drawing = page.locator(".group use").first();
  await page.waitForFunction(() => document.querySelector(".group use")?.getBoundingClientRect().width > 100);
  assert.match(await drawing.getAttribute("href"), /^looks\.svg#/);
  await go("#/condition");
  await page.locator(".piece-drawing path").first().waitFor();
  await page.getByText("How long the silver will last, depending on its care").click();
  await page.locator(".leaf figcaption").filter({ visible: true }).first().waitFor();
  assert.ok(await page.evaluate(() => customElements.get("part-photos") !== undefined), "photos work");
  await go("#/counsel");
  await page.getByText(/^Leave it as it is/).first().waitFor();
  await go("#/");
  await page.locator("main").getByText(NAME).first().waitFor();
}

for (const base of ["/", "/pieces/of/silver/"]) {
  browserTest(`after one visit the whole job works with the server stopped: ${base}`, { ...WITH_WORKER, base }, async ({ page, context, site, go }) => {
    await go("#/");
    await copied(page);
    await site.close();
    await page.reload();
    await started(page);
    await wholeJob(page, go);

    const other = await context.newPage();
    for (const link of ["#/counsel", "?from=a-link#/counsel", "index.html#/counsel"]) {
      await other.goto(site.url + link);
      await started(other);
      await other.getByText(/^Leave it as it is/).first().waitFor();
    }
  });
}

browserTest("a first visit uses the copy as soon as it exists", WITH_WORKER, async ({ page, site, go }) => {
  await go("#/");
  await copied(page);
  await site.close();
  await wholeJob(page, async (route) => page.evaluate((to) => (location.hash = to), route));
});

browserTest("a newer build is offered and starts when accepted", WITH_WORKER, async ({ page, site, go, checkAccess }) => {
  await go("#/");
  await copied(page);
  const before = await kept(page);
  assert.equal(before.length, 1);

  site.folder = await nextBuild();
  await page.reload();
  await started(page);
  const bar = page.locator("#update");
  await bar.getByText("A new version is ready.").waitFor();
  assert.deepEqual(await builds(page), { page: "first", worker: "first" });
  await checkAccess("the offer of a new version");

  // If declined, the offer returns at the next visit; until then nothing changes.
  await bar.getByRole("button", { name: "Later" }).click();
  await eventually(async () => assert.equal(await bar.count(), 0));
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await page.waitForURL(/#\/counsel/);
  await page.getByText(/^Leave it as it is/).first().waitFor();
  await page.reload();
  await started(page);
  await bar.getByText("What you have entered stays.").waitFor();
  assert.deepEqual(await builds(page), { page: "first", worker: "first" });

  let loads = 0;
  page.on("load", () => (loads += 1));
  await bar.getByRole("button", { name: "Reload with it" }).click();
  await page.waitForFunction(() => document.documentElement.dataset.scripts === "next");
  await started(page);
  await page.getByText(/^Leave it as it is/).first().waitFor();
  await page.waitForTimeout(1_000);
  assert.equal(loads, 1, "one reload");
  assert.deepEqual(await builds(page), { page: "next", worker: "next" });
  await eventually(async () => assert.equal(await bar.count(), 0));
  const now = await kept(page);
  assert.equal(now.length, 1, "the old copy is gone");
  assert.notDeepEqual(now, before);

  await site.close();
  await page.reload();
  await started(page);
  assert.deepEqual(await builds(page), { page: "next", worker: "next" });
});

browserTest("another tab gets a notice, keeps its content, and gets nothing of the newer build", WITH_WORKER, async ({ page, context, site, go, troubles }) => {
  await go("#/");
  await copied(page);
  const other = await context.newPage();
  await other.goto(site.url);
  await started(other);
  site.folder = await nextBuild();
  await page.reload();
  await page.locator("#update").getByRole("button", { name: "Reload with it" }).click();
  await page.waitForFunction(() => document.documentElement.dataset.scripts === "next");

  const bar = other.locator("#update");
  await bar.getByText("Leavewell was updated in another tab.").waitFor();
  assert.deepEqual(await builds(other), { page: "first", worker: "refused" });
  assert.ok(troubles.splice(0).every((trouble) => /worker\.js/.test(trouble)), "the refusal is all that went wrong");
  await bar.getByRole("button", { name: "Reload" }).click();
  await other.waitForFunction(() => document.documentElement.dataset.scripts === "next");
  await started(other);
  assert.deepEqual(await builds(other), { page: "next", worker: "next" });
});

browserTest("a visit during a deployment keeps the old copy complete", WITH_WORKER, async ({ page, site, go, troubles }) => {
  await go("#/");
  await copied(page);
  const before = await kept(page);
  const next = await nextBuild();
  const whole = await readFile(join(next, "worker.js"));
  await cp(join(DIST, "worker.js"), join(next, "worker.js"));
  site.folder = next;
  await page.reload();
  await started(page);
  const gaveUp = () => navigator.serviceWorker.getRegistration().then((it) => !it.installing && !it.waiting);
  await page.waitForFunction(() => navigator.serviceWorker.getRegistration().then((it) => it.update().then(() => true, () => true)));
  await page.waitForFunction(gaveUp);
  await eventually(async () => assert.equal(await page.locator("#update").count(), 0, "half a build is not offered"));
  assert.deepEqual(await builds(page), { page: "first", worker: "first" });
  assert.ok((await kept(page)).includes(before[0]), "the old copy is kept");
  troubles.length = 0;

  // Once the remaining files have arrived, the new copy is made.
  await writeFile(join(next, "worker.js"), whole);
  await page.reload();
  await page.locator("#update").getByText("A new version is ready.").waitFor();
  assert.deepEqual(await builds(page), { page: "first", worker: "first" });
});

browserTest("the site can be installed", WITH_WORKER, async ({ page, context, go }) => {
  await go("#/");
  await copied(page);
  const talk = await context.newCDPSession(page);
  const { errors, data } = await talk.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  const manifest = JSON.parse(data);
  const { installabilityErrors } = await talk.send("Page.getInstallabilityErrors");
  // A test's profile is temporary, and that is the only permitted obstacle.
  assert.deepEqual(installabilityErrors.map((it) => it.errorId).filter((id) => id !== "in-incognito"), []);
  for (const { src, sizes } of manifest.icons) {
    const size = await page.evaluate(async (icon) => {
      const image = new Image();
      image.src = icon;
      await image.decode();
      return `${image.naturalWidth}x${image.naturalHeight}`;
    }, src);
    assert.equal(size, sizes, src);
  }
  const paper = await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--paper").trim());
  assert.deepEqual([manifest.theme_color, manifest.background_color], [paper, paper], "the colours are the style sheet's");
});

browserTest("without a copy the site works online", async ({ page, go }) => {
  await page.addInitScript(() => {
    ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException("storage is shut", "SecurityError"));
  });
  await go("#/");
  await page.getByRole("button", { name: WORN_TRAY }).click();
  await page.getByText(/^Leave it as it is/).first().waitFor();
});
