// Nothing gets in and nothing leaves: the content policy is present and enforced, and typed or imported text stays
// text on every screen.

import assert from "node:assert/strict";
import { readFile, readdir } from "node:fs/promises";
import { join } from "node:path";
import { test } from "node:test";
import { browserTest, DIST, eventually, started } from "./harness.mjs";

/** Time for a test that goes through every screen, which two busy cores take longer for than a test usually may. */
const LONG_MS = 300_000;

/** The exact policy of the page and of the example for servers. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'self'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  "trusted-types app",
];
// A page cannot set this directive itself.
const SERVERS_ONLY = "frame-ancestors 'none'";

const SCREENS = [
  "", "piece", "look", "condition", "money", "counsel", "treatments", "closer", "bench", "sheet/client", "sheet/buyer", "sheet/file", "sheet/conservation",
  "done", "figures", "plan",
];

test("the page and the example for servers contain the policy", async () => {
  const page = await readFile(join(DIST, "index.html"), "utf8");
  const policies = [...page.matchAll(/http-equiv="Content-Security-Policy" content="([^"]*)"/g)];
  assert.deepEqual(policies.map(([, policy]) => policy.split("; ")), [POLICY]);
  const before = page.slice(0, policies[0].index);
  assert.doesNotMatch(before, /<(script|link|style)/, "it comes before anything that it governs");
  const headers = await readFile(join(DIST, "_headers"), "utf8");
  const [, sent] = headers.match(/^ {2}Content-Security-Policy: (.*)$/m);
  assert.deepEqual(sent.split("; ").filter((part) => part !== SERVERS_ONLY), POLICY);
  assert.ok(sent.split("; ").includes(SERVERS_ONLY));
  assert.match(headers, /^ {2}X-Content-Type-Options: nosniff$/m);
});

test("the page has no inline script, style or handler, and names no other address", async () => {
  const page = (await readFile(join(DIST, "index.html"), "utf8")).replace(/<!--[\s\S]*?-->/g, "");
  assert.doesNotMatch(page, /<style|\sstyle=|\son[a-z]+=|javascript:|:\/\//i);
  const scripts = [...page.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/g)];
  assert.equal(scripts.length, 1);
  for (const [, attributes, body] of scripts) {
    assert.match(attributes, /\ssrc="/);
    assert.equal(body, "");
  }
});

test("no script of the site turns text into code or markup, or names a network API", async () => {
  const names = (await readdir(DIST, { recursive: true })).filter((name) => name.endsWith(".js"));
  assert.ok(names.length >= 7, names.join(" "));
  for (const name of names) {
    const text = (await readFile(join(DIST, name), "utf8")).replace(/^\s*(\/\/|\*|\/\*).*$/gm, "");
    // Yew includes code that sets raw markup. The app never calls it (a tidy test checks that), and the page's
    // policy would stop it (below).
    const own = /^leavewell-[0-9a-f]+\.js$/.test(name) ? text.replace(/\.innerHTML = /g, "") : text;
    const found = own.match(/\beval\(|new Function\b|\.(inner|outer)HTML|insertAdjacentHTML|document\.write|XMLHttpRequest|WebSocket|EventSource|sendBeacon|RTCPeerConnection|importScripts/);
    assert.equal(found?.[0], undefined, name);
  }
});

browserTest("the policy is enforced, and violations are reported", { serviceWorkers: "allow" }, async ({ page, go, troubles }) => {
  await go("#/");
  const outcome = await page.evaluate(async () => {
    // Code evaluated by the test driver may evaluate text until its first await.
    await new Promise((resolve) => setTimeout(resolve));
    const reports = [];
    document.addEventListener("securitypolicyviolation", (event) => reports.push(event.effectiveDirective));
    const refused = async (attempt) => {
      try {
        await attempt();
        return false;
      } catch (reason) {
        return reason instanceof Error;
      }
    };
    const results = {};
    results.scriptText = await refused(() => {
      const script = document.createElement("script");
      script.text = "globalThis.injected = 1";
      document.body.append(script);
    });
    const parsed = new Range().createContextualFragment;
    results.fragment = await refused(() => parsed.call(document.createRange(), "<b>x</b>"));
    results.markup = await refused(() => (document.createElement("p").innerHTML = "<img src=x>"));
    const box = document.createElement("p");
    const handler = document.createAttribute("onclick");
    results.handler = await refused(() => {
      box.setAttributeNode(Object.assign(handler, { value: "globalThis.injected = 2" }));
      document.body.append(box);
      box.click();
    });
    box.remove();
    results.evaluated = await refused(() => (0, eval)("globalThis.injected = 3"));
    results.made = await refused(() => new Function("globalThis.injected = 4")());
    results.timer = await refused(() => setTimeout("globalThis.injected = 5", 0));
    results.worker = await refused(() => new Worker("worker.js", { type: "module" }));
    results.serviceWorker = await refused(() => ServiceWorkerContainer.prototype.register.call(navigator.serviceWorker, "sw.js"));
    results.anotherPolicy = await refused(() => trustedTypes.createPolicy("other", { createHTML: (text) => text }));
    results.samePolicy = await refused(() => trustedTypes.createPolicy("app", { createHTML: (text) => text }));
    results.fetched = await refused(() => fetch("http://127.0.0.1:9/"));
    results.imported = await refused(() => import("http://127.0.0.1:9/a.js"));
    results.importedText = await refused(() => import("data:text/javascript,globalThis.injected = 6"));
    box.setAttribute("style", "color: rgb(1, 2, 3)");
    document.body.append(box);
    results.style = getComputedStyle(box).color !== "rgb(1, 2, 3)";
    const frame = document.createElement("iframe");
    frame.src = "index.html";
    document.body.append(frame);
    const image = document.createElement("img");
    image.src = "http://127.0.0.1:9/a.png";
    document.body.append(image);
    await new Promise((resolve) => setTimeout(resolve, 300));
    return { results, reports: [...new Set(reports)], injected: globalThis.injected ?? null };
  });
  const let_through = Object.keys(outcome.results).filter((attempt) => !outcome.results[attempt]);
  // A handler need not throw; `injected` shows that it did not run.
  assert.deepEqual(let_through.filter((attempt) => attempt !== "handler"), []);
  assert.equal(outcome.injected, null, "none of it ran");
  for (const directive of ["connect-src", "frame-src", "img-src", "script-src-elem", "style-src-attr", "require-trusted-types-for", "trusted-types"]) {
    assert.ok(outcome.reports.includes(directive), `${directive} is reported: ${outcome.reports.join(", ")}`);
  }
  assert.ok(troubles.some((trouble) => /127\.0\.0\.1:9/.test(trouble)), "the watch of every test sees it");
  troubles.length = 0;
});

browserTest("a script injected into the page in transit does not run", async ({ page, site, troubles }) => {
  const foul =
    '<script>window.injected = 1</script><img src="x" onerror="window.injected = 2"><p id="foul" onclick="window.injected = 3" style="color: rgb(1, 2, 3)">here</p>' +
    '<style>#foul { color: rgb(1, 2, 3) }</style><script src="data:text/javascript,window.injected = 4"></script><base href="http://127.0.0.1:9/">';
  await page.route(site.url, async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, body: (await answer.text()).replace("</body>", `${foul}</body>`) });
  });
  await page.goto(site.url);
  await started(page);
  await page.locator("#foul").click();
  const outcome = await page.evaluate(() => [window.injected ?? null, getComputedStyle(document.getElementById("foul")).color, new URL("a", document.baseURI).origin]);
  assert.deepEqual([outcome[0], outcome[2]], [null, site.origin]);
  assert.notEqual(outcome[1], "rgb(1, 2, 3)");
  assert.ok(troubles.length >= 4, "each attempt is reported");
  troubles.length = 0;
});

browserTest("no other page can embed the site in a frame", async ({ page, site, troubles }) => {
  await page.setContent(`<iframe src="${site.url}"></iframe>`);
  await page.waitForTimeout(1_500);
  const shown = await Promise.all(page.frames().slice(1).map((frame) => frame.evaluate(() => document.getElementById("app") !== null).catch(() => false)));
  assert.deepEqual(shown, [false]);
  assert.ok(troubles.some((trouble) => /frame-ancestors/.test(trouble)), troubles.join("\n"));
  troubles.length = 0;
});

browserTest("the harness reports a request that leaves the origin", { bypassCSP: true }, async ({ page, go, troubles }) => {
  await go("#/");
  await page.evaluate(() => fetch("http://127.0.0.1:9/", { mode: "no-cors" }).catch(() => {}));
  assert.ok(troubles.some((trouble) => trouble.startsWith("off-origin request: http://127.0.0.1:9/")), troubles.join("\n"));
  troubles.length = 0;
});

const MARKUP = [
  '<img src=x onerror="window.injected=1"> <script>window.injected=2</script>',
  '</textarea></title></svg><svg onload="window.injected=3"> "><iframe srcdoc="<script>parent.injected=4</script>">',
  "javascript:window.injected=5 {{injected}}${injected}<b>bold</b>&lt;i&gt;",
];

/** Visits every screen with all folds open. `shown` gets the text of each. */
async function everyScreen(page, go, shown) {
  for (const screen of SCREENS) {
    await go(`#/${screen}`);
    await page.evaluate(() => document.querySelectorAll("details").forEach((it) => it.setAttribute("open", "")));
    await page.waitForTimeout(300);
    const found = await page.evaluate(() => ({
      injected: window.injected ?? null,
      // Elements that only injected markup could create; the app creates none of them here.
      foreign: [...document.querySelectorAll("#app img, #app script, #app iframe, #app b, #app [onerror], #app [onload], #app [srcdoc], #app a[href^='javascript']")].map((it) => it.outerHTML),
      text: document.body.innerText + [...document.querySelectorAll("input, textarea")].map((it) => `\n${it.value}`).join(""),
      title: document.title,
    }));
    assert.equal(found.injected, null, `nothing ran on ${screen || "the shelf"}`);
    assert.deepEqual(found.foreign, [], `no markup on ${screen || "the shelf"}`);
    shown(screen, found);
  }
}

browserTest("typed text is shown as typed and never run, on every screen", { timeout: LONG_MS }, async ({ page, go }) => {
  for (const name of MARKUP) {
    await go("#/");
    await page.getByLabel("What do you call it?").fill(name);
    await page.getByRole("button", { name: "Start this piece" }).click();
    await page.waitForURL(/#\/piece/);
    await everyScreen(page, go, (screen, { text, title }) => {
      assert.ok(text.includes(name), `${screen || "the shelf"} shows ${name}`);
      if (screen !== "") assert.ok(`${title}${text}`.includes(name));
    });
  }
});

browserTest("imported text is shown as it is and never run, on every screen", { timeout: LONG_MS }, async ({ page, go }) => {
  for (const file of ["worn_tray.json", "cake_basket.json"]) {
    const text = await readFile(new URL(`../cases/${file}`, import.meta.url), "utf8").catch(() => null);
    if (text === null) continue;
    for (const markup of MARKUP.slice(0, 2)) {
      const record = JSON.parse(text);
      record.piece.name = markup;
      // Every free text of the record, and some fields where numbers and choices belong.
      const poison = (it, depth = 0) => {
        for (const key of Object.keys(it)) {
          if (it[key] && typeof it[key] === "object") poison(it[key], depth + 1);
          else if (["note", "notes", "name", "who", "label", "what", "text", "source"].includes(key)) it[key] = markup;
        }
      };
      poison(record);
      record.piece.height_mm = markup;
      record[markup] = { [markup]: markup };
      record.notes = markup;
      await go("#/");
      await page.locator("input[type=file]").setInputFiles({ name: `${markup.replaceAll("/", "")}.json`, mimeType: "application/json", buffer: Buffer.from(JSON.stringify(record)) });
      // Text where a number belongs is said before the piece is added.
      await page.getByRole("button", { name: "Take these in" }).click();
      await page.locator(".shelf-line").filter({ hasText: markup }).getByRole("button", { name: /^Open/ }).first().click();
      await page.waitForURL(/#\/./);
      await everyScreen(page, go, (screen, shown) => assert.ok(shown.text.includes(markup), `${screen || "the shelf"} shows ${markup}`));
    }
  }
});

browserTest("an unreadable file is quoted as text", async ({ page, go }) => {
  await go("#/");
  const chooser = page.locator("input[type=file]");
  for (const text of ["<img src=x onerror='window.injected=1'>", '{"format":"<img src=x onerror=window.injected=2>","version":1}', '{"format":"leavewell-case","version":"<script>window.injected=3</script>"}']) {
    await chooser.setInputFiles({ name: "<img src=x onerror=window.injected=4>.json", mimeType: "application/json", buffer: Buffer.from(text) });
    await page.locator(".notice").first().waitFor();
    await page.waitForTimeout(200);
    await eventually(async () => assert.equal(await page.locator("#app img, #app script").count(), 0));
    assert.equal(await page.evaluate(() => window.injected ?? null), null);
    await go("#/");
  }
});
