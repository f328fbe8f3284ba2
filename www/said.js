// The page's one polite live region. An element marked `data-said` is announced there when its text changes, so that two
// messages never talk over each other. A new screen is not announced: the focus moves to its heading.

import { make } from "./make.js";

const region = make("p", { id: "said", role: "status", class: "unseen" });
document.body.append(region);

/** The marked element that a change belongs to, unless it is in a hidden part of the page. */
function marked({ target }) {
  const element = target instanceof Element ? target : target.parentElement;
  const found = element?.closest("[data-said]");
  return found?.isConnected && !found.parentElement.closest("[hidden]") ? found : null;
}

new MutationObserver((changes) => {
  const texts = [...new Set(changes.map(marked))].map((found) => found?.textContent.trim()).filter(Boolean);
  if (texts.length) region.textContent = texts.join(" ");
}).observe(document.body, { subtree: true, childList: true, characterData: true });
