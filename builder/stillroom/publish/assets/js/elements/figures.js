// Figures that a form says, read strictly: one that cannot be meant is answered in words, never
// guessed at.

import SAID from "../../data/said/pages-print.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

/** More than this of one thing is a slip of the finger. */
export const MOST_OF_ONE = 200;

/**
 * Return the whole number in a field; throws in words that begin with `name`.
 * @param {HTMLInputElement} field
 * @param {string} name
 * @param {number} least
 * @param {number} most
 */
export function readWhole(field, name, least, most) {
  const number = Number(field.value);
  const good = !field.validity.badInput && field.value.trim() !== "" && Number.isInteger(number);
  if (!good || number < least || number > most) {
    throw say.refuse("whole_number", { name, least, most });
  }
  return number;
}

/**
 * Return the millimetres in a field, not negative; throws in words that begin with `name`.
 * @param {HTMLInputElement} field
 * @param {string} name
 */
export function readLength(field, name) {
  const number = Number(field.value);
  const good = !field.validity.badInput && field.value.trim() !== "" && Number.isFinite(number);
  if (!good || number < 0 || number > 2000) {
    throw say.refuse("millimetres", { name });
  }
  return number;
}
