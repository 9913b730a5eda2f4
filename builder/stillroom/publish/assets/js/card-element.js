// <stillroom-card>: the usage card on a recipe's page. Names and the day typed here stand on the
// card at once, stay in this browser (sessionStorage), and go nowhere else.

import { fitCard } from "./card-fit.js";
import { markDate, sayDate } from "./date-marks.js";
import { impose } from "./paper.js";
import { laySheets, printSheets } from "./sheets.js";

const STORE = "stillroom-card-names";

/** Write names and the made-on day on a card; the date mark follows by the rule of date-marks.js. */
export function writeCard(card, { to, from, made }) {
  setName(card, "to", to);
  setName(card, "from", from);
  card.querySelector(".card-names").hidden = !(to || from);
  if (!made || !card.dataset.keeps) return;
  const keeps = JSON.parse(card.dataset.keeps);
  const time = card.querySelector(".card-made");
  time.dateTime = made;
  time.textContent = sayDate(made, keeps.language);
  const mark = markDate(made, keeps);
  if (mark) card.querySelector(".card-date").textContent = mark.text;
}

function setName(card, which, name) {
  card.querySelector(`.card-${which}`).textContent = name;
  card.querySelector(`.card-${which}-words`).hidden = !name;
}

/** The faces of a fitted card, each in its own `.usage-card` so that the type keeps its level. */
export function cardFaces(card) {
  return [...card.querySelectorAll(".card-face:not([hidden])")].map((face) => {
    const shell = card.cloneNode(false);
    shell.append(face.cloneNode(true));
    return shell;
  });
}

/** A hidden element in which cards are measured at their exact size. */
export function measuringHolder() {
  const holder = document.createElement("div");
  holder.className = "card-measuring card-exact";
  holder.setAttribute("aria-hidden", "true");
  document.body.append(holder);
  return holder;
}

class StillroomCard extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector(".card-form");
    this.card = this.querySelector(".usage-card");
    this.status = this.querySelector(".card-status");
    if (!this.form || !this.card) return;
    this.paperData = JSON.parse(this.querySelector(".paper-data").textContent);
    this.holder = measuringHolder();
    this.form.hidden = false;
    this.restore();
    this.listening = new AbortController();
    const { signal } = this.listening;
    this.form.addEventListener("input", () => this.update(), { signal });
    this.form.addEventListener("submit", (event) => this.print(event), { signal });
    document.fonts.ready.then(() => this.isConnected && this.update());
  }

  disconnectedCallback() {
    this.listening?.abort();
    this.holder?.remove();
  }

  restore() {
    const saved = JSON.parse(sessionStorage.getItem(STORE) ?? "{}");
    this.form.elements.from.value = saved.from ?? "";
    this.form.elements.paper.value = saved.paper ?? this.form.elements.paper.value;
  }

  update() {
    const { to, from, made, size, paper } = this.form.elements;
    sessionStorage.setItem(STORE, JSON.stringify({ from: from.value, paper: paper.value }));
    this.card.dataset.size = size.value;
    writeCard(this.card, { to: to.value.trim(), from: from.value.trim(), made: made.value });
    this.fit = fitCard(this.card, this.holder);
    this.say();
  }

  say() {
    const words = this.fit.fits
      ? (this.fit.sides === 2 ? "This card needs its back: print on both sides, turned on the long edge." : "")
      : `This does not fit at a readable size: ${this.fit.over.join(", ")}. Choose a larger card.`;
    if (this.status.textContent !== words) this.status.textContent = words;
  }

  print(event) {
    event.preventDefault();
    this.update();
    if (!this.fit.fits) return;
    const { count, size, paper, cut } = this.form.elements;
    const grid = impose(
      this.paperData.papers.find((each) => each.id === paper.value),
      this.paperData.sizes.find((each) => each.id === size.value),
    );
    const copies = Math.min(200, Math.max(1, Math.trunc(Number(count.value)) || 1));
    const items = Array.from({ length: copies }, () => this.card);
    printSheets(laySheets(grid, items, cardFaces, { cutLines: cut.checked }), grid.paper);
  }
}

export { StillroomCard };
