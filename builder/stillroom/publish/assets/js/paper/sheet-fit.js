// Fits a kitchen sheet to one side of paper, else to two, and prints it on paper of that size.

import { printAlone } from "./sheets.js";

const MARGIN_MM = 15;
const SLACK_MM = 2; // rounding may take as much on its way to the printer
const PX_PER_MM = 96 / 25.4;

// Arm's length is about 60 cm: as templates/sheet.typ, from 13.5 pt down and never under 11 pt.
const SIZES_PT = [13.5, 13, 12.5, 12, 11.5, 11];
const PLACES = ["beside", "below"];
const NOTES_MM = 30; // three lines to write on, wanted before larger type
const LEAST_NOTES_MM = 20;

/**
 * Set a sheet as large as one side of `paper` allows, else two; return how many sides it takes.
 * @param {HTMLElement} sheet
 * @param {Size} paper
 */
export function fitSheet(sheet, paper) {
  const side = paper.height - 2 * MARGIN_MM - SLACK_MM;
  const tries = SIZES_PT.flatMap((size) => PLACES.map((place) => ({ size, place })));
  const measured = tries.map((one) => ({ ...one, ...measure(sheet, one) }));
  /** @param {(one: {tall: number, recipe: number}) => boolean} fits */
  const largest = (fits) => measured
    .filter(fits)
    .sort((one, other) => other.size - one.size || one.tall - other.tall)[0];
  const one = largest(({ tall }) => tall <= side - NOTES_MM) ?? largest(({ tall }) => tall <= side);
  // the second side is for the safety box: the first must hold the recipe
  const used = one ?? largest(({ recipe }) => recipe <= side) ?? /** @type {typeof measured[number]} */ (measured.at(-1));
  arrange(sheet, used);
  sheet.dataset.sides = one ? "1" : "2";
  const notes = sheet.querySelector(".kitchen-sheet__notes");
  if (!one) {
    const first = notes.cloneNode(true);
    sheet.querySelector(".kitchen-sheet__care")?.before(first);
    rule(first, side - SLACK_MM - used.recipe);
  }
  rule(notes, side - (one ? used.tall : used.tall - used.recipe));
  return one ? 1 : 2;
}

// rules the room that is left, when there is enough of it to write in
/** @param {HTMLElement} notes @param {number} room */
function rule(notes, room) {
  notes.hidden = room < LEAST_NOTES_MM;
  notes.style.blockSize = `${Math.floor(room)}mm`;
}

/**
 * Print the sheet alone. The paper's size goes with this one print: on other paper in the printer
 * the sheet is shrunk, and does not run over.
 * @param {HTMLElement} sheet
 * @param {Size} paper
 */
export function printSheet(sheet, paper) {
  printAlone(sheet, "printing-kitchen-sheet", paper, MARGIN_MM);
}

/** Return a holder in which a sheet is measured at its width on `paper`. @param {Size} paper */
export function makeHolder(paper) {
  const holder = document.createElement("div");
  holder.className = "kitchen-sheet-measuring";
  holder.style.inlineSize = `${paper.width - 2 * MARGIN_MM}mm`;
  holder.setAttribute("aria-hidden", "true");
  document.body.append(holder);
  return holder;
}

// heights in mm without the room for notes: of all of it, and of the recipe above the safety box
/** @param {HTMLElement} sheet @param {SheetType} one */
function measure(sheet, one) {
  arrange(sheet, one);
  sheet.dataset.sides = "1";
  sheet.querySelector(".kitchen-sheet__notes").hidden = true;
  const box = sheet.getBoundingClientRect();
  const care = sheet.querySelector(".kitchen-sheet__care");
  const recipe = (care ? care.getBoundingClientRect().top : box.bottom) - box.top;
  return { tall: box.height / PX_PER_MM, recipe: recipe / PX_PER_MM };
}

// the dates stand under the ingredients, beside the method, or under both
/** @param {HTMLElement} sheet @param {SheetType} type */
function arrange(sheet, { size, place }) {
  sheet.style.setProperty("--sheet-text", `${size}pt`);
  sheet.dataset.when = place;
  const when = sheet.querySelector(".kitchen-sheet__when");
  if (place === "beside") sheet.querySelector(".kitchen-sheet__gather").append(when);
  else sheet.querySelector(".kitchen-sheet__body").after(when);
}
