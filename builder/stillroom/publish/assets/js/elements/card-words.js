// What is typed on a card, names and the day it was made, after which its date mark follows; and the
// design it is dressed in: designs.css knows the inks, faces and borders, here is its drawing.

import { markDate, sayDate } from "../label/date-marks.js";
import { curl } from "../words/quotes.js";

/**
 * Write names and the made-on day on a card; the date mark follows by the rule of date-marks.js.
 * @param {HTMLElement} card
 * @param {{to: string, from: string, made: string, message?: string, hand?: boolean}} said
 */
export function writeCard(card, { to, from, made, message = "", hand = false }) {
  const isBlank = hand && !to && !from;
  const keeps = JSON.parse(/** @type {string} */ (card.dataset.keeps));
  setName(card, "to", curl(to, keeps.quotes), isBlank);
  setName(card, "from", curl(from, keeps.quotes), isBlank);
  card.querySelector(".card-names").hidden = !(to || from || isBlank);
  const own = card.querySelector(".card-message");
  own.textContent = curl(message, keeps.quotes);
  own.hidden = !message;
  card.querySelector(".card-made").textContent = made ? sayDate(made, keeps.language) : "";
  const date = card.querySelector(".card-date");
  if (!date) {
    // what does not spoil has no day to reckon from, and no line for one
    card.querySelector(".card-dates").hidden = !made;
    return;
  }
  card.dataset.undated ??= date.textContent; // "Best before: 2 years from the day it was made"
  date.textContent = (made && markDate(made, keeps)?.text) || card.dataset.undated;
}

/** @param {HTMLElement} card @param {string} which @param {string} name @param {boolean} isBlank */
function setName(card, which, name, isBlank) {
  card.querySelector(`.card-${which}`).textContent = name;
  card.querySelector(`.card-${which}-words`).hidden = !name && !isBlank;
}

/**
 * Dress a card or tag.
 * @param {any} card
 * @param {{id: string, ink: boolean, large: boolean, sides: string, portrait: boolean, beside: boolean}} design
 * @param {{large?: boolean, hand?: boolean, hasBack?: boolean}} asked
 */
export function dress(card, design, { large = false, hand = false, hasBack = true } = {}) {
  card.dataset.design = design.id;
  card.toggleAttribute("data-large", large || design.large);
  card.toggleAttribute("data-hand", hand);
  card.toggleAttribute("data-two", design.sides === "two" && hasBack);
  card.toggleAttribute("data-alone", !hasBack);
  card.toggleAttribute("data-portrait", design.portrait && hasBack && !large);
  card.toggleAttribute("data-beside", design.beside && !large);
  for (const picture of card.querySelectorAll("[data-picture]")) {
    const address = picture.dataset.picture.replace(/\.svg$/, design.ink ? `.${design.id}$&` : "$&");
    if (picture.getAttribute("src") !== address) picture.setAttribute("src", address);
    const { emblem } = picture.dataset; // of few lines: it stands no larger than they bear
    picture.classList.toggle("is-emblem", emblem === "always" || (emblem === "inked" && design.ink));
  }
}
