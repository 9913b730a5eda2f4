/**
 * <stillroom-gift-cuts>: sentences with blanks for what is cut for a gift; the measures in words,
 * the pieces drawn small on the page and at their true size in print. Nothing typed leaves it.
 */

import { boxPieces, labelPieces, lidPieces, linesOf, placeOn } from "../paper/gift-cuts.js";
import { addRuler, printSheets } from "../paper/sheets.js";
import SAID from "../../data/said/paper-gifts.js";
import { Unreadable } from "../words/said.js";

const words = SAID.phrases;

const MAKERS = { lid: lidPieces, label: labelPieces, box: boxPieces };

/** Custom element around fragments/gift-cuts.html. */
export class StillroomGiftCuts extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector("form");
    if (!this.form) return;
    this.data = JSON.parse(this.querySelector(".gift-cuts-data").textContent);
    this.listening = new AbortController();
    const { signal } = this.listening;
    this.form.addEventListener("input", () => this.show(), { signal });
    this.form.addEventListener("submit", (event) => this.print(event), { signal });
    this.form.hidden = false;
    this.show();
  }

  disconnectedCallback() {
    this.listening?.abort();
  }

  get paper() {
    return this.data.papers.find((each) => each.id === this.form.elements.paper.value);
  }

  show() {
    for (const part of this.form.querySelectorAll("[data-cut]")) {
      const { pieces, refused } = this.piecesOf(part);
      const said = part.querySelector("[data-said]");
      const told = refused ?? pieces.map((one) => this.sentence(one)).join(" ");
      if (said.textContent !== told) said.textContent = told;
      said.toggleAttribute("data-refused", refused !== null);
      part.querySelector(".gift-cuts-drawn").replaceChildren(...pieces.map((one) => this.figure(one)));
      part.querySelector("button").disabled = refused !== null;
    }
  }

  /** What a sentence asks for: its pieces, or why there are none. */
  piecesOf(part) {
    const asked = {};
    for (const field of part.querySelectorAll("input, select")) {
      if (field.value.trim() === "") return { pieces: [], refused: words.fill_in };
      asked[field.name] = field.name === "share" ? field.value : Number(field.value);
    }
    if ("tie" in asked) asked.bow = asked.tie === 1;
    try {
      return { pieces: MAKERS[part.dataset.cut](this.data, asked), refused: null };
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      return { pieces: [], refused: error.message };
    }
  }

  sentence(one) {
    const name = one.kind === "net" ? `${one.name}: ` : "";
    return `${name}${one.words} ${placeOn(one, this.paper, this.data) ? "" : words.too_large}`.trim();
  }

  figure(one) {
    const figure = document.createElement("figure");
    figure.append(this.draw(one));
    if (one.kind === "net") {
      const caption = document.createElement("figcaption");
      caption.textContent = one.name;
      figure.append(caption);
    }
    return figure;
  }

  /** A piece as SVG whose unit is a millimetre, with half a millimetre round it for its own lines. */
  draw(one) {
    const { outline, folds, circle } = linesOf(one, this.data);
    const [width, height] = [one.width + 1, one.height + 1];
    const svg = make("svg", {
      class: "gift-piece", viewBox: `-0.5 -0.5 ${width} ${height}`,
      width: `${width}mm`, height: `${height}mm`, style: `--piece-width: ${width}`, "aria-hidden": "true",
    });
    svg.append(make("path", { class: "gift-cut", d: `M${outline.map((at) => at.join(" ")).join("L")}Z` }));
    const dashed = folds.map((/** @type {any[]} */ [from, to]) => `M${from.join(" ")}L${to.join(" ")}`);
    if (dashed.length) svg.append(make("path", { class: "gift-fold", d: dashed.join("") }));
    if (circle) svg.append(make("circle", { class: "gift-fold", cx: one.width / 2, cy: one.height / 2, r: circle / 2 }));
    return svg;
  }

  print(event) {
    event.preventDefault();
    const part = event.submitter?.closest("[data-cut]");
    if (!part) return;
    const { pieces } = this.piecesOf(part);
    const sheets = document.createElement("div");
    sheets.className = "stillroom-sheets";
    sheets.append(...pieces.map((one) => this.page(one)));
    if (pieces.length) printSheets(sheets, this.paper);
  }

  page(one) {
    const page = document.createElement("section");
    page.className = "sheet-page gift-page";
    page.dataset.paper = this.paper.id;
    const head = document.createElement("h2");
    head.textContent = one.name;
    const measures = document.createElement("p");
    measures.textContent = one.words;
    page.append(head, measures);
    const placed = placeOn(one, this.paper, this.data);
    if (placed) page.append(this.draw(placed));
    else measures.append(` ${words.too_large}`);
    addRuler(page);
    return page;
  }
}

function make(tag, attributes) {
  const node = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
}
