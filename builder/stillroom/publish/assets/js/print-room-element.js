// <stillroom-print-room>: choose what to print, see the sheets, print them. Nothing typed here
// leaves the browser; the choices are kept in sessionStorage until the window closes.

import { cardFaces, measuringHolder, writeCard } from "./card-element.js";
import { fitCard, fitTag } from "./card-fit.js";
import { impose, labelSheet } from "./paper.js";
import { addRuler, laySheets, printSheets } from "./sheets.js";
import { tagBox } from "./tag-shapes.js";

const MOST = 400;

class StillroomPrintRoom extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector(".print-room-form");
    if (!this.form) return;
    this.paperData = JSON.parse(this.querySelector(".paper-data").textContent);
    this.cards = this.querySelector(".print-room-cards");
    this.preview = this.querySelector(".print-room-preview");
    this.status = this.querySelector(".print-room-status");
    this.holder = measuringHolder();
    this.listening = new AbortController();
    const { signal } = this.listening;
    this.form.addEventListener("input", () => this.refresh(), { signal });
    this.form.addEventListener("submit", (event) => this.print(event), { signal });
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
    this.holder?.remove();
  }

  // "?recipe=quince-ratafia&count=8" comes from a recipe's page
  chooseFromAddress() {
    const asked = new URLSearchParams(location.search);
    const input = this.form.querySelector(`[data-recipe="${CSS.escape(asked.get("recipe") ?? "")}"]`);
    if (input) input.value = asked.get("count") ?? "8";
  }

  refresh() {
    const { thing } = this.form.elements;
    for (const [name, shown] of [["card", "card"], ["round", "round"], ["wrap", "wrap"]]) {
      for (const part of this.form.querySelectorAll(`.for-${name}`)) part.hidden = thing.value !== shown;
    }
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
  }

  /** The sheets as they are shown on the page, each under the words for its side. */
  shown() {
    const shown = this.sheets.cloneNode(true);
    shown.toggleAttribute("data-shown", true);
    shown.setAttribute("aria-hidden", "true");
    for (const page of shown.querySelectorAll(".sheet-page")) {
      const name = document.createElement("p");
      name.className = "sheet-name aside";
      name.textContent = page.dataset.side === "back" ? "Back" : "Front";
      page.before(name);
    }
    return shown;
  }

  chosen() {
    const rows = [...this.form.querySelectorAll("[data-recipe]")];
    return rows.flatMap((row) => {
      const count = Math.min(MOST, Math.max(0, Math.trunc(Number(row.value)) || 0));
      return Array(count).fill(row.dataset.recipe);
    }).slice(0, MOST);
  }

  lay() {
    const { thing, paper, start, cut, ruler } = this.form.elements;
    const slugs = this.chosen();
    const isCard = thing.value === "card";
    const box = isCard ? this.cardSize() : tagBox(this.paperData.tags, thing.value, this.numbers("lid", "diameter", "wall"));
    this.paper = this.paperData.papers.find((each) => each.id === paper.value);
    const grid = this.grid(this.paper, box);
    const perPage = grid.columns * grid.rows;
    const startAt = Math.trunc(Number(start.value)) || 1;
    if (startAt < 1 || startAt > perPage) throw new RangeError(`This sheet has ${perPage} places; begin at one of them.`);
    const fitted = new Map([...new Set(slugs)].map((slug) => [slug, this.fitted(slug, isCard, box)]));
    const refused = [...fitted.values()].filter((each) => !each.fit.fits);
    if (refused.length > 0) {
      throw new RangeError(`This does not fit at a readable size: ${refused.map((each) => `${each.title} (${each.fit.over.join(", ")})`).join("; ")}. Choose a larger size.`);
    }
    const items = slugs.map((slug) => fitted.get(slug).element);
    const sheets = laySheets(grid, items, cardFaces, { startAt, cutLines: cut.checked, outline: isCard ? "" : thing.value });
    if (ruler.checked && sheets.firstElementChild) addRuler(sheets.firstElementChild);
    this.say(slugs.length === 0 ? "Choose how many of each." : this.sum(slugs.length, sheets, [...fitted.values()].some((each) => each.fit.sides === 2)));
    return sheets;
  }

  sum(count, sheets, twoSided) {
    const pages = sheets.childElementCount;
    const side = twoSided ? " Print on both sides, turned on the long edge." : "";
    return `${count} on ${pages} page${pages === 1 ? "" : "s"}.${side}`;
  }

  cardSize() {
    return this.paperData.sizes.find((each) => each.id === this.form.elements.size.value);
  }

  numbers(...names) {
    return Object.fromEntries(names.map((name) => [name, Number(this.form.elements[name].value)]));
  }

  grid(paper, box) {
    if (!this.form.elements.own.checked) return impose(paper, box);
    return labelSheet(paper, box, this.numbers("columns", "rows", "left", "top", "pitchX", "pitchY"));
  }

  fitted(slug, isCard, box) {
    const { to, from, made } = this.form.elements;
    const element = isCard
      ? this.cards.querySelector(`[data-recipe="${CSS.escape(slug)}"]`).cloneNode(true)
      : this.querySelector(`template[data-tag="${CSS.escape(slug)}"]`).content.firstElementChild.cloneNode(true);
    if (isCard) element.dataset.size = box.id;
    else element.dataset.shape = this.form.elements.thing.value;
    element.style.setProperty("--card-width", `${box.width}mm`);
    element.style.setProperty("--card-height", `${box.height}mm`);
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

export { StillroomPrintRoom };
