/* <stillroom-share>: copies a link that opens this page as it stands, with the scale and the dates
   that the reader chose, and prints the page. Without it the address stands there to be read. */

import { onStateChange } from "./address-state.js";

export class ShareElement extends HTMLElement {
  connectedCallback() {
    this.leaving = new AbortController();
    const { signal } = this.leaving;
    const copy = this.querySelector("[data-share=copy]");
    const print = this.querySelector("[data-share=print]");
    copy.hidden = !navigator.clipboard;
    print.hidden = false;
    copy.addEventListener("click", () => this.copy(), { signal });
    print.addEventListener("click", () => window.print(), { signal });
    this.stopListening = onStateChange(() => this.show());
    this.show();
  }

  disconnectedCallback() {
    this.leaving.abort();
    this.stopListening();
  }

  /** The page's lasting address with what this reader chose on it. */
  address() {
    const link = new URL(this.querySelector(".share__link").href);
    link.search = location.search;
    return link.href;
  }

  show() {
    const state = this.querySelector("[data-share=state]");
    state.hidden = !location.search;
    if (location.search) {
      state.textContent = "The copied link opens at the amounts and dates you have chosen here.";
    }
  }

  async copy() {
    const said = this.querySelector("[data-share=said]");
    try {
      await navigator.clipboard.writeText(this.address());
      said.textContent = "The link is copied.";
    } catch {
      said.textContent = `The browser would not copy. The link is ${this.address()}`;
    }
  }
}
