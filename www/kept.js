// Storage on this device: every case in IndexedDB, and the open one also mirrored at once in localStorage.
//
// The app asks with a "leavewell-store" event {do, id, text, entry}, which is answered from memory before dispatch
// returns. Events for the app arrive as "leavewell-told" {what, id, text}.
//
// Invariants: a record is written in one short transaction, and only over the revision it was based on. A record
// that changed in the meantime is never overwritten; the person sees a conflict instead. An unreadable record is
// stored unchanged. Without storage everything works in memory, and the page says so.

const DATABASE = "leavewell";
const ROOM = "leavewell-room";
const WRITE_AFTER_MS = 250;
const AGAIN_AFTER_MS = 5_000;
const OPEN_WITHIN_MS = 5_000;
/** After this long without an error, earlier errors no longer count. */
const WELL_AFTER_MS = 30_000;
/** How many earlier tabs a record remembers. */
const MOST_PAST = 12;
const BIN_DAYS = 30;
const DAY_MS = 86_400_000;
const OLD_CASE = "leavewell.case.";
const OLD_INDEX = "leavewell.index";
const LAST_OPEN = "leavewell.open";
const MIRROR = "leavewell.mirror.";
const ASKED = "leavewell.asked";
const CRASHED = "leavewell.crashed";

/** The name of this page for other tabs. */
const TAB = `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;

// id -> {id, revision, text, entry, made, changed, binned?, due?, by?, nth?, past?}. `by` and `nth` say which tab made
// the text, and with which of its changes; `past` lists [by, nth] of the tabs before it; `due` is when its time in the
// bin was first found to be over. `saved` holds the text last known to be in the
// database, `dirty` the records not written yet, `clashes` those that another tab changed too.
const records = new Map();
const saved = new Map();
const dirty = new Set();
const clashes = new Map();

/** The state of the storage, for the parts of the page that show it. */
export const standing = { memory: "", failure: "", persisted: null, also: new Set(), found: 0 };

let database = null;
let channel = null;
let openId = "";
let writing = null;
let timer = 0;
let due = 0;
let changes = 0;
let stopped = false;
/** Whether a write has failed since the last that did not. */
let torn = false;

// ---- start ------------------------------------------------------------------------------------------

/** Reads all records. It always resolves: without a database everything works in memory. */
export async function openStore() {
  holdLock();
  try {
    database = await openDatabase();
    for (const record of await all()) hold(record);
  } catch (reason) {
    database = null;
    // Small records still fit into localStorage, where the first version stored them.
    if (!remember("localStorage", ASKED, "no")) standing.memory = String(reason?.message ?? reason);
  }
  takeOverOldRecords();
  await adoptMirrors();
  emptyBin();
  window.addEventListener("leavewell-store", ({ detail }) => {
    detail.answer = doers[detail.do]?.(detail);
  });
  window.addEventListener("leavewell-crash", ({ detail }) => {
    stopped = true;
    detail.seen = true;
    remember("sessionStorage", CRASHED, String(Number(recall("sessionStorage", CRASHED) ?? 0) + 1));
    flush();
    tellChange();
  });
  // A photo could not be stored.
  window.addEventListener("leavewell-unkept", () => (torn = true));
  window.addEventListener("pagehide", flush);
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && flush());
  listen();
  later();
  setTimeout(() => forget("sessionStorage", CRASHED), WELL_AFTER_MS);
  if (database) Promise.resolve(navigator.storage?.persisted?.() ?? false).then(settle, () => settle(false));
}

function openDatabase() {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error("it did not answer")), OPEN_WITHIN_MS);
    const asked = indexedDB.open(DATABASE, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("cases", { keyPath: "id" });
    asked.onerror = () => reject(asked.error);
    asked.onsuccess = () => {
      clearTimeout(late);
      // A newer program in another tab may want to upgrade the database.
      asked.result.onversionchange = () => asked.result.close();
      resolve(asked.result);
    };
  });
}

function all() {
  return new Promise((resolve, reject) => {
    const asked = database.transaction("cases").objectStore("cases").getAll();
    asked.onsuccess = () => resolve(asked.result.map(whole));
    asked.onerror = () => reject(asked.error);
  });
}

/** A stored record. What is broken in it is made good, so that it can be shown, saved as a file and removed. */
function whole(record) {
  if (!record) return record;
  const { text, revision, made } = record;
  const asText = typeof text === "string" ? text : JSON.stringify(text) ?? "";
  return { ...record, text: asText, revision: Number.isSafeInteger(revision) ? revision : 0, made: Number(made) || 0 };
}

function hold(record) {
  records.set(record.id, record);
  saved.set(record.id, record.text);
}

/** Moves the first version's records, each under its own localStorage key, into the database. */
function takeOverOldRecords() {
  let order = [];
  try {
    order = JSON.parse(recall("localStorage", OLD_INDEX) ?? "[]");
  } catch {
    // The records are enough.
  }
  if (!Array.isArray(order)) order = [];
  const now = Date.now();
  for (const key of keys(OLD_CASE)) {
    const id = key.slice(OLD_CASE.length);
    if (records.has(id)) continue;
    const at = order.findIndex((entry) => entry?.id === id);
    const made = now - (at < 0 ? order.length + 1 : at);
    records.set(id, { id, revision: 0, text: recall("localStorage", key) ?? "", entry: order[at], made, changed: now });
    dirty.add(id);
  }
}

/** Restores the changes that a killed tab had not written yet. */
async function adoptMirrors() {
  const alive = await liveTabs();
  for (const key of keys(MIRROR)) {
    if (alive.has(key.slice(MIRROR.length))) continue;
    let mirror;
    try {
      mirror = JSON.parse(recall("localStorage", key));
    } catch {
      continue;
    }
    const { id, base, text, nth } = mirror ?? {};
    if (typeof id !== "string" || typeof text !== "string") continue;
    const record = records.get(id);
    const tab = key.slice(MIRROR.length);
    const known = record && [[record.by, record.nth], ...(record.past ?? [])].find(([by]) => by === tab)?.[1];
    if (!record) fresh(id, text);
    // A later text of the same tab is stored, or was. A killed browser may bring back a mirror that was dropped.
    else if (known >= nth) {
      forget("localStorage", key);
      continue;
    } else {
      const follows = record.revision === base || dirty.has(id) || (record.by === tab && nth > record.nth);
      const differs = record.text !== text;
      if (follows) change(record, text);
      pass(record, tab, nth);
      if (!follows && differs) {
        // The record has changed since, so both versions are kept.
        fresh(newId(), text);
        standing.found += 1;
      }
    }
    if (database) await flush();
    if (!database || dirty.size === 0) forget("localStorage", key);
  }
}

/** The open tabs. Their mirrors belong to them. */
async function liveTabs() {
  try {
    const { held } = await navigator.locks.query();
    return new Set(held.map(({ name }) => name.replace(/^leavewell-tab-/, "")));
  } catch {
    return new Set([TAB]);
  }
}

/** A lock that lives as long as the page. */
function holdLock() {
  navigator.locks?.request(`leavewell-tab-${TAB}`, () => new Promise(() => {})).catch(() => {});
}

// ---- requests of the app ----------------------------------------------------------------------------

const doers = {
  list: () => JSON.stringify(listed().map(({ id, entry }) => ({ id, entry }))),
  text: ({ id }) => records.get(id)?.text,
  keep({ id, text, entry }) {
    if (stopped) return;
    const record = records.get(id) ?? fresh(id, text);
    // Editing a piece takes it out of the bin.
    delete record.binned;
    change(record, text);
    // A new piece is opened before it is first stored.
    if (openedText.get(id) === "") openedText.set(id, text);
    doers.entry({ id, entry });
  },
  entry({ id, entry }) {
    const record = records.get(id);
    if (!record || stopped || JSON.stringify(record.entry) === entry) return;
    record.entry = JSON.parse(entry);
    dirty.add(id);
    later();
  },
  bin({ id }) {
    const record = records.get(id);
    if (!record) return;
    record.binned = Date.now();
    delete record.due;
    dirty.add(id);
    flush();
    tellChange();
  },
  together({ id, text }) {
    putAll(JSON.parse(text)).then(
      () => tell("together", id),
      (reason) => tell("together", id, String(reason?.message ?? reason)),
    );
  },
  save({ text }) {
    window.dispatchEvent(new CustomEvent("leavewell-save", { detail: text.split("\n") }));
  },
  last() {
    // A piece that keeps stopping the app is not opened automatically.
    if (Number(recall("sessionStorage", CRASHED) ?? 0) > 1) {
      forget("sessionStorage", CRASHED);
      return undefined;
    }
    const id = recall("sessionStorage", LAST_OPEN) ?? recall("localStorage", LAST_OPEN);
    return records.get(id)?.binned ? undefined : id;
  },
  opened({ id }) {
    openId = id;
    openedText.set(id, records.get(id)?.text ?? "");
    remember("sessionStorage", LAST_OPEN, id);
    remember("localStorage", LAST_OPEN, id);
    standing.also.clear();
    say({ what: "opened", id });
    tellChange();
  },
};

/** The text of each piece when it was opened here. */
export const openedText = new Map();

/** The pieces on the shelf, newest first. */
export function listed() {
  return [...records.values()].filter((record) => !record.binned).sort((a, b) => b.made - a.made);
}

/** The pieces in the bin, most recent first, each with its remaining days. */
export function binned() {
  return [...records.values()]
    .filter((record) => record.binned)
    .sort((a, b) => b.binned - a.binned)
    .map((record) => ({ ...record, days: Math.min(BIN_DAYS, Math.max(1, Math.ceil(BIN_DAYS - age(record)))) }));
}

export const textOf = (id) => records.get(id)?.text;
export const revisionOf = (id) => records.get(id)?.revision ?? 0;
export const isBinned = (id) => Boolean(records.get(id)?.binned);
export const openPiece = () => openId;
export const hasStopped = () => stopped;

const given = new Set();

/** An id that no other piece has. */
export function newId() {
  const id = `${Date.now().toString(16)}-${Math.floor(Math.random() * 65_536).toString(16).padStart(4, "0")}`;
  if (given.has(id)) return newId();
  given.add(id);
  return id;
}

function fresh(id, text) {
  const now = Date.now();
  const record = { id, revision: 0, text, entry: undefined, made: now, changed: now };
  records.set(id, record);
  dirty.add(id);
  later();
  return record;
}

/** Notes that a tab's changes up to this one are dealt with. */
function pass(record, tab, nth) {
  if (!Number.isInteger(nth)) return;
  dirty.add(record.id);
  record.past = [[tab, nth], ...(record.past ?? []).filter(([by]) => by !== tab)].slice(0, MOST_PAST);
}

function change(record, text) {
  if (record.text !== text || !saved.has(record.id)) {
    if (record.by && record.by !== TAB) pass(record, record.by, record.nth);
    record.text = text;
    record.changed = Date.now();
    record.by = TAB;
    record.nth = changes += 1;
  }
  if (saved.get(record.id) === text && !dirty.has(record.id)) return;
  dirty.add(record.id);
  // Written at once, because it holds what a tab typed before it was killed.
  remember("localStorage", MIRROR + TAB, JSON.stringify({ id: record.id, base: record.revision, text, nth: record.nth }));
  later();
}

// ---- writing ----------------------------------------------------------------------------------------

/** Writes at the latest `after` milliseconds from now. Further typing does not put it off. */
function later(after = WRITE_AFTER_MS) {
  if (dirty.size === 0) return;
  const at = performance.now() + after;
  if (timer && due <= at) return;
  clearTimeout(timer);
  due = at;
  timer = setTimeout(flush, after);
}

/** Writes all pending records; resolves when they are written or have failed. */
export function flush() {
  clearTimeout(timer);
  timer = 0;
  const before = writing ?? Promise.resolve();
  writing = before.then(async () => {
    for (const id of [...dirty]) if (!clashes.has(id)) await write(id);
  });
  return writing;
}

async function write(id) {
  const record = records.get(id);
  if (!record) return dirty.delete(id);
  if (!database) return writeTheOldWay(record);
  const { text, entry, binned: bin } = record;
  let theirs;
  let emptied = false;
  try {
    ({ theirs, emptied } = await compareAndPut(record));
  } catch (reason) {
    torn = true;
    const full = reason?.name === "QuotaExceededError";
    // The browser may close a database, for example when its data is cleared; the next attempt reopens it.
    if (reason?.name === "InvalidStateError") database = await openDatabase().catch(() => database);
    standing.failure = full ? "This device has no room left for it." : "The browser did not keep it.";
    tell("kept", id, standing.failure);
    later(AGAIN_AFTER_MS);
    tellChange();
    return;
  }
  if (theirs) {
    clash(record, theirs);
    return;
  }
  record.revision += 1;
  saved.set(id, text);
  if (emptied) refill();
  if (torn) renew();
  if (record.text === text && record.entry === entry && record.binned === bin) dirty.delete(id);
  else later();
  if (standing.failure) {
    standing.failure = "";
    tell("kept", id);
    tellChange();
  }
  forgetMirror(id, text);
  forget("localStorage", OLD_CASE + id);
  say({ what: "kept", id, revision: record.revision });
  if (standing.persisted !== true && !recall("localStorage", ASKED)) askToPersist();
}

/** Without a database each case goes to localStorage under its own key; without that, it stays in memory. */
function writeTheOldWay({ id, text }) {
  dirty.delete(id);
  const taken = remember("localStorage", OLD_CASE + id, text);
  const failure = taken || standing.memory ? "" : "This device has no room left for it.";
  if (taken) saved.set(id, text);
  if (failure !== standing.failure) {
    standing.failure = failure;
    tell("kept", id, failure);
    tellChange();
  }
}

/**
 * Has the browser begin a new log. One engine goes on in the log that a full disk has torn, finds it broken at the next
 * start and then drops everything. It begins another once it has written some megabytes, in values of modest size.
 */
function renew() {
  torn = false;
  const asked = indexedDB.open(ROOM, 1);
  asked.onupgradeneeded = () => {
    const store = asked.result.createObjectStore("room", { autoIncrement: true });
    for (let n = 0; n < 200; n += 1) store.add("x".repeat(30_000));
  };
  asked.onerror = () => (torn = true);
  asked.onsuccess = () => {
    asked.result.close();
    indexedDB.deleteDatabase(ROOM);
  };
}

/** The browser made the store anew: everything that was in it is written again. */
function refill() {
  for (const id of saved.keys()) if (records.has(id)) dirty.add(id);
  later(0);
}

/**
 * Writes a record over the revision it was based on. Resolves with `theirs`, the stored record, if that has changed
 * since, and with whether the store had lost all it held.
 */
function compareAndPut(record) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction("cases", "readwrite");
    const store = transaction.objectStore("cases");
    let theirs;
    let emptied = false;
    const asked = store.get(record.id);
    asked.onsuccess = () => {
      const now = whole(asked.result);
      if (!now && saved.size > 0) {
        const counted = store.count();
        counted.onsuccess = () => (emptied = counted.result === 0);
      }
      const moved = now && now.revision !== record.revision;
      if (moved && now.text !== record.text && now.text !== saved.get(record.id)) {
        theirs = now;
        return;
      }
      record.revision = now?.revision ?? record.revision;
      try {
        store.put({ ...record, revision: record.revision + 1 });
      } catch (reason) {
        reject(reason);
      }
    };
    transaction.oncomplete = () => resolve({ theirs, emptied });
    transaction.onabort = () => reject(transaction.error ?? new Error("stopped"));
    transaction.onerror = (event) => event.preventDefault();
  });
}

function forgetMirror(id, text) {
  const mirror = recall("localStorage", MIRROR + TAB);
  if (mirror === null) return;
  const held = JSON.parse(mirror);
  if (held.id === id && held.text === text) forget("localStorage", MIRROR + TAB);
}

/** Requests persistent storage, once there is something to lose, because some browsers ask the person. */
async function askToPersist() {
  remember("localStorage", ASKED, "yes");
  try {
    settle((await navigator.storage.persisted()) || (await navigator.storage.persist()));
  } catch {
    settle(false);
  }
}

function settle(yes) {
  standing.persisted = yes;
  tellChange();
}

// ---- several records at once ------------------------------------------------------------------------

/** Stores records in batches. If `progress(done)` returns false, it stops and removes what it stored. */
export async function putAll(incoming, progress) {
  await flush();
  const before = incoming.map(({ id }) => records.get(id));
  const groups = Math.ceil(incoming.length / 20);
  let done = 0;
  const undo = async () => {
    const put = before.slice(0, done).map((record, at) => record ?? incoming[at].id);
    await transact((store) => put.forEach((was) => (typeof was === "string" ? store.delete(was) : store.put(was))));
    put.forEach((was) => (typeof was === "string" ? (records.delete(was), saved.delete(was)) : hold(was)));
  };
  const now = Date.now();
  for (let group = 0; group < groups; group += 1) {
    const part = incoming.slice(group * 20, group * 20 + 20).map(({ id, text, entry }, at) => {
      const known = records.get(id);
      return { id, text, entry, revision: (known?.revision ?? 0) + 1, made: known?.made ?? now - group * 20 - at, changed: now };
    });
    try {
      await transact((store) => part.forEach((record) => store.put(record)));
    } catch (reason) {
      await undo().catch(() => {});
      throw reason;
    }
    part.forEach(hold);
    done += part.length;
    await new Promise((resolve) => setTimeout(resolve));
    if (progress?.(done) === false) {
      await undo();
      tell("shelf");
      return false;
    }
  }
  say({ what: "shelf" });
  tell("shelf");
  if (incoming.some(({ id }) => id === openId)) tell("take", openId, textOf(openId));
  tellChange();
  return true;
}

function transact(work) {
  if (!database) return Promise.resolve();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction("cases", "readwrite");
    transaction.oncomplete = resolve;
    transaction.onabort = () => reject(transaction.error ?? new Error("stopped"));
    work(transaction.objectStore("cases"));
  });
}

// ---- the bin ----------------------------------------------------------------------------------------

export async function putBack(id) {
  const record = records.get(id);
  if (!record) return;
  delete record.binned;
  dirty.add(id);
  await flush();
  tell("shelf");
  tellChange();
}

/** Deletes the photos of a piece. */
export async function removeForGood(id) {
  records.delete(id);
  saved.delete(id);
  dirty.delete(id);
  await transact((store) => store.delete(id));
  forget("localStorage", OLD_CASE + id);
  window.dispatchEvent(new CustomEvent("leavewell-removed", { detail: id }));
  say({ what: "shelf", gone: id });
  tellChange();
}

/** The days a piece has been in the bin. A clock that was behind put it there before its own last change. */
function age({ binned: since, changed }) {
  return (Date.now() - Math.max(Number(since) || Date.now(), Number(changed) || 0)) / DAY_MS;
}

/**
 * Deletes what has been in the bin for its time, a day after that was first seen: for a day at least, a clock that is
 * wrong deletes nothing.
 */
function emptyBin() {
  for (const record of binned()) {
    const { id, due } = record;
    const over = age(record) > BIN_DAYS;
    if (over && due && Date.now() - due > DAY_MS) removeForGood(id).catch(() => {});
    else if (over !== Boolean(due)) {
      records.get(id).due = over ? Date.now() : undefined;
      dirty.add(id);
    }
  }
}

// ---- other tabs -------------------------------------------------------------------------------------

function say(message) {
  channel?.postMessage({ ...message, tab: TAB });
}

function listen() {
  if (!globalThis.BroadcastChannel) return;
  channel = new BroadcastChannel("leavewell");
  channel.addEventListener("message", ({ data }) => heard(data));
  window.addEventListener("pagehide", () => openId && say({ what: "left", id: openId }));
  window.addEventListener("pageshow", ({ persisted }) => persisted && openId && say({ what: "opened", id: openId }));
}

async function heard({ what, id, tab, gone }) {
  if (what === "opened") {
    standing.also.delete(tab);
    if (id === openId) {
      standing.also.add(tab);
      say({ what: "also", id });
    }
  } else if (what === "also" && id === openId) standing.also.add(tab);
  else if (what === "left") standing.also.delete(tab);
  else if (what === "kept") await follow(id);
  else if (what === "shelf") {
    saved.delete(gone);
    await reread();
    tell("shelf");
  }
  tellChange();
}

/** Takes over a record that another tab has written, unless this tab has changed it too. */
async function follow(id) {
  if (!database || stopped) return;
  const theirs = await new Promise((resolve) => {
    const asked = database.transaction("cases").objectStore("cases").get(id);
    asked.onsuccess = () => resolve(whole(asked.result));
    asked.onerror = () => resolve(undefined);
  });
  const mine = records.get(id);
  if (!theirs || (mine && theirs.revision <= mine.revision)) return;
  if (dirty.has(id)) {
    // The text typed here is based on an older revision; writing it will find the conflict.
    if (mine.text !== saved.get(id)) return;
    dirty.delete(id);
  }
  const moved = mine?.text !== theirs.text;
  hold(theirs);
  if (id === openId && moved && !theirs.binned) tell("take", id, theirs.text);
  tell("shelf");
}

async function reread() {
  if (!database) return;
  const now = await all();
  if (now.length === 0 && saved.size > 0) return refill();
  const ids = new Set(now.map(({ id }) => id));
  for (const id of records.keys()) if (!ids.has(id) && !dirty.has(id)) records.delete(id);
  for (const record of now) {
    if (dirty.has(record.id)) continue;
    const moved = records.get(record.id)?.text !== record.text;
    hold(record);
    if (record.id === openId && moved && !record.binned) tell("take", record.id, record.text);
  }
}

function clash(record, theirs) {
  clashes.set(record.id, { base: saved.get(record.id), theirs });
  tellChange();
}

/** The conflict of the open piece, if any: the common base and both texts. */
export function openClash() {
  const found = clashes.get(openId);
  return found && { id: openId, base: found.base, mine: textOf(openId), theirs: found.theirs.text };
}

/** Keeps both: theirs in its place, and the text typed here as a separate piece, which becomes the open one. */
export async function keepBoth(id) {
  const { theirs } = clashes.get(id);
  const mine = textOf(id);
  clashes.delete(id);
  dirty.delete(id);
  hold(theirs);
  const copy = newId();
  fresh(copy, mine);
  await flush();
  // The copy holds what the mirror holds.
  if (!dirty.has(copy)) forgetMirror(id, mine);
  tell("shelf");
  tell("open", copy);
  tellChange();
}

/** Replaces both by the merged record. */
export async function settleClash(id, text) {
  const { theirs } = clashes.get(id);
  clashes.delete(id);
  const record = records.get(id);
  record.revision = theirs.revision;
  saved.set(id, theirs.text);
  change(record, text);
  tell("take", id, text);
  await flush();
  tellChange();
}

// ---- events -----------------------------------------------------------------------------------------

/** Sends an event to the app. */
export function tell(what, id = "", text = "") {
  if (!stopped) window.dispatchEvent(new CustomEvent("leavewell-told", { detail: { what, id, text } }));
}

/** Notifies the parts of the page that show the state of the storage. */
export function tellChange() {
  window.dispatchEvent(new CustomEvent("leavewell-standing"));
}

// ---- localStorage, where it is --------------------------------------------------------------------------

/** @typedef {"localStorage" | "sessionStorage"} StorageName */

/** @param {StorageName} storage */
function recall(storage, key) {
  return attempt(() => window[storage].getItem(key)) ?? null;
}

/**
 * Returns whether it was stored.
 * @param {StorageName} storage
 */
function remember(storage, key, text) {
  return attempt(() => (window[storage].setItem(key, text), true)) ?? false;
}

/** @param {StorageName} storage */
function forget(storage, key) {
  attempt(() => window[storage].removeItem(key));
}

function keys(prefix) {
  return attempt(() => Object.keys(localStorage).filter((key) => key.startsWith(prefix))) ?? [];
}

/** Ignores a full or blocked localStorage, because the database is what counts. */
function attempt(what) {
  try {
    return what();
  } catch {
    return undefined;
  }
}
