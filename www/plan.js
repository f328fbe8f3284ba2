// The settings of the plan for the whole shelf: <shelf-plan> asks for the limits, has every piece weighed, a few at
// a time, and passes the question to the app, which shows the plan.
//
// The limits are stored in localStorage, because they belong to no piece.

import { listed, tell } from "./kept.js";
import { button, make, option } from "./make.js";
import { ask } from "./shelf.js";

const KEPT = "leavewell.plan";
// Few enough that the worker is soon free for something else.
const AT_ONCE = 8;
const ASK_AFTER_MS = 150;
/** How long a plan must stay the same before screen readers announce it. */
const SAY_AFTER_MS = 1_200;
const NOTHING = { money: "", hours: "", currency: "", left_out: [], together: [] };

// id -> {text, piece}: the options of a piece, and the record they were worked out from.
const known = new Map();

function kept() {
  try {
    const { money, hours, currency, left_out, together } = { ...NOTHING, ...JSON.parse(localStorage.getItem(KEPT)) };
    const ids = (list) => (Array.isArray(list) ? list.filter((id) => typeof id === "string") : []);
    const pairs = Array.isArray(together) ? together.map(ids).filter((pair) => pair.length === 2) : [];
    return { money: String(money), hours: String(hours), currency: String(currency), left_out: ids(left_out), together: pairs };
  } catch {
    return structuredClone(NOTHING);
  }
}

/** The figures that closed pieces taught, as `src/app/platform/store.rs` keeps them; empty if none hold. */
function taught() {
  try {
    return localStorage.getItem("leavewell.taught") ?? "";
  } catch {
    return "";
  }
}

class ShelfPlan extends HTMLElement {
  #asked = kept();
  #fields = {};
  #currency;
  #work;
  #set;
  #holds = "";
  /** Counts the runs, so that a late result of an earlier run is recognised. */
  #turn = 0;
  #plans = 0;
  #timer = 0;
  #saying = 0;
  #said;
  #weighing = false;
  #stopped = false;
  #listens = () => {
    if (!this.#weighing && !this.#stopped && this.#unweighed().length) this.#weigh();
  };

  connectedCallback() {
    this.#currency = make("div");
    this.#work = make("div", { class: "preview", "data-said": "" });
    this.#set = make("div");
    this.#said = make("p", { class: "unseen", "data-said": "" });
    const fold = make("details", { class: "more" }, [make("summary", {}, "Leave pieces out, or let one wait for another"), this.#set]);
    this.replaceChildren(
      make("div", { class: "side-by-side" }, [
        this.#field("money", "Money to spend", "Leave it empty for no limit."),
        this.#field("hours", "Hours of work", "All hours at work on the pieces, whoever does it. Leave it empty for no limit."),
      ]),
      this.#currency,
      fold,
      this.#work,
      this.#said,
    );
    window.addEventListener("leavewell-standing", this.#listens);
    this.#weigh();
  }

  disconnectedCallback() {
    window.removeEventListener("leavewell-standing", this.#listens);
    clearTimeout(this.#timer);
    clearTimeout(this.#saying);
    this.#turn += 1;
    this.#plans += 1;
  }

  #field(name, label, hint) {
    const id = `plan-${name}`;
    const input = make("input", { id, class: "is-number", type: "text", inputmode: "decimal", autocomplete: "off", "aria-describedby": `${id}-hint ${id}-problem` });
    input.value = this.#asked[name];
    const problem = make("p", { class: "problem", id: `${id}-problem`, hidden: "" });
    input.addEventListener("input", () => {
      this.#asked[name] = input.value;
      this.#changed();
    });
    this.#fields[name] = { input, problem };
    return make("div", { class: "field" }, [
      make("label", { for: id }, label),
      make("p", { class: "hint", id: `${id}-hint` }, hint),
      make("div", { class: "field-line" }, input),
      problem,
    ]);
  }

  /** The pieces, each as the text of a question: the taught figures that hold, if any, before the record. */
  #pieces() {
    const before = taught();
    return listed().map(({ id, text }) => ({ id, text: before ? `${before}\n\n${text}` : text }));
  }

  /** The pieces not weighed in their present state. */
  #unweighed() {
    return this.#pieces().filter(({ id, text }) => known.get(id)?.text !== text);
  }

  /** Has the pieces weighed that were not weighed in their present state, then plans. */
  async #weigh() {
    this.#turn += 1;
    const turn = this.#turn;
    this.#stopped = false;
    this.#weighing = true;
    const left = this.#unweighed();
    const all = left.length;
    try {
      while (left.length) {
        // A few finish before a progress message could be read.
        if (all > AT_ONCE) this.#show(all - left.length, all);
        const some = left.splice(0, AT_ONCE);
        const offers = await ask("offers", JSON.stringify(some));
        for (const piece of offers) known.set(piece.id, { text: some.find(({ id }) => id === piece.id).text, piece });
        // Stopped, left, or started again; the finished results stay.
        if (turn !== this.#turn) return;
      }
      this.#work.replaceChildren();
    } catch (reason) {
      if (turn !== this.#turn) return;
      this.#say(`The pieces could not be weighed: ${reason.message}. Nothing is changed.`, button("Try again", () => this.#weigh()));
    }
    this.#weighing = false;
    await this.#plan();
  }

  #show(done, all) {
    if (!this.#work.querySelector("progress")) {
      this.#work.replaceChildren(
        make("p", {}, `Weighing ${all} pieces…`),
        make("p", { class: "buttons" }, [make("progress", { max: all, value: done, "aria-label": "Pieces weighed" }), button("Stop", () => this.#stop(), "quiet")]),
      );
    }
    this.#work.querySelector("progress").value = done;
  }

  #stop() {
    this.#turn += 1;
    this.#weighing = false;
    this.#stopped = true;
    const all = this.#pieces().length;
    this.#say(`Stopped. ${all - this.#unweighed().length} of ${all} pieces are in the plan.`, button("Go on", () => this.#weigh()));
    this.#plan();
  }

  #say(words, ...more) {
    this.#work.replaceChildren(make("p", {}, words), make("p", { class: "buttons" }, more));
  }

  #changed() {
    try {
      localStorage.setItem(KEPT, JSON.stringify(this.#asked));
    } catch {
      // It stays as long as the page.
    }
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#plan(), ASK_AFTER_MS);
  }

  async #plan() {
    this.#plans += 1;
    const now = this.#plans;
    const pieces = this.#pieces().map(({ id }) => known.get(id)?.piece).filter(Boolean);
    this.#drawSettings(pieces);
    const question = JSON.stringify({ ...this.#asked, pieces });
    let answer;
    try {
      answer = await ask("plan", question);
    } catch (reason) {
      this.#say(`The plan could not be worked out: ${reason.message}. Nothing is changed.`, button("Try again", () => this.#plan()));
      return;
    }
    if (now !== this.#plans) return;
    for (const [name, { input, problem }] of Object.entries(this.#fields)) {
      const wrong = answer.problems[name];
      problem.textContent = wrong;
      problem.hidden = !wrong;
      if (wrong) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
    // While a limit is invalid, the previous plan stays; it names the limits it used.
    if (answer.problems.money || answer.problems.hours) return;
    this.#drawCurrencies(answer);
    // The app requests the page of the same plan, which the worker has cached.
    tell("plan", "", question);
    clearTimeout(this.#saying);
    this.#saying = setTimeout(() => {
      this.#said.textContent = answer.sentence;
    }, SAY_AFTER_MS);
  }

  /** Shown only if there is more than one. */
  #drawCurrencies({ currency, currencies }) {
    if (currencies.length < 2) {
      this.#currency.replaceChildren();
      return;
    }
    if (this.#currency.querySelector("select")?.value === currency && this.#currency.querySelectorAll("option").length === currencies.length) return;
    const select = make("select", { id: "plan-currency", "aria-describedby": "plan-currency-hint" }, currencies.map(([id, words]) => option(id, words, currency)));
    select.addEventListener("change", () => {
      this.#asked.currency = select.value;
      this.#changed();
    });
    this.#currency.replaceChildren(
      make("div", { class: "field" }, [
        make("label", { for: "plan-currency" }, "Plan the pieces in"),
        make("p", { class: "hint", id: "plan-currency-hint" }, "The shelf holds more than one currency; they are not added up."),
        select,
      ]),
    );
  }

  /** The pieces left out or waiting, and the controls for them. It is rebuilt only if something changed. */
  #drawSettings(pieces) {
    const { left_out, together } = this.#asked;
    const names = new Map(pieces.map(({ id, name }) => [id, name]));
    const holds = JSON.stringify([[...names], left_out, together]);
    if (holds === this.#holds) return;
    this.#holds = holds;
    const pick = (id, label) => {
      const select = make("select", { id }, [option("", "Choose a piece", ""), ...[...names].map(([piece, name]) => option(piece, name, ""))]);
      return [select, make("div", { class: "field" }, [make("label", { for: id }, label), select])];
    };
    const [out, outField] = pick("plan-out", "Leave this piece out");
    const [first, firstField] = pick("plan-first", "Work on this piece");
    const [other, otherField] = pick("plan-other", "only if there is work on this one");
    // The focused control is rebuilt too, so its focus is restored.
    const settle = (id) => {
      this.#drawSettings(pieces);
      this.#changed();
      (id ? document.getElementById(id) : this.querySelector("summary"))?.focus();
    };
    const wrong = make("p", { class: "problem", "data-said": "", hidden: "" });
    const refuse = (words) => {
      wrong.textContent = words;
      wrong.hidden = !words;
    };
    const leaveOut = button("Leave it out", () => {
      if (!out.value) return refuse("Choose the piece to leave out first.");
      if (!left_out.includes(out.value)) left_out.push(out.value);
      return settle("plan-out");
    });
    const waits = (from, to, passed = new Set()) => {
      if (from === to || passed.has(from)) return from === to;
      passed.add(from);
      return together.some(([a, b]) => a === from && waits(b, to, passed));
    };
    const wait = button("Let it wait", () => {
      const [piece, on] = [first.value, other.value];
      if (!piece || !on) return refuse("Choose both pieces first.");
      if (piece === on) return refuse("A piece cannot wait for itself. Choose another.");
      if (waits(on, piece)) return refuse(`${names.get(on)} waits for ${names.get(piece)} already. Take that back first.`);
      if (!together.some(([a, b]) => a === piece && b === on)) together.push([piece, on]);
      return settle("plan-first");
    });
    const line = (words, list, entry) => {
      const back = () => {
        list.splice(list.indexOf(entry), 1);
        settle();
      };
      return make("li", {}, [words, " ", button("Take this back", back, "quiet", `Take this back: ${words}`)]);
    };
    // An entry for a piece that is gone stays stored and is not shown.
    const lines = [
      ...left_out.filter((id) => names.has(id)).map((id) => line(`${names.get(id)} is left out.`, left_out, id)),
      ...together.filter(([a, b]) => names.has(a) && names.has(b)).map((pair) => line(`${names.get(pair[0])} waits for ${names.get(pair[1])}.`, together, pair)),
    ];
    this.#set.replaceChildren(
      make("ul", { class: "plan-set" }, lines),
      wrong,
      make("div", { class: "side-by-side" }, [outField]),
      make("p", { class: "buttons" }, [leaveOut]),
      make("div", { class: "side-by-side" }, [firstField, otherField]),
      make("p", { class: "buttons" }, [wait]),
    );
  }
}

customElements.define("shelf-plan", ShelfPlan);
