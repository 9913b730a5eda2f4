/* The form of "Send us a recipe": saves what is typed as a file, opens such a file again. Nothing is
   sent; what is typed is kept in this browser until the window closes, where the browser keeps such. */

import SAID from "../../data/said/pages-send.js";
import { speaker } from "../words/said.js";
import { doubtsOf, fileName } from "../words/recipe-doubts.js";
import { readRecipe, writeRecipe } from "../words/recipe-file.js";
import { keep, kept } from "./stored.js";

const say = speaker(SAID);
const STORE = "stillroom-send";
const LARGEST = 500_000;

/** Bring the form of a page to life, if there is one. @param {Document} page */
export function beginSending(page) {
  const form = /** @type {HTMLFormElement | null} */ (page.querySelector("form.send"));
  if (form) new Sending(form).begin();
}

class Sending {
  /** @param {HTMLFormElement} form */
  constructor(form) {
    this.form = form;
    this.stages = JSON.parse(form.dataset.stages ?? "[]");
    this.said = /** @type {HTMLElement} */ (form.querySelector("[data-send=said]"));
    this.file = "";
  }

  begin() {
    this.form.hidden = false;
    this.form.ownerDocument.querySelectorAll("[data-send=without]").forEach((one) => one.remove());
    this.fillIn(kept(STORE));
    this.form.addEventListener("input", () => keep(STORE, this.boxes()));
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.save(/** @type {SubmitEvent} */ (event).submitter?.getAttribute("value") === "unfinished");
    });
    const opened = /** @type {HTMLInputElement} */ (this.form.querySelector("#box-opened"));
    opened.addEventListener("change", () => this.open(opened));
    this.form.querySelector("[data-send=empty]")?.addEventListener("click", () => this.empty());
  }

  /** @returns {(HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement)[]} */
  fields() {
    return /** @type {any[]} */ ([...this.form.querySelectorAll("[data-box]")]);
  }

  /** What is typed, by the names of the boxes. @returns {Record<string, string>} */
  boxes() {
    return Object.fromEntries(this.fields().map((field) => [boxOf(field), field.value]));
  }

  /** @param {Record<string, unknown>} boxes */
  fillIn(boxes) {
    for (const field of this.fields()) {
      const words = boxes[boxOf(field)];
      if (typeof words !== "string") continue;
      if (field instanceof HTMLSelectElement && words && ![...field.options].some((one) => one.value === words)) {
        field.add(new Option(words, words));
      }
      field.value = words;
    }
    for (const more of this.form.querySelectorAll("details")) {
      more.open ||= [...more.querySelectorAll("[data-box]")].some((field) => /** @type {HTMLInputElement} */ (field).value);
    }
  }

  /** @param {boolean} unfinished */
  save(unfinished) {
    const boxes = this.boxes();
    const doubts = doubtsOf(boxes, this.stages);
    this.show(doubts);
    if (doubts.length && !unfinished) {
      this.tell(say("not_yet", { count: doubts.length }));
      this.fields().find((field) => boxOf(field) === doubts[0].box)?.focus();
      return;
    }
    const name = fileName(boxes.title);
    URL.revokeObjectURL(this.file);
    this.file = URL.createObjectURL(new Blob([writeRecipe(boxes)], { type: "text/markdown" }));
    const link = this.form.ownerDocument.createElement("a");
    link.href = this.file;
    link.download = name;
    link.click();
    this.tell(say(doubts.length ? "saved_unfinished" : "saved", { name }));
  }

  /** Say each doubt at its box, and nothing at the others. @param {{box: string, words: string}[]} doubts */
  show(doubts) {
    for (const field of this.fields()) {
      const words = doubts.find((doubt) => doubt.box === boxOf(field))?.words ?? "";
      const place = /** @type {HTMLElement} */ (this.form.querySelector(`#wrong-${boxOf(field)}`));
      place.textContent = words;
      if (words) field.setAttribute("aria-invalid", "true");
      else field.removeAttribute("aria-invalid");
      const folded = field.closest("details");
      if (words && folded) folded.open = true;
    }
  }

  /** @param {HTMLInputElement} chosen */
  async open(chosen) {
    const file = chosen.files?.[0];
    if (!file) return;
    if (file.size > LARGEST) {
      this.tell(say("no_recipe", { name: file.name }));
      return;
    }
    const { boxes, left } = readRecipe(await file.text());
    chosen.value = "";
    if (!boxes.title && !boxes.ingredients && !boxes.method) {
      this.tell(say("no_recipe", { name: file.name }));
      return;
    }
    const before = Object.values(this.boxes()).some(Boolean);
    if (before && !this.form.ownerDocument.defaultView?.confirm(say("instead"))) return;
    this.fillIn({ ...Object.fromEntries(this.fields().map((field) => [boxOf(field), ""])), ...boxes });
    keep(STORE, this.boxes());
    this.show([]);
    this.tell(left.length ? say("left", { name: file.name, lines: left.join(" · ") }) : say("opened", { name: file.name }));
  }

  empty() {
    if (!this.form.ownerDocument.defaultView?.confirm(say("empty"))) return;
    this.fillIn(Object.fromEntries(this.fields().map((field) => [boxOf(field), ""])));
    keep(STORE, {});
    this.show([]);
    this.tell("");
  }

  /** @param {string} words */
  tell(words) {
    this.said.textContent = words;
  }
}

/** The name of a field's box. @param {HTMLElement} field */
function boxOf(field) {
  return field.dataset.box ?? "";
}
