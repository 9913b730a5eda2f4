// What the TypeScript checker cannot know of the pages: which element a selector finds is said by the
// templates, the fields of a form by their names there.

interface ParentNode {
  querySelector(selectors: string): any;
  querySelectorAll(selectors: string): NodeListOf<any>;
}

interface Element {
  closest(selectors: string): any;
  cloneNode(subtree?: boolean): this;
}

interface HTMLFormControlsCollection {
  [name: string]: any;
}

// Kept between pages by theme-start.js, under the names that Material's own scripts ask for.
interface Window {
  __md_scope: URL;
  __md_hash(text: string): number;
  __md_get(name: string, store?: Storage, scope?: URL): any;
  __md_set(name: string, value: unknown, store?: Storage, scope?: URL): void;
}
