/**
 * Shows the dates of a batch for the reader's own day: in words, in the drawing, as a calendar file.
 */

import SAID from "../../data/said/when-dates.js";
import { makeCalendar, makeEntries } from "../when/calendar.js";
import { isoDay, today } from "../when/dates.js";
import { planInSeason } from "../when/season-plan.js";
import { seasonOfStart } from "../when/season.js";
import { redraw } from "../when/timeline-drawing.js";
import { describeDates, sumUp } from "../when/timeline-words.js";
import { planForward } from "../when/timeline.js";
import { giveVerdict } from "../when/verdicts.js";
import { sayDay } from "../words/day-words.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

/** The part of a page under one <stillroom-when>, for one recipe. */
export class ShownDates {
  /** @param {any} element @param {WhenRecipe} recipe */
  constructor(element, recipe) {
    this.element = element;
    this.recipe = recipe;
  }

  /**
   * Show the dates begun on ("start") or given on ("give") a day; returns the plan.
   * @param {string} asked
   * @param {number} chosen
   */
  show(asked, chosen) {
    const { what, day, coming } = this.element.form.elements;
    const begins = asked === "start";
    what.value = asked;
    day.value = isoDay(chosen);
    const known = [...coming.options].find((option) => option.value === day.value);
    coming.value = known && !begins ? day.value : "";
    this.element.querySelector(".when-coming").hidden = begins;
    const { plan, season, verdict } = this.planOf(begins, chosen);
    this.part("aim").textContent = this.aim(begins, known, chosen);
    this.part("verdict").textContent = verdict.text;
    this.part("sooner")?.remove(); // a day of the reader's own speaks for itself
    this.part("season").textContent = season?.text ?? "";
    this.part("season").hidden = !season;
    const label = sumUp(plan, this.recipe.title);
    for (const svg of this.element.querySelectorAll("svg.when-picture")) redraw(svg, plan, label);
    this.part("rows").replaceChildren(...describeDates(plan).map(tableRow));
    this.offerCalendar(plan);
    return plan;
  }

  /** @param {boolean} begins @param {number} chosen */
  planOf(begins, chosen) {
    if (!begins) return planInSeason(this.recipe, chosen, today());
    const plan = planForward(this.recipe, chosen);
    return { plan, season: seasonOfStart(this.recipe, chosen), verdict: giveVerdict(plan) };
  }

  /** @param {boolean} begins @param {HTMLOptionElement | undefined} known @param {number} chosen */
  aim(begins, known, chosen) {
    const day = sayDay(chosen);
    if (begins) return say("begun_on", { day });
    if (!known?.value) return say("for_day", { day });
    return say("for_named_day", { name: known.text.replace(/ \d{4}$/, ""), day });
  }

  /** @param {Plan} plan */
  offerCalendar(plan) {
    const entries = makeEntries(this.recipe.slug, this.recipe.title, plan);
    const address = new URL(`${location.pathname}${location.search}`, location.href).href;
    const text = makeCalendar(this.recipe.title, entries, today(), address);
    this.forget();
    this.file = URL.createObjectURL(new Blob([text], { type: "text/calendar" }));
    this.part("calendar").href = this.file;
    this.part("calendar-words").textContent = say("made_here");
  }

  /** Give back what the calendar file takes up. */
  forget() {
    if (this.file) URL.revokeObjectURL(this.file);
  }

  /** @param {string} name @returns {any} */
  part(name) {
    return this.element.querySelector(`[data-when="${name}"]`);
  }
}

/** @param {DateRow} row */
function tableRow(row) {
  const line = document.createElement("tr");
  const head = document.createElement("th");
  head.scope = "row";
  head.textContent = row.name;
  const cells = [row.when, row.handsOn].map((said) => {
    const cell = document.createElement("td");
    cell.textContent = said;
    return cell;
  });
  line.append(head, ...cells);
  return line;
}
