/** What was probably meant: nearest and did_you_mean of core/words/problems.py in the browser. Pure. */

import SAID from "../../data/said/words-words.js";
import { speaker } from "./said.js";

const say = speaker(SAID);
const LIKENESS = 0.6;
const LISTED = 24;

/**
 * Say which known word was probably meant, or list what may be written if that is short.
 * @param {string} word
 * @param {string[]} known
 */
export function didYouMean(word, known) {
  const choices = [...known].sort();
  const match = nearest(word, choices);
  if (match !== null) return say("did_you_mean", { word: match });
  return choices.length > LISTED ? "" : say("it_may_be", { words: choices.join(say("comma")) });
}

/**
 * Return the known word most like a word, or null when none is close.
 * @param {string} word
 * @param {string[]} known
 * @returns {string | null}
 */
export function nearest(word, known) {
  const lowered = new Map(known.map((candidate) => [candidate.toLowerCase(), candidate]));
  const sought = word.toLowerCase();
  let best = LIKENESS;
  /** @type {string | null} */
  let found = null;
  for (const candidate of lowered.keys()) {
    const ratio = likeness(candidate, sought);
    // of two as like as each other the later in the alphabet, as Python's difflib has it
    if (ratio > best || (ratio === best && (found === null || candidate > found))) {
      [best, found] = [ratio, candidate];
    }
  }
  return found === null ? null : lowered.get(found) ?? null;
}

/**
 * Twice the letters that two words share in order, over all their letters: difflib's ratio.
 * @param {string} one
 * @param {string} other
 */
function likeness(one, other) {
  const letters = one.length + other.length;
  return letters ? (2 * shared(one, other)) / letters : 1;
}

/** @param {string} one @param {string} other @returns {number} */
function shared(one, other) {
  const [at, beside, long] = longestRun(one, other);
  if (!long) return 0;
  return long + shared(one.slice(0, at), other.slice(0, beside))
    + shared(one.slice(at + long), other.slice(beside + long));
}

/**
 * Where the longest run of letters common to both begins in each, the earliest such, and its length.
 * @param {string} one
 * @param {string} other
 */
function longestRun(one, other) {
  let best = [0, 0, 0];
  for (let at = 0; at < one.length; at += 1) {
    for (let beside = 0; beside < other.length; beside += 1) {
      let long = 0;
      while (at + long < one.length && one[at + long] === other[beside + long]) long += 1;
      if (long > best[2]) best = [at, beside, long];
    }
  }
  return best;
}
