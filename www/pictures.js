// Pictures of a piece: photos taken in, bare metal counted on one, faults shown where they are, and photos on sheets.
//
//   <part-photos case="…" part="foot" name="foot" points bare>   photos of a part; of the piece or of a work with `path`
//   <sheet-photos case="…" keys="foot/1 foot/2" marks="1 20 35"> photos on a sheet, with numbered places
//   <fault-places case="…" part="foot" data="…">                 where faults are, from the worker's page Places
//
// It is fetched once the first screen stands. The browser decodes a photo, scales it down and stores it in a separate
// database for each case (photos.js). It is never sent anywhere. What belongs into the record goes to the app as a
// "leavewell-put" event {path, text}, and the app writes it.

import { button, make, option } from "./make.js";
import { keepPhoto, photoAt, photosUnder, removePhoto } from "./photos.js";

const LONGEST_SIDE = 1_600;
const LARGEST_FILE = 80_000_000;
const QUALITY = 0.85;
// A grid for each field of a count, with enough points to tell 2 in 100 from 10 in 100 in a few fields.
const COLUMNS = 10;
const ROWS = 8;
const STATES = ["silver", "bare metal", "not this part"];
// About photos of several pieces.
const SHOWS = "Which piece it shows";
const ANY_PIECE = "Not one in particular";
// About the places of faults; `{}` is the name of a part, or a number and a name.
const WORDS = {
  title: "Where the faults are",
  means: "Show a fault where it is, and it counts as if it were chosen above. Several of a kind on one part add to the cost of the work; what they take off the value is counted once.",
  onDrawing: "Show a fault of the {} on the drawing",
  onPhoto: "Show one on photo {} of the {}",
  wholePiece: "whole piece",
  tap: "Tap where it is, or move the cross with the arrow keys.",
  picture: "The place of the fault: arrow keys move it, with Shift by ten",
  fault: "What is wrong there",
  count: "How many there",
  x: "From the left",
  y: "From the top",
  note: "Note",
  keep: "Keep this place",
  back: "Back without a place",
  kept: "The place is kept.",
  removed: "The place is removed.",
  change: "Change",
  remove: "Remove",
  atDrawing: "on the drawing",
  atPhoto: "on a photo",
  inWords: "without a place",
  photoMissing: "The photo is not in this browser. Show the fault on another photo or on the drawing.",
};
// How the drawing and the photos look on a sheet saved as a page.
const SAVED_STYLE = `
.photos { display: flex; flex-wrap: wrap; gap: .8rem; margin: .6em 0; }
.photos figure { flex: 0 1 15rem; margin: 0; }
.photos img, .photos svg { display: block; width: 100%; max-height: 16rem; height: auto; object-fit: contain; }
.placed { max-width: 26rem; }
.piece-drawing .drawn-area path:first-child { fill: #f1f3f4; }
.piece-drawing .drawn-detail path, .piece-drawing .drawn-hidden path { stroke: #767b80; stroke-width: 1; }
.piece-drawing .drawn-hidden path { stroke-dasharray: 4 4; }
.piece-drawing .drawn-copper { stroke: none; }
.place-mark circle { fill: #fff; stroke: #1b1f23; }
.place-mark text { font: bold 11px sans-serif; }
`;

/** The photos shown, by the address of each: the content policy lets nobody fetch them by it. */
const blobs = new Map();

/** An element that shows photos. Their addresses are given back when it goes or draws anew. */
class WithPhotos extends HTMLElement {
  #shown = [];

  disconnectedCallback() {
    this.letGo();
  }

  address(blob) {
    const address = URL.createObjectURL(blob);
    this.#shown.push(address);
    blobs.set(address, blob);
    return address;
  }

  letGo() {
    for (const address of this.#shown.splice(0)) {
      URL.revokeObjectURL(address);
      blobs.delete(address);
    }
  }
}

/** Photos on a sheet, and what to say of those that are not at hand. */
class SheetPhotos extends WithPhotos {
  static observedAttributes = ["case", "keys", "marks"];
  #turn = 0;

  connectedCallback() {
    this.#draw();
  }

  attributeChangedCallback() {
    if (this.isConnected) this.#draw();
  }

  async #draw() {
    this.#turn += 1;
    const turn = this.#turn;
    const keys = this.getAttribute("keys").split(" ");
    const found = await Promise.all(keys.map((key) => photoAt(this.getAttribute("case"), key).catch(() => undefined)));
    if (turn !== this.#turn || !this.isConnected) return;
    this.letGo();
    const caption = this.getAttribute("caption");
    const marks = placesIn(this.getAttribute("marks") ?? "");
    const figures = found.filter(Boolean).map((photo) => {
      const address = this.address(photo.blob);
      const name = `${caption}, ${photo.on}`;
      const image = marks.length ? marked(photo, address, marks, name) : make("img", { src: address, alt: name, width: photo.width, height: photo.height });
      return make("figure", {}, [image, make("figcaption", {}, name)]);
    });
    const missing = found.length > figures.length ? [make("p", { class: "hint" }, this.getAttribute("missing"))] : [];
    this.replaceChildren(...figures, ...missing);
  }
}

/** Photos of one thing: taken in, shown, removed, and counted on. */
class PartPhotos extends WithPhotos {
  static observedAttributes = ["pieces", "shows"];
  #turn = 0;

  connectedCallback() {
    this.#turn += 1;
    this.#draw();
  }

  disconnectedCallback() {
    this.#turn += 1;
    super.disconnectedCallback();
  }

  attributeChangedCallback(name, was, now) {
    if (!this.isConnected || was === now) return;
    // Lists keep their focus; only how many pieces there are draws them anew.
    if (name === "pieces") this.#draw();
    for (const list of this.querySelectorAll("select")) list.value = this.#shownBy(list.dataset.key);
  }

  get #case() {
    return this.getAttribute("case");
  }

  /** The photos that are said to show each of several pieces. */
  get #shows() {
    return (this.getAttribute("shows") ?? "").split(",").map(numbers);
  }

  /** The number of the piece that a photo shows, as text; empty where none is said. */
  #shownBy(key) {
    const at = this.#shows.findIndex((keys) => keys.includes(key));
    return at < 0 ? "" : String(at + 1);
  }

  /** Writes that a photo shows this piece and no other; none where it is empty. */
  #say(key, piece) {
    this.#shows.forEach((keys, at) => {
      const is = String(at + 1) === piece;
      if (keys.includes(key) === is) return;
      const left = is ? [...keys, key] : keys.filter((other) => other !== key);
      tell(`pieces.each[no=${at + 1}].photos`, left.join(" "));
    });
  }

  /** A list of the pieces for a photo of several. */
  #which(key, name) {
    const pieces = (this.getAttribute("pieces") ?? "").split(",").filter(Boolean);
    if (!pieces.length) return [];
    const now = this.#shownBy(key);
    const options = [ANY_PIECE, ...pieces].map((label, at) => option(at ? String(at) : "", label, now));
    const list = make("select", { "aria-label": `${SHOWS}: ${name}`, "data-key": key }, options);
    list.addEventListener("change", () => this.#say(key, list.value));
    return [make("p", { class: "hint" }, SHOWS), list];
  }

  get #part() {
    return this.getAttribute("part");
  }

  async #draw(say = "") {
    const turn = this.#turn;
    const status = make("p", { "data-said": "", class: "hint" }, say);
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
      photos = await photosUnder(this.#case, this.#part);
    } catch {
      photos = [];
      status.textContent = "Photos cannot be kept in this browser: its storage is closed to this page. The record itself is not affected.";
    }
    if (turn !== this.#turn) return;
    this.letGo();
    const list = make("ul", { class: "photos" }, photos.map((photo, at) => this.#line(photo, at)));
    this.replaceChildren(field, ...(photos.length ? [list] : []));
  }

  #line(photo, at) {
    const address = this.address(photo.blob);
    const name = `Photo ${at + 1} of the ${this.getAttribute("name")}, ${photo.on}`;
    const image = make("img", { src: address, alt: name, width: photo.width, height: photo.height });
    const count = button("Count bare metal on it", () => this.#count(photo, address, name), "quiet");
    const drop = button("Remove this photo", async () => {
      await removePhoto(this.#case, photo.key);
      this.#say(photo.key, "");
      await this.#log();
      this.#draw("The photo is removed.");
    }, "quiet");
    return make("li", {}, [image, make("p", { class: "hint" }, `Taken in on ${leavewellLocale.day(photo.on)}`), ...this.#which(photo.key, name), make("p", { class: "buttons" }, this.hasAttribute("points") ? [count, drop] : [drop])]);
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
      await keepPhoto(this.#case, this.#part, made);
    } catch {
      status.textContent = "There is no room to keep the photo in this browser. Remove others, or keep it elsewhere. Nothing else is changed.";
      return;
    }
    await this.#log();
    // A photo taken in while the fields speak of one piece shows that piece.
    if (Number(this.getAttribute("now"))) this.#say(`${this.#part}/${made.at.toString(36)}`, this.getAttribute("now"));
    if (turn === this.#turn) this.#draw("The photo is kept.");
  }

  /** Writes the list of photos into the record. */
  async #log() {
    const photos = await photosUnder(this.#case, this.#part);
    // A work goes by an id, which it gets with its first photo.
    const first = this.getAttribute("first");
    if (first) tell(first, this.getAttribute("first-text"));
    tell(this.getAttribute("path") ?? `parts[part=${this.#part}].photos`, photos.map((photo) => photo.key.split("/")[1]).join(" "));
  }

  #count(photo, address, name) {
    const states = new Array(COLUMNS * ROWS).fill(0);
    const said = make("p", { "data-said": "", class: "hint" });
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
    this.replaceChildren(
      make("p", { class: "hint" }, [
        "Look at what lies under the middle of each ring. Press once where it is bare metal, twice where it is not this part, three times to take it back. ",
        "With a keyboard: arrows move, the space bar presses.",
      ]),
      make("div", { class: "point-photo" }, [make("img", { src: address, alt: name, width: photo.width, height: photo.height }), grid]),
      said,
      make("p", { class: "buttons" }, [use, button("Back without counting", () => this.#draw(), "quiet")]),
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
}

/** Where faults are: a list, and a drawing or photo to show one on. */
class FaultPlaces extends WithPhotos {
  static observedAttributes = ["data", "part"];
  #open = false;
  #said = "";

  connectedCallback() {
    this.#list();
  }

  attributeChangedCallback(name, was, now) {
    if (!this.isConnected || was === now) return;
    // A place being shown stays as it is while the record changes; another part puts it away.
    if (name === "part") this.#open = false;
    if (!this.#open) this.#list();
  }

  get #data() {
    return JSON.parse(this.getAttribute("data"));
  }

  get #part() {
    return this.#data.parts.find(({ id }) => id === this.getAttribute("part"));
  }

  #list() {
    this.#open = false;
    this.letGo();
    const { spots, parts, piece } = this.#data;
    const part = this.#part;
    const name = (id) => parts.find((known) => known.id === id)?.name ?? id;
    const lines = spots.map((spot) => {
      const where = spot.x === "" ? WORDS.inWords : spot.photo ? WORDS.atPhoto : WORDS.atDrawing;
      const text = `${spot.label}${Number(spot.count) > 1 ? ` (${spot.count})` : ""}, ${name(spot.part)}, ${where}${spot.note && `: ${spot.note}`}`;
      const change = button(WORDS.change, () => this.#show(spot, spot.photo), "quiet", `${WORDS.change}: ${text}`);
      const remove = button(WORDS.remove, () => {
        tell(spot.path, "");
        this.#said = WORDS.removed;
        this.#focusTitle();
      }, "quiet", `${WORDS.remove}: ${text}`);
      return make("li", {}, [
        make("p", {}, text),
        ...(spot.problem ? [make("p", { class: "problem" }, spot.problem)] : []),
        make("p", { class: "buttons" }, [change, remove]),
      ]);
    });
    const fresh = (photo) => ({ part: part.id, path: `parts[part=${part.id}].spots[id=e${Date.now().toString(36)}]`, fault: "", count: "", x: "", y: "", note: "", photo });
    const photos = [
      ...numbers(part.photos).map((number, at) => [`${part.id}/${number}`, at + 1, part.name]),
      ...numbers(piece).map((number, at) => [`piece/${number}`, at + 1, WORDS.wholePiece]),
    ];
    const ways = [
      button(filled(WORDS.onDrawing, part.name), () => this.#show(fresh(""), ""), ""),
      ...photos.map(([key, at, of]) => button(filled(WORDS.onPhoto, at, of), () => this.#show(fresh(key), key), "quiet")),
    ];
    this.replaceChildren(
      make("h2", { tabindex: "-1" }, WORDS.title),
      make("p", { class: "hint" }, WORDS.means),
      ...(lines.length ? [make("ol", { class: "places" }, lines)] : []),
      make("p", { class: "buttons" }, ways),
      make("p", { "data-said": "", class: "hint" }, this.#said),
    );
    this.#said = "";
  }

  #focusTitle() {
    this.#open = false;
    this.#list();
    this.querySelector("h2").focus();
  }

  /** The drawing or photo with a cross on it, and the fields of one place. */
  async #show(spot, key) {
    this.#open = true;
    const { faults, spots } = this.#data;
    const photo = key ? await photoAt(this.getAttribute("case"), key).catch(() => undefined) : undefined;
    if (key && !photo) {
      this.#said = WORDS.photoMissing;
      this.#focusTitle();
      return;
    }
    this.letGo();
    const [width, height] = photo ? [photo.width, photo.height] : [400, 300];
    const picture = photo
      ? svg("svg", { viewBox: `0 0 ${width} ${height}`, class: "piece-drawing" }, [svg("image", { href: this.address(photo.blob), width, height })])
      : document.getElementById("piece-drawing").cloneNode(true);
    for (const element of [picture, ...picture.querySelectorAll("[id]")]) if (element.id) element.id += "-places";
    for (const name of ["aria-labelledby", "role"]) picture.removeAttribute(name);
    picture.setAttribute("aria-hidden", "true");
    const others = spots.filter((other) => other.path !== spot.path && other.photo === key && other.x !== "");
    picture.append(...others.map((other, at) => dot(width, height, [at + 1, Number(other.x), Number(other.y)])));
    const cross = svg("path", { class: "place-cross" });
    picture.append(cross);
    const fields = {
      fault: make("select", {}, faults.map(({ id, label }) => option(id, label, spot.fault))),
      count: typed("numeric", spot.count || "1"),
      x: typed("decimal", spot.x || "50"),
      y: typed("decimal", spot.y || "50"),
      note: typed("", spot.note),
    };
    const within = (value) => Math.min(100, Math.max(0, value));
    const draw = () => {
      const [x, y] = [fields.x, fields.y].map((field, at) => (within(Number.parseFloat(field.value) || 0) / 100) * [width, height][at]);
      const arm = width / 24;
      cross.setAttribute("d", `M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`);
    };
    const move = (x, y) => {
      fields.x.value = String(Math.round(10 * within(x)) / 10);
      fields.y.value = String(Math.round(10 * within(y)) / 10);
      draw();
    };
    const box = make("div", { class: "place-picture", tabindex: "0", role: "group", "aria-label": WORDS.picture }, [picture]);
    box.addEventListener("click", (event) => {
      const area = picture.getBoundingClientRect();
      move(((event.clientX - area.left) / area.width) * 100, ((event.clientY - area.top) / area.height) * 100);
    });
    box.addEventListener("keydown", (event) => {
      const step = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] }[event.key];
      if (!step) return;
      event.preventDefault();
      const by = event.shiftKey ? 10 : 1;
      move((Number.parseFloat(fields.x.value) || 0) + by * step[0], (Number.parseFloat(fields.y.value) || 0) + by * step[1]);
    });
    fields.x.addEventListener("input", draw);
    fields.y.addEventListener("input", draw);
    const labelled = (name, unit = "") => {
      fields[name].id = `place-${name}`;
      const line = make("div", { class: "field-line" }, [fields[name], make("span", { class: "unit" }, unit)]);
      return make("div", { class: "field" }, [make("label", { for: fields[name].id }, WORDS[name]), line]);
    };
    const keep = () => {
      const text = (field) => field.value.replace(/\s+/g, " ").trim();
      const values = { fault: fields.fault.value, count: text(fields.count), photo: key, x: text(fields.x), y: text(fields.y), note: text(fields.note) };
      if (values.count === "1") values.count = "";
      tell(spot.path, Object.entries(values).map(([name, value]) => `${name}=${value}`).join("\n"));
      this.#said = WORDS.kept;
      this.#focusTitle();
    };
    this.replaceChildren(
      make("h2", { tabindex: "-1" }, WORDS.title),
      make("p", { class: "hint" }, WORDS.tap),
      box,
      make("div", { class: "side-by-side" }, [labelled("fault"), labelled("count"), labelled("x", "%"), labelled("y", "%"), labelled("note")]),
      make("p", { class: "buttons" }, [button(WORDS.keep, keep, "main"), button(WORDS.back, () => this.#focusTitle(), "quiet")]),
    );
    draw();
    box.focus();
  }
}

customElements.define("part-photos", PartPhotos);
customElements.define("sheet-photos", SheetPhotos);
customElements.define("fault-places", FaultPlaces);

// A sheet saved as a page of its own: the app asks with a "leavewell-store" event, and what the screen shows under an
// id goes into the page in its place, with photos as data.
window.addEventListener("leavewell-store", ({ detail }) => {
  if (detail.do !== "page") return;
  detail.answer = "taken";
  savePage(detail.id, detail.text);
});

async function savePage(name, text) {
  let whole = text.replace("</style>", () => `${SAVED_STYLE}</style>`);
  for (const [place, id] of text.matchAll(/<div class="shown" id="([^"]*)">[^]*?<\/div>/g)) {
    const shown = document.getElementById(id);
    const markup = shown && (await markupOf(shown));
    if (markup) whole = whole.replace(place, () => markup);
  }
  const address = URL.createObjectURL(new Blob([whole], { type: "text/html" }));
  make("a", { href: address, download: name }).click();
  URL.revokeObjectURL(address);
}

async function markupOf(shown) {
  const copy = shown.cloneNode(true);
  const originals = shown.querySelectorAll("img, image");
  for (const [at, image] of [...copy.querySelectorAll("img, image")].entries()) {
    const attribute = image.localName === "img" ? "src" : "href";
    image.setAttribute(attribute, await asData(originals[at].getAttribute(attribute)));
  }
  if (copy.localName === "figure") return written(copy);
  const box = document.createElement("div");
  box.className = "photos";
  box.append(...copy.childNodes);
  return written(box);
}

/** An element as text for a saved page, where the namespace of HTML goes without saying. */
function written(element) {
  return new XMLSerializer().serializeToString(element).replace(/ xmlns="[^"]*xhtml"/g, "");
}

function asData(address) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result);
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blobs.get(address));
  });
}

/** "1 20 35,2 4 5" as lists of number, per cent from the left and from the top. */
function placesIn(text) {
  return text.split(",").filter(Boolean).map((place) => place.split(" ").map(Number));
}

/** A photo with numbered places on it. */
function marked({ width, height }, address, marks, name) {
  return svg("svg", { viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": name }, [
    svg("image", { href: address, width, height }),
    ...marks.map((mark) => dot(width, height, mark)),
  ]);
}

/** A numbered place. It has the same size on every picture. */
function dot(width, height, [number, x, y]) {
  const scale = width / 400;
  const text = svg("text", { dy: 4, "text-anchor": "middle" });
  text.textContent = String(number);
  const at = `translate(${(x / 100) * width} ${(y / 100) * height}) scale(${scale})`;
  return svg("g", { class: "place-mark", transform: at }, [svg("circle", { r: 9 }), text]);
}

function svg(name, attributes = {}, inner = []) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  element.append(...inner);
  return element;
}

/** The numbers of photos in a field. */
function numbers(field) {
  return field.split(" ").filter(Boolean);
}

/** A field to type into: a number of this sort, or text. */
function typed(number, value) {
  return make("input", { type: "text", autocomplete: "off", value, ...(number && { class: "is-number", inputmode: number }) });
}

/** A text with its gaps filled in order. */
function filled(text, ...names) {
  return names.reduce((said, name) => said.replace("{}", String(name)), text);
}

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
