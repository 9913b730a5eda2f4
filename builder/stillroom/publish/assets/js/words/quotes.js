/** Curly quotes in place of straight ones in what a reader types: looks/quotes.py in the browser. Pure. */

// between two figures it is a foot's mark
const WITHIN = /(?<=[\p{L}\p{No}_])'(?=[\p{L}\p{N}_])|(?<=\p{Nd})'(?=[\p{L}\p{No}_])|(?<!\p{Nd})'(?=\p{Nd}{2}s?(?![\p{L}\p{N}_]))|'(?=(?:tis|twas|til|em|n)(?![\p{L}\p{N}_]))|(?<=(?<![\p{L}\p{N}_])n)'/giu;
const OPENS_AFTER = new Set(" \u00a0\n(/[—–-«“„»›‹‚‘");

/**
 * Return a text whose straight quotes are `marks`: how the language opens and closes a quotation, and one
 * within it. Inches and feet keep theirs.
 * @param {string} text
 * @param {string[]} marks
 */
export function curl(text, [opens, closes, innerOpens, innerCloses]) {
  const quoted = pair(text, '"', opens, closes, closes);
  return pair(quoted.replaceAll(WITHIN, "’"), "'", innerOpens, innerCloses, "’");
}

/**
 * Replace one sort of straight mark; `single` is one that closes nothing.
 * @param {string} text
 * @param {string} straight
 * @param {string} opens
 * @param {string} closes
 * @param {string} single
 */
function pair(text, straight, opens, closes, single) {
  let isOpen = false;
  return [...text].map((letter, at, all) => {
    if (letter !== straight) return letter;
    const before = at === 0 ? " " : /** @type {string} */ (all[at - 1]);
    const begins = OPENS_AFTER.has(before) && !/\s/.test(all[at + 1] ?? "");
    if (isOpen && !begins) {
      isOpen = false;
      return closes;
    }
    if (begins && (straight === '"' || all.includes(straight, at + 1))) {
      isOpen = true;
      return opens;
    }
    return /\p{N}/u.test(before) ? straight : single;
  }).join("");
}
