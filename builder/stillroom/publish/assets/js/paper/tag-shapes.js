// The boxes of tags and labels in millimetres: the browser's form of core/paper/tag_shapes.py, from
// whose figures (`measures`) it works.

import NAMES from "../../data/said/pages-print.js";
import SAID from "../../data/said/paper-sheets.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);
const sayName = speaker(NAMES);

/**
 * The box of a tag; throws in words when its lid or bottle is impossible.
 * @param {any} measures
 * @param {string} shape
 * @param {{lid?: any, diameter?: any, wall?: any}} asked
 */
export function tagBox(measures, shape, { lid, diameter, wall }) {
  if (measures.fixed[shape]) {
    const [width, height] = measures.fixed[shape];
    return { name: sayName("tag_name"), width, height };
  }
  if (shape === "round") {
    if (!(lid >= measures.leastLid)) throw say.refuse("small_lid", { lid, least: measures.leastLid });
    return { name: sayName("round_name"), width: lid - measures.lidRim, height: lid - measures.lidRim };
  }
  const height = wall - 2 * measures.clearance;
  if (!(diameter > 0)) throw say.refuse("no_bottle");
  if (!(height >= measures.leastHeight)) throw say.refuse("low_wall", { value: wall });
  return { name: sayName("wrap_name"), width: Math.round((Math.PI * diameter + measures.overlap) * 10) / 10, height };
}

/**
 * What large type tries after the box that was asked for, as larger_shapes of core/paper/tag_shapes.py; each
 * box is named as it is told.
 * @param {any} measures
 * @param {string} shape
 * @returns {{shape: string, box: Box}[]}
 */
export function largerTags({ fixed, larger }, shape) {
  const isGrown = shape in larger;
  const name = isGrown ? shape : "rectangle";
  const words = isGrown ? "larger_tags" : "tied_on";
  return [...(isGrown ? [] : [fixed[name]]), ...larger[name]].map(([width, height]) => (
    { shape: name, box: { name: say(words, { width, height }), width, height } }
  ));
}
