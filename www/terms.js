// Shows the meaning of a trade word beside it while the pointer or the focus is on the word. Screen readers get
// the meaning from the word's aria-description, so this box is for sighted readers only.

/** How long the box stays after the pointer leaves, so that a person can move onto it. */
const LINGER_MS = 200;
const GAP = 6;
const EDGE = 8;

let box;
let shown;
let leaving;

const termOf = (event) => (event.target instanceof Element ? event.target.closest(".term") : null);

function hide() {
  clearTimeout(leaving);
  shown = undefined;
  if (box) box.hidden = true;
}

function show(term) {
  clearTimeout(leaving);
  if (!box) {
    box = document.createElement("div");
    box.className = "meaning";
    box.setAttribute("aria-hidden", "true");
    document.body.append(box);
  }
  shown = term;
  box.textContent = term.getAttribute("aria-description");
  box.hidden = false;
  place();
}

/** Places the box below the word, or above it if there is no space; never past an edge of the window. */
function place() {
  if (!shown) return;
  const word = shown.getClientRects()[0];
  if (!word) return hide();
  const { clientWidth, clientHeight } = document.documentElement;
  const left = Math.min(word.left, clientWidth - box.offsetWidth - EDGE);
  const below = word.bottom + GAP;
  const above = word.top - box.offsetHeight - GAP;
  box.style.left = `${Math.max(EDGE, left)}px`;
  box.style.top = `${below + box.offsetHeight > clientHeight && above > 0 ? above : below}px`;
}

addEventListener("focusin", (event) => {
  const term = termOf(event);
  if (term) show(term);
  else hide();
});
addEventListener("focusout", hide);
addEventListener("click", (event) => {
  const term = termOf(event);
  if (term) show(term);
  // A touch on the box closes it: it may lie over the next word.
  else if (box?.contains(event.target)) hide();
});
addEventListener("pointerover", (event) => {
  const term = termOf(event);
  if (term) show(term);
  else if (shown && box.contains(event.target)) clearTimeout(leaving);
  else if (shown && shown !== document.activeElement) {
    clearTimeout(leaving);
    leaving = setTimeout(hide, LINGER_MS);
  }
});
addEventListener("keydown", (event) => {
  if (event.key === "Escape") hide();
});
addEventListener("hashchange", hide);
addEventListener("resize", place);
addEventListener("scroll", place, { capture: true, passive: true });
