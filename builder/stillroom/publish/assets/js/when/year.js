/** What can still be made: core/when/year.py in the browser. Pure. */

import { latestStartBest, latestStartUsable } from "./timeline.js";

/**
 * Return what can still be made by a day, what fits best first.
 * @param {WhenRecipe[]} recipes
 * @param {number} givingDay
 * @param {number} now
 */
export function stillTime(recipes, givingDay, now) {
  const order = ["best", "usable", "late"];
  return recipes
    .map((recipe) => {
      const best = latestStartBest(recipe, givingDay);
      const usable = latestStartUsable(recipe, givingDay);
      const by = now <= best ? best : usable;
      const fits = now > by ? "late" : now <= best ? "best" : "usable";
      return { recipe, fits, by, spare: by - now };
    })
    .sort((one, two) =>
      order.indexOf(one.fits) - order.indexOf(two.fits)
      || Math.abs(one.spare) - Math.abs(two.spare)
      || (one.recipe.title < two.recipe.title ? -1 : 1));
}
