/**
 * The "when" part of a recipe's page: a sentence with blanks that fills in every date.
 *
 * The server's dates stand until the reader fills a blank, or comes with a day in the address
 * (?give=2027-12-18 or ?start=2027-02-01); then dates, drawing and calendar file are the reader's.
 */

import { followForm, readState, writeState } from "./address-state.js";
import { makeCalendar, makeEntries } from "../when/calendar.js";
import { isoDay, parseDay, sayDay, today } from "../when/dates.js";
import { planInSeason, seasonOfStart } from "../when/season.js";
import { redraw } from "../when/timeline-drawing.js";
import { describeDates, sumUp } from "../when/timeline-words.js";
import { planForward } from "../when/timeline.js";

/** Custom element around fragments/when.html. */
export class WhenElement extends HTMLElement {
  connectedCallback() {
    const data = document.getElementById("recipe-data");
    this.form = this.querySelector("form");
    if (!data || !this.form) return;
    this.recipe = JSON.parse(data.textContent).timeline;
    this.stop = followForm(
      this.form,
      (field) => this.filled(field),
      () => this.readAddress(),
    );
  }

  disconnectedCallback() {
    this.stop?.();
    if (this.file) URL.revokeObjectURL(this.file);
  }

  readAddress() {
    const state = readState();
    const what = parseDay(state.start) !== null ? "start" : "give";
    const day = parseDay(state[what]);
    // the address also changes for others' reasons: only a day of ours is worth saying again
    if (day === null || this.shown === `${what} ${day}`) return;
    this.form.elements.what.value = what;
    this.form.elements.day.value = isoDay(day);
    this.show();
  }

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

  show() {
    const { what, day, coming } = this.form.elements;
    const chosen = parseDay(day.value);
    const begins = what.value === "start";
    this.shown = `${what.value} ${chosen}`;
    const known = [...coming.options].find((option) => option.value === day.value);
    coming.value = known && !begins ? day.value : "";
    this.querySelector(".when-coming").hidden = begins;
    const { plan, season } = begins
      ? { plan: planForward(this.recipe, chosen), season: seasonOfStart(this.recipe, chosen) }
      : planInSeason(this.recipe, chosen, today());
    this.plan = plan; // the kitchen sheet prints its dates
    const name = known && !begins && known.value ? `For ${known.text.replace(/ \d{4}$/, "")}, ` : "";
    this.part("aim").textContent = begins
      ? `Begun on ${sayDay(chosen)}:`
      : `${name || "For "}${sayDay(chosen)}:`;
    this.part("verdict").textContent = plan.verdict.text;
    this.part("season").textContent = season?.text ?? "";
    this.part("season").hidden = !season;
    const label = sumUp(plan, this.recipe.title);
    for (const svg of this.querySelectorAll("svg.when-picture")) redraw(svg, plan, label);
    this.part("rows").replaceChildren(...describeDates(plan).map(tableRow));
    this.offerCalendar(plan);
    this.dispatchEvent(new CustomEvent("stillroom-dates", { bubbles: true, detail: plan }));
  }

  offerCalendar(plan) {
    const entries = makeEntries(this.recipe.slug, this.recipe.title, plan);
    const address = new URL(`${location.pathname}${location.search}`, location.href).href;
    const text = makeCalendar(this.recipe.title, entries, today(), address);
    if (this.file) URL.revokeObjectURL(this.file);
    this.file = URL.createObjectURL(new Blob([text], { type: "text/calendar" }));
    this.part("calendar").href = this.file;
    this.part("calendar-words").textContent =
      `The file is for the dates above, made here; it is sent nowhere.`;
  }

  part(name) {
    return this.querySelector(`[data-when="${name}"]`);
  }
}

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
