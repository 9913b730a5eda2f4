// A reader's own printer and bought label sheets in the print room: the sheets' measures under names, the
// book's own beside them, and by how much the printer misses. Kept in this browser, sent nowhere.

import SAID from "../../data/said/pages-print.js";
import OWN_SAID from "../../data/said/pages-printer.js";
import { feedSheet } from "../paper/feed-sheet.js";
import { withId } from "../paper/paper.js";
import { printSheets } from "../paper/sheets.js";
import { Unreadable, speaker } from "../words/said.js";
import { readLength, readWhole } from "./figures.js";
import { MOST_FEED_MM, keepFeed, keptFeed, shiftOf } from "./printer-feed.js";
import { keep, kept } from "./stored.js";

const say = speaker(OWN_SAID);
const sayField = speaker(SAID);
const STORE = "stillroom-label-sheets";
const FIELDS = ["columns", "rows", "left", "top", "pitchX", "pitchY", "labelWidth", "labelHeight"];
// as core/recipe/settings.py
const MEASURES = /^\d+(\.\d+)?(,\d+(\.\d+)?){5}(,\d+(\.\d+)?,\d+(\.\d+)?)?$/;

/** The fields of a reader's own printer; `changed` is called when they change by themselves. */
export class MyPrinter {
  /** @param {HTMLFormElement} form @param {PaperData} paperData @param {() => void} changed */
  constructor(form, paperData, changed) {
    this.form = form;
    this.paperData = paperData;
    this.changed = changed;
    this.said = form.querySelector("[data-said-kept]");
    const { feedAcross, feedDown } = form.elements;
    [feedAcross.value, feedDown.value] = keptFeed().map(String);
    this.listSheets();
    for (const [name, act] of [["keep", () => this.keepSheet()], ["forget", () => this.forgetSheet()], ["test-sheet", () => this.printTestSheet()]]) {
      form.querySelector(`[data-${name}]`).addEventListener("click", act);
    }
  }

  /**
   * Follow a choice: a sheet that was kept fills its measures in, a printer's miss is kept.
   * @param {EventTarget | null} target
   */
  follow(target) {
    const { stock, feedAcross, feedDown } = this.form.elements;
    if (target === stock && stock.value) this.takeSheet(this.sheets()[stock.value]);
    this.form.querySelector("[data-forget]").disabled = !Object.hasOwn(ownSheets(), stock.value);
    if (target === feedAcross || target === feedDown) keepFeed(this.feed());
  }

  /** By how much the printer misses, [right, down] in mm; throws in words. */
  feed() {
    const { feedAcross, feedDown } = this.form.elements;
    return [readMoved(feedAcross, say("feed_across")), readMoved(feedDown, say("feed_down"))];
  }

  /** By how much everything is moved. */
  shift() {
    return shiftOf(this.feed());
  }

  // a reader's own sheet of a name goes before the book's
  sheets() {
    const books = Object.fromEntries(this.paperData.labels.map(({ name, measures }) => [name, measures.replaceAll(/\s/g, "")]));
    return { ...books, ...ownSheets() };
  }

  /** @param {string} [chosen] */
  listSheets(chosen = "") {
    const { stock } = this.form.elements;
    const names = Object.keys(this.sheets());
    stock.replaceChildren(new Option(say("no_sheet"), ""), ...names.map((name) => new Option(name, name)));
    stock.value = chosen;
    this.follow(stock);
  }

  /** @param {string} measures */
  takeSheet(measures) {
    const figures = measures.split(",");
    FIELDS.forEach((name, index) => {
      this.form.elements[name].value = figures[index] ?? "";
    });
    const { own, cut } = this.form.elements;
    own.checked = true;
    cut.checked = false; // bought labels are cut already
  }

  keepSheet() {
    const { stockName, own } = this.form.elements;
    const name = stockName.value.trim();
    this.tell(() => {
      if (!name) throw say.refuse("no_name");
      const measures = this.measures();
      if (!keep(STORE, { ...ownSheets(), [name]: measures }, "localStorage")) throw say.refuse("not_kept", { measures });
      own.checked = true;
      this.listSheets(name);
      return say("kept", { name, measures });
    });
    this.changed();
  }

  // as the command's --label-sheet has them, and the book's settings
  measures() {
    const { elements } = this.form;
    const whole = ["columns", "rows"].map((name) => readWhole(elements[name], sayField(name), 1, 50));
    const named = [["left", "left"], ["top", "top"], ["pitchX", "pitch_x"], ["pitchY", "pitch_y"]];
    const lengths = named.map(([name, word]) => readLength(elements[name], sayField(word)));
    const written = ["labelWidth", "labelHeight"].some((name) => elements[name].value.trim() !== "");
    const sides = written ? [["labelWidth", "label_width"], ["labelHeight", "label_height"]] : [];
    return [...whole, ...lengths, ...sides.map(([name, word]) => readLength(elements[name], sayField(word)))].join(",");
  }

  forgetSheet() {
    const { stock } = this.form.elements;
    const { [stock.value]: _gone, ...left } = ownSheets();
    const name = stock.value;
    this.tell(() => {
      keep(STORE, left, "localStorage");
      this.listSheets();
      return say("forgotten", { name });
    });
  }

  printTestSheet() {
    const paper = withId(this.paperData.papers, this.form.elements.paper.value);
    this.tell(() => {
      printSheets(feedSheet(paper, this.shift()), paper);
      return "";
    });
  }

  /** @param {() => string} act */
  tell(act) {
    try {
      this.said.textContent = act();
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      this.said.textContent = error.message;
    }
  }
}

// Return the millimetres by which a printer misses, to either side; an empty field is none.
/** @param {HTMLInputElement} field @param {string} name */
function readMoved(field, name) {
  const number = Number(field.value);
  if (field.validity.badInput || !Number.isFinite(number) || Math.abs(number) > MOST_FEED_MM) {
    throw say.refuse("missed", { name, most: MOST_FEED_MM });
  }
  return number;
}

// what is not ours, or was spoilt, is no sheet
function ownSheets() {
  const found = Object.entries(kept(STORE, "localStorage"));
  return Object.fromEntries(found.filter(([, measures]) => typeof measures === "string" && MEASURES.test(measures)));
}
