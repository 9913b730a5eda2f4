// What is chosen in the print room stays in sessionStorage until the window closes.

import { fillField, keep, kept } from "./stored.js";

const STORE = "stillroom-print-room";

// whom it is for is nobody's business; what is kept of a reader's own printer, my-printer.js keeps
const NOT_KEPT = ["to", "made", "find", "message", "stock", "stockName", "feedAcross", "feedDown"];

/**
 * Keep what a form holds until the window closes; the name of whom it is for is not kept.
 * @param {HTMLFormElement} form
 */
export function keepChoices(form) {
  const chosen = namedFields(form).map((field) => [
    keyOf(field), field.type === "checkbox" ? field.checked : field.value,
  ]);
  keep(STORE, Object.fromEntries(chosen));
}

/** Write what was kept back into a form. @param {HTMLFormElement} form */
export function restoreChoices(form) {
  const chosen = kept(STORE);
  for (const field of namedFields(form)) fillField(field, chosen[keyOf(field)]);
}

/** @param {HTMLFormElement} form @returns {any[]} */
function namedFields(form) {
  return /** @type {any[]} */ ([...form.elements]).filter((field) => keyOf(field) && !NOT_KEPT.includes(field.name));
}

/** @param {any} field @returns {string} */
function keyOf(field) {
  return field.name || field.dataset.recipe || "";
}
