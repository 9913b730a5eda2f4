// <stillroom-print-room>: choose what to print, see the sheets, print them. Nothing typed here
// leaves the browser; the choices are kept in sessionStorage until the window closes.

import { cardFaces, measuringHolder, proposeToday, writeCard } from "./card-element.js";
import { fitCard, fitTag } from "../paper/card-fit.js";
import { fitPreview } from "./preview-zoom.js";
import { chosenBox, chosenGrid, chosenRecipes, chosenStart, keepChoices, restoreChoices } from "./print-choices.js";
import { addRulerTo, laySheets, printSheets } from "../paper/sheets.js";

class StillroomPrintRoom extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector(".print-room-form");
    if (!this.form) return;
    this.paperData = JSON.parse(this.querySelector(".paper-data").textContent);
    this.cards = this.querySelector(".print-room-cards");
    this.preview = this.querySelector(".print-room-preview");
    this.status = this.querySelector(".print-room-status");
    this.holder = measuringHolder();
    this.zoom = fitPreview(this.preview, () => this.paper?.width ?? 210);
    this.listening = new AbortController();
    const { signal } = this.listening;
    this.form.addEventListener("input", (event) => this.changed(event), { signal });
    this.form.addEventListener("submit", (event) => this.print(event), { signal });
    for (const button of this.form.querySelectorAll("[data-each]")) {
      button.addEventListener("click", () => this.setEach(button.dataset.each), { signal });
    }
    restoreChoices(this.form);
    proposeToday(this.form);
    this.chooseFromAddress();
    this.begin();
  }

  // The faces are measured in the book's own type: a face not yet shown anywhere is not yet loaded.
  async begin() {
    await Promise.allSettled([...document.fonts].map((face) => face.load()));
    if (!this.isConnected) return;
    this.form.hidden = false;
    this.refresh();
  }

  disconnectedCallback() {
    this.listening?.abort();
    this.zoom?.stop();
    this.holder?.remove();
  }

  // "?recipe=quince-ratafia&count=8" comes from a recipe's page
  chooseFromAddress() {
    const asked = new URLSearchParams(location.search);
    const input = this.form.querySelector(`[data-recipe="${CSS.escape(asked.get("recipe") ?? "")}"]`);
    if (input) input.value = asked.get("count") ?? "8";
  }

  setEach(count) {
    for (const field of this.form.querySelectorAll("[data-recipe]")) field.value = count;
    this.refresh();
  }

  changed({ target }) {
    const { own, cut } = this.form.elements;
    if (target === own) cut.checked = !own.checked; // bought labels are cut already
    this.refresh();
  }

  refresh() {
    const { thing } = this.form.elements;
    for (const [name, shown] of [["card", "card"], ["round", "round"], ["wrap", "wrap"]]) {
      for (const part of this.form.querySelectorAll(`.for-${name}`)) part.hidden = thing.value !== shown;
    }
    keepChoices(this.form);
    try {
      this.sheets = this.lay();
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.sheets = null;
      this.say(error.message);
    }
    this.preview.replaceChildren();
    this.cards.hidden = true; // only what is chosen is shown
    if (this.sheets?.childElementCount > 0) this.preview.append(this.shown());
    this.zoom.fit();
  }

  /** The sheets as they are shown on the page, each under the words for its side. */
  shown() {
    const shown = this.sheets.cloneNode(true);
    shown.toggleAttribute("data-shown", true);
    shown.setAttribute("aria-hidden", "true");
    const [front, back] = this.box.folded ? ["Outside", "Inside"] : ["Front", "Back"];
    const names = { front, back, ruler: "Ruler" };
    for (const page of shown.querySelectorAll(".sheet-page")) {
      const name = document.createElement("p");
      name.className = "sheet-name aside";
      name.textContent = names[page.dataset.side];
      page.before(name);
    }
    return shown;
  }

  lay() {
    const { thing, paper, cut, ruler } = this.form.elements;
    const isCard = thing.value === "card";
    const slugs = chosenRecipes(this.form);
    this.box = chosenBox(this.form, this.paperData);
    this.paper = this.paperData.papers.find((each) => each.id === paper.value);
    const grid = chosenGrid(this.form, this.paper, this.box);
    const startAt = chosenStart(this.form, grid);
    const fitted = new Map([...new Set(slugs)].map((slug) => [slug, this.fitted(slug, isCard)]));
    const refused = [...fitted.values()].filter((each) => !each.fit.fits);
    if (refused.length > 0) {
      throw new RangeError(`This does not fit at a readable size: ${refused.map((each) => `${each.title} (${each.fit.over.join(", ")})`).join("; ")}. Choose a larger size.`);
    }
    if (this.form.elements.own.checked) refuseBacks([...fitted.values()]);
    const items = slugs.map((slug) => fitted.get(slug).element);
    const outline = isCard ? "" : thing.value;
    const sheets = laySheets(grid, items, cardFaces, { startAt, cutLines: cut.checked, outline });
    if (ruler.checked && sheets.firstElementChild) addRulerTo(sheets, grid);
    const twoSided = [...fitted.values()].some((each) => each.fit.sides === 2);
    this.say(slugs.length === 0 ? "Choose how many of each." : this.sum(slugs.length, grid, startAt, sheets, twoSided));
    return sheets;
  }

  sum(count, grid, startAt, sheets, twoSided) {
    const pages = sheets.querySelectorAll('[data-side="front"], [data-side="back"]').length;
    const perPage = grid.columns * grid.rows;
    const left = (perPage - ((startAt - 1 + count) % perPage)) % perPage;
    const said = [`${count} on ${pages} page${pages === 1 ? "" : "s"}.`];
    if (left > 0) said.push(`The last sheet has ${left} free place${left === 1 ? "" : "s"}.`);
    if (twoSided) said.push(`Print on both sides, turned on the long edge${this.box.folded ? "; cut, then fold at the short dashes" : ""}.`);
    return said.join(" ");
  }

  fitted(slug, isCard) {
    const { to, from, made, size, thing } = this.form.elements;
    const element = isCard
      ? this.cards.querySelector(`[data-recipe="${CSS.escape(slug)}"]`).cloneNode(true)
      : this.querySelector(`template[data-tag="${CSS.escape(slug)}"]`).content.firstElementChild.cloneNode(true);
    if (isCard) {
      element.dataset.size = size.value;
    } else {
      element.dataset.shape = thing.value;
    }
    if (!this.box.folded) {
      element.style.setProperty("--card-width", `${this.box.width}mm`);
      element.style.setProperty("--card-height", `${this.box.height}mm`);
    }
    writeCard(element, { to: to.value.trim(), from: from.value.trim(), made: made.value });
    const fit = (isCard ? fitCard : fitTag)(element, this.holder);
    return { element, fit, title: element.dataset.title };
  }

  say(words) {
    if (this.status.textContent !== words) this.status.textContent = words;
  }

  print(event) {
    event.preventDefault();
    this.refresh();
    if (this.sheets?.childElementCount > 0) printSheets(this.sheets, this.paper);
    else this.form.querySelector("[data-recipe]").focus();
  }
}

// A label's back is its glue: what needs two sides goes on none.
function refuseBacks(fitted) {
  const titles = fitted.filter((each) => each.fit.sides === 2).map((each) => each.title);
  if (titles.length === 0) return;
  const need = titles.length === 1 ? "needs" : "need";
  throw new RangeError(`A label has no back: ${titles.join(", ")} ${need} two sides. Choose a larger label, or tags.`);
}

export { StillroomPrintRoom };
