/* Registers the book's elements. Each enhances what the server wrote; none is needed to read it.
   A page fetches only the scripts of the elements that stand in it, and of what lies further down
   only when the reader comes near. */

import "./search-button.js";

const ELEMENTS = {
  "stillroom-browse": () => import("./browse-element.js").then((file) => file.BrowseElement),
  "stillroom-card": () => import("./card-element.js").then((file) => file.StillroomCard),
  "stillroom-print-room": () => import("./print-room-element.js").then((file) => file.StillroomPrintRoom),
  "stillroom-scale": () => import("./scale-element.js").then((file) => file.ScaleElement),
  "stillroom-share": () => import("./share-element.js").then((file) => file.ShareElement),
  "stillroom-still-time": () => import("./still-time-element.js").then((file) => file.StillTimeElement),
  "stillroom-when": () => import("./timeline-element.js").then((file) => file.WhenElement),
};
const WHEN_NEAR = {
  "stillroom-gift-cuts": () => import("./gift-cuts-element.js").then((file) => file.StillroomGiftCuts),
};

/** @param {string} name @param {() => Promise<CustomElementConstructor>} load */
async function define(name, load) {
  if (!customElements.get(name)) customElements.define(name, await load());
}

for (const [name, load] of Object.entries(ELEMENTS)) {
  if (document.querySelector(name)) define(name, load);
}

for (const [name, load] of Object.entries(WHEN_NEAR)) {
  const element = document.querySelector(name);
  if (!element) continue;
  const watch = new IntersectionObserver(([{ isIntersecting }]) => {
    if (!isIntersecting) return;
    watch.disconnect();
    define(name, load);
  }, { rootMargin: "200px" });
  watch.observe(element);
}
