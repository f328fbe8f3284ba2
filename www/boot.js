// Starts Leavewell: loads the build named in the page, offers the model to scripts as
// `window.leavewell`, and removes the first paint once the app has rendered a screen.
// It is a file, not an inline script, so that the content security policy can forbid inline scripts.
//
// On success, <html> has data-leavewell="ready" and the window gets a "leavewell-ready" event.
// On failure, <html> has data-leavewell="failed" and the page shows a message.

import { keepPlaces } from "./back.js";
import { openStore } from "./kept.js";
import { databaseOf } from "./photos.js";

const LONGEST_WAIT_MS = 20_000;

// Set only in the single-file edition, whose page contains both programs: { program, wasm(), worker() }.
const carried = globalThis.leavewellCarried;
const carriedWorkers = new Set();

// The page's only Trusted Types policy: it allows addresses of this site as workers, and no others.
const policy = globalThis.trustedTypes?.createPolicy("app", { createScriptURL: ofThisSite });

const page = document.documentElement;
const first = document.getElementById("first");
const app = document.getElementById("app");

/**
 * One of the two workers, started at the first question. While it is busy, it queues only the newest question on each
 * topic, in the older one's place. A newer question on the current topic cancels the current one.
 */
class Program {
  #name;
  #worker = null;
  #atWork = null;
  #waiting = new Map();

  constructor(name) {
    this.#name = name;
  }

  /** Calls `answered` with {answer} or {failure}, and before that with {share} to report the progress of a long job. */
  ask(topic, message, answered) {
    this.#waiting.set(topic, { topic, message, answered });
    if (this.#atWork?.topic === topic) this.#worker?.postMessage({ cancel: true });
    this.#next();
  }

  #next() {
    if (this.#atWork || this.#waiting.size === 0) return;
    const [[topic, next]] = this.#waiting;
    this.#waiting.delete(topic);
    this.#atWork = next;
    try {
      this.#worker ??= this.#start();
      this.#worker.postMessage(next.message);
    } catch (reason) {
      this.#failed(String(reason));
    }
  }

  #start() {
    const worker = startWorker(this.#name);
    worker.addEventListener("message", ({ data }) => {
      if (data.share !== undefined) this.#atWork?.answered(data);
      else if (data.failure !== undefined) this.#failed(data.failure);
      else this.#done(data);
    });
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      this.#failed(event.message || "it could not be loaded");
    });
    return worker;
  }

  /** Drops a failed worker; the next question starts another. */
  #failed(failure) {
    this.#worker?.terminate();
    this.#worker = null;
    this.#done({ failure });
  }

  #done(data) {
    const before = this.#atWork;
    this.#atWork = null;
    if (!data.cancelled) before?.answered(data);
    this.#next();
  }
}

// How this browser's locale writes a day, and the signs it puts into numbers. The words of the app are English, so a day
// has the name of its month only where the locale is English too; elsewhere it has digits in the order of the locale.
globalThis.leavewellLocale = localeOf(navigator.language);

/** Where no locale is installed, one engine names one that is none. */
function localeOf(language) {
  try {
    return locale(language);
  } catch {
    return locale("en");
  }
}

function locale(language) {
  const english = language.startsWith("en");
  /** @type {Intl.DateTimeFormatOptions} */
  const form = english ? { day: "numeric", month: "short" } : { day: "2-digit", month: "2-digit" };
  const days = new Intl.DateTimeFormat(language, { ...form, year: "numeric", timeZone: "UTC", numberingSystem: "latn" });
  const parts = new Intl.NumberFormat(language, { numberingSystem: "latn" }).formatToParts(1_234_567.8);
  const sign = (type, otherwise) => parts.find((part) => part.type === type)?.value ?? otherwise;
  const day = (text) => {
    const on = new Date(`${text}T00:00Z`);
    return Number.isNaN(on.getTime()) ? text : days.format(on);
  };
  return Object.freeze({ day, group: sign("group", ","), point: sign("decimal", ".") });
}

// The typeface comes from the offline copy alone, so that no first visit waits for it.
if (!carried && navigator.serviceWorker?.controller) {
  const link = document.createElement("link");
  link.rel = "stylesheet";
  link.href = address("type.css");
  document.head.append(link);
}

// One program in two workers: the first answers while a person types, the second takes the long jobs.
const workers = { answers: new Program("answers"), long: new Program("long") };
let asked = 0;

keepPlaces();
start().then(
  () => {
    first?.remove();
    page.dataset.leavewell = "ready";
    window.dispatchEvent(new CustomEvent("leavewell-ready"));
    if (carried) return;
    // Files and the bin, photos and faults shown on them, the plan of the shelf, the meanings of trade words, and what screen readers announce.
    for (const later of ["./shelf.js", "./pictures.js", "./plan.js", "./terms.js", "./said.js"]) {
      import(later).catch((reason) => console.info(`Leavewell does without ${later}:`, reason));
    }
    keepOffline();
  },
  (reason) => {
    page.dataset.leavewell = "failed";
    showFailure(reason);
  },
);

async function start() {
  // Reads the records while the program loads, so that the app finds them when it starts.
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
    question("weigh", text, ({ answer, failure }) => (failure === undefined ? resolve(answer) : reject(new Error(failure))));
  });
}

/** Asks one of the questions open to scripts; every question gets an answer. */
function question(name, text, answered) {
  asked += 1;
  workers.long.ask(`script ${asked}`, { name, text }, answered);
}

// The app asks with a "leavewell-ask" event; progress and answer return as "leavewell-answer" events.
window.addEventListener("leavewell-ask", ({ detail: { worker, topic, turn, ask, text } }) => {
  workers[worker].ask(topic, { ask, text }, (data) => {
    const detail = { topic, turn, ...data };
    window.dispatchEvent(new CustomEvent("leavewell-answer", { detail }));
  });
});

// Scripts of the page ask with a "leavewell-question" event {name, text, answered}.
window.addEventListener("leavewell-question", ({ detail: { name, text, answered } }) => question(name, text, answered));

// Deleting a piece deletes its photos.
window.addEventListener("leavewell-removed", ({ detail }) => {
  globalThis.indexedDB?.deleteDatabase(databaseOf(detail));
});

/** Starts the worker with this name. The name is part of its address; worker.js says why. */
function startWorker(name) {
  if (!carried) return new Worker(script(`worker.js?${build()}&${name}`), { type: "module" });
  // Browsers do not start a module worker from a page opened from a disk.
  const url = URL.createObjectURL(new Blob([carried.worker()], { type: "text/javascript" }));
  carriedWorkers.add(url);
  return new Worker(script(url));
}

/** When the browser is idle: makes the offline copy, and checks for a newer version. */
function keepOffline() {
  if (!globalThis.isSecureContext || !navigator.serviceWorker) return;
  const soon = globalThis.requestIdleCallback ?? setTimeout;
  soon(() =>
    import("./offline.js")
      .then(({ keepCopy }) => keepCopy(script("sw.js"), build()))
      .catch((reason) => console.info("Leavewell keeps no copy in this browser:", reason)),
  );
}

/** The build of this page. The build step writes it into the page. */
function build() {
  return document.getElementById("boot").dataset.build;
}

/** The address as a trusted script URL, in browsers that have Trusted Types. */
function script(relative) {
  const url = address(relative);
  return policy ? policy.createScriptURL(url) : url;
}

function ofThisSite(url) {
  const ours = carried ? carriedWorkers.has(url) : new URL(url, document.baseURI).origin === location.origin;
  if (!ours) throw new TypeError(`not of this site: ${url}`);
  return url;
}

/** The absolute form of an address in the page. A relative one would resolve against this file. */
function address(relative) {
  return new URL(relative, document.baseURI).href;
}

/** Waits until the app has rendered something. */
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
