// What a form says is to be printed: the recipes, the box of each, the sheet and where it begins.

import SAID from "../../data/said/pages-print.js";
import PAPER_SAID from "../../data/said/paper-sheets.js";
import { boxOfCard, impose, labelSheet, withId } from "../paper/paper.js";
import { tagBox } from "../paper/tag-shapes.js";
import { speaker } from "../words/said.js";
import { MOST_OF_ONE, readLength, readWhole } from "./figures.js";

const say = speaker(SAID);
const sayPaper = speaker(PAPER_SAID);
const MOST = 400;

/**
 * Return the recipes to print, each as often as its field says; an empty field is none.
 * @param {HTMLFormElement} form
 * @returns {string[]}
 */
export function chosenRecipes(form) {
  const chosen = [...form.querySelectorAll("[data-recipe]")].flatMap((field) => {
    if (field.value === "" && !field.validity.badInput) return [];
    const count = readWhole(field, say("how_many_of", { title: field.dataset.title }), 0, MOST_OF_ONE);
    return Array(count).fill(field.dataset.recipe);
  });
  if (chosen.length > MOST) {
    throw say.refuse("too_many", { count: chosen.length, most: MOST });
  }
  return chosen;
}

/**
 * The box of what is chosen, a card or a tag.
 * @param {HTMLFormElement} form
 * @param {PaperData} paperData
 * @param {string} [sizeName]
 * @returns {Box}
 */
export function chosenBox(form, { sizes, tags, leastLabel }, sizeName = form.elements.size.value) {
  const { thing, lid, diameter, wall } = form.elements;
  const folded = thing.value === "card" && withId(sizes, sizeName).folded;
  if (!folded && hasOwnLabel(form)) return ownLabel(form, leastLabel);
  if (thing.value === "card") return boxOfCard(withId(sizes, sizeName));
  if (thing.value === "round") {
    return tagBox(tags, "round", { lid: readLength(lid, say("lid")) });
  }
  if (thing.value === "wrap") {
    return tagBox(tags, "wrap", {
      diameter: readLength(diameter, say("bottle")), wall: readLength(wall, say("wall")),
    });
  }
  return tagBox(tags, thing.value, {});
}

// a bought label is of the chosen size unless its own is written
/** @param {HTMLFormElement} form */
function hasOwnLabel(form) {
  const { own, labelWidth, labelHeight } = form.elements;
  /** @param {HTMLInputElement} field */
  const written = ({ value, validity }) => value.trim() !== "" || validity.badInput;
  return own.checked && [labelWidth, labelHeight].some(written);
}

/** @param {HTMLFormElement} form @param {[number, number]} least @returns {Box} */
function ownLabel(form, [leastWidth, leastHeight]) {
  const { thing, labelWidth, labelHeight } = form.elements;
  const width = readLength(labelWidth, say("label_width"));
  const height = readLength(labelHeight, say("label_height"));
  if (width < leastWidth || height < leastHeight) {
    throw sayPaper.refuse("small_label", {
      width, height, least_width: leastWidth, least_height: leastHeight,
    });
  }
  if (thing.value === "round" && width !== height) {
    throw sayPaper.refuse("round_label");
  }
  return { name: say("label_name"), width, height };
}

/**
 * The sheet's grid: as many as go on the paper, or a bought sheet's own measures.
 * @param {HTMLFormElement} form
 * @param {Paper} paper
 * @param {Box} box
 * @param {boolean} isDensest
 * @returns {Grid}
 */
export function chosenGrid(form, paper, box, isDensest) {
  const { own, columns, rows, left, top, pitchX, pitchY } = form.elements;
  if (!own.checked) return impose(paper, box, isDensest);
  if (box.folded) throw say.refuse("folded");
  return labelSheet(paper, box, {
    columns: readWhole(columns, say("columns"), 1, 50),
    rows: readWhole(rows, say("rows"), 1, 50),
    left: readLength(left, say("left")),
    top: readLength(top, say("top")),
    pitchX: readLength(pitchX, say("pitch_x")),
    pitchY: readLength(pitchY, say("pitch_y")),
  });
}

/**
 * The first free place of a half-used sheet, counted from 1.
 * @param {HTMLFormElement} form
 * @param {Grid} grid
 */
export function chosenStart(form, grid) {
  return readWhole(form.elements.start, say("start"), 1, grid.columns * grid.rows);
}
