/**
 * "What can I still make by ...?" on the year's page: every recipe of the book against any two days.
 */

import { followForm, readState, writeState } from "./address-state.js";
import SAID from "../../data/said/when-season.js";
import { isoDay, parseDay, today } from "../when/dates.js";
import { findSeason } from "../when/season.js";
import { stillTime } from "../when/year.js";
import { sayDay } from "../words/day-words.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

/** Custom element around the still-time part of fragments/year.html. */
export class StillTimeElement extends HTMLElement {
  /** @type {any} the day to begin on */
  begin;

  /** @type {any} the giving day */
  give;

  /** the two days that are shown */
  shown = "";

  connectedCallback() {
    const data = this.querySelector(".still-time-data");
    /** @type {HTMLFormElement} */
    this.form = this.querySelector("form");
    if (!data || !this.form) return;
    const { recipes, fits } = JSON.parse(data.textContent);
    /** @type {WhenRecipe[]} */
    this.recipes = recipes;
    /** @type {[string, string, string][]} how each fits, its heading and its words */
    this.fits = fits;
    this.stop = followForm(
      this.form,
      (field) => this.filled(field),
      () => this.readAddress(),
    );
  }

  disconnectedCallback() {
    this.stop?.();
  }

  readAddress() {
    const state = readState();
    const { begin, give } = this.form.elements;
    begin.value = isoDay(parseDay(state.begin) ?? today());
    const day = parseDay(state.give);
    if (day !== null) give.value = isoDay(day);
    this.show();
  }

  /** @param {any} field */
  filled(field) {
    const { begin, give, coming } = this.form.elements;
    if (field === coming && coming.value) give.value = coming.value;
    if (parseDay(begin.value) === null || parseDay(give.value) === null) return;
    const now = isoDay(today());
    writeState({ begin: begin.value === now ? null : begin.value, give: give.value });
    this.show();
  }

  show() {
    const { begin, give, coming } = this.form.elements;
    const known = [...coming.options].some((option) => option.value === give.value);
    coming.value = known ? give.value : "";
    const chosen = `${begin.value} ${give.value}`;
    if (this.shown === chosen) return;
    this.shown = chosen;
    [this.begin, this.give] = [parseDay(begin.value), parseDay(give.value)];
    const found = stillTime(this.recipes, this.give, this.begin);
    const ready = found.filter((one) => one.fits !== "late").length;
    this.querySelector('[data-still="said"]').textContent = say("still_ready", {
      ready, all: found.length, day: sayDay(this.give),
    });
    const parts = this.fits.flatMap(([fits, heading, before]) =>
      this.group(heading, before, found.filter((one) => one.fits === fits)));
    this.querySelector('[data-still="list"]').replaceChildren(...parts);
  }

  /**
   * @param {string} heading
   * @param {string} before
   * @param {ReturnType<typeof stillTime>} found
   * @returns {HTMLElement[]}
   */
  group(heading, before, found) {
    if (!found.length) return [];
    const head = document.createElement("h3");
    head.textContent = heading;
    const list = document.createElement("ul");
    list.className = "still-list";
    list.append(...found.map((one) => this.line(one, before)));
    return [head, list];
  }

  /** @param {ReturnType<typeof stillTime>[number]} found @param {string} before */
  line({ recipe, fits, by }, before) {
    const line = document.createElement("li");
    line.dataset.fits = fits;
    const link = document.createElement("a");
    link.href = recipe.href;
    link.textContent = recipe.title;
    const season = fits === "late" ? null : findSeason(recipe, by, this.give, this.begin);
    const words = { before, day: sayDay(by), aside: season?.aside };
    line.append(link, say("comma"), say(season ? "by_day_aside" : "by_day", words));
    return line;
  }
}
