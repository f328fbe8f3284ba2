// Starts Leavewell: loads the build named in the page, offers the model to scripts as
// `window.leavewell`, and takes the first paint away once the app has drawn a screen.
// It is a file, not an inline script, so that the content security policy can forbid inline scripts.
//
// When all is well, <html> carries data-leavewell="ready" and the window gets a "leavewell-ready" event.
// When not, <html> carries data-leavewell="failed" and the page says so in words.

import { openStore } from "./kept.js";
import { databaseOf } from "./photos.js";
import "./shelf.js";

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
  // Read while the program is on its way: the app finds everything there when it begins.
  const store = openStore();
  const { default: init } = await import(address(js));
  await store;
  await init({ module_or_path: address(wasm) });
  window.leavewell = Object.freeze({ weigh, weigh_json });
  await somethingDrawn();
}

/** Promises the report of a case, both as plain objects. */
async function weigh(leavewellCase) {
  return JSON.parse(await weigh_json(JSON.stringify(leavewellCase)));
}

/** Promises the report of a case file's text, as JSON text: byte for byte what `cargo weigh` prints. */
function weigh_json(text) {
  return new Promise((resolve, reject) => {
    const told = ({ answer, failure }) =>
      answer ? resolve(new TextDecoder().decode(answer)) : reject(new Error(failure));
    weighings += 1;
    question(`weigh ${weighings}`, { name: "weigh", turn: weighings, text }, told);
  });
}

// The app asks with a "leavewell-ask" event; the answer comes back as "leavewell-answer". While the
// second program is at work, of the questions for one thing only the newest is kept, and it takes
// the place of the older one in the row.
let desk = null;
let asked = null;
let weighings = 0;
const waiting = new Map();

window.addEventListener("leavewell-ask", ({ detail: { name, turn, text } }) => {
  question(name, { name, turn, text }, (answer) => {
    const detail = { name, turn, ...answer };
    window.dispatchEvent(new CustomEvent("leavewell-answer", { detail }));
  });
});

function question(key, said, told) {
  waiting.set(key, { said, told });
  askNext();
}

function askNext() {
  if (asked || waiting.size === 0) return;
  const [[key, next]] = waiting;
  waiting.delete(key);
  asked = next;
  try {
    desk ??= startDesk();
    desk.postMessage(asked.said);
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

function answered(answer) {
  const before = asked;
  asked = null;
  before?.told(answer);
  askNext();
}

// Scripts of the page ask with a "leavewell-question" event {name, text, told}.
window.addEventListener("leavewell-question", ({ detail: { name, text, told } }) => {
  weighings += 1;
  question(`${name} ${weighings}`, { name, turn: weighings, text }, told);
});

// With a piece go its photos.
window.addEventListener("leavewell-removed", ({ detail }) => {
  globalThis.indexedDB?.deleteDatabase(databaseOf(detail));
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
