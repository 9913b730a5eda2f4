/**
 * The "when" part of a recipe's page: a sentence with blanks that fills in every date.
 *
 * The server's dates stand until the reader fills a blank, or comes with a day in the address
 * (?give=2027-12-18 or ?start=2027-02-01); then dates, drawing and calendar file are the reader's.
 * What works them out (dates-shown.js) is fetched when it is first wanted.
 */

import { parseDay } from "../when/dates.js";
import { followForm, readState, writeState } from "./address-state.js";

const fetchEngine = () => import("./dates-shown.js");

/** Custom element around fragments/when.html. */
export class WhenElement extends HTMLElement {
  /** @type {any} the ShownDates, once fetched */
  shownDates;

  /** @type {any} the promise of dates asked for */
  settled;

  connectedCallback() {
    const data = document.getElementById("recipe-data");
    /** @type {HTMLFormElement} */
    this.form = this.querySelector("form");
    if (!data || !this.form) return;
    this.recipe = JSON.parse(data.textContent).timeline;
    this.form.addEventListener("focusin", fetchEngine, { once: true });
    this.stop = followForm(
      this.form,
      (field) => this.filled(field),
      () => this.readAddress(),
    );
  }

  disconnectedCallback() {
    this.stop?.();
    this.shownDates?.forget();
  }

  readAddress() {
    const state = readState();
    const what = parseDay(state.start) !== null ? "start" : "give";
    const day = parseDay(state[what]);
    // the address also changes for others' reasons: only a day of ours is worth saying again
    if (day === null || this.asked === `${what} ${day}`) return;
    this.asked = `${what} ${day}`;
    this.settled = this.show(what, day);
  }

  /** @param {any} field */
  filled(field) {
    const { what, day, coming } = this.form.elements;
    if (field === coming && coming.value) {
      day.value = coming.value;
      what.value = "give";
    }
    if (parseDay(day.value) === null) return;
    writeState({ give: null, start: null, [what.value]: day.value });
    this.readAddress();
  }

  /** @param {string} what @param {number} day */
  async show(what, day) {
    const { ShownDates } = await fetchEngine();
    if (!this.isConnected || this.asked !== `${what} ${day}`) return; // asked for another meanwhile
    this.shownDates ??= new ShownDates(this, this.recipe);
    this.plan = this.shownDates.show(what, day); // the kitchen sheet prints its dates
    this.dispatchEvent(new CustomEvent("stillroom-dates", { bubbles: true, detail: this.plan }));
  }
}
