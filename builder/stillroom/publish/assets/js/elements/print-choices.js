// What a form says is to be printed, read strictly: a figure that cannot be meant is answered in
// words (RangeError), never guessed at. Choices stay in sessionStorage until the window closes.

import { impose, labelSheet } from "../paper/paper.js";
import { fillField, keep, kept } from "./stored.js";
import { tagBox } from "../paper/tag-shapes.js";

/** More than this at once is a slip of the finger. */
export const MOST_OF_ONE = 200;
const MOST = 400;
const STORE = "stillroom-print-room";

/** Return the whole number in a field; throws in words that begin with `name`. */
export function readWhole(field, name, least, most) {
  const number = Number(field.value);
  const good = !field.validity.badInput && field.value.trim() !== "" && Number.isInteger(number);
  if (!good || number < least || number > most) {
    throw new RangeError(`${name}: write a whole number from ${least} to ${most}.`);
  }
  return number;
}

/** Return the millimetres in a field, not negative; throws in words that begin with `name`. */
export function readLength(field, name) {
  const number = Number(field.value);
  const good = !field.validity.badInput && field.value.trim() !== "" && Number.isFinite(number);
  if (!good || number < 0 || number > 2000) {
    throw new RangeError(`${name}: write the millimetres as a number, such as 62 or 18.5.`);
  }
  return number;
}

/** Return the recipes to print, each as often as its field says; an empty field is none. */
export function chosenRecipes(form) {
  const chosen = [...form.querySelectorAll("[data-recipe]")].flatMap((field) => {
    if (field.value === "" && !field.validity.badInput) return [];
    const count = readWhole(field, `How many of ${field.dataset.title}`, 0, MOST_OF_ONE);
    return Array(count).fill(field.dataset.recipe);
  });
  if (chosen.length > MOST) {
    throw new RangeError(`These are ${chosen.length} in all. Print at most ${MOST} at a time.`);
  }
  return chosen;
}

/** The box a card takes on its sheet: a folded card lies there opened. */
export function boxOfCard(size) {
  return size.folded ? { ...size, width: 2 * size.width } : size;
}

/** The box of what is chosen, a card or a tag. */
export function chosenBox(form, { sizes, tags, leastLabel }) {
  const { thing, size, lid, diameter, wall } = form.elements;
  const folded = thing.value === "card" && sizes.find((each) => each.id === size.value).folded;
  if (!folded && hasOwnLabel(form)) return ownLabel(form, leastLabel);
  if (thing.value === "card") return boxOfCard(sizes.find((each) => each.id === size.value));
  if (thing.value === "round") {
    return tagBox(tags, "round", { lid: readLength(lid, "The lid") });
  }
  if (thing.value === "wrap") {
    return tagBox(tags, "wrap", {
      diameter: readLength(diameter, "The bottle"), wall: readLength(wall, "The straight wall"),
    });
  }
  return tagBox(tags, thing.value, {});
}

// a bought label is of the chosen size unless its own is written
function hasOwnLabel(form) {
  const { own, labelWidth, labelHeight } = form.elements;
  const written = ({ value, validity }) => value.trim() !== "" || validity.badInput;
  return own.checked && [labelWidth, labelHeight].some(written);
}

function ownLabel(form, [leastWidth, leastHeight]) {
  const { thing, labelWidth, labelHeight } = form.elements;
  const width = readLength(labelWidth, "The label’s width");
  const height = readLength(labelHeight, "The label’s height");
  if (width < leastWidth || height < leastHeight) {
    throw new RangeError(`A label of ${width} x ${height} mm holds no readable words. The least is ${leastWidth} x ${leastHeight}.`);
  }
  if (thing.value === "round" && width !== height) {
    throw new RangeError("A round label is as high as it is wide. Write its width twice.");
  }
  return { name: "label", width, height };
}

/** The sheet's grid: as many as go on the paper, or a bought sheet's own measures. */
export function chosenGrid(form, paper, box) {
  const { own, columns, rows, left, top, pitchX, pitchY } = form.elements;
  if (!own.checked) return impose(paper, box);
  if (box.folded) throw new RangeError("A folded card does not go on a label: a label has no back. Choose another size.");
  return labelSheet(paper, box, {
    columns: readWhole(columns, "Columns", 1, 50),
    rows: readWhole(rows, "Rows", 1, 50),
    left: readLength(left, "The left margin"),
    top: readLength(top, "The top margin"),
    pitchX: readLength(pitchX, "The pitch across"),
    pitchY: readLength(pitchY, "The pitch down"),
  });
}

/** The first free place of a half-used sheet, counted from 1. */
export function chosenStart(form, grid) {
  return readWhole(form.elements.start, "The place to begin at", 1, grid.columns * grid.rows);
}

/** Keep what a form holds until the window closes; the name of whom it is for is not kept. */
export function keepChoices(form) {
  const chosen = namedFields(form).map((field) => [
    keyOf(field), field.type === "checkbox" ? field.checked : field.value,
  ]);
  keep(STORE, Object.fromEntries(chosen));
}

/** Write what was kept back into a form. */
export function restoreChoices(form) {
  const chosen = kept(STORE);
  for (const field of namedFields(form)) fillField(field, chosen[keyOf(field)]);
}

function namedFields(form) {
  return [...form.elements].filter((field) => keyOf(field) && !["to", "made"].includes(field.name));
}

function keyOf(field) {
  return field.name || field.dataset.recipe || "";
}
