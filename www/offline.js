// Registers the service worker, and offers a newer version of the site once it is ready. It never switches by
// itself: a page keeps the version it started with until the person accepts the new one.

/** `worker`: the service worker's trusted address; `build`: the build of the page. */
export async function keepCopy(worker, build) {
  const { serviceWorker } = navigator;
  // Private windows and blocked storage refuse it; Leavewell then works online only.
  const registration = await serviceWorker.register(worker, { scope: "./", updateViaCache: "none" });
  if (!registration) return;

  if (serviceWorker.controller) reloadWhenReplaced();
  else serviceWorker.ready.then(({ active }) => active.postMessage(`CLAIM ${build}`));

  if (registration.waiting && serviceWorker.controller) offer(registration);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => {
      if (coming.state === "installed" && serviceWorker.controller) offer(registration);
    });
  });
  // The first service worker to take control has this page's build; any later change is a change of build.
  serviceWorker.addEventListener("controllerchange", reloadWhenReplaced, { once: true });
}

let asked = false;
let watched = false;

function reloadWhenReplaced() {
  if (watched) return;
  watched = true;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    // Reload if it was accepted here or the page is hidden. On a visible page a person may be busy.
    if (asked || document.visibilityState === "hidden") reloadOnce();
    else bar("Leavewell was updated in another tab.", "Reload", reloadOnce);
  });
}

let reloading = false;

function reloadOnce() {
  if (reloading) return;
  reloading = true;
  location.reload();
}

function offer(registration) {
  bar("A new version is ready.", "Reload with it", () => {
    asked = true;
    // Another tab may have been first.
    if (registration.waiting) registration.waiting.postMessage("SKIP_WAITING");
    else reloadOnce();
  });
}

function bar(words, action, does) {
  document.getElementById("update")?.remove();
  const box = make("aside", { id: "update", "aria-label": "Update" });
  const said = make("p", { "data-said": "" });
  const act = make("button", { type: "button" }, action);
  const later = make("button", { type: "button", class: "quiet" }, "Later");
  act.addEventListener("click", does);
  later.addEventListener("click", () => box.remove());
  box.append(said, act, later);
  document.body.prepend(box);
  // Screen readers announce it only if it changes after it was added.
  setTimeout(() => (said.textContent = `${words} What you have entered stays.`), 50);
}

function make(name, attributes, text = "") {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.textContent = text;
  return element;
}
