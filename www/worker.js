// The loader of a worker; both workers run the same program. boot.js starts it at a screen's first question.
// The query in its address is the build and the worker's name. The build keeps browsers from pairing an old program
// with a new app. The name makes the two addresses different: once a service worker controls the page, one engine
// gives workers with the same address the same response.
//
// A message {ask, text} is a question of the app, as bytes; {name, text} is a question of a script, both JSON text.
// {cancel: true} cancels the current question, whose answer is then {cancelled: true}.

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
      // A cancel message arrives only between two slices of the work.
      await new Promise((resolve) => setTimeout(resolve));
      if (cancelled) return { cancelled };
    }
  } catch (reason) {
    return { failure: reason instanceof Error ? reason.message : String(reason) };
  }
}

async function start() {
  // In the single-file edition this script contains the program.
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
