/* Registers the book's elements. Each enhances what the server wrote; none is needed to read it.
   A page fetches only the scripts of the elements that stand in it. */

import "./search-button.js";

const ELEMENTS = {
  "stillroom-browse": () => import("./browse-element.js").then((file) => file.BrowseElement),
  "stillroom-card": () => import("./card-element.js").then((file) => file.StillroomCard),
  "stillroom-gift-cuts": () => import("./gift-cuts-element.js").then((file) => file.StillroomGiftCuts),
  "stillroom-print-room": () => import("./print-room-element.js").then((file) => file.StillroomPrintRoom),
  "stillroom-scale": () => import("./scale-element.js").then((file) => file.ScaleElement),
  "stillroom-share": () => import("./share-element.js").then((file) => file.ShareElement),
  "stillroom-still-time": () => import("./still-time-element.js").then((file) => file.StillTimeElement),
  "stillroom-when": () => import("./timeline-element.js").then((file) => file.WhenElement),
};

for (const [name, load] of Object.entries(ELEMENTS)) {
  if (document.querySelector(name) && !customElements.get(name)) {
    load().then((element) => customElements.define(name, element));
  }
}
