// By how many millimetres a reader's printer misses, right and down, kept in this browser alone. What is
// printed is moved back by as much, as the setting `printer_feed` moves it in the files of the command.

import { keep, kept } from "./stored.js";

const STORE = "stillroom-printer-feed";
/** More is another paper: core/recipe/settings.py. */
export const MOST_FEED_MM = 9.99;

/** Return what was measured, [right, down] in mm; [0, 0] when nothing was. */
export function keptFeed() {
  const { across, down } = kept(STORE, "localStorage");
  return [across, down].map((mm) => (Number.isFinite(mm) && Math.abs(mm) <= MOST_FEED_MM ? mm : 0));
}

/** Keep what was measured; false when the browser will not. @param {number[]} feed */
export function keepFeed(feed) {
  return keep(STORE, { across: feed[0], down: feed[1] }, "localStorage");
}

/** Return by how much everything is moved against it. @param {number[]} feed */
export function shiftOf(feed) {
  return feed.map((mm) => -mm || 0);
}
