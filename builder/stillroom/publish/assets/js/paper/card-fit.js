// Fits a usage card to its size: largest type first, then the back, and otherwise says what does
// not fit. Text is never clipped and never set under the smallest level of print-card.css.

import { FLAT, FOLDED, arrange, boxesOf } from "./card-sides.js";
import SAID from "../../data/said/pages-card.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

const LEVELS = ["1", "2", "3", "4", "5", "6"];
// a folded card is held in the hand: its type may be larger
const FOLDED_LEVELS = ["b1", "b2", "b3", "b4", "b5", "b6", ...LEVELS];
const TAG_LEVELS = ["1", "2", "3"];

// A title goes on two lines: one that does not is set smaller, as card_faces.typ sets it.
const TITLE_SHARES = [1, 0.9, 0.8, 0.7];
const TWO_LINES = 2.3;

/**
 * Fit one card element in place and return {fits, sides, front, level, over: [names of what takes
 * too much room]}. The card is measured at its exact size in a hidden holder.
 */
export function fitCard(card, holder) {
  const copy = card.cloneNode(true);
  holder.replaceChildren(copy);
  const found = bestArrangement(copy);
  arrange(card, found);
  card.style.setProperty("--title-share", found.share);
  holder.replaceChildren();
  return found;
}

/** Fit one tag in place: only its type may become smaller. */
export function fitTag(tag, holder) {
  for (const level of TAG_LEVELS) {
    tag.dataset.level = level;
    holder.replaceChildren(tag.cloneNode(true));
    const face = holder.querySelector(".card-face");
    const over = overflows(face);
    holder.replaceChildren();
    if (!over) return { fits: true, sides: 1, level, over: [] };
  }
  return { fits: false, sides: 1, level: TAG_LEVELS.at(-1), over: [say("tag")] };
}

function bestArrangement(copy) {
  const folded = copy.dataset.size === "folded-a6";
  /** @type {any} */
  let last = { fits: false };
  for (const { sides, front } of folded ? FOLDED : FLAT) {
    for (const level of folded ? FOLDED_LEVELS : LEVELS) {
      const tried = { sides, front, level };
      arrange(copy, tried);
      const share = titleShare(copy);
      const over = boxesOf(copy).filter(overflows).map(largestPart);
      if (over.length === 0) return { ...tried, share, fits: true, over };
      last = { ...tried, share, fits: false, over };
    }
  }
  return last;
}

/** Set the title at the largest share of its size at which it stands on two lines; return it. */
function titleShare(copy) {
  const title = copy.querySelector(".card-title");
  for (const share of TITLE_SHARES) {
    copy.style.setProperty("--title-share", share);
    const size = Number.parseFloat(getComputedStyle(title).fontSize);
    if (title.offsetHeight <= TWO_LINES * size && title.scrollWidth <= title.clientWidth) return share;
  }
  return TITLE_SHARES.at(-1);
}

function largestPart(box) {
  const named = [
    ...[...box.querySelectorAll(".card-fact")].map((fact) => [fact, say(fact.dataset.cardPart)]),
    [box.querySelector(".card-head"), say("head")],
    [box.querySelector(".card-foot"), say("foot")],
  ].filter(([part]) => part);
  return named.sort(([one], [other]) => other.scrollHeight - one.scrollHeight)[0][1];
}

function overflows(box) {
  // half a pixel of rounding is not an overflow
  return box.scrollHeight > box.clientHeight + 0.5 || box.scrollWidth > box.clientWidth + 0.5;
}
