// The boxes of tags and labels in millimetres: the browser's form of core/paper/tag_shapes.py, from
// whose figures (`measures`) it works.

/** The box of a tag; throws in words when its lid or bottle is impossible. */
export function tagBox(measures, shape, { lid, diameter, wall }) {
  if (measures.fixed[shape]) {
    const [width, height] = measures.fixed[shape];
    return { name: "tag", width, height };
  }
  if (shape === "round") {
    if (!(lid >= measures.leastLid)) throw new RangeError(`This lid holds no readable label: under ${measures.leastLid} mm use a luggage tag.`);
    return { name: "round label", width: lid - measures.lidRim, height: lid - measures.lidRim };
  }
  const height = wall - 2 * measures.clearance;
  if (!(diameter > 0)) throw new RangeError("Measure the bottle across.");
  if (!(height >= measures.leastHeight)) throw new RangeError("A straight wall this low holds no readable label: use a tag on the neck.");
  return { name: "wrap-round label", width: Math.round((Math.PI * diameter + measures.overlap) * 10) / 10, height };
}
