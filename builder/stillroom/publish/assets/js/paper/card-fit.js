// Fits a usage card to its size: largest type first, then the back, and otherwise says what does
// not fit. Text is never clipped and never set under the smallest level of print-card.css.

import { FLAT, FOLDED, arrange, boxesOf, feetOf, isPortrait } from "./card-sides.js";
import SAID from "../../data/said/pages-card.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

// The names of looks/designs/type.yml: designs.css says how large each is.
const LEVELS = ["1", "2", "3", "4", "5", "6"];
/** @type {Record<string, string[]>} */
const STEPS = {
  card: LEVELS,
  folded: ["b1", "b2", "b3", "b4", "b5", "b6", ...LEVELS],
  "large card": ["l1", "l2", "l3"],
  "large folded": ["lb1", "lb2", "lb3", "lb4", "lb5"],
};

// A title goes on one line where that costs it a fifth of its size at most, else on two: one that does
// not is set smaller, as card_faces.typ sets it. Lines, and the shares of its size that are tried.
/** @type {[number, number[]][]} */
const TITLE_SHARES = [[1, [1, 0.9, 0.8]], [2, [1, 0.9, 0.8, 0.7]]];
const LEAST_TITLE_SHARE = 0.7;

// How far apart the lines of a folded card's inside stand, in em: the widest that its panels hold, as
// folded_cards.typ tries them.
const PITCHES = [0.75, 0.7, 0.65, 0.6, 0.55];

/**
 * Fit one card element in place and return {fits, sides, front, level, over: [names of what takes
 * too much room]}. The card is measured at its exact size in a hidden holder.
 * @param {HTMLElement} card
 * @param {HTMLElement} holder
 * @returns {Fit}
 */
export function fitCard(card, holder) {
  /** @type {any} */
  let found = { fits: false };
  for (const arrangement of orderOf(card)) {
    found = largest(card, arrangement, holder);
    if (found.fits) break;
  }
  settle(card, found);
  return found;
}

/**
 * The steps of type that are tried on a card, the largest first.
 * @param {HTMLElement} card
 * @returns {string[]}
 */
export function stepsOf(card) {
  const name = card.dataset.size === "folded-a6" ? "folded" : "card";
  return STEPS[card.hasAttribute("data-large") ? `large ${name}` : name];
}

/**
 * The arrangements that are tried on a card, in their order.
 * @param {HTMLElement} card
 * @returns {Arrangement[]}
 */
export function orderOf(card) {
  if (card.dataset.size === "folded-a6") return FOLDED;
  const ways = card.hasAttribute("data-portrait") ? FLAT : FLAT.filter(({ front }) => !isPortrait(front));
  return card.hasAttribute("data-two") ? [...ways.slice(1), ways[0]] : ways;
}

/** Set a card as it was found to fit. @param {HTMLElement} card @param {Fit} found */
export function settle(card, found) {
  arrange(card, found);
  delete card.dataset.frontLevel;
  card.style.setProperty("--title-share", String(found.share));
  card.toggleAttribute("data-parted", found.share === LEAST_TITLE_SHARE);
  card.style.setProperty("--card-pitch", String(found.pitch ?? "var(--card-leading)"));
}

/**
 * The largest type at which an arrangement holds a card: each side of a flat one has its own.
 * @param {HTMLElement} card
 * @param {Arrangement} arrangement
 * @param {HTMLElement} holder
 * @returns {Fit}
 */
export function largest(card, { sides, front }, holder) {
  const copy = card.cloneNode(true);
  holder.replaceChildren(copy);
  const found = front === "folded" ? largestFold(copy, { sides, front }) : largestSides(copy, { sides, front });
  holder.replaceChildren();
  return found;
}

/** @param {HTMLElement} copy @param {Arrangement} arrangement @returns {Fit} */
function largestSides(copy, arrangement) {
  /** @type {any} */
  const found = { ...arrangement, fits: false };
  for (const level of stepsOf(copy)) {
    // the back is tried at the same step, and keeps the first at which it holds its words
    arrange(copy, { ...arrangement, level });
    const share = titleShare(copy);
    const [front, back] = boxesOf(copy);
    const over = [front, back].filter((box) => box && overflows(box));
    if (back && !over.includes(back)) found.back ??= level;
    if (!over.includes(front)) {
      found.level ??= level;
      found.share ??= share;
    }
    found.over = over.filter((box) => (box === front ? !found.level : !found.back)).map(largestPart);
    found.fits = found.over.length === 0;
    if (found.fits) return { ...found, back: found.back ?? found.level };
  }
  const least = stepsOf(copy).at(-1);
  return { ...found, level: least, back: least, share: found.share ?? LEAST_TITLE_SHARE };
}

/** @param {HTMLElement} copy @param {Arrangement} arrangement @returns {Fit} */
function largestFold(copy, arrangement) {
  /** @type {any} */
  let last = { ...arrangement, fits: false };
  for (const level of stepsOf(copy)) {
    for (const foot of feetOf(copy, "folded")) {
      const tried = { ...arrangement, level, foot };
      arrange(copy, tried);
      const share = titleShare(copy);
      const over = boxesOf(copy).filter(overflows).map(largestPart);
      if (over.length > 0) {
        if (!last.fits) last = { ...tried, share, fits: false, over };
        continue;
      }
      const pitch = pitchOf(copy);
      copy.style.removeProperty("--card-pitch");
      if (!last.fits || (pitch ?? 0) > (last.pitch ?? 0)) last = { ...tried, share, fits: true, over, pitch };
    }
    if (last.fits) break;
  }
  return last;
}

/**
 * Whether the days a settled card bears stand on one line, on its front as all fronts are set.
 * @param {HTMLElement} card
 * @param {HTMLElement} holder
 */
export function daysBeside(card, holder) {
  const copy = /** @type {HTMLElement} */ (card.cloneNode(true));
  if (copy.querySelector(".card-front .card-dates") && copy.dataset.frontLevel) copy.dataset.level = copy.dataset.frontLevel;
  holder.replaceChildren(copy);
  const feet = [...copy.querySelectorAll(".card-dates > *")]
    .filter((day) => day.getClientRects().length > 0)
    .map((day) => day.getBoundingClientRect().bottom);
  holder.replaceChildren();
  return feet.length < 2 || Math.max(...feet) - Math.min(...feet) < 3;
}

/**
 * Set the title of a card or tag at the largest share of its size at which it stands on one line, or on
 * two; return it. Only a title that goes on neither may have a word parted.
 * @param {HTMLElement} copy
 * @returns {number}
 */
export function titleShare(copy) {
  const title = copy.querySelector(".card-title");
  copy.removeAttribute("data-parted");
  for (const [lines, shares] of TITLE_SHARES) {
    for (const share of shares) {
      copy.style.setProperty("--title-share", String(share));
      const size = Number.parseFloat(getComputedStyle(title).fontSize);
      if (title.offsetHeight <= (lines + 0.3) * size && title.scrollWidth <= title.clientWidth) return share;
    }
  }
  copy.setAttribute("data-parted", "");
  return LEAST_TITLE_SHARE;
}

/**
 * The widest grid of lines on which both inner panels hold their words; none where they are full already.
 * @param {HTMLElement} copy
 * @returns {number | null}
 */
function pitchOf(copy) {
  const leading = Number(getComputedStyle(copy).getPropertyValue("--card-leading"));
  for (const pitch of PITCHES.filter((one) => one > leading)) {
    copy.style.setProperty("--card-pitch", String(pitch));
    if (!boxesOf(copy).some(overflows)) return pitch;
  }
  return null;
}

/** @param {HTMLElement} box @returns {string} */
function largestPart(box) {
  const named = [
    ...[...box.querySelectorAll(".card-fact")].map((fact) => [fact, say(fact.dataset.cardPart)]),
    [box.querySelector(".card-head"), say("head")],
    [box.querySelector(".card-foot"), say("foot")],
  ].filter(([part]) => part);
  return named.sort(([one], [other]) => other.scrollHeight - one.scrollHeight)[0][1];
}

/** Say whether a box holds more than goes into it. @param {HTMLElement} box */
export function overflows(box) {
  // both are rounded to pixels: as `play` of card_faces.typ
  return box.scrollHeight > box.clientHeight + 0.5 || box.scrollWidth > box.clientWidth + 0.5 || codeStandsOut(box);
}

// The code stands at the foot of its column: where Firefox gives that too little room it grows out at its
// head, over the drawing, which no scrolling tells.
/** @param {HTMLElement} box */
function codeStandsOut(box) {
  const code = box.querySelector(".card-qr");
  if (!code) return false;
  const edge = box.getBoundingClientRect().top + Number.parseFloat(getComputedStyle(box).paddingTop);
  return code.getBoundingClientRect().top < edge - 1;
}
