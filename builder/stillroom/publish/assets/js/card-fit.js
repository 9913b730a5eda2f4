// Fits a usage card to its size: largest type first, then the back, and otherwise says what does
// not fit. Text is never clipped and never set under the smallest level of print-card.css.

const LEVELS = ["1", "2", "3", "4", "5", "6"];
const TAG_LEVELS = ["1", "2", "3"];

// In the order they are tried: all on the front; the front a gift and all facts on the back, with its
// drawing or without; the contents on the front. As printing/templates/card_faces.typ tries them.
const ARRANGEMENTS = [
  { sides: 1, front: "all" },
  { sides: 2, front: "gift" },
  { sides: 2, front: "plain gift" },
  { sides: 2, front: "contents" },
];
const TITLE_LONG = 34;

/**
 * Fit one card element in place and return {fits, over: [names of the faces that overflow]}.
 * The card is measured at its exact size in a hidden holder.
 */
export function fitCard(card, holder) {
  const copy = card.cloneNode(true);
  holder.replaceChildren(copy);
  copy.toggleAttribute("data-title-long", copy.dataset.title.length > TITLE_LONG);
  const found = bestArrangement(copy);
  card.toggleAttribute("data-title-long", copy.hasAttribute("data-title-long"));
  apply(card, found);
  holder.replaceChildren();
  return found;
}

/** Fit one tag in place: only its type may become smaller. */
export function fitTag(tag, holder) {
  for (const level of TAG_LEVELS) {
    tag.dataset.level = level;
    holder.replaceChildren(tag.cloneNode(true));
    const face = holder.querySelector(".card-face");
    const over = overflows(face);
    holder.replaceChildren();
    if (!over) return { fits: true, sides: 1, level, over: [] };
  }
  return { fits: false, sides: 1, level: TAG_LEVELS.at(-1), over: ["the title, the names, the allergens and the date"] };
}

function bestArrangement(copy) {
  let last = { fits: false };
  for (const { sides, front } of ARRANGEMENTS) {
    for (const level of LEVELS) {
      const tried = { sides, front, level };
      apply(copy, tried);
      const over = [...copy.querySelectorAll(".card-face:not([hidden])")].filter(overflows).map(partOf);
      if (over.length === 0) return { ...tried, fits: true, over };
      last = { ...tried, fits: false, over };
    }
  }
  return last;
}

function partOf(face) {
  const parts = [...face.querySelectorAll("[data-card-part]")].filter((part) => part.dataset.cardPart !== "qr");
  const longest = parts.sort((a, b) => b.textContent.length - a.textContent.length)[0];
  const names = { contents: "what is in it", use: "how to use it", keep: "how to keep it", cautions: "the cautions" };
  return names[longest?.dataset.cardPart] ?? "the title and the names";
}

function overflows(face) {
  // half a pixel of rounding is not an overflow
  return face.scrollHeight > face.clientHeight + 0.5 || face.scrollWidth > face.clientWidth + 0.5;
}

function apply(card, { sides, front, level }) {
  card.dataset.level = level;
  card.dataset.sides = String(sides);
  card.dataset.front = front;
  card.querySelector(".card-back").hidden = sides === 1;
  for (const name of ["contents", "use", "keep", "cautions"]) {
    const stays = front === "all" || (front === "contents" && name === "contents");
    const part = card.querySelector(`[data-card-part="${name}"]`);
    if (part) card.querySelector(`${stays ? ".card-front" : ".card-back"} .card-facts`).append(part);
  }
  const qr = card.querySelector('[data-card-part="qr"]');
  if (qr) card.querySelector(`${sides === 1 ? ".card-front" : ".card-back"} .card-facts`).after(qr);
}
