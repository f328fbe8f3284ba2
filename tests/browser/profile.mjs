// A browser profile as JSON: every database of the site and everything in localStorage. `takeProfile` reads one out
// of a browser, `layProfile` puts one into a browser that is new to the site.
//
// Both use a page of the site without a program, so the app neither reads nor writes meanwhile.
//
// The JSON form:
//
//   { about, written_at, localStorage: { key: text },
//     databases: [{ name, version, stores: [{ name, keyPath, autoIncrement, indexes, records }] }] }
//
// Records are as IndexedDB returns them, in the order of their keys. Values that JSON cannot hold become objects:
// { "$lines": [...] } is a text of several lines, { "$blob": base64, "type": ... } a Blob, { "$bytes": base64 } an
// ArrayBuffer, { "$undefined": true } a field without a value. Keys must lie inside the records (`keyPath`).

import { readFile } from "node:fs/promises";

const EMPTY_PAGE = "<!doctype html><link rel=icon href=data:,><title>No program</title>";

/** The profile in `tests/files/NAME`. */
export async function savedProfile(name) {
  return JSON.parse(await readFile(new URL(`../files/${name}`, import.meta.url), "utf8"));
}

/** Writes a profile into a context in which the site has not been opened yet. */
export function layProfile(context, site, profile) {
  return onEmptyPage(context, site, (page) => page.evaluate(lay, profile));
}

/** Reads the whole profile. Pages of the app should be closed first, or they may go on writing. */
export function takeProfile(context, site) {
  return onEmptyPage(context, site, (page) => page.evaluate(take));
}

/**
 * Lets the pages of a context read the clock as if they were opened at this moment (milliseconds since 1970). Time
 * passes as usual from there. What expires, such as the bin, then does not depend on when a test runs.
 */
export function openAt(context, moment) {
  return context.addInitScript((ahead) => {
    const RealDate = Date;
    globalThis.Date = class extends RealDate {
      constructor(...given) {
        if (given.length) super(...given);
        else super(RealDate.now() + ahead);
      }
      static now() {
        return RealDate.now() + ahead;
      }
    };
  }, moment - Date.now());
}

async function onEmptyPage(context, site, body) {
  const address = `${site.url}no-program`;
  await context.route(address, (route) => route.fulfill({ contentType: "text/html", body: EMPTY_PAGE }));
  const page = await context.newPage();
  try {
    await page.goto(address);
    return await body(page);
  } finally {
    await page.close();
    await context.unroute(address);
  }
}

/** Runs in the page. */
async function take() {
  const answer = (asked) =>
    new Promise((resolve, reject) => {
      asked.onsuccess = () => resolve(asked.result);
      asked.onerror = () => reject(asked.error);
    });
  const base64 = async (blob) => {
    const reader = new FileReader();
    await new Promise((resolve) => {
      reader.onload = resolve;
      reader.readAsDataURL(blob);
    });
    return reader.result.slice(reader.result.indexOf(",") + 1);
  };
  const plain = async (value) => {
    if (value === undefined) return { $undefined: true };
    if (typeof value === "string" && value.includes("\n")) return { $lines: value.split("\n") };
    if (value === null || typeof value !== "object") return value;
    if (value instanceof Blob) return { $blob: await base64(value), type: value.type };
    if (value instanceof ArrayBuffer) return { $bytes: await base64(new Blob([value])) };
    if (Array.isArray(value)) return Promise.all(value.map(plain));
    if (Object.getPrototypeOf(value) !== Object.prototype) throw new TypeError(`no form for ${value}`);
    const entries = await Promise.all(Object.entries(value).map(async ([key, inner]) => [key, await plain(inner)]));
    return Object.fromEntries(entries);
  };
  const byName = (a, b) => (a.name < b.name ? -1 : 1);
  const databases = [];
  for (const { name } of (await indexedDB.databases()).sort(byName)) {
    const database = await answer(indexedDB.open(name));
    const stores = [];
    for (const storeName of database.objectStoreNames) {
      const store = database.transaction(storeName).objectStore(storeName);
      const { keyPath, autoIncrement } = store;
      if (keyPath === null) throw new TypeError(`the keys of ${storeName} lie outside its records`);
      const indexes = [...store.indexNames].map((index) => {
        const { keyPath: path, unique, multiEntry } = store.index(index);
        return { name: index, keyPath: path, unique, multiEntry };
      });
      stores.push({ name: storeName, keyPath, autoIncrement, indexes, records: await plain(await answer(store.getAll())) });
    }
    databases.push({ name, version: database.version, stores });
    database.close();
  }
  const texts = Object.fromEntries(Object.keys(localStorage).sort().map((key) => [key, localStorage.getItem(key)]));
  return { localStorage: texts, databases };
}

/** Runs in the page. */
async function lay({ localStorage: texts, databases }) {
  const bytes = (base64) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const whole = (value) => {
    if (value === null || typeof value !== "object") return value;
    if (Array.isArray(value)) return value.map(whole);
    if (value.$undefined) return undefined;
    if (value.$lines) return value.$lines.join("\n");
    if (value.$blob !== undefined) return new Blob([bytes(value.$blob)], { type: value.type });
    if (value.$bytes !== undefined) return bytes(value.$bytes).buffer;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, whole(inner)]));
  };
  if (localStorage.length > 0 || (await indexedDB.databases()).length > 0) throw new Error("the site has been open here before");
  for (const [key, text] of Object.entries(texts)) localStorage.setItem(key, text);
  for (const { name, version, stores } of databases) {
    await new Promise((resolve, reject) => {
      const asked = indexedDB.open(name, version);
      asked.onerror = () => reject(asked.error);
      asked.onupgradeneeded = () => {
        for (const { name: storeName, keyPath, autoIncrement, indexes, records } of stores) {
          const store = asked.result.createObjectStore(storeName, { keyPath, autoIncrement });
          for (const { name: index, keyPath: path, ...options } of indexes) store.createIndex(index, path, options);
          for (const record of records) store.put(whole(record));
        }
      };
      asked.onsuccess = () => {
        asked.result.close();
        resolve();
      };
    });
  }
}
