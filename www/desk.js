// The worker in which a program beside the app runs: what is asked for and a case in, the
// answer out as bytes. boot.js starts it when a screen first asks. What follows `?` in its address
// names the build, so that a browser never pairs an old program with a new app; what follows `#`
// names the program.

const build = self.location.search;
const which = self.location.hash.slice(1);
const program = start();

self.addEventListener("message", async ({ data: { name, turn, text } }) => {
  let answer;
  try {
    answer = (await program).answer(name, text);
  } catch (reason) {
    self.postMessage({ name, turn, failure: reason instanceof Error ? reason.message : String(reason) });
    return;
  }
  self.postMessage({ name, turn, answer }, [answer.buffer]);
});

async function start() {
  // The edition in one file carries the program with this script.
  const carried = self.leavewellCarried;
  if (carried) {
    const { default: init, ...exported } = carried.program;
    await init({ module_or_path: carried.wasm() });
    return exported;
  }
  const { default: init, ...exported } = await import(`./leavewell-${which}.js${build}`);
  await init({ module_or_path: new URL(`leavewell-${which}_bg.wasm${build}`, self.location.href) });
  return exported;
}
