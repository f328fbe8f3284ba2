// The loader of a worker: the same program runs in both. boot.js starts it when a screen first asks.
// What follows `?` in its address is the build and the worker's name. The build makes sure that no browser pairs
// an old program with a new app. The name keeps the two workers' addresses apart: once a service worker controls
// the page, one engine gives workers with the same address the same response.
//
// A message {ask, text} is a question of the app as bytes; {name, text} is one of a script, both JSON text.
// {cancel: true} gives up the question at work, which then is answered with {cancelled: true}.

const build = self.location.search.split("&")[0];
const program = start();
let cancelled = false;

self.addEventListener("message", async ({ data }) => {
  if (data.cancel) cancelled = true;
  else self.postMessage(await answer(data));
});

async function answer({ ask, name, text }) {
  cancelled = false;
  try {
    const { answer, answer_script, share_done } = await program;
    if (name !== undefined) return { answer: answer_script(name, text) };
    for (;;) {
      const bytes = answer(ask, text);
      if (bytes) return { answer: bytes };
      self.postMessage({ share: share_done() });
      // A message that cancels is heard only between two slices of the work.
      await new Promise((resolve) => setTimeout(resolve));
      if (cancelled) return { cancelled };
    }
  } catch (reason) {
    return { failure: reason instanceof Error ? reason.message : String(reason) };
  }
}

async function start() {
  // The edition in one file carries the program with this script.
  const carried = self.leavewellCarried;
  if (carried) {
    const { default: init, ...exported } = carried.program;
    await init({ module_or_path: carried.wasm() });
    return exported;
  }
  const { default: init, ...exported } = await import(`./leavewell-worker.js${build}`);
  await init({ module_or_path: new URL(`leavewell-worker_bg.wasm${build}`, self.location.href) });
  return exported;
}
