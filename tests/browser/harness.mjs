// The harness of every browser test: a server for the built site, one Chromium for each test file, and a page that
// is monitored while a test drives it.
//
//   import { browserTest } from "./harness.mjs";
//   browserTest("says what it is for", async ({ page, go }) => { await go("#/"); ... });
//
// A test fails on an error in the console, an uncaught error in the page, or a request that leaves the server's
// origin, unless it expects that and empties `troubles`.
//
// The server sends the headers in the site's `_headers`, including the content policy.
//
// The service worker is blocked, so that a test sees every request and can stop it; the option
// `serviceWorkers: "allow"` enables it.
//
// `CHROMIUM` names another browser executable.

import assert from "node:assert/strict";
import { createServer } from "node:http";
import { readFile } from "node:fs/promises";
import { extname, join, normalize } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";
import { AxeBuilder } from "@axe-core/playwright";
import { chromium } from "playwright-core";

/** The project's root folder. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** The folder of the built site. */
export const DIST = process.env.DISTDIR ?? join(ROOT, "dist");

/** The project's commands, as `[program, first arguments]`. */
export const DEV = process.env.LEAVEWELL_DEV
  ? [process.env.LEAVEWELL_DEV, []]
  : ["cargo", ["run", "--quiet", "--package", "leavewell-dev", "--"]];

const LONGEST_TEST_MS = 120_000;

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
};

/**
 * Serves a folder on a free port of this machine and forbids caching.
 * `base` serves it under a path, as in a folder of another site. `close()` also drops open connections.
 * Setting `folder` of the returned object to another folder replaces the old build by a new one.
 */
export async function serve({ folder = DIST, base = "/" } = {}) {
  const site = { folder };
  const headers = await exampleHeaders(folder);
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url, "http://127.0.0.1");
    const answer = (status, type, body) => {
      response.writeHead(status, { ...headers, "content-type": type, "cache-control": "no-store" });
      response.end(body);
    };
    try {
      assert.ok(pathname.startsWith(base));
      const inside = normalize(decodeURIComponent(pathname.slice(base.length))).replace(/^(\.\.[/\\])+/, "");
      const file = pathname.endsWith("/") ? join(inside, "index.html") : inside;
      const body = await readFile(join(site.folder, file));
      answer(200, TYPES[extname(file)] ?? "application/octet-stream", body);
    } catch {
      answer(404, "text/plain; charset=utf-8", "There is nothing here.");
    }
  });
  await new Promise((resolve, reject) => server.once("error", reject).listen(0, "127.0.0.1", resolve));
  const origin = `http://127.0.0.1:${server.address().port}`;
  const close = () =>
    new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  return Object.assign(site, { origin, url: origin + base, close });
}

/** The headers for every file, from the site's example for servers. */
async function exampleHeaders(folder) {
  const text = await readFile(join(folder, "_headers"), "utf8");
  const lines = [...text.matchAll(/^ {2}([A-Za-z-]+): (.*)$/gm)];
  assert.ok(lines.length > 3, "the example for servers names headers");
  return Object.fromEntries(lines.map(([, name, value]) => [name.toLowerCase(), value]));
}

let browserStarting;

/** The Chromium of this test file. It starts when first needed and closes at the end of the file. */
export function browser() {
  browserStarting ??= chromium.launch({
    executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      // A request that escapes the check below finds no host.
      "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
    ],
  });
  return browserStarting;
}

after(async () => {
  await (await browserStarting?.catch(() => undefined))?.close();
});

/**
 * A test with a separate page, profile and server.
 *
 * `options` go to the browser context (`viewport`, `colorScheme`, `javaScriptEnabled`, `serviceWorkers` ...), except
 * `base`, which goes to the server, and `timeout`, the time limit of the test in milliseconds. The body is called with
 * - `page`, `context`, `site` (see `serve`);
 * - `go(route)`: opens the app at a hash route such as "#/look" and waits until it has started;
 * - `checkAccess(what)`: fails on any breach of WCAG 2.2 A or AA that axe finds on the page in its current state;
 * - `troubles`: the errors in the page so far.
 */
export function browserTest(name, ...rest) {
  const [body, { base, timeout = LONGEST_TEST_MS, ...contextOptions } = {}] = rest.reverse();
  test(name, { timeout }, async () => {
    const site = await serve({ base });
    const context = await (await browser()).newContext({ serviceWorkers: "block", ...contextOptions });
    try {
      const troubles = [];
      watch(context, ({ origin }) => origin === site.origin, troubles);
      const page = await context.newPage();
      const go = async (route = "") => {
        await page.goto(site.url + route);
        await started(page);
      };
      const checkAccess = (what = "this page", only = []) => checkPageAccess(page, what, only);
      await body({ page, context, site, go, checkAccess, troubles });
      assert.deepEqual(troubles, [], "the page ran into trouble");
    } finally {
      await context.close();
      await site.close();
    }
  });
}

/** Waits for the app's first screen. If the app cannot start, it fails with the page's message. */
export async function started(page) {
  const root = page.locator("html[data-leavewell]");
  await root.waitFor({ state: "attached", timeout: 30_000 });
  if ((await root.getAttribute("data-leavewell")) !== "ready") {
    assert.fail(`the app did not start: ${await page.locator("#start-failed").innerText()}`);
  }
}

/**
 * Runs `check` until it passes. A screen that follows an input is drawn a little later than the input itself, so a check
 * that reads the screen once may read the one before. After five seconds the last failure counts.
 */
export async function eventually(check) {
  const last = Date.now() + 5_000;
  for (;;) {
    try {
      return await check();
    } catch (failure) {
      if (Date.now() > last) throw failure;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
}

/** Waits for the pages that belong to the last input. */
export async function settled(page) {
  // A change waits a little before it is rendered. Until then nothing on the page shows that it is pending.
  await page.waitForTimeout(50);
  await page.waitForFunction(() => [...document.querySelectorAll(".leaf")].every((it) => it.getAttribute("aria-busy") === "false"));
}

/** Fails on any breach of WCAG 2.2 A or AA that axe finds, or of the rules in `only`, naming the elements. */
export async function checkPageAccess(page, what, only = []) {
  const axe = new AxeBuilder({ page });
  const { violations } = await (only.length > 0
    ? axe.withRules(only)
    : axe.withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"])
  ).analyze();
  const faults = violations.map(({ id, help, nodes }) => `${id}: ${help}\n  ${nodes.map((node) => node.target.join(" ")).join("\n  ")}`);
  assert.deepEqual(faults, [], `${what} should be accessible`);
}

/** Records the errors of every page in a context, and every request to an address that `isOurs` rejects. */
export function watch(context, isOurs, troubles) {
  context.on("console", (message) => {
    if (message.type() === "error") troubles.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on("weberror", (error) => troubles.push(`uncaught: ${error.error().message}`));
  context.on("request", (request) => {
    const asked = new URL(request.url());
    if (asked.protocol !== "blob:" && asked.protocol !== "data:" && !isOurs(asked)) troubles.push(`off-origin request: ${request.url()}`);
  });
  context.on("page", (page) => {
    page.on("websocket", (socket) => troubles.push(`off-origin request: ${socket.url()}`));
  });
}
