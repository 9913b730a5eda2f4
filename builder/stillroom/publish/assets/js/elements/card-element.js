// <stillroom-card>: the usage card on a recipe's page. Names and the day typed here stand on the
// card at once, stay in this browser (sessionStorage), and go nowhere else.

import SAID from "../../data/said/pages-card.js";
import { cardFaces, measuringHolder } from "../paper/card-faces.js";
import { fitCard } from "../paper/card-fit.js";
import { LARGER, boxOfCard, impose, withId } from "../paper/paper.js";
import { laySheets, printSheets } from "../paper/sheets.js";
import { Unreadable, speaker } from "../words/said.js";
import { dress, writeCard } from "./card-words.js";
import { MOST_OF_ONE, readWhole } from "./figures.js";
import { fitPreview } from "./preview-zoom.js";
import { keptFeed, shiftOf } from "./printer-feed.js";
import { fillField, keep, kept } from "./stored.js";

const say = speaker(SAID);
const STORE = "stillroom-card-names";

// a folded card's two panels go beside each other on a wide page, under one another on a telephone
const OPENED_MM = 210;
const PANEL_MM = 105;
const WIDE_MM = 150;

export class StillroomCard extends HTMLElement {
  /** @type {any} what fitCard found */
  fit;

  /** @type {any} how it is shown, and how to stop */
  zoom;

  /** @type {any} how many are to be printed */
  copies;

  connectedCallback() {
    /** @type {HTMLFormElement} */
    this.form = this.querySelector(".card-form");
    this.card = this.querySelector(".usage-card");
    this.status = this.querySelector(".card-status");
    if (!this.form || !this.card) return;
    /** @type {PaperData} */
    this.paperData = JSON.parse(this.querySelector(".paper-data").textContent);
    /** @type {HTMLElement} */
    this.holder = measuringHolder();
    this.zoom = fitPreview(this.querySelector(".card-holder"), (room) => this.shownWidth(room));
    this.restore();
    this.listening = new AbortController();
    const { signal } = this.listening;
    this.form.addEventListener("input", () => this.update(), { signal });
    this.form.addEventListener("submit", (event) => this.print(event), { signal });
    this.form.hidden = false; // shown once it is wired: an unwired button would do nothing
    document.fonts.ready.then(() => this.isConnected && this.update());
  }

  disconnectedCallback() {
    this.listening?.abort();
    this.zoom?.stop();
    this.holder?.remove();
  }

  /** How many millimetres wide the card is shown in a place so many wide. @param {number} room */
  shownWidth(room) {
    const stacked = room < WIDE_MM;
    this.card.toggleAttribute("data-stacked", stacked);
    return stacked ? PANEL_MM : OPENED_MM;
  }

  restore() {
    const chosen = kept(STORE);
    for (const name of ["from", "paper", "design", "large"]) fillField(this.form.elements[name], chosen[name]);
  }

  update() {
    const { to, from, made, size, paper, design, large, hand, message } = this.form.elements;
    keep(STORE, { from: from.value, paper: paper.value, design: design.value, large: large.checked });
    dress(this.card, withId(this.paperData.designs, design.value), {
      large: large.checked, hand: hand.checked,
    });
    writeCard(this.card, {
      to: to.value.trim(), from: from.value.trim(), made: made.value, message: message.value.trim(), hand: hand.checked,
    });
    this.fit = this.fitFrom(size.value);
    this.zoom.fit();
    try {
      this.copies = readWhole(this.form.elements.count, say("how_many"), 1, MOST_OF_ONE);
      this.say(this.wordsOfFit());
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      this.copies = 0;
      this.say(error.message);
    }
  }

  /** Fit the card to a size; large type takes the next larger ones until one holds it. @param {string} size */
  fitFrom(size) {
    const larger = LARGER.slice(LARGER.indexOf(size));
    let fit = this.fit;
    for (const name of this.card.hasAttribute("data-large") ? larger : [size]) {
      this.card.dataset.size = name;
      fit = fitCard(this.card, this.holder);
      if (fit.fits) break;
    }
    return fit;
  }

  wordsOfFit() {
    const { size } = this.form.elements;
    const taken = this.card.dataset.size;
    const larger = taken === size.value ? "" : say("larger", { size: this.sizeOf(taken).name });
    return [larger, this.wordsOfSides()].filter(Boolean).join(" ");
  }

  /** @param {string} id */
  sizeOf(id) {
    return withId(this.paperData.sizes, id);
  }

  wordsOfSides() {
    if (!this.fit.fits) {
      return say("does_not_fit", { parts: this.fit.over.join(", ") });
    }
    if (this.fit.front === "folded") {
      return say("both_sides_and_fold");
    }
    return this.fit.sides === 2 ? say("needs_its_back") : "";
  }

  /** @param {string} words */
  say(words) {
    if (this.status.textContent !== words) this.status.textContent = words;
  }

  /** @param {Event} event */
  print(event) {
    event.preventDefault();
    this.update();
    if (!this.fit.fits || this.copies === 0) return;
    const { paper, cut } = this.form.elements;
    const grid = impose(
      withId(this.paperData.papers, paper.value),
      boxOfCard(this.sizeOf(this.card.dataset.size)),
    );
    const items = Array.from({ length: this.copies }, () => this.card);
    printSheets(laySheets(grid, items, cardFaces, { cutLines: cut.checked, shift: shiftOf(keptFeed()) }), grid.paper);
  }
}
