/**
 * How a cook types the size of a batch: "half", "four 200 ml jars", "plums 2 kg".
 * The twin of typed_sizes.py, by the same table.
 */

export const BETWEEN = /\s*(?:\+|;|,(?!\d)|\band\b)\s*/;
const BETWEEN_KEPT = new RegExp(`(${BETWEEN.source})`);
const IN_PARTS = ["fill", "have"];

/**
 * Return a size in the words that scale-targets.js reads.
 * @param {string} sort
 * @param {string} text
 * @param {Tables} tables
 */
export function plainlyTyped(sort, text, tables) {
  const plain = put("all", text.trim(), tables).trim();
  if (!IN_PARTS.includes(sort)) return put(sort, plain, tables);
  return plain.split(BETWEEN_KEPT).map((part) => put(sort, part, tables)).join("");
}

/** @param {string} sort @param {string} text @param {Tables} tables */
function put(sort, text, tables) {
  const rows = tables.typed_sizes[sort] ?? [];
  return rows.reduce((said, [pattern, plain]) => said.replace(new RegExp(pattern, "gi"), plain), text);
}
