// The visible side of storage: importing and exporting files, the bin, changes, and what to do if something cannot
// be stored.
//
//   <shelf-keeping>            on the shelf: open files, save everything, the state of the storage, the bin
//   <kept-notices>             on every screen: messages about storage
//   <record-changes case="…">  the changes to a record since it was opened
//
// Text from a file always stays text and never becomes markup. The worker reads files and compares records; numbers
// keep the digits they were written with.

// On one line, because the single-file edition reads imports line by line.
import { binned, flush, hasStopped, isBinned, keepBoth, listed, newId, openClash, openPiece, openedText, putAll, putBack, removeForGood, revisionOf, settleClash, standing, tell, tellChange, textOf } from "./kept.js";
import { button, make, notice, option } from "./make.js";
import { photosOf, putPhoto } from "./photos.js";

const LARGEST_FILE = 400 * 1024 * 1024;
const MOST_SHOWN = 40;

// ---- the worker -----------------------------------------------------------------------------------------

/** Asks the worker one of the questions open to scripts; promises the parsed answer. */
export function ask(name, text) {
  return new Promise((resolve, reject) => {
    const answered = ({ answer, failure }) => {
      if (answer === undefined) reject(new Error(failure));
      else resolve(JSON.parse(answer));
    };
    window.dispatchEvent(new CustomEvent("leavewell-question", { detail: { name, text, answered } }));
  });
}

/** A question as text. It contains the records exactly as written. */
async function compare(parts) {
  const fields = Object.entries(parts).filter(([, value]) => value !== undefined && value !== "");
  const answer = await ask("compare", `{${fields.map(([name, value]) => `"${name}":${value}`).join(",")}}`);
  if (answer.failure) throw new Error(answer.failure);
  return answer;
}

// ---- files out ------------------------------------------------------------------------------------------

/** Offers a text, given in parts, as a file. */
function download(name, parts) {
  const address = URL.createObjectURL(new Blob(parts, { type: "application/json" }));
  const link = make("a", { href: address, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

function today() {
  const now = new Date();
  const two = (n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Every piece on the shelf, or those with these ids, with its photos, as the parts of one file. */
async function wholeShelf(ids) {
  const sum = [];
  const pieces = listed().filter(({ id }) => !ids || ids.includes(id));
  const cases = pieces.map(({ id, text, revision }) => {
    sum.push(`${id}\n${text}\n`);
    const held = readable(text) ? `"case":${text}` : `"unread":${JSON.stringify(text)}`;
    return `{"id":${JSON.stringify(id)},"revision":${revision},${held}}`;
  });
  const photos = [];
  for (const { id, text } of pieces) {
    if (!text.includes('"photos"')) continue;
    for (const { blob, key, on, width, height } of await photosOf(id).catch(() => [])) {
      const data = await dataAddress(blob);
      sum.push(`${id}\n${key}\n${data}\n`);
      photos.push(JSON.stringify({ case: id, key, on, width, height, data }));
    }
  }
  const checksum = await sha256(sum.join(""));
  const head = `{"format":"leavewell-shelf","version":1,"saved_on":"${today()}",${checksum ? `"checksum":"${checksum}",` : ""}`;
  return [`${head}"cases":[\n`, cases.join(",\n"), `\n],"photos":[\n`, photos.join(",\n"), "\n]}\n"];
}

function readable(text) {
  try {
    const { format, version } = JSON.parse(text);
    return format === "leavewell-case" && (version === 1 || version === 2);
  } catch {
    return false;
  }
}

function nameIn(text) {
  try {
    return String(JSON.parse(text).piece.name);
  } catch {
    return "";
  }
}

function dataAddress(blob) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result);
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

function blobOf(address) {
  const [head, data] = address.split(",", 2);
  const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
  return new Blob([bytes], { type: head.slice(5).split(";")[0] });
}

/** The digest of a text; empty if the browser cannot compute one. */
async function sha256(text) {
  if (!globalThis.crypto?.subtle) return "";
  const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return `sha256:${[...new Uint8Array(sum)].map((byte) => byte.toString(16).padStart(2, "0")).join("")}`;
}

const SHELF_NAME = () => `shelf-${today()}.leavewell.json`;

async function saveShelf(ids) {
  download(SHELF_NAME(), await wholeShelf(ids));
}

window.addEventListener("leavewell-save", ({ detail }) => saveShelf(detail));

// ---- on the shelf ---------------------------------------------------------------------------------------

class ShelfKeeping extends HTMLElement {
  #said;
  #preview;
  #facts;
  #bin;
  #binHolds = null;
  #place = null;
  #redraw = () => this.#draw();

  connectedCallback() {
    const input = make("input", { id: "file", type: "file", accept: ".json,application/json", "aria-describedby": "file-hint" });
    input.addEventListener("change", () => {
      const [file] = input.files;
      // Clearing the value lets a person choose the same file again.
      input.value = "";
      if (file) this.#open(file);
    });
    this.#said = make("p", { "data-said": "" });
    this.#preview = make("div", { class: "preview" });
    this.#facts = make("div");
    this.#bin = make("div");
    this.#binHolds = null;
    const field = make("div", { class: "field drop" }, [
      make("label", { for: "file" }, "Open a file saved by Leavewell"),
      make("p", { class: "hint", id: "file-hint" }, "A piece or a whole shelf. Choose it, or drop it here. It is read on this device; the file stays as it is."),
      input,
    ]);
    this.addEventListener("dragover", (event) => {
      event.preventDefault();
      field.classList.add("is-over");
    });
    this.addEventListener("dragleave", () => field.classList.remove("is-over"));
    this.addEventListener("drop", (event) => {
      event.preventDefault();
      field.classList.remove("is-over");
      const [file] = event.dataTransfer.files;
      if (file) this.#open(file);
    });
    const buttons = make("p", { class: "buttons" }, [button("Save the whole shelf as a file", () => this.#save())]);
    if (globalThis.showSaveFilePicker) buttons.append(button("Choose where to save it", () => this.#saveAt(), "quiet"));
    const save = make("div", {}, [
      make("h3", {}, "Save everything"),
      make("p", { class: "hint" }, "Every piece with its photos, in one file with a checksum. Keep it somewhere else than on this device."),
      buttons,
    ]);
    this.replaceChildren(field, this.#said, this.#preview, save, this.#facts, this.#bin);
    window.addEventListener("leavewell-standing", this.#redraw);
    this.#draw();
  }

  disconnectedCallback() {
    window.removeEventListener("leavewell-standing", this.#redraw);
  }

  async #draw() {
    const words = [keptWords()];
    const space = await spaceWords();
    if (space) words.push(space);
    this.#facts.replaceChildren(make("h3", {}, "How it is kept"), ...words.map((said) => make("p", {}, said)));
    const inBin = binned().map(({ id, entry, days, text }) => ({ id, days, name: entry?.name || nameIn(text) || "A piece without a name" }));
    // Rebuilt only if its content changed, so that a question a person is about to answer stays open.
    const holds = JSON.stringify(inBin);
    if (holds === this.#binHolds) return;
    this.#binHolds = holds;
    const lines = inBin.map(({ id, days, name }) => {
      const confirm = make("details", { class: "confirm" }, [
        make("summary", { "aria-label": `Remove for good: ${name}` }, "Remove for good"),
        make("p", {}, "It cannot be brought back, and its photos go with it."),
        button("Yes, remove it", async () => {
          await removeForGood(id);
          this.#say(`${name} is removed for good.`);
        }, "stop", `Yes, remove for good: ${name}`),
      ]);
      const back = button("Put back", async () => {
        await putBack(id);
        this.#say(`${name} is back on the shelf.`);
      }, "", `Put back: ${name}`);
      return make("li", { class: "shelf-line" }, [
        make("h4", {}, name),
        make("p", { class: "hint" }, days === 1 ? "It stays here for 1 more day." : `It stays here for ${days} more days.`),
        make("div", { class: "buttons" }, [back, confirm]),
      ]);
    });
    this.#bin.replaceChildren(
      make("h3", {}, "Bin"),
      make("p", { class: "hint" }, lines.length ? "After 30 days a piece in the bin is removed for good." : "Empty. What you remove stays here for 30 days."),
      make("ul", { class: "shelf" }, lines),
    );
  }

  #say(words) {
    this.#said.textContent = words;
  }

  #show(...nodes) {
    this.#preview.replaceChildren(...nodes);
  }

  async #save() {
    this.#say("Putting the file together…");
    try {
      await saveShelf();
      this.#say("The file is ready. Your browser has saved it, or asks where to.");
    } catch (reason) {
      this.#say(`The file could not be made: ${reason.message}. Nothing is changed.`);
    }
  }

  /** A file chosen once can be written again. */
  async #saveAt() {
    try {
      this.#place ??= await showSaveFilePicker({ suggestedName: SHELF_NAME(), types: [{ description: "Leavewell shelf", accept: { "application/json": [".json"] } }] });
      const file = await this.#place.createWritable();
      for (const part of await wholeShelf()) await file.write(part);
      await file.close();
      this.#say(`Saved as ${this.#place.name}. Press again to save over it later.`);
    } catch (reason) {
      this.#place = null;
      if (reason.name !== "AbortError") this.#say(`It could not be saved there: ${reason.message}. Choose another place.`);
    }
  }

  async #open(file) {
    this.#show();
    if (file.size > LARGEST_FILE) {
      this.#fail("The file is larger than 400 MB, which no shelf is.", "Choose a file that Leavewell saved. Nothing is changed.");
      return;
    }
    this.#say("Reading the file…");
    let text;
    let opened;
    try {
      text = await textOfFile(file);
      opened = await ask("open-file", text);
    } catch {
      this.#fail("The file could not be read.", "Check that it is still where it was, then choose it again.");
      return;
    }
    if (opened.refused) {
      this.#fail(opened.refused.message, `${opened.refused.remedy} Nothing on your shelf is changed.`);
      return;
    }
    this.#say("");
    const sorted = sortOut(opened.cases);
    const [only] = sorted;
    if (!opened.shelf && !opened.damage && !only.problem && only.unused.length === 0) await this.#openOne(only);
    else await this.#openMany(opened, sorted, { name: file.name, text });
  }

  #fail(what, remedy) {
    this.#say("");
    this.#show(notice(what, remedy, [button("I have read this", () => this.#show(), "quiet")]));
  }

  async #openOne(found) {
    if (found.kind === "same") {
      this.#show(notice("This piece is on your shelf already, just the same.", "Nothing is changed.", [
        button("Open it", () => tell("open", found.id)),
        button("Leave it", () => this.#show(), "quiet"),
      ]));
    } else if (found.kind === "changed") {
      const box = make("div");
      const title = `${found.name || "This piece"} is on your shelf already, and the file says something else.`;
      this.#show(notice(title, "Nothing is overwritten. Keep both, or choose field by field.", [
        button("Keep both", async () => {
          await this.#put([{ ...found, id: newId() }], []);
        }),
        button("Leave it", () => this.#show(), "quiet"),
      ]), box);
      await choices(box, { mine: textOf(found.id), theirs: found.text }, ["On the shelf", "In the file"], async (text) => {
        await this.#put([{ ...found, text }], []);
        tell("open", found.id);
      });
    } else {
      try {
        await putAll([found]);
      } catch (reason) {
        this.#fail("There is no room to keep this piece.", `Free some space on this device, then open the file again. (${reason.message})`);
        return;
      }
      tell("open", found.id);
    }
  }

  async #openMany({ shelf, damage, lost, checksum, photos }, sorted, original) {
    const notes = [];
    if (damage) notes.push(`${damage.message} What could still be read is shown below.`);
    if (lost) notes.push(lost === 1 ? "1 entry could not be made out." : `${lost} entries could not be made out.`);
    if (shelf && !damage) notes.push(await checkedWords(checksum, sorted, photos));
    const of = (kind) => sorted.filter((found) => found.kind === kind);
    const [added, changed, same] = [of("added"), of("changed"), of("same")];
    const unread = sorted.filter(({ problem }) => problem);
    const picks = new Map();
    const lists = [
      part("Will be added", added.map((found) => line(found))),
      part("On your shelf already, but different", changed.map((found) => {
        const select = make("select", { "aria-label": `What to do with ${found.name || "this piece"}` }, [
          make("option", { value: "both" }, "Keep both"),
          make("option", { value: "mine" }, "Keep what is on the shelf"),
          make("option", { value: "theirs" }, "Take what is in the file"),
        ]);
        picks.set(found.id, select);
        const box = make("div");
        const look = button("Compare", () => choices(box, { mine: textOf(found.id), theirs: found.text }, ["On the shelf", "In the file"], (text) => {
          found.made = text;
          select.append(make("option", { value: "made", selected: "" }, "Take what you chose"));
          box.replaceChildren(make("p", { "data-said": "" }, "Your choices are used when you take the file in."));
        }), "quiet", `Compare: ${found.name}`);
        return make("li", {}, [make("span", {}, found.name || "Unnamed piece"), make("div", { class: "buttons" }, [select, look]), box]);
      }), changed.length),
      part("Something in these cannot be used; it is kept as written and counts as not said", sorted
        .filter(({ unused }) => unused.length)
        .map((found) => line(found, found.unused.join(" ")))),
      part("Just the same, skipped", same.map((found) => line(found))),
      part("Cannot be read; added as they are, so that nothing is lost", unread.map((found) => line(found, found.problem.message))),
    ];
    const count = added.length + changed.length;
    const take = button(count ? "Take these in" : "Close", async () => {
      const chosen = [];
      for (const found of sorted) {
        const pick = found.kind === "changed" ? picks.get(found.id)?.value ?? "both" : found.kind;
        if (pick === "added" || pick === "theirs") chosen.push(found);
        else if (pick === "made") chosen.push({ ...found, text: found.made });
        else if (pick === "both") chosen.push({ ...found, id: newId() });
      }
      if (chosen.length) await this.#put(chosen, photos);
      else this.#show();
    }, "main");
    const buttons = [take];
    if (count) buttons.push(button("Leave it", () => {
      this.#show();
      this.#say("Nothing was taken in.");
    }, "quiet"));
    if (damage) buttons.push(button("Save the file's text as it is", () => download(`as-it-was-${original.name}`, [original.text]), "quiet"));
    const head = make("h3", { tabindex: "-1" }, "What this file would change");
    this.#show(head, ...notes.map((said) => make("p", {}, said)), ...lists.filter(Boolean), make("p", { class: "buttons" }, buttons));
    head.focus();
  }

  /** Imports pieces, with progress and a way to stop. */
  async #put(chosen, photos) {
    let stop = false;
    const bar = make("progress", { max: String(chosen.length), value: "0", "aria-label": "Pieces taken in" });
    const said = make("p", { "data-said": "" }, "Taking the pieces in…");
    const cancel = button("Stop", () => {
      stop = true;
    });
    this.#show(said, bar, make("p", { class: "buttons" }, [cancel]));
    cancel.focus();
    let whole;
    try {
      whole = await putAll(chosen, (done) => {
        bar.value = done;
        said.textContent = `${done} of ${chosen.length} taken in.`;
        return !stop;
      });
    } catch (reason) {
      this.#fail("There is no room to keep all of this.", `Nothing was taken in. Free some space on this device, then open the file again. (${reason.message})`);
      return;
    }
    try {
      if (whole) await this.#putPhotos(chosen, photos);
    } catch (reason) {
      this.#fail("The pieces were taken in, but not all of their photos: there is no room for them.", `Free some space on this device, then open the file again. (${reason.message})`);
      return;
    }
    this.#show();
    const count = chosen.length === 1 ? "1 piece was" : `${chosen.length} pieces were`;
    this.#say(whole ? `${count} taken in.` : "Stopped. Nothing was taken in; your shelf is as it was.");
  }

  async #putPhotos(chosen, photos) {
    // Of two entries with one key the first has the photos.
    const keys = new Map(chosen.map(({ id, named }) => [named, id]).reverse());
    for (const { case: of, data, ...photo } of photos) {
      const id = keys.get(of);
      if (id) await putPhoto(id, { ...photo, blob: blobOf(data) });
    }
  }
}

/** The text of a file: UTF-16 where it begins with that mark, else UTF-8. */
async function textOfFile(file) {
  const bytes = await file.arrayBuffer();
  const [first, second] = new Uint8Array(bytes, 0, Math.min(2, bytes.byteLength));
  const kind = first === 0xff && second === 0xfe ? "utf-16le" : first === 0xfe && second === 0xff ? "utf-16be" : "utf-8";
  return new TextDecoder(kind).decode(bytes);
}

/** The effect of importing each case: added, changed or same. `named` is its key in the file. */
function sortOut(cases) {
  const taken = new Map();
  return cases.map(({ id: named, ...rest }) => {
    const found = { ...rest, named };
    const id = named || listed().find(({ text }) => text === found.text)?.id || newId();
    // Of two entries with one key the second becomes a separate piece, unless it says the same.
    if (taken.has(id)) return { ...found, id: newId(), kind: taken.get(id) === found.text ? "same" : "added" };
    taken.set(id, found.text);
    const here = textOf(id);
    if (here === undefined) return { ...found, id, kind: "added" };
    // A piece in the bin stays there; the file's copy becomes a separate piece.
    if (isBinned(id)) return { ...found, id: newId(), kind: "added" };
    return { ...found, id, kind: here === found.text ? "same" : "changed" };
  });
}

async function checkedWords(checksum, cases, photos) {
  if (!checksum) return "The file names no checksum, so we cannot tell whether it has changed since it was saved.";
  const lines = cases.map(({ named, text }) => `${named}\n${text}\n`);
  const sum = await sha256([...lines, ...photos.map(({ case: of, key, data }) => `${of}\n${key}\n${data}\n`)].join(""));
  if (!sum) return "This browser cannot work out the checksum here, so the file was not checked.";
  return sum === checksum
    ? "The checksum is right: the file is as it was saved."
    : "The checksum is wrong: something in this file was changed after it was saved. Look it over before you take it in.";
}

function part(title, lines, keepAll = 0) {
  if (lines.length === 0) return null;
  const shown = keepAll ? lines : lines.slice(0, MOST_SHOWN);
  const more = lines.length - shown.length;
  return make("details", { ...(lines.length <= 10 || keepAll ? { open: "" } : {}) }, [
    make("summary", {}, `${title}: ${lines.length}`),
    make("ul", {}, more ? [...shown, make("li", {}, `and ${more} more`)] : shown),
  ]);
}

function line({ name }, more = "") {
  return make("li", {}, more ? `${name || "Unnamed piece"}: ${more}` : name || "Unnamed piece");
}

function keptWords() {
  if (standing.memory) return "This browser stores nothing for this page. Save everything as a file before you close it.";
  if (standing.persisted === true) return "In this browser only. The browser has promised not to clear it by itself.";
  if (standing.persisted === false) return "In this browser only. The browser has made no promise: it may clear this when space is short, or after a long time without a visit. Save everything as a file now and then.";
  return "In this browser only.";
}

async function spaceWords() {
  try {
    const { usage, quota } = await navigator.storage.estimate();
    return `Space used: ${size(usage)} of about ${size(quota)} that the browser allows.`;
  } catch {
    return "";
  }
}

function size(bytes) {
  const mb = bytes / 1_000_000;
  if (mb >= 1_000) return `${Math.round(mb / 100) / 10} GB`;
  return mb >= 0.1 ? `${Math.round(mb * 10) / 10} MB` : "less than 0.1 MB";
}

// ---- field by field -------------------------------------------------------------------------------------

/** Shows every difference with a choice, and calls back with the merged record. */
async function choices(box, { mine, theirs, base }, [here, there], done) {
  box.replaceChildren(make("p", { "data-said": "" }, "Comparing…"));
  let found;
  try {
    found = (await compare({ mine, theirs, base })).differences;
  } catch (reason) {
    box.replaceChildren(make("p", { class: "problem" }, `They cannot be compared: ${reason.message} Keep both instead.`));
    return;
  }
  const rows = found.map((difference, at) => {
    const name = `choice-${at}`;
    const pick = (value, label, words) => {
      const input = make("input", { type: "radio", name, value });
      input.checked = (difference.by === "theirs") === (value === "theirs");
      return make("label", { class: "radio" }, [input, make("span", {}, [make("b", {}, `${label}: `), words || "nothing"])]);
    };
    return make("fieldset", { class: "choice" }, [
      make("legend", {}, difference.name),
      make("p", { class: "hint" }, { mine: "Changed here only.", theirs: "Changed there only.", both: base ? "Changed in both places." : "" }[difference.by]),
      make("div", { class: "radios" }, [pick("mine", here, difference.mine), pick("theirs", there, difference.theirs)]),
    ]);
  });
  const form = make("form", { class: "compared" }, [
    ...rows,
    make("p", { class: "hint" }, rows.length ? "What is not listed is the same in both." : "They say the same."),
    make("p", { class: "buttons" }, [make("button", { type: "submit", class: "main" }, "Use these choices")]),
  ]);
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const chosen = new FormData(form);
    const take = found.map((_, at) => chosen.get(`choice-${at}`) === "theirs");
    const { record } = await compare({ mine, theirs, take: JSON.stringify(take) });
    await done(record);
  });
  box.replaceChildren(form);
}

// ---- on every screen --------------------------------------------------------------------------------------

class KeptNotices extends HTMLElement {
  #shown = "";
  #redraw = () => this.#draw();

  connectedCallback() {
    this.setAttribute("data-said", "");
    window.addEventListener("leavewell-standing", this.#redraw);
    this.#draw();
  }

  disconnectedCallback() {
    window.removeEventListener("leavewell-standing", this.#redraw);
  }

  #draw() {
    const clash = openClash();
    const key = JSON.stringify([standing.memory, standing.also.size > 0, standing.found, clash?.id, clash?.theirs]);
    // Rebuilt only if the messages changed, so that half-made choices stay.
    if (key === this.#shown) return;
    this.#shown = key;
    const all = [];
    if (standing.memory) {
      all.push(notice("This browser stores nothing for this page.", "You can go on, but all of it is gone when you close this tab. Save everything as a file before you do.", [
        button("Save everything as a file", () => saveShelf()),
      ]));
    }
    if (standing.found) {
      all.push(notice("A tab was closed before its last changes were kept, and the piece was changed elsewhere meanwhile.", "Both are on your shelf.", [
        button("I have read this", () => {
          standing.found = 0;
          this.#draw();
        }, "quiet"),
      ]));
    }
    if (clash) {
      const box = make("div");
      all.push(notice("This piece was changed in another tab at the same time.", "Nothing is overwritten: what you typed is safe here. Keep both, or choose field by field.", [
        button("Keep both", () => keepBoth(clash.id)),
        button("Choose field by field", () => {
          const { base, mine, theirs } = openClash() ?? clash;
          return choices(box, { base, mine, theirs }, ["Here", "Other tab"], (text) => settleClash(clash.id, text));
        }, "quiet"),
      ]), box);
    } else if (standing.also.size > 0) {
      all.push(make("p", { class: "also-open" }, "This piece is open in another tab too. Changes made there show here."));
    }
    this.replaceChildren(...all);
  }
}

// ---- what has changed -------------------------------------------------------------------------------------

class RecordChanges extends HTMLElement {
  #since = "";

  connectedCallback() {
    const fold = this.closest("details");
    fold?.addEventListener("toggle", () => fold.open && this.#draw());
    if (fold?.open) this.#draw();
  }

  attributeChangedCallback() {
    this.#since = "";
    this.replaceChildren();
    if (this.closest("details")?.open) this.#draw();
  }

  static get observedAttributes() {
    return ["case"];
  }

  async #draw() {
    const id = this.getAttribute("case");
    const mine = textOf(id);
    if (mine === undefined) return;
    let answer;
    try {
      answer = await compare(this.#since === "" ? { mine, theirs: openedText.get(id) || mine } : { mine, earlier: this.#since });
    } catch (reason) {
      this.replaceChildren(make("p", { class: "problem" }, `This cannot be compared: ${reason.message}`));
      return;
    }
    const select = make("select", { id: "since" }, [
      option("", "You opened it here", this.#since),
      ...answer.earlier.map((words, at) => option(String(at), `The record of condition kept: ${words}`, this.#since)),
    ]);
    select.addEventListener("change", () => {
      this.#since = select.value;
      this.#draw();
    });
    const rows = answer.differences.map(({ name, mine: now, theirs: before }) => make("tr", {}, [
      make("th", { scope: "row" }, name),
      make("td", {}, before || "nothing"),
      make("td", {}, now || "nothing"),
    ]));
    const head = make("thead", {}, [make("tr", {}, ["Field", "Before", "Now"].map((words) => make("th", { scope: "col" }, words)))]);
    const field = make("div", { class: "field" }, [make("label", { for: "since" }, "What has changed since"), select]);
    const again = make("p", { class: "buttons" }, [button("Compare again", () => this.#draw(), "quiet")]);
    const table = make("div", { class: "table-scroll", tabindex: "0", role: "group", "aria-label": "What has changed" }, [make("table", {}, [head, make("tbody", {}, rows)])]);
    this.replaceChildren(field, rows.length ? table : make("p", {}, "Nothing has changed."), again);
  }
}

// ---- what an undo changed -----------------------------------------------------------------------------------

const UNDONE_FOR_MS = 12_000;
let saying = 0;

window.addEventListener("leavewell-store", async ({ detail: { do: what, id: word, text: theirs, entry: mine } }) => {
  if (what !== "undone") return;
  const { differences } = await compare({ mine, theirs }).catch(() => ({ differences: [] }));
  const [first, ...others] = differences;
  const place = document.getElementById("undone");
  if (!first || !place) return;
  const more = others.length > 0 ? `, and ${others.length} more` : "";
  place.textContent = `${word}. ${first.name}: ${first.mine || "nothing said"}${more}.`;
  clearTimeout(saying);
  saying = setTimeout(() => (place.textContent = ""), UNDONE_FOR_MS);
});

// ---- when the app has stopped -------------------------------------------------------------------------------

window.addEventListener("leavewell-crash", ({ detail }) => {
  detail.seen = true;
  const id = openPiece();
  const buttons = [button("Start again", async () => {
    await flush();
    location.reload();
  }, "main")];
  if (id && textOf(id)) buttons.push(button("Save the last good record as a file", () => download("last-good-record.leavewell.json", [textOf(id)])));
  buttons.push(button("Save the whole shelf as a file", () => saveShelf(), "quiet"));
  const box = notice("Something went wrong and Leavewell has stopped.", "What you entered is kept as it was before the last step. Start again to go on.", buttons);
  box.classList.add("stopped");
  box.setAttribute("role", "alert");
  box.append(make("details", {}, [make("summary", {}, "For a report"), make("p", {}, detail.reason)]));
  document.body.prepend(box);
});

// ---- keys -----------------------------------------------------------------------------------------------

window.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || hasStopped()) return;
  const key = event.key.toLowerCase();
  const what = key === "z" ? (event.shiftKey ? "redo" : "undo") : key === "y" ? "redo" : "";
  // Inside a field, the browser's undo works on letters.
  if (!what || event.target.closest?.("input:not([type=radio], [type=checkbox], [type=file]), textarea, [contenteditable]")) return;
  event.preventDefault();
  tell(what);
});

customElements.define("shelf-keeping", ShelfKeeping);
customElements.define("kept-notices", KeptNotices);
customElements.define("record-changes", RecordChanges);
tellChange();
