// Starts Leavewell: loads the build named in the page, offers its functions to scripts as
// `window.leavewell`, and takes the first paint away once the app has drawn a screen.
// It is a file, not an inline script, so that the content security policy can forbid inline scripts.
//
// When all is well, <html> carries data-leavewell="ready" and the window gets a "leavewell-ready" event.
// When not, <html> carries data-leavewell="failed" and the page says so in words.

import { databaseOf } from "./photos.js";

const LONGEST_WAIT_MS = 20_000;

// The one policy of the page: addresses of this site may be run as workers, others may not.
const policy = globalThis.trustedTypes?.createPolicy("app", { createScriptURL: ofThisSite });

const page = document.documentElement;
const first = document.getElementById("first");
const app = document.getElementById("app");

start().then(
  () => {
    first?.remove();
    page.dataset.leavewell = "ready";
    window.dispatchEvent(new CustomEvent("leavewell-ready"));
  },
  (reason) => {
    page.dataset.leavewell = "failed";
    showFailure(reason);
  },
);

async function start() {
  const { js, wasm } = document.getElementById("boot").dataset;
  const { default: init, initSync, ...exported } = await import(address(js));
  await init({ module_or_path: address(wasm) });
  // A case in, counsel out, both as plain objects; `weigh_json` does the same with text.
  // A build that exports its own `weigh` has the last word.
  const weigh = (leavewellCase) => JSON.parse(exported.weigh_json(JSON.stringify(leavewellCase)));
  window.leavewell = Object.freeze({ weigh, ...exported });
  await somethingDrawn();
}

// The app asks for a page with a "leavewell-ask" event; the answer comes back as "leavewell-answer".
// While the second program is at work, of the questions for one page only the newest is kept.
let desk = null;
let asked = null;
const waiting = new Map();

window.addEventListener("leavewell-ask", ({ detail: { name, turn, text } }) => {
  waiting.set(name, { name, turn, text });
  askNext();
});

function askNext() {
  if (asked || waiting.size === 0) return;
  [[, asked]] = waiting;
  waiting.delete(asked.name);
  try {
    desk ??= startDesk();
    desk.postMessage(asked);
  } catch (reason) {
    failed(String(reason));
  }
}

function startDesk() {
  const build = document.getElementById("boot").dataset.wasm;
  const url = address(`desk.js?${encodeURIComponent(build)}`);
  const worker = new Worker(policy ? policy.createScriptURL(url) : url, { type: "module" });
  worker.addEventListener("message", ({ data: { answer, failure } }) => {
    if (failure === undefined) answered({ answer });
    else failed(failure);
  });
  worker.addEventListener("error", (event) => {
    event.preventDefault();
    failed(event.message || "it could not be loaded");
  });
  return worker;
}

/** A program that has failed is not asked again: the next question starts another. */
function failed(failure) {
  desk?.terminate();
  desk = null;
  answered({ failure });
}

function answered(detail) {
  const { name, turn } = asked ?? { name: "", turn: 0 };
  asked = null;
  window.dispatchEvent(new CustomEvent("leavewell-answer", { detail: { name, turn, ...detail } }));
  askNext();
}

// With a piece go its photos.
window.addEventListener("leavewell-removed", ({ detail }) => {
  indexedDB.deleteDatabase(databaseOf(detail));
});

function ofThisSite(url) {
  if (new URL(url, document.baseURI).origin !== location.origin) throw new TypeError(`not of this site: ${url}`);
  return url;
}

/** An address in the page, made whole: relative ones in this file would be read as relative to the file. */
function address(relative) {
  return new URL(relative, document.baseURI).href;
}

/** Waits until the app has put something into its place. */
function somethingDrawn() {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => {
      watcher.disconnect();
      reject(new Error("the app drew nothing"));
    }, LONGEST_WAIT_MS);
    const look = () => {
      if (app.childElementCount === 0) return;
      watcher.disconnect();
      clearTimeout(late);
      resolve();
    };
    const watcher = new MutationObserver(look);
    watcher.observe(app, { childList: true });
    look();
  });
}

function showFailure(reason) {
  console.error("Leavewell could not start:", reason);
  const box = document.createElement("div");
  box.id = "start-failed";
  box.setAttribute("role", "alert");
  box.append(
    paragraph("Leavewell could not start. Reload the page; if that does not help, try an up-to-date browser. Your saved cases are untouched."),
    paragraph(`For a report: ${reason instanceof Error ? reason.message : String(reason)}`),
  );
  document.getElementById("first-state")?.remove();
  (first ?? document.body).append(box);
}

function paragraph(text) {
  const element = document.createElement("p");
  element.textContent = text;
  return element;
}
