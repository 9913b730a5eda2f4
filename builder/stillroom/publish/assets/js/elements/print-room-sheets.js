// Lays what is chosen in the print room on sheets, each card and tag fitted to its size.

import SAID from "../../data/said/pages-print.js";
import { cardFaces, measuringHolder } from "../paper/card-faces.js";
import { fitCards, fitTags } from "../paper/basket-fit.js";
import { LARGER, freePlaces, withId } from "../paper/paper.js";
import { addRulerTo, laySheets, printSheets } from "../paper/sheets.js";
import { spokenCard } from "../paper/spoken-card.js";
import { largerTags } from "../paper/tag-shapes.js";
import { Unreadable, speaker } from "../words/said.js";
import { dress, writeCard } from "./card-words.js";
import { MyPrinter } from "./my-printer.js";
import { chosenBox, chosenGrid, chosenRecipes, chosenStart } from "./print-choices.js";

const say = speaker(SAID);

// a label so wide has room for what is in it beside its middle, as templates/tags.typ
const WIDE_MM = 118;
// so high has room for the drawing over its words, and a round one so wide for a small one in its head
const HIGH_MM = 52;
const CROWNED_MM = 58;

/** Lays sheets from a form's choices, with the cards and tags that the page holds. */
export class SheetLayer {
  /** @type {any} what stands on the sheets */
  box;

  /** the shape of a tag; none of a card */
  shape = "";

  /**
   * @param {HTMLFormElement} form
   * @param {HTMLElement} cards
   * @param {PaperData} paperData
   * @param {() => void} changed
   */
  constructor(form, cards, paperData, changed) {
    this.form = form;
    this.cards = cards;
    this.paperData = paperData;
    this.holder = measuringHolder();
    this.mine = new MyPrinter(form, paperData, changed);
  }

  /** Forget the place where cards are measured. */
  stop() {
    this.holder.remove();
  }

  /** Return {sheets, paper, words, spoken} for what the form says, `target` the field that was
   * changed; throws Unreadable.
   * @param {EventTarget | null} target
   */
  lay(target) {
    this.mine.follow(target);
    const { thing, paper: named, cut, ruler, size } = this.form.elements;
    const isCard = thing.value === "card";
    const slugs = chosenRecipes(this.form);
    const paper = withId(this.paperData.papers, named.value);
    const { fitted, larger } = this.fitted([...new Set(slugs)], isCard, size.value);
    const grid = chosenGrid(this.form, paper, this.box, this.shape === "wrap");
    const startAt = chosenStart(this.form, grid);
    refuseTooLong([...fitted.values()]);
    if (this.form.elements.own.checked) refuseBacks([...fitted.values()]);
    const items = slugs.map((slug) => fitted.get(slug)?.element);
    const gone = this.showPlaces(grid);
    const sheets = laySheets(grid, items, cardFaces, {
      startAt, gone, cutLines: cut.checked, outline: this.shape, shift: this.mine.shift(),
    });
    if (ruler.checked && sheets.firstElementChild) addRulerTo(sheets, grid);
    const twoSided = [...fitted.values()].some((each) => each.fit.sides === 2);
    const said = slugs.length === 0 ? [say("choose")] : [this.sum(slugs.length, grid, freePlaces(slugs.length, startAt, gone), sheets, twoSided)];
    if (larger) said.unshift(larger);
    const spoken = [...fitted.values()].map(({ element }) => spokenCard(element));
    return { sheets, paper, words: said.join(" "), spoken };
  }

  /**
   * Show the first sheet's places to click those that are gone; return them, counted from 0.
   * @param {Grid} grid
   */
  showPlaces({ columns, rows }) {
    const shown = this.form.querySelector(".print-room-places");
    if (shown.dataset.grid !== `${columns} ${rows}`) {
      shown.dataset.grid = `${columns} ${rows}`;
      shown.style.setProperty("--columns", columns);
      const places = Array.from({ length: columns * rows }, (_, at) => {
        const label = document.createElement("label");
        label.innerHTML = `<input type="checkbox" data-place="${at}"><span>${at + 1}</span>`;
        return label;
      });
      shown.replaceChildren(...places);
    }
    return new Set([...shown.querySelectorAll(":checked")].map(({ dataset }) => Number(dataset.place)));
  }

  /** @param {string} id */
  sizeOf(id) {
    return withId(this.paperData.sizes, id);
  }

  /**
   * @param {number} things
   * @param {Grid} grid
   * @param {number[]} free
   * @param {HTMLElement} sheets
   * @param {boolean} twoSided
   */
  sum(things, grid, free, sheets, twoSided) {
    const pages = sheets.querySelectorAll('[data-side="front"], [data-side="back"]').length;
    const perPage = grid.columns * grid.rows;
    const left = (perPage - ((free[free.length - 1] + 1) % perPage)) % perPage;
    const said = [say("pages", { things, count: pages })];
    if (left > 0) said.push(say("places", { count: left }));
    if (twoSided) said.push(say(this.box.folded ? "both_sides_and_fold" : "both_sides"));
    return said.join(" ");
  }

  /**
   * What is chosen, fitted alike, in the first box that holds it so: cards that no one arrangement of the
   * chosen size holds take a larger, and large type does wherever something does not go. `taken` is the size
   * of a card, `larger` the words for a box that was not asked for.
   * @param {string[]} slugs
   * @param {boolean} isCard
   * @param {string} size
   */
  fitted(slugs, isCard, size) {
    const { design: named, large } = this.form.elements;
    const design = withId(this.paperData.designs, named.value);
    const isLarge = large.checked || design.large;
    const boxes = this.boxes(isCard, size, isLarge);
    /** @type {ReturnType<SheetLayer["fittedIn"]>[]} */
    const tried = [];
    for (const box of boxes) {
      const one = this.fittedIn(box, slugs, isCard, design);
      tried.push(one);
      const fits = one.fits.every((fit) => fit.fits);
      if (fits && one.fits.every(({ isApart }) => !isApart)) break;
      if (!fits && !isLarge) break;
    }
    const last = /** @type {typeof tried[number]} */ (tried.at(-1));
    const isTold = last.fits.every((fit) => fit.fits) || isLarge;
    const { box, elements, fits } = isTold ? last : /** @type {typeof last} */ (tried[0]);
    this.box = box.box;
    this.shape = box.shape;
    const fitted = new Map(slugs.map((slug, index) => [
      slug, { element: elements[index], fit: fits[index], title: elements[index].dataset.title },
    ]));
    const words = isLarge ? "larger" : "alike";
    return { fitted, taken: box.size, larger: box === boxes[0] ? "" : say(words, { size: box.name }) };
  }

  /**
   * @param {{size: string, shape: string, name: string, box: Box}} box
   * @param {string[]} slugs
   * @param {boolean} isCard
   * @param {Design} design
   */
  fittedIn(box, slugs, isCard, design) {
    this.box = box.box;
    this.shape = box.shape;
    const elements = slugs.map((slug) => this.written(slug, isCard, design, box.size));
    /** @type {(Fit | TagFit)[]} */
    const fits = (isCard ? fitCards : fitTags)(elements, this.holder);
    return { box, elements, fits };
  }

  /**
   * The boxes that are tried: the chosen one, the larger cards, for large type the larger tags. A bought label
   * is as large as it is.
   * @param {boolean} isCard
   * @param {string} size
   * @param {boolean} isLarge
   * @returns {{size: string, shape: string, name: string, box: Box}[]}
   */
  boxes(isCard, size, isLarge) {
    const { thing, own } = this.form.elements;
    if (isCard) {
      const names = own.checked ? [size] : LARGER.slice(LARGER.indexOf(size));
      return names.map((name) => (
        { size: name, shape: "", name: this.sizeOf(name).name, box: chosenBox(this.form, this.paperData, name) }
      ));
    }
    const first = { shape: thing.value, box: chosenBox(this.form, this.paperData) };
    const tried = isLarge && !own.checked ? [first, ...largerTags(this.paperData.tags, thing.value)] : [first];
    return tried.map((one) => ({ ...one, size: "", name: one.box.name }));
  }

  /** @param {string} slug @param {boolean} isCard @param {Design} design @param {string} size */
  written(slug, isCard, design, size) {
    const { to, from, made, message, large, hand, own } = this.form.elements;
    const element = isCard
      ? this.cards.querySelector(`[data-recipe="${CSS.escape(slug)}"]`).cloneNode(true)
      : this.cards.querySelector(`template[data-tag="${CSS.escape(slug)}"]`).content.firstElementChild.cloneNode(true);
    if (isCard) element.dataset.size = size;
    else element.dataset.shape = this.shape;
    element.toggleAttribute("data-wide", !isCard && this.box.width > WIDE_MM);
    element.toggleAttribute("data-high", !isCard && this.box.height > HIGH_MM);
    element.toggleAttribute("data-crowned", !isCard && this.box.width >= CROWNED_MM);
    if (!this.box.folded) {
      element.style.setProperty("--card-width", `${this.box.width}mm`);
      element.style.setProperty("--card-height", `${this.box.height}mm`);
    }
    dress(element, design, { large: large.checked, hand: hand.checked, hasBack: !own.checked });
    writeCard(element, {
      to: to.value.trim(), from: from.value.trim(), made: made.value,
      message: message.value.trim(), hand: hand.checked,
    });
    return element;
  }

  /**
   * The sheets as they are shown on the page, each under the words for its side.
   * @param {HTMLElement} sheets
   */
  shown(sheets) {
    const shown = sheets.cloneNode(true);
    shown.toggleAttribute("data-shown", true);
    shown.setAttribute("aria-hidden", "true");
    const [front, back] = this.box.folded ? ["outside", "inside"] : ["front", "back"];
    /** @type {Texts} */
    const names = { front: say(front), back: say(back), ruler: say("ruler") };
    for (const page of shown.querySelectorAll(".sheet-page")) {
      const name = document.createElement("p");
      name.className = "sheet-name aside";
      name.textContent = names[page.dataset.side];
      page.before(name);
    }
    return shown;
  }

  /** Print sheets alone. @param {{sheets: HTMLElement, paper: Paper}} laid */
  print({ sheets, paper }) {
    printSheets(sheets, paper);
  }
}

/** @param {FittedCard[]} fitted */
function refuseTooLong(fitted) {
  const refused = fitted.filter(({ fit }) => !fit.fits);
  if (refused.length === 0) return;
  const titles = refused.map(({ title, fit }) => say("part", { title, parts: fit.over.join(", ") }));
  throw say.refuse("do_not_fit", { titles: titles.join("; ") });
}

// A label's back is its glue: what needs two sides goes on none.
/** @param {FittedCard[]} fitted */
function refuseBacks(fitted) {
  const titles = fitted.filter((each) => each.fit.sides === 2).map((each) => each.title);
  if (titles.length === 0) return;
  throw new Unreadable(say("no_back", { count: titles.length, titles: titles.join(", ") }));
}
