/* <stillroom-browse>: a sentence with blanks that sifts the list of recipes by kind, by what can
   still be started, by what it is free from. The page's address carries what was chosen. */

import { onStateChange, readState, writeState } from "./address-state.js";

const NAMES = ["kind", "start", "free"];

/** The reader's own date as ISO text, so that it compares with the dates in the page. */
function todayText(now = new Date()) {
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Whether one recipe fits what was chosen; `entry` is the dataset of its list item. */
export function fits(entry, chosen, today) {
  if (chosen.kind && entry.kind !== chosen.kind) return false;
  if (chosen.free && !entry.free.split(" ").includes(chosen.free)) return false;
  if (chosen.start && !(entry[chosen.start] >= today)) return false;
  return true;
}

/** How many were found, in words. */
export function sayFound(count) {
  if (count === 0) return "Nothing in the book fits. Leave one of the blanks wider.";
  return count === 1 ? "One recipe." : `${count} recipes.`;
}

export class BrowseElement extends HTMLElement {
  connectedCallback() {
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
    this.leaving.abort();
    this.stopListening();
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
    for (const group of this.querySelectorAll(".browse-group")) {
      let shown = 0;
      for (const item of group.querySelectorAll("li[data-kind]")) {
        item.hidden = !fits(item.dataset, chosen, today);
        if (!item.hidden) shown += 1;
      }
      group.hidden = shown === 0;
      count += shown;
    }
    this.querySelector("[data-browse=found]").textContent = sayFound(count);
  }
}
