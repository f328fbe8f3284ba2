// The worker in which the second program runs: a page's name and a case in, the page out, all text.
// boot.js starts it when a screen first asks. What follows `?` in its address names the build, so
// that a browser never pairs an old second program with a new app.

const build = self.location.search;
const program = start();

self.addEventListener("message", async ({ data: { name, turn, text } }) => {
  let answer;
  try {
    const { page } = await program;
    answer = page(name, text);
  } catch (reason) {
    self.postMessage({ name, turn, failure: reason instanceof Error ? reason.message : String(reason) });
    return;
  }
  self.postMessage({ name, turn, answer });
});

async function start() {
  const { default: init, ...exported } = await import(`./leavewell-desk.js${build}`);
  await init({ module_or_path: new URL(`leavewell-desk_bg.wasm${build}`, self.location.href) });
  return exported;
}
