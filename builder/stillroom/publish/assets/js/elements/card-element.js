// <stillroom-card>: the usage card on a recipe's page. Names and the day typed here stand on the
// card at once, stay in this browser (sessionStorage), and go nowhere else.

import { fitCard } from "../paper/card-fit.js";
import { markDate, sayDate } from "../label/date-marks.js";
import { isoDay, today } from "../when/dates.js";
import { impose } from "../paper/paper.js";
import { fitPreview } from "./preview-zoom.js";
import { MOST_OF_ONE, boxOfCard, readWhole } from "./print-choices.js";
import { laySheets, printSheets } from "../paper/sheets.js";
import { fillField, keep, kept } from "./stored.js";

const STORE = "stillroom-card-names";

// a folded card's two panels go beside each other on a wide page, under one another on a telephone
const OPENED_MM = 210;
const PANEL_MM = 105;
const WIDE_MM = 150;

/** Write names and the made-on day on a card; the date mark follows by the rule of date-marks.js. */
export function writeCard(card, { to, from, made }) {
  setName(card, "to", to);
  setName(card, "from", from);
  card.querySelector(".card-names").hidden = !(to || from);
  if (!card.dataset.keeps) return;
  const keeps = JSON.parse(card.dataset.keeps);
  card.querySelector(".card-made").textContent = made ? sayDate(made, keeps.language) : "";
  const date = card.querySelector(".card-date");
  card.dataset.undated ??= date.textContent; // "Best before: 2 years from the day it was made"
  date.textContent = (made && markDate(made, keeps)?.text) || card.dataset.undated;
}

/** Propose today as the day it was made. */
export function proposeToday(form) {
  const { made } = form.elements;
  if (made.type === "date" && !made.value) made.value = isoDay(today());
}

function setName(card, which, name) {
  card.querySelector(`.card-${which}`).textContent = name;
  card.querySelector(`.card-${which}-words`).hidden = !name;
}

/** The faces of a fitted card, each in its own `.usage-card` so that the type keeps its level. */
export function cardFaces(card) {
  return [...card.querySelectorAll(".card-face:not([hidden])")].map((face) => {
    const shell = card.cloneNode(false);
    shell.removeAttribute("data-stacked");
    shell.append(face.cloneNode(true));
    return shell;
  });
}

/** A hidden element in which cards are measured at their exact size. */
export function measuringHolder() {
  const holder = document.createElement("div");
  holder.className = "card-measuring card-exact";
  holder.setAttribute("aria-hidden", "true");
  document.body.append(holder);
  return holder;
}

class StillroomCard extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector(".card-form");
    this.card = this.querySelector(".usage-card");
    this.status = this.querySelector(".card-status");
    if (!this.form || !this.card) return;
    this.paperData = JSON.parse(this.querySelector(".paper-data").textContent);
    this.holder = measuringHolder();
    this.zoom = fitPreview(this.querySelector(".card-holder"), (room) => this.shownWidth(room));
    this.restore();
    proposeToday(this.form);
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

  /** How many millimetres wide the card is shown in a place so many wide. */
  shownWidth(room) {
    const stacked = room < WIDE_MM;
    this.card.toggleAttribute("data-stacked", stacked);
    return stacked ? PANEL_MM : OPENED_MM;
  }

  restore() {
    const { from, paper } = kept(STORE);
    fillField(this.form.elements.from, from);
    fillField(this.form.elements.paper, paper);
  }

  update() {
    const { to, from, made, size, paper } = this.form.elements;
    keep(STORE, { from: from.value, paper: paper.value });
    this.card.dataset.size = size.value;
    writeCard(this.card, { to: to.value.trim(), from: from.value.trim(), made: made.value });
    this.fit = fitCard(this.card, this.holder);
    this.zoom.fit();
    try {
      this.copies = readWhole(this.form.elements.count, "How many cards", 1, MOST_OF_ONE);
      this.say(this.wordsOfFit());
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.copies = 0;
      this.say(error.message);
    }
  }

  wordsOfFit() {
    if (!this.fit.fits) {
      return `This does not fit at a readable size: ${this.fit.over.join(", ")}. Choose a larger card.`;
    }
    if (this.fit.front === "folded") {
      return "Print on both sides, turned on the long edge; cut, then fold at the short dashes.";
    }
    return this.fit.sides === 2 ? "This card needs its back: print on both sides, turned on the long edge." : "";
  }

  say(words) {
    if (this.status.textContent !== words) this.status.textContent = words;
  }

  print(event) {
    event.preventDefault();
    this.update();
    if (!this.fit.fits || this.copies === 0) return;
    const { size, paper, cut } = this.form.elements;
    const grid = impose(
      this.paperData.papers.find((each) => each.id === paper.value),
      boxOfCard(this.paperData.sizes.find((each) => each.id === size.value)),
    );
    const items = Array.from({ length: this.copies }, () => this.card);
    printSheets(laySheets(grid, items, cardFaces, { cutLines: cut.checked }), grid.paper);
  }
}

export { StillroomCard };
