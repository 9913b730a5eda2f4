/**
 * Blanks that come in pairs, "3 bottles of 50 ml and 2 of 100 ml": when the last pair is filled an
 * empty one follows it, so that there are always as many as a cook wants and one more. The new blanks
 * stand next in the order of the Tab key, under names of their own.
 */

import SAID from "../../data/said/size-size.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

export class Pairs {
  /** @param {HTMLElement} first */
  constructor(first) {
    this.first = first;
    this.sort = first.dataset.pair;
    this.item = this.sort === "have";
    this.written = this.fields(first)[1].value;
  }

  all() {
    return [.../** @type {HTMLElement} */ (this.first.parentElement).querySelectorAll("[data-pair]")];
  }

  /** @param {HTMLElement} pair @returns {any[]} */
  fields(pair) {
    return [...pair.querySelectorAll("input, select")];
  }

  /** What the filled pairs say together, "" for none; null while one is half filled. */
  text() {
    const filled = this.all()
      .map((pair) => this.fields(pair).map((field) => field.value.trim()))
      .filter(([one]) => one);
    if (filled.some(([, other]) => !other)) return null;
    return filled.map(([one, other]) => (this.item ? `${one} ${other}` : `${one} x ${other}`)).join(" + ");
  }

  /** Keep one empty pair after the last filled one, and no more. */
  offer() {
    const pairs = this.all();
    const filled = pairs.findLastIndex((pair) => this.fields(pair)[0].value.trim());
    const focused = pairs.findIndex((pair) => pair.contains(document.activeElement));
    for (const pair of pairs.slice(Math.max(filled + 2, focused + 1, 1))) pair.remove();
    if (filled === pairs.length - 1) this.add();
  }

  add() {
    const place = this.all().length + 1;
    const pair = this.first.cloneNode(true);
    pair.querySelector("[data-once]")?.remove();
    pair.prepend(say("and"));
    for (const field of this.fields(pair)) {
      field.name = field.name.replace(/\d+$/, place);
      field.removeAttribute("aria-invalid");
      field.removeAttribute("aria-describedby");
      if (field.tagName === "INPUT") field.value = "";
      else field.selectedIndex = this.freeChoice(field);
      field.closest("label").querySelector(".visually-hidden").append(say("pair_number", { number: place }));
    }
    this.all().at(-1).after(pair);
    return pair;
  }

  /** The first choice that no other pair has taken. @param {HTMLSelectElement} select */
  freeChoice(select) {
    const taken = this.all().map((pair) => this.fields(pair)[1].selectedIndex);
    return Math.max([...select.options].findIndex((_, place) => !taken.includes(place)), 0);
  }

  /**
   * Show a text of the address in as many pairs as it needs.
   * @param {string} text
   * @param {ScaleLine[]} lines
   */
  show(text, lines) {
    if (this.text() === text && text) return this.offer(); // as typed: nothing under the hand is moved
    for (const pair of this.all().slice(1)) pair.remove();
    const [count, size] = this.fields(this.first);
    count.value = "";
    if (!this.item) size.value = this.written;
    const form = this.item ? haveForm(lines) : /^(\d+)\s*x\s*(.+)$/;
    for (const [place, part] of (text ? text.split(" + ") : []).entries()) {
      const found = form.exec(part);
      if (!found) continue;
      const pair = place ? this.add() : this.first;
      this.fields(pair).forEach((field, which) => { field.value = found[which + 1]; });
    }
    this.offer();
  }
}

/** @param {ScaleLine[]} lines */
function haveForm(lines) {
  const names = lines.map((line) => line.item.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^(.+?)\\s+(${names.sort((a, b) => b.length - a.length).join("|")})$`, "i");
}
