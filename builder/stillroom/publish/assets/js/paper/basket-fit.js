// Fits the cards or tags of one basket alike: one arrangement, one size of what is seen first.

import { fitCard, largest, orderOf, overflows, settle, stepsOf, titleShare } from "./card-fit.js";
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
