/**
 * <stillroom-scale>: shows the sentence with blanks, and fetches what answers it (scale-form.js, and
 * the book's tables) when a reader comes to it or opens a link that asks for a size. The page is
 * complete without it.
 */

import { onStateChange, readState } from "./address-state.js";

const ASKED = ["makes", "times", "fill", "have", "vessel", "units", "by"];

export class ScaleElement extends HTMLElement {
  /** @type {any} the promise of what answers */
  settled;

  /** @type {any} the ScaleForm, once fetched */
  answers;

  /** @type {any[][]} the blanks that were filled meanwhile, each with its text */
  filled = [];

  connectedCallback() {
    /** @type {HTMLFormElement} */
    this.form = this.querySelector("form");
    this.stop = new AbortController();
    const listen = { signal: this.stop.signal };
    this.form.addEventListener("focusin", () => this.begin(), listen);
    this.form.addEventListener("change", (event) => this.begin(event.target), listen);
    this.form.addEventListener("submit", (event) => event.preventDefault(), listen);
    this.stopListening = onStateChange((state) => this.asked(state) && this.begin());
    this.form.hidden = false;
    this.querySelector("[data-scale=ready]").open = false;
    if (this.asked(readState())) this.begin();
  }

  disconnectedCallback() {
    this.stop?.abort();
    this.stopListening?.();
    this.answers?.end();
  }

  /** @param {Texts} state */
  asked(state) {
    return ASKED.some((name) => state[name]);
  }

  /**
   * Fetch what answers, once; the blanks that were filled meanwhile are answered when it is there.
   * @param {any} [filled]
   */
  begin(filled) {
    if (this.answers) return;
    if (filled) this.filled.push([filled, filled.value]);
    this.settled ??= this.fetchAnswers();
  }

  async fetchAnswers() {
    this.setAttribute("aria-busy", "true");
    const [{ ScaleForm }, tables] = await Promise.all([
      import("./scale-form.js"),
      fetch(new URL("../../data/amounts.json", import.meta.url)).then((answer) => answer.ok && answer.json()),
    ]);
    this.removeAttribute("aria-busy");
    if (!this.isConnected || !tables) return; // the page as written stays
    this.answers = new ScaleForm(this, tables);
    if (this.asked(readState())) this.answers.show(readState());
    // what the reader has typed meanwhile goes before what the address says
    for (const [field, value] of this.filled) {
      field.value = value; // each answer writes all blanks anew
      this.answers.ask(field);
    }
    if (this.contains(document.activeElement)) this.answers.offer(document.activeElement);
  }
}
