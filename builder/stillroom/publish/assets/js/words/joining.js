/** Several words as one phrase: core/words/joining.py in the browser. */

import SAID from "../../data/said/words-words.js";
import { speaker } from "./said.js";

const say = speaker(SAID);

/** Join with commas and a last "and". @param {string[]} words */
export function joinAnd(words) {
  if (words.length < 2) return words.join("");
  return say("and", { others: words.slice(0, -1).join(say("comma")), last: words.at(-1) });
}

/** Join the two ends of a range, saying a common unit once. @param {string[]} texts */
export function joinRange(texts) {
  if (texts.length === 1) return texts[0];
  const [low, high] = texts.map((text) => {
    const space = text.indexOf(" ");
    return space < 0 ? [text, ""] : [text.slice(0, space), text.slice(space + 1)];
  });
  /** @param {string} unit */
  const bare = (unit) => unit.replace(/s+$/, "");
  if (bare(low[1]) === bare(high[1]) && !high[1].includes(" ")) return `${low[0]}–${high[0]} ${high[1]}`;
  return say("to", { low: texts[0], high: texts[1] });
}
