/* Registers the book's elements. Each enhances what the server wrote; none is needed to read it. */

import "./search-button.js";
import { BrowseElement } from "./browse-element.js";
import { ShareElement } from "./share-element.js";

const ELEMENTS = [
  ["stillroom-browse", BrowseElement],
  ["stillroom-share", ShareElement],
];

for (const [name, element] of ELEMENTS) {
  if (!customElements.get(name)) customElements.define(name, element);
}
