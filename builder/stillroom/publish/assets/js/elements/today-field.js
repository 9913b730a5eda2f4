import { isoDay, today } from "../when/dates.js";

/** Propose today as the day it was made. */
export function proposeToday(form) {
  const { made } = form.elements;
  if (made.type === "date" && !made.value) made.value = isoDay(today());
}
