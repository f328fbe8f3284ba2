// Photos of a part, and counting bare metal on one of them.
//
//   <part-photos case="…" part="foot" name="foot"></part-photos>
//
// The browser decodes a photo, scales it down and stores it in a separate database for each case. It is never sent
// anywhere. The record's part (the list of photos, a point count) goes to the app as a "leavewell-put" event
// {path, text}, and the app writes it.

const LONGEST_SIDE = 1_600;
const LARGEST_FILE = 80_000_000;
const QUALITY = 0.85;
// A grid for each field of a count, with enough points to tell 2 in 100 from 10 in 100 in a few fields.
const COLUMNS = 10;
const ROWS = 8;
const STATES = ["silver", "bare metal", "not this part"];

export function databaseOf(caseId) {
  return `leavewell-photos-${caseId}`;
}

/** Every photo of a piece, for a sheet: <sheet-photos case="…">. */
class SheetPhotos extends HTMLElement {
  #shown = [];

  async connectedCallback() {
    const photos = await photosOf(this.getAttribute("case")).catch(() => []);
    if (!this.isConnected) return;
    this.replaceChildren(...photos.map(({ blob, key, on, width, height }) => {
      const address = URL.createObjectURL(blob);
      this.#shown.push(address);
      const [part] = key.split("/");
      const name = `${part[0].toUpperCase()}${part.slice(1)}, ${on}`;
      return make("figure", {}, [make("img", { src: address, alt: name, width, height }), make("figcaption", {}, name)]);
    }));
  }

  disconnectedCallback() {
    for (const address of this.#shown.splice(0)) URL.revokeObjectURL(address);
  }
}

class PartPhotos extends HTMLElement {
  #shown = [];
  #turn = 0;

  connectedCallback() {
    this.#turn += 1;
    this.#draw();
  }

  disconnectedCallback() {
    this.#turn += 1;
    this.#letGo();
  }

  get #case() {
    return this.getAttribute("case");
  }

  get #part() {
    return this.getAttribute("part");
  }

  async #draw(say = "") {
    const turn = this.#turn;
    const status = make("p", { role: "status", class: "hint" }, say);
    const input = make("input", { type: "file", accept: "image/*", id: `photo-${this.#part}` });
    input.addEventListener("change", () => this.#take(input, status));
    const field = make("div", { class: "field" }, [
      make("label", { for: input.id }, `Photo of the ${this.getAttribute("name")}`),
      make("p", { class: "hint" }, "Kept in this browser only, made smaller first. Side light shows most."),
      input,
      status,
    ]);
    let photos;
    try {
      photos = await all(this.#case, this.#part);
    } catch {
      photos = [];
      status.textContent = "Photos cannot be kept in this browser: its storage is closed to this page. The record itself is not affected.";
    }
    if (turn !== this.#turn) return;
    this.#letGo();
    const list = make("ul", { class: "photos" }, photos.map((photo, at) => this.#line(photo, at)));
    this.replaceChildren(field, ...(photos.length ? [list] : []));
  }

  #line(photo, at) {
    const address = URL.createObjectURL(photo.blob);
    this.#shown.push(address);
    const name = `Photo ${at + 1} of the ${this.getAttribute("name")}, ${photo.on}`;
    const image = make("img", { src: address, alt: name, width: photo.width, height: photo.height });
    const count = button("Count bare metal on it", () => this.#count(photo, address, name));
    const drop = button("Remove this photo", async () => {
      await remove(this.#case, photo.key);
      await this.#log();
      this.#draw("The photo is removed.");
    });
    return make("li", {}, [image, make("p", { class: "hint" }, `Taken in on ${photo.on}`), make("p", { class: "buttons" }, [count, drop])]);
  }

  async #take(input, status) {
    const [file] = input.files;
    if (!file) return;
    const turn = this.#turn;
    input.value = "";
    if (file.size > LARGEST_FILE) {
      status.textContent = "That file is larger than 80 MB. Save the photo smaller, then choose it again. Nothing else is changed.";
      return;
    }
    status.textContent = "Making the photo smaller…";
    let made;
    try {
      made = await smaller(file);
    } catch {
      status.textContent = "That file could not be read as a picture. Choose a JPEG, PNG or WebP file. Nothing else is changed.";
      return;
    }
    try {
      await put(this.#case, this.#part, made);
    } catch {
      status.textContent = "There is no room to keep the photo in this browser. Remove others, or keep it elsewhere. Nothing else is changed.";
      return;
    }
    await this.#log();
    if (turn === this.#turn) this.#draw("The photo is kept.");
  }

  /** Writes the list of photos into the record. */
  async #log() {
    const photos = await all(this.#case, this.#part);
    tell(`parts[part=${this.#part}].photos`, photos.map((photo) => photo.key.split("/")[1]).join(" "));
  }

  #count(photo, address, name) {
    const states = new Array(COLUMNS * ROWS).fill(0);
    const said = make("p", { role: "status", class: "hint" });
    const tally = () => {
      const on = states.filter((state) => state !== 2).length;
      const bare = states.filter((state) => state === 1).length;
      said.textContent = `${bare} of ${on} points on bare metal.`;
      return { on, bare };
    };
    const points = states.map((_, at) => {
      const point = make("button", { type: "button", class: "point", tabindex: at ? "-1" : "0" });
      const show = () => {
        point.dataset.state = String(states[at]);
        point.setAttribute("aria-label", `Row ${Math.floor(at / COLUMNS) + 1}, column ${(at % COLUMNS) + 1}: ${STATES[states[at]]}`);
      };
      point.addEventListener("click", () => {
        states[at] = (states[at] + 1) % STATES.length;
        show();
        tally();
      });
      show();
      return point;
    });
    const grid = make("div", { class: "point-grid", role: "group", "aria-label": "Points of the grid" }, points);
    grid.addEventListener("keydown", (event) => {
      const step = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: COLUMNS, ArrowUp: -COLUMNS }[event.key];
      const next = points[points.indexOf(event.target) + step];
      if (!next) return;
      event.preventDefault();
      event.target.tabIndex = -1;
      next.tabIndex = 0;
      next.focus();
    });
    const use = button("Use this count", () => {
      const { on, bare } = tally();
      this.#draw(this.#note(on, bare));
    });
    use.classList.remove("quiet");
    this.replaceChildren(
      make("p", { class: "hint" }, [
        "Look at what lies under the middle of each ring. Press once where it is bare metal, twice where it is not this part, three times to take it back. ",
        "With a keyboard: arrows move, the space bar presses.",
      ]),
      make("div", { class: "point-photo" }, [make("img", { src: address, alt: name, width: photo.width, height: photo.height }), grid]),
      said,
      make("p", { class: "buttons" }, [use, button("Back without counting", () => this.#draw())]),
    );
    tally();
    points[0].focus();
  }

  /** Adds a field to the count if it has the same number of points as before; otherwise starts a new count. */
  #note(on, bare) {
    if (on === 0) return "No point lies on this part, so there is nothing to count.";
    const path = (field) => `parts[part=${this.#part}].${field}`;
    const known = { points: this.getAttribute("points"), bare: this.getAttribute("bare") };
    const another = known.bare && known.points === String(on);
    tell(path("count_points"), String(on));
    tell(path("count_bare"), another ? `${known.bare} ${bare}` : String(bare));
    return another ? `Added: ${bare} of ${on} points.` : `Counted: ${bare} of ${on} points on bare metal.`;
  }

  #letGo() {
    this.#shown.splice(0).forEach((address) => URL.revokeObjectURL(address));
  }
}

customElements.define("part-photos", PartPhotos);
customElements.define("sheet-photos", SheetPhotos);

function tell(path, text) {
  window.dispatchEvent(new CustomEvent("leavewell-put", { detail: { path, text } }));
}

/** The photo, decoded and scaled by the browser off the main thread. */
async function smaller(file) {
  const whole = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST_SIDE / Math.max(whole.width, whole.height));
  const width = Math.max(1, Math.round(whole.width * scale));
  const height = Math.max(1, Math.round(whole.height * scale));
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext("2d").drawImage(whole, 0, 0, width, height);
  whole.close();
  const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: QUALITY });
  const now = new Date();
  const two = (n) => String(n).padStart(2, "0");
  return { blob, width, height, on: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`, at: now.getTime() };
}

// ---- the database of a case: one store, keys "part/number" ------------------------------------------

function open(caseId) {
  const asked = indexedDB.open(databaseOf(caseId), 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("photos", { keyPath: "key" });
  return answer(asked);
}

function answer(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("blocked"));
  });
}

async function within(caseId, mode, work) {
  const database = await open(caseId);
  try {
    const transaction = database.transaction("photos", mode);
    const done = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error ?? new Error("stopped"));
    });
    const [found] = await Promise.all([answer(work(transaction.objectStore("photos"))), done]);
    return found;
  } finally {
    database.close();
  }
}

/** Every photo of a case, as stored. */
export function photosOf(caseId) {
  return within(caseId, "readonly", (store) => store.getAll());
}

/** Stores a photo from elsewhere: {key, blob, width, height, on}. */
export function putPhoto(caseId, photo) {
  return within(caseId, "readwrite", (store) => store.put(photo));
}

function all(caseId, part) {
  return within(caseId, "readonly", (store) => store.getAll(IDBKeyRange.bound(`${part}/`, `${part}0`, false, true)));
}

/** Stores a photo and reads it back: on a full disk some browsers say it is stored and drop it. */
async function put(caseId, part, { at, ...photo }) {
  const key = `${part}/${at.toString(36)}`;
  await within(caseId, "readwrite", (store) => store.put({ key, ...photo }));
  const held = await within(caseId, "readonly", (store) => store.get(key));
  if (held?.blob?.size !== photo.blob.size) throw new Error("the photo was not stored");
}

function remove(caseId, key) {
  return within(caseId, "readwrite", (store) => store.delete(key));
}

function make(name, attributes, inner = []) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...[inner].flat());
  return element;
}

function button(words, does) {
  const element = make("button", { type: "button", class: "quiet" }, words);
  element.addEventListener("click", does);
  return element;
}
