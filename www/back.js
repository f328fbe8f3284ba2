// Where each step of the browser's history was left: the scroll and the folds that were open. Going back, going forward
// and a reload return there.
//
// The app sends "leavewell-shown" once it has drawn a screen, "leavewell-jump" before it jumps within one, and
// "leavewell-part" once a part was chosen. A jump is a step of its own, so that going back undoes it.

const NOTE_AFTER_MS = 100;
/** A screen grows while its pages arrive. For this long its place is looked for again. */
const RETURN_WITHIN_MS = 1_500;

/** The share of the window's height within which a heading is in sight together with some of what it heads. */
const SEEN = 0.6;

let noting = 0;
let returning = 0;
/** The address of the screen that stands. */
let here = "";

const folds = () => [...document.querySelectorAll("details")].filter((fold) => fold.closest("main"));

function note() {
  clearTimeout(noting);
  if (!returning) history.replaceState({ y: scrollY, open: folds().map((fold) => fold.open) }, "");
}

function back() {
  clearTimeout(returning);
  returning = 0;
  const { y, open } = history.state ?? {};
  if (y === undefined) return;
  const last = Date.now() + RETURN_WITHIN_MS;
  const look = () => {
    const now = folds();
    if (now.length === open.length) now.forEach((fold, at) => (fold.open = open[at]));
    scrollTo(0, y);
    returning = Math.abs(scrollY - y) > 1 && Date.now() < last ? setTimeout(look, 50) : 0;
  };
  look();
}

function jump() {
  note();
  history.pushState(null, "");
}

/** Jumps to the questions about the chosen part, unless they begin in the upper part of the window. */
function showPart() {
  const title = document.getElementById("part-title");
  const top = title?.getBoundingClientRect().top ?? 0;
  if (top >= 0 && top < SEEN * innerHeight) return;
  jump();
  title.tabIndex = -1;
  title.focus();
  title.scrollIntoView();
}

/** Begins to note the places. */
export function keepPlaces() {
  history.scrollRestoration = "manual";
  addEventListener("scroll", () => {
    clearTimeout(noting);
    noting = setTimeout(note, NOTE_AFTER_MS);
  });
  addEventListener("click", note, true);
  // A step to another screen waits until that stands.
  addEventListener("popstate", () => location.href === here && back());
  addEventListener("leavewell-shown", () => {
    here = location.href;
    back();
  });
  addEventListener("leavewell-jump", jump);
  addEventListener("leavewell-part", showPart);
  for (const hand of ["wheel", "touchstart", "keydown", "pointerdown"]) {
    addEventListener(hand, () => {
      clearTimeout(returning);
      returning = 0;
    }, { capture: true, passive: true });
  }
}
