// <stillroom-print-room>: choose what to print, see the sheets, print them. Nothing typed here
// leaves the browser; the choices are kept in sessionStorage until the window closes. What lays the
// sheets (print-room-sheets.js) is fetched with the first choice.

import SAID from "../../data/said/pages-print.js";
import { Unreadable, speaker } from "../words/said.js";
import { keepChoices, restoreChoices } from "./kept-choices.js";
import { fitPreview } from "./preview-zoom.js";

const say = speaker(SAID);

export class StillroomPrintRoom extends HTMLElement {
  /** @type {any} what stops the form */
  listening;

  /** @type {any} the promise of what lays the sheets */
  fetching;

  /** @type {any} what lays the sheets, once fetched */
  layer;

  /** @type {any} the sheets of what is chosen */
  laid;

  /** @type {any} how they are shown */
  zoom;

  /** whether the cards lie in files of their own */
  isLong = false;

  /** @type {HTMLInputElement[]} the fields of those that could not be fetched */
  missing = [];

  connectedCallback() {
    /** @type {HTMLFormElement} */
    this.form = this.querySelector(".print-room-form");
    if (!this.form) return;
    /** @type {PaperData} */
    this.paperData = JSON.parse(this.querySelector(".paper-data").textContent);
    this.cards = this.querySelector(".print-room-cards");
    this.isLong = this.form.querySelector("[data-card]") !== null;
    this.preview = this.querySelector(".print-room-preview");
    this.words = this.querySelector(".print-room-words");
    this.status = this.querySelector(".print-room-status");
    this.zoom = fitPreview(this.preview, () => this.laid?.paper.width ?? 210);
    this.listening = new AbortController();
    const { signal } = this.listening;
    this.form.addEventListener("input", (event) => this.changed(event), { signal });
    this.form.addEventListener("submit", (event) => this.print(event), { signal });
    for (const button of this.form.querySelectorAll("[data-each]")) {
      button.addEventListener("click", () => this.setEach(button.dataset.each), { signal });
    }
    restoreChoices(this.form);
    this.chooseFromAddress();
    this.begin();
  }

  // The faces are measured in the book's own type: a face not yet shown anywhere is not yet loaded.
  async begin() {
    const faces = Promise.allSettled([...document.fonts].map((face) => face.load()));
    if (this.anythingChosen()) await this.fetchSheets();
    await faces;
    if (!this.isConnected) return;
    this.form.addEventListener("focusin", () => this.fetchSheets(), { signal: this.listening.signal });
    this.form.hidden = false;
    this.refresh();
  }

  disconnectedCallback() {
    this.listening?.abort();
    this.zoom?.stop();
    this.layer?.stop();
  }

  /** Fetch what lays the sheets, once, and the chosen cards of a long book; until then nothing can be
   * seen of them. */
  async fetchSheets() {
    this.fetching ??= import("./print-room-sheets.js").then(({ SheetLayer }) => {
      this.layer = new SheetLayer(this.form, this.cards, this.paperData, () => this.choose());
    });
    await this.fetching;
    if (!this.isLong) return;
    const { bringCards } = await import("./fetched-cards.js");
    this.missing = await bringCards(this.form, this.cards);
  }

  // "?recipe=quince-ratafia&count=8" comes from a recipe's page
  chooseFromAddress() {
    const asked = new URLSearchParams(location.search);
    const input = this.form.querySelector(`[data-recipe="${CSS.escape(asked.get("recipe") ?? "")}"]`);
    if (input) input.value = asked.get("count") ?? "8";
  }

  anythingChosen() {
    return [...this.form.querySelectorAll("[data-recipe]")].some(
      ({ value, validity }) => Number(value) !== 0 || validity.badInput,
    );
  }

  /** @param {string} count */
  setEach(count) {
    for (const field of this.form.querySelectorAll("[data-recipe]")) field.value = count;
    this.choose();
  }

  /** @param {Event} event */
  changed({ target }) {
    const { own, cut, find } = this.form.elements;
    if (find && target === find) {
      import("./fetched-cards.js").then(({ findTitles }) => findTitles(this.form, find.value));
      return;
    }
    if (target === own) cut.checked = !own.checked; // bought labels are cut already
    this.choose(target);
  }

  /** @param {EventTarget | null} [target] */
  async choose(target = null) {
    if (!this.layer || this.isLong) {
      this.preview.setAttribute("aria-busy", "true");
      await this.fetchSheets();
      this.preview.removeAttribute("aria-busy");
    }
    if (this.isConnected) this.refresh(target);
  }

  /** @param {any} [target] the field that was changed */
  refresh(target = null) {
    const { thing } = this.form.elements;
    for (const [name, shown] of [["card", "card"], ["round", "round"], ["wrap", "wrap"]]) {
      for (const part of this.form.querySelectorAll(`.for-${name}`)) part.hidden = thing.value !== shown;
    }
    keepChoices(this.form);
    this.laid = null;
    try {
      if (this.missing.length > 0) this.refuseMissing();
      if (this.layer) this.laid = this.layer.lay(target);
      this.say(this.laid?.words ?? say("choose"));
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      this.say(error.message);
    }
    this.preview.replaceChildren();
    this.cards.hidden = true; // only what is chosen is shown
    this.words.hidden = !(this.laid?.sheets.childElementCount > 0);
    if (!this.words.hidden) this.preview.append(this.layer.shown(this.laid.sheets));
    this.words.lastElementChild.replaceChildren(...(this.words.hidden ? [] : this.laid.spoken));
    this.zoom.fit();
  }

  refuseMissing() {
    const titles = this.missing.map((field) => field.dataset.title).join(", ");
    throw say.refuse("not_fetched", { titles });
  }

  /** @param {string} words */
  say(words) {
    if (this.status.textContent !== words) this.status.textContent = words;
  }

  /** @param {Event} event */
  async print(event) {
    event.preventDefault();
    await this.fetchSheets();
    this.refresh();
    if (this.laid?.sheets.childElementCount > 0) this.layer.print(this.laid);
    else this.form.querySelector("[data-recipe]").focus();
  }
}
