// Fits the cards or tags of one basket alike: one arrangement, one size of what is seen first.

import { fitCard, largest, orderOf, overflows, settle, stepsOf } from "./card-fit.js";
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
 * Fit the cards of one basket alike: the first arrangement that holds every one, and fronts that are
 * gifts in one size. What goes on no arrangement is told; the others are then judged by themselves.
 * @param {HTMLElement[]} cards
 * @param {HTMLElement} holder
 * @returns {Fit[]}
 */
export function fitCards(cards, holder) {
  // a label has no back: what needs one is named, and not its neighbours with it
  const together = cards.length > 0 && !cards[0].hasAttribute("data-alone");
  for (const arrangement of together ? orderOf(cards[0]) : []) {
    const found = cards.map((card) => largest(card, arrangement, holder));
    if (!found.every(({ fits }) => fits)) continue;
    const levels = stepsOf(cards[0]);
    const least = levels[Math.max(...found.map(({ level }) => levels.indexOf(level)))];
    cards.forEach((card, index) => {
      settle(card, found[index]);
      card.dataset.frontLevel = /gift$|folded/.test(arrangement.front) ? least : found[index].level;
    });
    return found;
  }
  return cards.map((card) => fitCard(card, holder));
}

// Without its drawing, without its cautions, without its border; with the words of its title parted.
const GIVES_WAY = ["data-undrawn", "data-brief", "data-bare", "data-parted"];

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
  const whole = [...inside, ...inside.map((way) => [...way, "data-bare"])];
  return [...whole, ...whole.map((way) => [...way, "data-parted"])];
}

/**
 * Fit the tags of one basket in place: one size for all; then what may gives way, at last the border.
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
      if (tags.every((tag) => !isOver(tag, holder))) return tags.map(() => ({ fits: true, sides: 1, level, over: [] }));
    }
  }
  return tags.map((tag) => {
    const over = isOver(tag, holder) ? [say(isWrap ? "wrap" : "tag")] : [];
    return { fits: over.length === 0, sides: 1, level: tag.dataset.level ?? "", over };
  });
}

/** @param {HTMLElement} tag @param {HTMLElement} holder */
function isOver(tag, holder) {
  holder.replaceChildren(tag.cloneNode(true));
  const over = overflows(holder.querySelector(".card-face"));
  holder.replaceChildren();
  return over;
}
