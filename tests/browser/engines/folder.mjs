// Folders of profiles, and the programs that use them.

import { rm } from "node:fs/promises";

/** The locale of every engine: the forms of days and amounts follow it. WebKit has this one on every machine. */
export const LOCALE = "en-US";

/** Removes a profile. A browser that has just ended may still be writing to it. */
export function discard(folder) {
  return rm(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
}

/** Resolves with the first match of `pattern` in what a program writes to `stream`. */
export function line(program, stream, pattern, seconds = 30) {
  return new Promise((resolve, reject) => {
    let written = "";
    const late = setTimeout(() => reject(new Error(`${program.spawnfile} did not start: ${written}`)), seconds * 1_000);
    program.once("error", reject);
    program.once("exit", () => reject(new Error(`${program.spawnfile} ended: ${written}`)));
    program[stream].on("data", (part) => {
      written += part;
      const found = written.match(pattern);
      if (!found) return;
      clearTimeout(late);
      resolve(found);
    });
  });
}

/** Ends a program and waits until it has. */
export function ended(program, signal = "SIGTERM") {
  if (program.exitCode !== null || program.signalCode !== null) return undefined;
  const gone = new Promise((resolve) => program.once("exit", resolve));
  program.kill(signal);
  return gone;
}
