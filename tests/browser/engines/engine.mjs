// A browser of any engine, seen the same way. `start(engine)` gives {name, tab(), close()}, and a tab has
//
//   open(address)            goes there and waits until the page is loaded
//   reload()                 loads it again
//   eval(function, ...args)  runs a function in the page and gives what it returns, which JSON must be able to carry
//   wait(function, ...args)  runs it until it returns something true, and gives that
//   type(selector, text)     types in place of what the field holds, as a person does
//   keys(text)               types where the focus is
//   click(selector)          clicks on the middle of an element
//   choose(selector, file)   chooses a file in a file field
//   text()                   what the screen says, once it has stopped changing
//   size(width, height), front(), close()
//
// `wait` and `text` are made here of what each engine's file gives.

import { setTimeout as pause } from "node:timers/promises";
import { startChromium } from "./chromium.mjs";
import { startFirefox } from "./firefox.mjs";
import { startWebKit } from "./webkit.mjs";

const STARTS = { Chromium: startChromium, Firefox: startFirefox, WebKit: startWebKit };

/** The engines, in the order in which they are reported. */
export const ENGINES = Object.keys(STARTS);

const WAIT_MS = 20_000;

/** Starts a browser with a profile of its own. `profile` is a folder that stays; WebKit takes none. */
export async function start(engine, { profile } = {}) {
  const browser = await STARTS[engine]({ profile });
  return {
    ...browser,
    name: engine,
    tab: async () => {
      const tab = await browser.tab();
      return Object.assign(tab, { wait: (...asked) => waitFor(tab, ...asked), text: () => tab.eval(whatItSays) });
    },
  };
}

async function waitFor(tab, look, ...args) {
  const last = Date.now() + WAIT_MS;
  for (;;) {
    // A page that is being left gives no answer.
    const found = await tab.eval(look, ...args).catch((reason) => {
      if (Date.now() > last) throw reason;
    });
    if (found) return found;
    if (Date.now() > last) throw new Error(`waited in vain for ${look} ${JSON.stringify(args)}; the page says: ${await screen(tab)}`);
    await pause(50);
  }
}

const screen = (tab) => tab.eval(() => document.body.textContent.replace(/\s+/g, " ").slice(0, 600)).catch(String);

/** Runs in the page: the text of the screen, as soon as nothing on it is waited for and it stays the same. */
function whatItSays() {
  const last = Date.now() + 60_000;
  return new Promise((resolve, reject) => {
    let before = "";
    const look = () => {
      const now = document.querySelector("main").textContent.replace(/\s+/g, " ").trim();
      // What is still to come says "Working it out…" or the like; a page that was only just asked for says little.
      const waits = now.length < 300 || now.includes("…") || document.querySelector('main [aria-busy="true"]');
      if (now === before && !waits) resolve(now);
      else if (Date.now() > last) reject(new Error(`the screen goes on waiting: ${now.slice(0, 300)}`));
      else setTimeout(look, 120);
      before = now;
    };
    setTimeout(look, 60);
  });
}
