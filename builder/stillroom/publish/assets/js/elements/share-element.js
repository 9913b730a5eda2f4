/* <stillroom-share>: copies a link that opens this page as it stands, with the scale and the dates
   that the reader chose, and prints the page or its kitchen sheet. Without it the address stands
   there to be read. */

import { onStateChange } from "./address-state.js";
import SAID from "../../data/said/pages-share.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

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
    this.querySelector("[data-share=kitchen]").hidden = false;
    const sheet = this.querySelector("[data-share=sheet]");
    sheet.addEventListener("click", () => this.printKitchenSheet(), { signal });
    this.stopListening = onStateChange(() => this.show());
    this.show();
  }

  disconnectedCallback() {
    this.leaving?.abort();
    this.stopListening?.();
  }

  /** The page's lasting address with what this reader chose on it. */
  address() {
    const link = new URL(this.querySelector(".share__link")?.href ?? location.href);
    link.hash = "";
    link.search = location.search;
    return link.href;
  }

  show() {
    const state = this.querySelector("[data-share=state]");
    state.hidden = !location.search;
    if (location.search) {
      state.textContent = say("opens_here");
    }
  }

  /** The recipe at the size and for the day chosen on this page; measured once its faces are there. */
  async printKitchenSheet() {
    // what the address or a blank has asked for is to be on the page before it is copied
    await Promise.all([...document.querySelectorAll("stillroom-scale, stillroom-when")].map((one) => one.settled));
    const [{ makeSheet }, { fitSheet, makeHolder, printSheet }] = await Promise.all([
      import("./kitchen-sheet.js"), import("../paper/sheet-fit.js"),
    ]);
    const { width, height } = this.querySelector("[data-share=paper]").selectedOptions[0].dataset;
    const paper = { width: Number(width), height: Number(height) };
    const sheet = makeSheet(document.querySelector("stillroom-when")?.plan ?? null);
    const holder = makeHolder(paper);
    holder.append(sheet);
    holder.getBoundingClientRect(); // laid out, it asks for its faces
    await document.fonts.ready;
    const sides = fitSheet(sheet, paper);
    holder.remove();
    this.querySelector("[data-share=said]").textContent = say("sheet_takes", { count: sides });
    printSheet(sheet, paper);
  }

  async copy() {
    const said = this.querySelector("[data-share=said]");
    try {
      await navigator.clipboard.writeText(this.address());
      said.textContent = say("copied");
    } catch {
      said.textContent = say("not_copied", { link: this.address() });
    }
  }
}
