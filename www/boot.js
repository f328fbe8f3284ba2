// Starts Leavewell: loads the build named in the page, offers the model to scripts as
// `window.leavewell`, and takes the first paint away once the app has drawn a screen.
// It is a file, not an inline script, so that the content security policy can forbid inline scripts.
//
// When all is well, <html> carries data-leavewell="ready" and the window gets a "leavewell-ready" event.
// When not, <html> carries data-leavewell="failed" and the page says so in words.

import { openStore } from "./kept.js";
import { databaseOf } from "./photos.js";
import "./plan.js";
import "./shelf.js";
import "./terms.js";

const LONGEST_WAIT_MS = 20_000;

// Set only in the edition in one file, which carries every program in its page: { program, wasm(), worker(name) }.
const carried = globalThis.leavewellCarried;
const carriedWorkers = new Set();

// The one policy of the page: addresses of this site may be run as workers, others may not.
const policy = globalThis.trustedTypes?.createPolicy("app", { createScriptURL: ofThisSite });

const page = document.documentElement;
const first = document.getElementById("first");
const app = document.getElementById("app");

/**
 * A program in a worker of its own, started at the first question. While it is at work, of the
 * questions for one thing only the newest is kept, and it takes the place of the older one in the row.
 */
class Program {
  #name;
  #worker = null;
  #asked = null;
  #waiting = new Map();

  constructor(name) {
    this.#name = name;
  }

  ask(key, said, told) {
    this.#waiting.set(key, { said, told });
    this.#next();
  }

  #next() {
    if (this.#asked || this.#waiting.size === 0) return;
    const [[key, next]] = this.#waiting;
    this.#waiting.delete(key);
    this.#asked = next;
    try {
      this.#worker ??= this.#start();
      this.#worker.postMessage(next.said);
    } catch (reason) {
      this.#failed(String(reason));
    }
  }

  #start() {
    const worker = startWorker(this.#name);
    worker.addEventListener("message", ({ data: { answer, failure } }) => {
      if (failure === undefined) this.#answered({ answer });
      else this.#failed(failure);
    });
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      this.#failed(event.message || "it could not be loaded");
    });
    return worker;
  }

  /** A program that has failed is not asked again: the next question starts another. */
  #failed(failure) {
    this.#worker?.terminate();
    this.#worker = null;
    this.#answered({ failure });
  }

  #answered(answer) {
    const before = this.#asked;
    this.#asked = null;
    before?.told(answer);
    this.#next();
  }
}

// The desk weighs, and makes the pages that go with the record; the study makes what is read at
// leisure, papers what is handed on, and plan the plan for a whole shelf.
const programs = Object.fromEntries(["desk", "study", "papers", "plan"].map((name) => [name, new Program(name)]));
let weighings = 0;

start().then(
  () => {
    first?.remove();
    page.dataset.leavewell = "ready";
    window.dispatchEvent(new CustomEvent("leavewell-ready"));
    if (!carried) keepOffline();
  },
  (reason) => {
    page.dataset.leavewell = "failed";
    showFailure(reason);
  },
);

async function start() {
  // Read while the program is on its way: the app finds everything there when it begins.
  const store = openStore();
  if (carried) {
    await store;
    await carried.program.default({ module_or_path: carried.wasm() });
  } else {
    const { js, wasm } = document.getElementById("boot").dataset;
    const { default: init } = await import(address(js));
    await store;
    await init({ module_or_path: address(wasm) });
  }
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
    programs.desk.ask(`weigh ${weighings}`, { name: "weigh", turn: weighings, text }, told);
  });
}

// The app asks with a "leavewell-ask" event; the answer comes back as "leavewell-answer".
window.addEventListener("leavewell-ask", ({ detail: { program, name, turn, text } }) => {
  programs[program].ask(name, { name, turn, text }, (answer) => {
    const detail = { name, turn, ...answer };
    window.dispatchEvent(new CustomEvent("leavewell-answer", { detail }));
  });
});

// Scripts of the page ask with a "leavewell-question" event {program, name, text, told}.
window.addEventListener("leavewell-question", ({ detail: { program, name, text, told } }) => {
  weighings += 1;
  programs[program].ask(`${name} ${weighings}`, { name, turn: weighings, text }, told);
});

// With a piece go its photos.
window.addEventListener("leavewell-removed", ({ detail }) => {
  globalThis.indexedDB?.deleteDatabase(databaseOf(detail));
});

/** A worker with one of the programs beside the app in it. */
function startWorker(name) {
  if (!carried) return new Worker(script(`desk.js?${build()}#${name}`), { type: "module" });
  // Opened from a disk, browsers start no module as a worker.
  const url = URL.createObjectURL(new Blob([carried.worker(name)], { type: "text/javascript" }));
  carriedWorkers.add(url);
  return new Worker(script(url));
}

/** When nothing else is to do: the copy of the site that serves without a network, and news of the next one. */
function keepOffline() {
  if (!globalThis.isSecureContext || !navigator.serviceWorker) return;
  const soon = globalThis.requestIdleCallback ?? setTimeout;
  soon(() =>
    import("./offline.js")
      .then(({ keepCopy }) => keepCopy(script("sw.js"), build()))
      .catch((reason) => console.info("Leavewell keeps no copy in this browser:", reason)),
  );
}

/** Which build of the site this page belongs to. The build step writes it into the page. */
function build() {
  return document.getElementById("boot").dataset.build;
}

/** An address as something that may be run, by way of the policy where the browser has policies. */
function script(relative) {
  const url = address(relative);
  return policy ? policy.createScriptURL(url) : url;
}

function ofThisSite(url) {
  const ours = carried ? carriedWorkers.has(url) : new URL(url, document.baseURI).origin === location.origin;
  if (!ours) throw new TypeError(`not of this site: ${url}`);
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
