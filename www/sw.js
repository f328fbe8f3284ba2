// Keeps a whole copy of the site in the browser, so that it works without a network.
// The build step puts in the name of the build and the list of its files with their sums.
//
// A copy is whole or not there: every file is fetched anew and checked against its sum, so that files of two
// builds never mix, even when a visit falls into the moment in which the site is being replaced. A newer copy
// waits until the person asks for it, or until no page of the older one is open.

const BUILD = "@build@";
const FILES = [
  /* @files@ */
];

const SCOPE = new URL("./", self.location.href);
// Other copies of this site may live under other paths of the same origin.
const OURS = `leavewell ${SCOPE.pathname} `;
const CACHE = OURS + BUILD;

self.addEventListener("install", (event) => event.waitUntil(copyAll()));

async function copyAll() {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map(([name, sum]) => new Request(name, { cache: "reload", integrity: sum })));
}

self.addEventListener("activate", (event) => event.waitUntil(dropOthers()));

async function dropOthers() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
}

self.addEventListener("message", ({ data }) => {
  if (data === "SKIP_WAITING") self.skipWaiting();
  // A page of this very build, loaded before there was a copy, goes on with the copy.
  if (data === `CLAIM ${BUILD}`) self.clients.claim();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== SCOPE.origin) return;
  const name = url.pathname.startsWith(SCOPE.pathname) ? url.pathname.slice(SCOPE.pathname.length) : null;
  const known = name === "" || name === "index.html" ? "./" : name;
  if (FILES.some(([file]) => file === known)) event.respondWith(kept(known, url.search, request.mode === "navigate"));
});

async function kept(name, search, isPage) {
  // What is asked for by an open page of another build must not be answered from this one.
  const asksForBuild = search.split("&")[0];
  if (!isPage && search !== "" && asksForBuild !== `?${BUILD}`) return Response.error();
  const cache = await caches.open(CACHE);
  const found = await cache.match(name, { ignoreSearch: true, ignoreVary: true });
  // Made anew, it goes by the address that was asked for. As kept, it would go by the bare name of the file, and
  // a worker could not read from its own address which build and which program it is of.
  return found ? new Response(found.body, found) : gone();
}

/** The browser threw the copy away. A file from the network could be of another build, so: begin again. */
async function gone() {
  await self.registration.unregister();
  return new Response("The copy of Leavewell in this browser is gone. Reload this page to fetch it again.", {
    status: 503,
    headers: { "content-type": "text/plain; charset=utf-8" },
  });
}
