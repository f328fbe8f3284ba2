// Helpers that create elements for the scripts. Text always stays text and never becomes markup.

export function make(name, attributes = {}, inner = []) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...[inner].flat());
  return element;
}

export function button(words, does, kind = "", label = "") {
  const element = make("button", { type: "button", ...(kind && { class: kind }), ...(label && { "aria-label": label }) }, words);
  element.addEventListener("click", does);
  return element;
}

export function option(value, words, chosen) {
  return make("option", { value, ...(value === chosen && { selected: "" }) }, words);
}

export function notice(what, remedy, buttons) {
  return make("div", { class: "notice" }, [make("p", {}, [make("strong", {}, what), " ", remedy]), ...buttons]);
}
