// Caches a complete copy of the site in the browser, so that it works offline.
// The build step inserts the name of the build and the list of its files with their digests.
//
// A copy is complete or absent: every file is fetched again and checked against its digest, so that files of two
// builds never mix, even during a deployment. A newer copy waits until the person accepts it, or until no page of
// the older build is open.

const BUILD = "@build@";
const FILES = [
  /* @files@ */
];

const SCOPE = new URL("./", self.location.href);
// Other copies of this site may exist under other paths of the same origin.
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
  // A page of the same build, loaded before the copy existed, continues with the copy.
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
  // A request from an open page of another build must not get a file of this build.
  const asksForBuild = search.split("&")[0];
  if (!isPage && search !== "" && asksForBuild !== `?${BUILD}`) return Response.error();
  const cache = await caches.open(CACHE);
  const found = await cache.match(name, { ignoreSearch: true, ignoreVary: true });
  // A new response has the requested address. The cached one has the plain file name, and a worker could not read
  // its build and its program from that address.
  return found ? new Response(found.body, found) : gone();
}

/** The browser deleted the copy. A file from the network could belong to another build, so start over. */
async function gone() {
  await self.registration.unregister();
  return new Response("The copy of Leavewell in this browser is gone. Reload this page to fetch it again.", {
    status: 503,
    headers: { "content-type": "text/plain; charset=utf-8" },
  });
}
