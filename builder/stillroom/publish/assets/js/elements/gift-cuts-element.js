/**
 * <stillroom-gift-cuts>: sentences with blanks for what is cut for a gift; the measures in words,
 * the pieces drawn small on the page and, close together, at their true size in print. Nothing typed
 * leaves it.
 */

import { layPieces } from "../paper/cut-layout.js";
import { drawPiece, drawSheets } from "../paper/cut-sheets.js";
import { boxPieces, labelPieces, lidPieces, placeOn } from "../paper/gift-cuts.js";
import { withId } from "../paper/paper.js";
import { printSheets } from "../paper/sheets.js";
import SAID from "../../data/said/paper-gifts.js";
import { Unreadable, speaker } from "../words/said.js";
import { MOST_OF_ONE, readWhole } from "./figures.js";

const say = speaker(SAID);

/** @type {Record<string, (data: CutsData, asked: any) => Piece[]>} */
const MAKERS = { lid: lidPieces, label: labelPieces, box: boxPieces };

/** Custom element around fragments/gift-cuts.html. */
export class StillroomGiftCuts extends HTMLElement {
  connectedCallback() {
    /** @type {HTMLFormElement} */
    this.form = this.querySelector("form");
    if (!this.form) return;
    /** @type {CutsData} */
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
    return withId(this.data.papers, this.form.elements.paper.value);
  }

  get parts() {
    return [...this.form.querySelectorAll("[data-cut]")];
  }

  show() {
    for (const part of this.parts) {
      const { pieces, copies, refused, large } = this.read(part);
      const told = refused ?? pieces.map((one) => this.sentence(one)).join(" ");
      this.tell(part.querySelector("[data-said]"), told, refused !== null || large.length > 0);
      part.querySelector(".gift-cuts-drawn").replaceChildren(...pieces.map((one) => this.figure(one)));
      part.querySelector("button").disabled = refused !== null || large.length > 0 || copies === 0;
    }
    const all = this.readAll();
    this.tell(this.form.querySelector("[data-said-all]"), all.told, all.refused);
    this.form.querySelector("[data-all]").disabled = all.sheets.length === 0;
  }

  /** @param {HTMLElement} said @param {string} words @param {boolean} isRefused */
  tell(said, words, isRefused) {
    if (said.textContent !== words) said.textContent = words;
    said.toggleAttribute("data-refused", isRefused);
  }

  /**
   * What a sentence asks for: its pieces, how many of each, or why there are none; what is too large.
   * @param {HTMLElement} part
   * @returns {WantedPieces}
   */
  read(part) {
    const none = { pieces: [], copies: 0, large: [] };
    /** @type {any} */
    const asked = {};
    const { copies, ...fields } = fieldsOf(part);
    for (const [name, field] of Object.entries(fields)) {
      if (field.value.trim() === "") return { ...none, refused: say("fill_in") };
      asked[name] = name === "share" ? field.value : Number(field.value);
    }
    if ("tie" in asked) asked.bow = asked.tie === 1;
    try {
      const pieces = MAKERS[part.dataset.cut ?? ""](this.data, asked);
      const large = pieces.filter((one) => !placeOn(one, this.paper, this.data));
      return { pieces, large, copies: readWhole(copies, say("how_many"), 0, MOST_OF_ONE), refused: null };
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      return { ...none, refused: error.message };
    }
  }

  /** All sentences together: the sheets they go on, and what is said of them. */
  readAll() {
    const wanted = this.parts.map((part) => this.read(part));
    if (wanted.some(({ refused }) => refused !== null)) return { sheets: [], told: "", refused: false };
    const chosen = wanted.filter(({ copies }) => copies > 0);
    const large = chosen.flatMap((one) => one.large.map(({ name }) => name));
    if (large.length > 0) {
      return { sheets: [], told: say("all_too_large", { names: large.join(", ") }), refused: true };
    }
    const sheets = this.lay(chosen);
    const pieces = sheets.reduce((sum, sheet) => sum + sheet.length, 0);
    return { sheets, told: pieces ? say("sheets", { pieces, count: sheets.length }) : say("none"), refused: false };
  }

  /** @param {WantedPieces[]} chosen */
  lay(chosen) {
    const pieces = chosen.flatMap((one) => Array(one.copies).fill(one.pieces).flat());
    return layPieces(pieces, this.paper, this.data) ?? [];
  }

  /** @param {Piece} one */
  sentence(one) {
    const name = one.kind === "net" ? `${one.name}: ` : "";
    return `${name}${one.words} ${placeOn(one, this.paper, this.data) ? "" : say("too_large")}`.trim();
  }

  /** @param {Piece} one */
  figure(one) {
    const figure = document.createElement("figure");
    figure.append(drawPiece(one, this.data));
    if (one.kind === "net") {
      const caption = document.createElement("figcaption");
      caption.textContent = one.name;
      figure.append(caption);
    }
    return figure;
  }

  /** @param {SubmitEvent} event */
  print(event) {
    event.preventDefault();
    const part = event.submitter?.closest("[data-cut]");
    if (part) {
      const wanted = this.read(part);
      if (wanted.large.length === 0) this.printLaid(this.lay([wanted]));
    } else if (event.submitter?.matches("[data-all]")) this.printLaid(this.readAll().sheets);
  }

  /** @param {LaidPiece[][]} laid */
  printLaid(laid) {
    if (laid.length > 0) printSheets(drawSheets(laid, this.paper, this.data), this.paper);
  }
}

/** @param {HTMLElement} part @returns {Record<string, HTMLInputElement>} */
function fieldsOf(part) {
  return Object.fromEntries([...part.querySelectorAll("input, select")].map((field) => [field.name, field]));
}
