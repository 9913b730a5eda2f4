/**
 * The sentence with blanks: it asks scale.js and writes the answer into the list of ingredients and
 * into the sentences of the method. The page is complete without it. The address carries what was
 * asked, so that a shared link opens at that scale and Back undoes a change.
 */

import SAID from "../../data/said/size-size.js";
import { readTables, showDecimal } from "../amounts/amounts.js";
import { onStateChange, readState, writeState } from "./address-state.js";
import { Fraction, ONE } from "../amounts/fraction.js";
import { factsOfBatch, plainly } from "../size/finished.js";
import { Pairs } from "../size/scale-pairs.js";
import { readRecipe, scale, scaleLine, scalePart } from "../size/scale.js";
import { parseTarget } from "../size/scale-targets.js";
import { Unreadable, speaker } from "../words/said.js";

const say = speaker(SAID);
const SORTS = ["makes", "times", "fill", "have", "vessel"];

/** @param {string} tag @param {string} words @param {string} [name] */
function make(tag, words, name = "") {
  const made = document.createElement(tag);
  made.textContent = words;
  if (name) made.className = name;
  return made;
}

/** The sentence under one <stillroom-scale>; made with the book's tables. */
export class ScaleForm {
  /** @param {HTMLElement} element @param {Written} tables */
  constructor(element, tables) {
    this.element = element;
    /** @type {HTMLFormElement} */
    this.form = element.querySelector("form");
    this.tables = readTables(tables);
    this.recipe = readRecipe(JSON.parse(document.querySelector("#recipe-data").textContent).scaling);
    this.pairs = Object.fromEntries(
      [...this.form.querySelectorAll("[data-pair]")].map((pair) => [pair.dataset.pair, new Pairs(pair)]),
    );
    this.rememberSteps();
    this.stop = new AbortController();
    const { signal } = this.stop;
    this.form.addEventListener("change", (event) => this.ask(event.target), { signal });
    this.form.addEventListener("input", (event) => this.offer(event.target), { signal });
    this.form.addEventListener("reset", (event) => this.reset(event), { signal });
    this.stopListening = onStateChange((state) => this.show(state));
  }

  /** Answer no more. */
  end() {
    this.stop.abort();
    this.stopListening();
  }

  /** Offer another pair of blanks when the last is being filled. @param {any} field */
  offer(field) {
    this.pairs[field.closest("[data-sort]")?.dataset.sort]?.offer();
  }

  /** @param {string} name @returns {any} */
  find(name) {
    return this.element.querySelector(`[data-scale="${name}"]`);
  }

  /** @param {string} name @returns {any} */
  field(name) {
    return this.form.elements.namedItem(name);
  }

  rememberSteps() {
    /** @type {any[]} */
    this.steps = [...document.querySelectorAll(".step-amount[data-ingredient]")].map((place) => ({
      place,
      line: this.recipe.lines[Number(place.dataset.ingredient)],
      part: this.readPart(place),
    }));
  }

  /** @param {HTMLElement} place @returns {LinePart | null} */
  readPart(place) {
    if (!place.dataset.part) return null;
    const part = JSON.parse(place.dataset.part);
    const written = place.querySelector(".amount").textContent;
    return { ...part, low: Fraction.parse(part.low), high: Fraction.parse(part.high), written };
  }

  /** @param {Event} event */
  reset(event) {
    event.preventDefault();
    writeState({ ...Object.fromEntries(SORTS.map((sort) => [sort, ""])), units: "", by: "" });
    this.show({});
  }

  /** A blank was filled in: it decides, unless it cannot be read; then the words say why. @param {any} field */
  ask(field) {
    const { sort } = field.closest("[data-sort]").dataset;
    const state = this.pickState(readState());
    if (sort === "measures") {
      const { system } = this.recipe;
      state.units = this.field("units").value === system ? "" : this.field("units").value;
      state.by = this.field("by").value === "written" ? "" : this.field("by").value;
    } else {
      const text = this.textOf(sort);
      if (text === null) return; // half a sentence: wait for the rest
      for (const other of SORTS) state[other] = other === sort ? text : "";
    }
    if (this.show(state, sort)) writeState(state);
  }

  /** @param {Texts} state */
  pickState(state) {
    return Object.fromEntries([...SORTS, "units", "by"].map((name) => [name, state[name] ?? ""]));
  }

  /**
   * What a sentence says as one text; null while a pair of blanks is half filled.
   * @param {string} sort
   * @returns {string | null}
   */
  textOf(sort) {
    return this.pairs[sort] ? this.pairs[sort].text() : this.field(sort).value.trim();
  }

  /**
   * Scale to a state and show it; returns false, with the words beside the blank, when it cannot be.
   * @param {Texts} state
   * @param {string} [asked]
   */
  show(state, asked = "") {
    const sort = SORTS.find((name) => state[name]) ?? "";
    const measures = this.measuresOf(state);
    this.clearWrong();
    try {
      /** @type {Target} */
      const target = sort
        ? parseTarget(sort, state[sort], measures.system, this.tables)
        : { sort: "times", factor: ONE };
      const batch = scale(this.recipe, target, measures, this.tables);
      this.fillBlanks(state, sort, batch, measures);
      this.writeLines(batch);
      this.writeSteps(batch, measures);
      this.tell(batch);
      this.tellFacts(factsOfBatch(this.recipe, batch, measures, this.tables));
      return true;
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      this.say(asked || sort, error.message);
      return false;
    }
  }

  /** @param {Texts} state */
  measuresOf(state) {
    /** @param {string} name @param {string} value */
    const offers = (name, value) => [...this.field(name).options].some((option) => option.value === value);
    return {
      system: offers("units", state.units) ? state.units : this.recipe.system,
      by: offers("by", state.by) ? state.by : "written",
    };
  }

  /** @param {Texts} state @param {string} sort @param {Batch} batch @param {Measures} measures */
  fillBlanks(state, sort, batch, measures) {
    this.field("units").value = measures.system;
    this.field("by").value = measures.by;
    for (const [own, pairs] of Object.entries(this.pairs)) {
      pairs.show(own === sort ? state[own] : "", this.recipe.lines);
    }
    if (this.field("vessel")) this.field("vessel").value = sort === "vessel" ? state.vessel : "";
    this.field("makes").value = sort === "makes" ? state.makes : plainly(batch.makes);
    this.field("times").value = sort === "times" ? state.times : showDecimal(batch.factor);
    for (const sentence of this.form.querySelectorAll("[data-sort]")) {
      sentence.classList.toggle("deciding", sentence.dataset.sort === sort);
    }
    const other = ["times", "vessel"].includes(sort) || state.units || state.by;
    if (other) this.find("more").open = true;
    this.form.querySelector("[type=reset]").hidden = !sort && !state.units && !state.by;
  }

  /** @param {Batch} batch */
  writeLines(batch) {
    for (const [place, line] of batch.lines.entries()) {
      const row = document.querySelector(`[data-line="${place}"]`);
      if (!row) continue;
      row.querySelector("[data-amount]").textContent = line.amount_text;
      row.querySelector("[data-item]").textContent = line.item_text;
      row.classList.toggle("does-not-hold", !line.holds);
      for (const [name, words] of [["aside", line.aside], ["why", line.why]]) {
        const note = row.querySelector(`[data-${name}]`);
        note.textContent = words ? ` (${words})` : "";
        note.hidden = !words;
      }
      if (line.note) row.querySelector("[data-note]").textContent = `, ${line.note}`;
    }
  }

  /** @param {Batch} batch @param {Measures} measures */
  writeSteps(batch, measures) {
    for (const { place, line, part } of this.steps) {
      if (line.scales === "per container") continue; // it says what goes into one
      const { factor, containers } = batch;
      const shown = part
        ? { item_text: "", amount_text: scalePart(this.recipe, line, part, factor, containers, measures, this.tables) }
        : scaleLine(this.recipe, line, factor, containers, measures, this.tables);
      place.querySelector(".amount").textContent = shown.amount_text;
      if (!part) place.querySelector(".step-name").textContent = shown.item_text;
    }
  }

  /** @param {Batch} batch */
  tell(batch) {
    const makes = say("makes", { makes: batch.makes_in_full });
    const answer = batch.scarcest ? `${makes} ${say("runs_short", { item: batch.scarcest })}` : makes;
    this.stillShown = batch.makes_in_full;
    if (this.find("answer").textContent !== answer) this.find("answer").textContent = answer;
    const told = [...batch.warnings, ...batch.left.map((left) => say("left_over", { left: this.sayLeft(left) }))];
    if (batch.fit) {
      told.push(say("comes_out_whole", { makes: batch.fit_makes, times: showDecimal(batch.fit) }));
    }
    told.push(...batch.notes);
    this.find("told").replaceChildren(...told.map((words) => make("li", words)));
    this.find("told").hidden = !told.length;
    const strip = document.querySelector('[data-fact="makes"] dd');
    if (strip) strip.textContent = batch.makes_in_full;
  }

  /**
   * What the batch comes to: the brief facts in a line, all of them with how they are reckoned.
   * @param {Fact[]} facts
   */
  tellFacts(facts) {
    this.find("comes-to")?.replaceChildren(...facts.filter(({ brief }) => brief).map((fact) => {
      const entry = make("div", "");
      entry.append(make("dt", fact.name, "label"), make("dd", fact.text));
      return entry;
    }));
    this.find("reckoned")?.replaceChildren(...facts.flatMap((fact) => {
      const told = make("dd", `${fact.text} `);
      told.append(make("span", fact.how, "aside"));
      return [make("dt", fact.name), told];
    }));
  }

  /** @param {LeftOver} left */
  sayLeft({ item, amount, unit }) {
    if (unit) {
      return say("left_measured", { amount: showDecimal(amount), unit: this.tables.units[unit].shown, item });
    }
    const line = /** @type {ScaleLine} */ (this.recipe.lines.find((one) => one.item === item));
    const whole = amount.floor(); // of counted things only whole ones remain
    return say("left_counted", { count: whole, item: whole === 1n ? line.one : line.many });
  }

  /** @param {string} sort @param {string} words */
  say(sort, words) {
    const still = this.stillShown ?? document.querySelector('[data-fact="makes"] dd')?.textContent.trim();
    this.find("answer").textContent = say("still_showing", { words, makes: still });
    const place = this.element.querySelector(`[data-wrong="${sort}"]`);
    if (!place) return;
    place.textContent = words;
    place.hidden = false;
    for (const field of place.closest("[data-sort]").querySelectorAll("input")) {
      field.setAttribute("aria-invalid", "true");
      field.setAttribute("aria-describedby", place.id);
    }
  }

  clearWrong() {
    for (const place of this.element.querySelectorAll("[data-wrong]")) place.hidden = true;
    for (const field of this.form.querySelectorAll("[aria-invalid]")) {
      field.removeAttribute("aria-invalid");
      field.removeAttribute("aria-describedby");
    }
  }
}
