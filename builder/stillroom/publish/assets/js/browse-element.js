/* <stillroom-browse>: a sentence with blanks that sifts the list of recipes by kind, by what can
   still be started, by what it is free from. The page's address carries what was chosen. */

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
    this.form.addEventListener("change", () => this.choose(), { signal });
    this.form.addEventListener("submit", (event) => event.preventDefault(), { signal });
    window.addEventListener("popstate", () => this.readAddress(), { signal });
    this.readAddress();
  }

  disconnectedCallback() {
    this.leaving.abort();
  }

  readAddress() {
    const asked = new URLSearchParams(location.search);
    for (const name of NAMES) {
      const field = this.form.elements[name];
      field.value = asked.get(name) ?? "";
      if (field.selectedIndex < 0) field.value = "";
    }
    this.sift();
  }

  choose() {
    const address = new URL(location.href);
    for (const name of NAMES) {
      const { value } = this.form.elements[name];
      if (value) address.searchParams.set(name, value);
      else address.searchParams.delete(name);
    }
    address.hash = "";
    history.pushState(null, "", address);
    this.sift();
  }

  sift() {
    const chosen = Object.fromEntries(NAMES.map((name) => [name, this.form.elements[name].value]));
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
