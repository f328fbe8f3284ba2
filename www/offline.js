// Registers the service worker, and offers a newer version of the site when one lies ready. It is never put
// in place by itself: a page goes on with the version it started with until the person asks.

/** `worker`: the address of the service worker, as the page's policy gives it; `build`: the page's own build. */
export async function keepCopy(worker, build) {
  const { serviceWorker } = navigator;
  // Refused in a private window, or where storage is shut: Leavewell works on, with the network.
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
  // Claimed for the first time, it is this page's own build; from then on, a change is a change of build.
  serviceWorker.addEventListener("controllerchange", reloadWhenReplaced, { once: true });
}

let asked = false;
let watched = false;

function reloadWhenReplaced() {
  if (watched) return;
  watched = true;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    // Asked for here, or out of sight: reload. In sight, somebody may be in the middle of something.
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
    // Another tab may have been faster.
    if (registration.waiting) registration.waiting.postMessage("SKIP_WAITING");
    else reloadOnce();
  });
}

function bar(words, action, does) {
  document.getElementById("update")?.remove();
  const box = make("aside", { id: "update", "aria-label": "Update" });
  const said = make("p", { role: "status" });
  const act = make("button", { type: "button" }, action);
  const later = make("button", { type: "button", class: "quiet" }, "Later");
  act.addEventListener("click", does);
  later.addEventListener("click", () => box.remove());
  box.append(said, act, later);
  document.body.prepend(box);
  // Read out only when it changes after it is there.
  setTimeout(() => (said.textContent = `${words} What you have entered stays.`), 50);
}

function make(name, attributes, text = "") {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.textContent = text;
  return element;
}
