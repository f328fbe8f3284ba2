// Firefox, over WebDriver BiDi: JSON messages through a WebSocket that Firefox opens by itself.

import { spawn } from "node:child_process";
import { mkdtemp, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { discard, ended, line, LOCALE } from "./folder.mjs";

const FIREFOX = process.env.FIREFOX || "/usr/bin/firefox-esr";

// No first-run pages, no reports, no requests of the browser's own.
const SETTINGS = {
  "app.normandy.enabled": false,
  "app.update.enabled": false,
  "browser.aboutConfig.showWarning": false,
  "browser.safebrowsing.malware.enabled": false,
  "browser.safebrowsing.phishing.enabled": false,
  "browser.sessionstore.resume_from_crash": false,
  "browser.shell.checkDefaultBrowser": false,
  "browser.startup.homepage_override.mstone": "ignore",
  "browser.startup.page": 0,
  "datareporting.healthreport.uploadEnabled": false,
  "datareporting.policy.dataSubmissionEnabled": false,
  "extensions.getAddons.cache.enabled": false,
  "intl.accept_languages": LOCALE,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "services.settings.server": "http://127.0.0.1:9/",
  "toolkit.startup.max_resumed_crashes": -1,
};

export async function startFirefox({ profile } = {}) {
  const folder = profile ?? (await mkdtemp(join(tmpdir(), "leavewell-firefox-")));
  const settings = Object.entries(SETTINGS).map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});`);
  await writeFile(join(folder, "user.js"), `${settings.join("\n")}\n`);
  const program = spawn(FIREFOX, ["--headless", "--no-remote", "--profile", folder, "--remote-debugging-port=0"], {
    stdio: ["ignore", "ignore", "pipe"],
    env: { ...process.env, MOZ_CRASHREPORTER_DISABLE: "1" },
  });
  const [, address] = await line(program, "stderr", /BiDi listening on (ws:\S+)/);
  const errors = [];
  const ask = await connect(`${address}/session`, ({ method, params }) => {
    if (method === "log.entryAdded" && params.level === "error") errors.push(params.text);
  });
  const { capabilities } = await ask("session.new", { capabilities: {} });
  await ask("session.subscribe", { events: ["log.entryAdded"] });
  return {
    errors,
    version: capabilities.browserVersion,
    /** Ends it as a crash or a power cut does. */
    kill: () => ended(program, "SIGKILL"),
    async tab() {
      const { context } = await ask("browsingContext.create", { type: "tab" });
      await ask("browsingContext.setViewport", { context, viewport: { width: 1100, height: 800 } });
      return tabOf(ask, context);
    },
    async close() {
      await ended(program);
      if (!profile) await discard(folder);
    },
  };
}

/** Opens the connection, and gives a function that asks {method, params} and promises the result. */
async function connect(address, told) {
  const socket = new WebSocket(address);
  const waiting = new Map();
  let asked = 0;
  socket.addEventListener("message", ({ data }) => {
    const { id, result, error, message, ...event } = JSON.parse(data);
    if (id === undefined || id === null) return told(event);
    const [resolve, reject] = waiting.get(id);
    waiting.delete(id);
    if (error) reject(new Error(`${error}: ${message}`));
    else resolve(result);
  });
  socket.addEventListener("close", () => {
    for (const [, reject] of waiting.values()) reject(new Error("Firefox has closed the connection"));
    waiting.clear();
  });
  await new Promise((resolve, reject) => {
    socket.addEventListener("open", resolve, { once: true });
    socket.addEventListener("error", () => reject(new Error(`no answer at ${address}`)), { once: true });
  });
  return (method, params) =>
    new Promise((resolve, reject) => {
      asked += 1;
      waiting.set(asked, [resolve, reject]);
      socket.send(JSON.stringify({ id: asked, method, params }));
    });
}

const CONTROL = "\uE009";
const DELETE = "\uE017";

function tabOf(ask, context) {
  const call = async (functionDeclaration) => {
    const { result, exceptionDetails } = await ask("script.callFunction", { functionDeclaration, awaitPromise: true, target: { context } });
    if (exceptionDetails) throw new Error(exceptionDetails.text);
    return result;
  };
  const element = async (selector) => {
    const { sharedId } = await call(`() => { const it = document.querySelector(${JSON.stringify(selector)}); it?.scrollIntoView({ block: "center" }); return it; }`);
    if (!sharedId) throw new Error(`nothing is at ${selector}`);
    return { sharedId };
  };
  const click = async (selector) => {
    const origin = { type: "element", element: await element(selector) };
    const actions = [
      { type: "pointerMove", x: 0, y: 0, origin },
      { type: "pointerDown", button: 0 },
      { type: "pointerUp", button: 0 },
    ];
    await ask("input.performActions", { context, actions: [{ type: "pointer", id: "mouse", actions }] });
  };
  const act = (actions) => ask("input.performActions", { context, actions: [{ type: "key", id: "keys", actions }] });
  const stroke = (value) => [{ type: "keyDown", value }, { type: "keyUp", value }];
  const keys = (text) => act([...text].flatMap(stroke));
  return {
    open: (url) => ask("browsingContext.navigate", { context, url, wait: "complete" }),
    reload: () => ask("browsingContext.reload", { context, wait: "complete" }),
    async eval(work, ...args) {
      const { value } = await call(`async () => JSON.stringify(await (${work})(${args.map((arg) => JSON.stringify(arg)).join(",")}))`);
      return value === undefined ? undefined : JSON.parse(value);
    },
    click,
    async type(selector, text) {
      await click(selector);
      await act([{ type: "keyDown", value: CONTROL }, ...stroke("a"), { type: "keyUp", value: CONTROL }, ...stroke(DELETE)]);
      await keys(text);
    },
    keys,
    size: (width, height) => ask("browsingContext.setViewport", { context, viewport: { width, height } }),
    choose: async (selector, file) => ask("input.setFiles", { context, element: await element(selector), files: [file] }),
    front: () => ask("browsingContext.activate", { context }),
    close: () => ask("browsingContext.close", { context }),
  };
}
