// What is typed on a card: names, and the day it was made, after which its date mark follows.

import { markDate, sayDate } from "../label/date-marks.js";

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

function setName(card, which, name) {
  card.querySelector(`.card-${which}`).textContent = name;
  card.querySelector(`.card-${which}-words`).hidden = !name;
}
