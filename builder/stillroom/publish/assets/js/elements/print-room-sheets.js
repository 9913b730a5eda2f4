// Lays what is chosen in the print room on sheets, each card and tag fitted to its size.

import SAID from "../../data/said/pages-print.js";
import { cardFaces, measuringHolder } from "../paper/card-faces.js";
import { fitCard, fitTag } from "../paper/card-fit.js";
import { addRulerTo, laySheets, printSheets } from "../paper/sheets.js";
import { spokenCard } from "../paper/spoken-card.js";
import { Unreadable, speaker } from "../words/said.js";
import { writeCard } from "./card-words.js";
import { chosenBox, chosenGrid, chosenRecipes, chosenStart } from "./print-choices.js";

const say = speaker(SAID);

/** Lays sheets from a form's choices, with the cards and tags that the page holds. */
export class SheetLayer {
  /** @type {any} what stands on the sheets */
  box;

  constructor(form, cards, paperData) {
    this.form = form;
    this.cards = cards;
    this.paperData = paperData;
    this.holder = measuringHolder();
  }

  /** Forget the place where cards are measured. */
  stop() {
    this.holder.remove();
  }

  /** Return {sheets, paper, words, spoken} for what the form says; throws Unreadable. */
  lay() {
    const { thing, paper: named, cut, ruler } = this.form.elements;
    const isCard = thing.value === "card";
    const slugs = chosenRecipes(this.form);
    this.box = chosenBox(this.form, this.paperData);
    const paper = this.paperData.papers.find((each) => each.id === named.value);
    const grid = chosenGrid(this.form, paper, this.box);
    const startAt = chosenStart(this.form, grid);
    const fitted = new Map([...new Set(slugs)].map((slug) => [slug, this.fitted(slug, isCard)]));
    refuseTooLong([...fitted.values()]);
    if (this.form.elements.own.checked) refuseBacks([...fitted.values()]);
    const items = slugs.map((slug) => fitted.get(slug)?.element);
    const outline = isCard ? "" : thing.value;
    const sheets = laySheets(grid, items, cardFaces, { startAt, cutLines: cut.checked, outline });
    if (ruler.checked && sheets.firstElementChild) addRulerTo(sheets, grid);
    const twoSided = [...fitted.values()].some((each) => each.fit.sides === 2);
    const words = slugs.length === 0 ? say("choose") : this.sum(slugs.length, grid, startAt, sheets, twoSided);
    const spoken = [...fitted.values()].map(({ element }) => spokenCard(element));
    return { sheets, paper, words, spoken };
  }

  sum(things, grid, startAt, sheets, twoSided) {
    const pages = sheets.querySelectorAll('[data-side="front"], [data-side="back"]').length;
    const perPage = grid.columns * grid.rows;
    const left = (perPage - ((startAt - 1 + things) % perPage)) % perPage;
    const said = [say("pages", { things, count: pages })];
    if (left > 0) said.push(say("places", { count: left }));
    if (twoSided) said.push(say(this.box.folded ? "both_sides_and_fold" : "both_sides"));
    return said.join(" ");
  }

  fitted(slug, isCard) {
    const { to, from, made, size, thing } = this.form.elements;
    const element = isCard
      ? this.cards.querySelector(`[data-recipe="${CSS.escape(slug)}"]`).cloneNode(true)
      : this.cards.querySelector(`template[data-tag="${CSS.escape(slug)}"]`).content.firstElementChild.cloneNode(true);
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

  /** The sheets as they are shown on the page, each under the words for its side. */
  shown(sheets) {
    const shown = sheets.cloneNode(true);
    shown.toggleAttribute("data-shown", true);
    shown.setAttribute("aria-hidden", "true");
    const [front, back] = this.box.folded ? ["outside", "inside"] : ["front", "back"];
    const names = { front: say(front), back: say(back), ruler: say("ruler") };
    for (const page of shown.querySelectorAll(".sheet-page")) {
      const name = document.createElement("p");
      name.className = "sheet-name aside";
      name.textContent = names[page.dataset.side];
      page.before(name);
    }
    return shown;
  }

  /** Print sheets alone. */
  print({ sheets, paper }) {
    printSheets(sheets, paper);
  }
}

function refuseTooLong(fitted) {
  const refused = fitted.filter(({ fit }) => !fit.fits);
  if (refused.length === 0) return;
  const titles = refused.map(({ title, fit }) => say("part", { title, parts: fit.over.join(", ") }));
  throw say.refuse("do_not_fit", { titles: titles.join("; ") });
}

// A label's back is its glue: what needs two sides goes on none.
function refuseBacks(fitted) {
  const titles = fitted.filter((each) => each.fit.sides === 2).map((each) => each.title);
  if (titles.length === 0) return;
  throw new Unreadable(say("no_back", { count: titles.length, titles: titles.join(", ") }));
}
