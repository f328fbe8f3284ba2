// Chromium, through the same library as the browser tests.

import { mkdtemp, readlink } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { discard, LOCALE } from "./folder.mjs";

export async function startChromium({ profile } = {}) {
  const folder = profile ?? (await mkdtemp(join(tmpdir(), "leavewell-chromium-")));
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
    viewport: { width: 1100, height: 800 },
    locale: LOCALE,
    args: ["--no-sandbox", "--disable-gpu", "--no-first-run"],
  });
  const errors = [];
  context.on("console", (message) => message.type() === "error" && errors.push(message.text()));
  context.on("weberror", (error) => errors.push(error.error().message));
  return {
    errors,
    version: context.browser()?.version() ?? "",
    /** Ends it as a crash or a power cut does. */
    async kill() {
      // The lock on a profile names the machine and the process.
      const pid = Number((await readlink(join(folder, "SingletonLock"))).split("-").at(-1));
      process.kill(-pid, "SIGKILL");
      await context.close().catch(() => {});
    },
    tab: async () => tabOf(await context.newPage()),
    async close() {
      await context.close();
      if (!profile) await discard(folder);
    },
  };
}

function tabOf(page) {
  const first = (selector) => page.locator(selector).first();
  return {
    open: (address) => page.goto(address),
    reload: () => page.reload(),
    eval: (work, ...args) => page.evaluate(`(${work})(${args.map((arg) => JSON.stringify(arg)).join(",")})`),
    async type(selector, text) {
      const field = first(selector);
      await field.click();
      await page.keyboard.press("ControlOrMeta+A");
      await page.keyboard.press("Delete");
      await page.keyboard.type(text);
    },
    keys: (text) => page.keyboard.type(text),
    size: (width, height) => page.setViewportSize({ width, height }),
    click: (selector) => first(selector).click(),
    choose: (selector, file) => first(selector).setInputFiles(file),
    front: () => page.bringToFront(),
    close: () => page.close(),
  };
}
