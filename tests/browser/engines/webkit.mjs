// WebKit as GTK has it: its small browser, driven by plain WebDriver over HTTP, on a screen that nobody sees. It always
// has a private profile, and it shows no console.

import { spawn } from "node:child_process";
import { readdirSync } from "node:fs";
import { createServer } from "node:net";
import { setTimeout as pause } from "node:timers/promises";
import { ended, line, LOCALE } from "./folder.mjs";

const DRIVER = process.env.WEBKIT_DRIVER || "/usr/bin/WebKitWebDriver";
/** The member that WebDriver names an element by. */
const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

export async function startWebKit() {
  const display = spawn("Xvfb", ["-displayfd", "1", "-screen", "0", "1280x1000x24", "-nolisten", "tcp"], { stdio: ["ignore", "pipe", "ignore"] });
  const [, number] = await line(display, "stdout", /(\d+)\n/);
  const port = await freePort();
  const program = spawn(DRIVER, [`--port=${port}`, "--host=127.0.0.1"], {
    stdio: "ignore",
    env: { ...process.env, DISPLAY: `:${number}`, GDK_BACKEND: "x11", LANG: `${LOCALE.replace("-", "_")}.UTF-8`, LC_ALL: "", NO_AT_BRIDGE: "1" },
  });
  const ask = async (method, path, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, { method, body: body && JSON.stringify(body) });
    const { value } = await answer.json();
    if (value?.error) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  const { sessionId, capabilities } = await untilItAnswers(() =>
    ask("POST", "/session", {
      capabilities: { alwaysMatch: { browserName: "MiniBrowser", "webkitgtk:browserOptions": { binary: miniBrowser(), args: ["--automation"] } } },
    }),
  );
  const session = (method, path, body) => ask(method, `/session/${sessionId}${path}`, body);
  let shown = "";
  const show = async (handle) => {
    if (shown !== handle) await session("POST", "/window", { handle });
    shown = handle;
  };
  let unused = await session("GET", "/window/handles");
  return {
    errors: [],
    version: capabilities.browserVersion,
    async tab() {
      const [handle = (await session("POST", "/window/new", { type: "tab" })).handle] = unused;
      unused = [];
      return tabOf(session, () => show(handle), () => (shown = ""));
    },
    async close() {
      await session("DELETE", "").catch(() => {});
      await ended(program);
      await ended(display);
    },
  };
}

function tabOf(session, show, gone) {
  const here = async (...asked) => {
    await show();
    return session(...asked);
  };
  const element = async (selector) => {
    const { [ELEMENT]: id } = await here("POST", "/element", { using: "css selector", value: selector });
    await session("POST", "/execute/sync", { script: 'arguments[0].scrollIntoView({ block: "center" })', args: [{ [ELEMENT]: id }] });
    return `/element/${id}`;
  };
  return {
    open: (url) => here("POST", "/url", { url }),
    reload: () => here("POST", "/refresh", {}),
    async eval(work, ...args) {
      const script = `const done = arguments[arguments.length - 1];
        Promise.resolve().then(() => (${work})(${args.map((arg) => JSON.stringify(arg)).join(",")})).then((value) => done({ value }), (reason) => done({ reason: String(reason) }));`;
      const { value, reason } = await here("POST", "/execute/async", { script, args: [] });
      if (reason) throw new Error(reason);
      return value ?? undefined;
    },
    async type(selector, text) {
      const field = await element(selector);
      await session("POST", `${field}/clear`, {});
      await session("POST", `${field}/value`, { text });
    },
    async keys(text) {
      const { [ELEMENT]: id } = await here("GET", "/element/active");
      await session("POST", `/element/${id}/value`, { text });
    },
    size: (width, height) => here("POST", "/window/rect", { width, height }),
    click: async (selector) => session("POST", `${await element(selector)}/click`, {}),
    choose: async (selector, file) => session("POST", `${await element(selector)}/value`, { text: file }),
    front: show,
    async close() {
      await here("DELETE", "/window");
      gone();
    },
  };
}

/** The small browser of the newest version installed. */
function miniBrowser() {
  if (process.env.WEBKIT_BROWSER) return process.env.WEBKIT_BROWSER;
  const folders = readdirSync("/usr/lib", { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => `/usr/lib/${name}`);
  const found = folders.flatMap((folder) => {
    const inside = readdirSync(folder).filter((name) => /^webkit2gtk-4\.\d$/.test(name));
    return inside.map((name) => `${folder}/${name}/MiniBrowser`);
  });
  if (found.length === 0) throw new Error("WebKit's small browser is not installed (Debian: apt-get install webkit2gtk-driver)");
  return found.sort().at(-1);
}

function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer().once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

async function untilItAnswers(work) {
  for (let tries = 0; ; tries += 1) {
    try {
      return await work();
    } catch (reason) {
      if (tries > 40 || !/fetch failed/.test(String(reason))) throw reason;
      await pause(100);
    }
  }
}
