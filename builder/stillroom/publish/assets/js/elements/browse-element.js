/* <stillroom-browse>: a sentence with blanks that sifts the list of recipes by kind, by what can
   still be started, by what it is free from. The page's address carries what was chosen. */

import { onStateChange, readState, writeState } from "./address-state.js";
import SAID from "../../data/said/pages-browse.js";
import { joinAnd } from "../words/joining.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

const NAMES = ["kind", "start", "free"];

/** The reader's own date as ISO text, so that it compares with the dates in the page. @param {Date} [now] */
function todayText(now = new Date()) {
  /** @param {number} number */
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * How one recipe fits what was chosen: "yes", "no", or "stored" when it is in time but its main
 * produce is not to be had this month. `entry` is the dataset of its list item.
 * @param {DOMStringMap} entry
 * @param {Texts} chosen
 * @param {string} today
 */
export function fits(entry, chosen, today) {
  if (chosen.kind && entry.kind !== chosen.kind) return "no";
  if (chosen.free && !entry.free?.split(" ").includes(chosen.free)) return "no";
  if (!chosen.start) return "yes";
  if (!(/** @type {string} */ (entry[chosen.start]) >= today)) return "no";
  const month = String(Number(today.slice(5, 7)));
  return !entry.season || entry.season.split(" ").includes(month) ? "yes" : "stored";
}

/**
 * How many were found, in words, and what else stored produce would allow.
 * @param {number} count
 * @param {string[]} [stored]
 */
export function sayFound(count, stored = []) {
  const more = stored.length ? say("with_stored", { titles: joinAnd(stored) }) : "";
  if (count === 0) return more || say("nothing_fits");
  return more ? `${say("found", { count })} ${more}` : say("found", { count });
}

export class BrowseElement extends HTMLElement {
  connectedCallback() {
    /** @type {HTMLFormElement} */
    this.form = this.querySelector("form");
    this.form.hidden = false;
    this.leaving = new AbortController();
    const { signal } = this.leaving;
    this.form.addEventListener("change", () => writeState(this.chosen()), { signal });
    this.form.addEventListener("submit", (event) => event.preventDefault(), { signal });
    this.stopListening = onStateChange(() => this.readAddress());
    this.readAddress();
  }

  disconnectedCallback() {
    this.leaving?.abort();
    this.stopListening?.();
  }

  readAddress() {
    const asked = readState();
    for (const name of NAMES) {
      const field = this.form.elements[name];
      field.value = asked[name] ?? "";
      if (field.selectedIndex < 0) field.value = "";
    }
    this.sift();
  }

  chosen() {
    return Object.fromEntries(NAMES.map((name) => [name, this.form.elements[name].value]));
  }

  sift() {
    const chosen = this.chosen();
    const today = todayText();
    let count = 0;
    const stored = [];
    for (const group of this.querySelectorAll(".browse-group")) {
      let shown = 0;
      for (const item of group.querySelectorAll("li[data-kind]")) {
        const fit = fits(item.dataset, chosen, today);
        item.hidden = fit !== "yes";
        if (fit === "yes") shown += 1;
        if (fit === "stored") stored.push(item.querySelector("a").textContent.trim());
      }
      group.hidden = shown === 0;
      count += shown;
    }
    this.querySelector("[data-browse=found]").textContent = sayFound(count, stored);
  }
}
