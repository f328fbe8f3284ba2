// The meaning of a trade word, beside the word while it is pointed at or has the focus. The word itself
// carries its meaning for listeners (aria-description); what is drawn here is for the eye alone.

/** How long it stays when the pointer leaves, so that it can be reached and read at ease. */
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

/** Under the word, or over it where there is no room; never past an edge of the window. */
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
