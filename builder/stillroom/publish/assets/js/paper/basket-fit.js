// Fits the cards or tags of one basket alike: one arrangement, one size of what is seen first.

import {
  daysBeside, fitCard, largest, orderOf, overflows, settle, stepsOf, titleShare,
} from "./card-fit.js";
import SAID from "../../data/said/pages-card.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

const TAGS = ["t1", "t2", "t3", "t4", "t5", "t6", "t7"];
const LARGE_TAGS = ["lt1", "lt2", "lt3", "lt4"];

/** @param {HTMLElement} tag */
function tagSteps(tag) {
  return tag.hasAttribute("data-large") ? LARGE_TAGS : TAGS;
}

/**
 * The ways in which the cards of a basket are tried, as card_fit.typ and folded_cards.typ try them: each
 * arrangement with its days beside each other on all cards, then below each other on all; at last each with
 * its days as they go, where cards are too full for either. A label has no back.
 * @param {HTMLElement} card
 * @returns {{arrangement: Arrangement, days: string}[]}
 */
function waysOfCards(card) {
  const isAlone = card.hasAttribute("data-alone");
  const tried = orderOf(card).filter(({ sides, front }) => !isAlone || sides === 1 || front === "folded");
  return [
    ...tried.flatMap((arrangement) => ["beside", "below"].map((days) => ({ arrangement, days }))),
    ...tried.map((arrangement) => ({ arrangement, days: "own" })),
  ];
}

/**
 * Fit the cards of one basket alike: the first way that holds every one, and fronts that are gifts in one
 * size. Where none does, each is judged by itself and says that it stands apart.
 * @param {HTMLElement[]} cards
 * @param {HTMLElement} holder
 * @returns {Fit[]}
 */
export function fitCards(cards, holder) {
  for (const { arrangement, days } of cards.length > 0 ? waysOfCards(cards[0]) : []) {
    for (const card of cards) card.toggleAttribute("data-days-below", days === "below");
    /** @type {Fit[]} */
    const found = [];
    for (const card of cards) {
      const one = largest(card, arrangement, holder);
      if (!one.fits) break;
      found.push(one);
    }
    if (found.length < cards.length) continue;
    const levels = stepsOf(cards[0]);
    const least = levels[Math.max(...found.map(({ level }) => levels.indexOf(level)))];
    cards.forEach((card, index) => {
      settle(card, found[index]);
      card.dataset.frontLevel = /gift$|folded/.test(arrangement.front) ? least : found[index].level;
    });
    if (days === "beside" && !cards.every((card) => daysBeside(card, holder))) continue;
    return found;
  }
  for (const card of cards) card.removeAttribute("data-days-below");
  return cards.map((card) => ({ ...fitCard(card, holder), isApart: true }));
}

// Without its drawing, without its cautions, without its border.
const GIVES_WAY = ["data-undrawn", "data-brief", "data-bare"];

/**
 * What gives way on a tag, in the order in which it is tried, as tags.typ tries it.
 * @param {HTMLElement} tag
 * @returns {string[][]}
 */
function waysOf(tag) {
  const { shape = "" } = tag.dataset;
  const hasDrawing = shape === "wrap" || (tag.hasAttribute("data-beside") && ["rectangle", "luggage"].includes(shape));
  const inside = shape === "wrap" ? [[], ["data-undrawn"], ["data-undrawn", "data-brief"]]
    : hasDrawing ? [[], ["data-undrawn"]] : [[]];
  return [...inside, ...inside.map((way) => [...way, "data-bare"])];
}

/**
 * Fit the tags of one basket in place: one size for all, and their titles in the size of the longest;
 * then what may gives way, at last the border.
 * @param {HTMLElement[]} tags
 * @param {HTMLElement} holder
 * @returns {TagFit[]}
 */
export function fitTags(tags, holder) {
  const isWrap = tags[0]?.dataset.shape === "wrap";
  for (const way of tags.length > 0 ? waysOf(tags[0]) : []) {
    for (const level of tagSteps(tags[0])) {
      for (const tag of tags) {
        for (const name of GIVES_WAY) tag.toggleAttribute(name, way.includes(name));
        tag.dataset.level = level;
      }
      const tried = tags.map((tag) => trial(tag, holder));
      if (tried.some(({ isOver }) => isOver)) continue;
      const share = Math.min(...tried.map((one) => one.share));
      tags.forEach((tag, index) => setTitle(tag, share, tried[index].isParted));
      return tags.map(() => ({ fits: true, sides: 1, level, over: [] }));
    }
  }
  return tags.map((tag) => {
    const { isOver } = trial(tag, holder);
    return { fits: !isOver, sides: 1, level: tag.dataset.level ?? "", over: isOver ? [say(isWrap ? "wrap" : "tag")] : [] };
  });
}

/** @param {HTMLElement} tag @param {number} share @param {boolean} isParted */
function setTitle(tag, share, isParted) {
  tag.style.setProperty("--title-share", String(share));
  tag.toggleAttribute("data-parted", isParted);
}

/**
 * Whether a tag holds its words at its step of type, and the share of its size that its title takes.
 * @param {HTMLElement} tag
 * @param {HTMLElement} holder
 */
function trial(tag, holder) {
  const copy = /** @type {HTMLElement} */ (tag.cloneNode(true));
  holder.replaceChildren(copy);
  const share = titleShare(copy);
  const isOver = overflows(copy.querySelector(".card-face"));
  holder.replaceChildren();
  return { share, isOver, isParted: copy.hasAttribute("data-parted") };
}
