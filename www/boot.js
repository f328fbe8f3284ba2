// Starts Leavewell: loads the build named in the page, offers its functions to scripts as
// `window.leavewell`, and takes the first paint away once the app has drawn a screen.
// It is a file, not an inline script, so that the content security policy can forbid inline scripts.
//
// When all is well, <html> carries data-leavewell="ready" and the window gets a "leavewell-ready" event.
// When not, <html> carries data-leavewell="failed" and the page says so in words.

const LONGEST_WAIT_MS = 20_000;

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
