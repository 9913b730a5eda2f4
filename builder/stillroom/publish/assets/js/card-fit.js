// Fits a usage card to its size: largest type first, then the back, and otherwise says what does
// not fit. Text is never clipped and never set under the smallest level of print-card.css.

const LEVELS = ["1", "2", "3"];
const TITLE_LONG = 26;

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
  for (const level of LEVELS) {
    tag.dataset.level = level;
    holder.replaceChildren(tag.cloneNode(true));
    const face = holder.querySelector(".card-face");
    const over = overflows(face);
    holder.replaceChildren();
    if (!over) return { fits: true, sides: 1, level, over: [] };
  }
  return { fits: false, sides: 1, level: LEVELS.at(-1), over: ["the title, the names, the allergens and the date"] };
}

function bestArrangement(copy) {
  let last = { fits: false, sides: 2, level: LEVELS.at(-1), over: [] };
  for (const sides of [1, 2]) {
    for (const level of LEVELS) {
      const tried = { sides, level };
      apply(copy, tried);
      const over = [...copy.querySelectorAll(".card-face:not([hidden])")].filter(overflows).map(partOf);
      if (over.length === 0) return { ...tried, fits: true, over };
      last = { ...tried, fits: false, over };
    }
  }
  return last;
}

function partOf(face) {
  const parts = [...face.querySelectorAll("[data-part]")].filter((part) => part.dataset.part !== "qr");
  const longest = parts.sort((a, b) => b.textContent.length - a.textContent.length)[0];
  const names = { contents: "what is in it", use: "how to use it", keep: "how to keep it", cautions: "the cautions" };
  return names[longest?.dataset.part] ?? "the title and the names";
}

function overflows(face) {
  // half a pixel of rounding is not an overflow
  return face.scrollHeight > face.clientHeight + 0.5 || face.scrollWidth > face.clientWidth + 0.5;
}

function apply(card, { sides, level }) {
  card.dataset.level = level;
  card.dataset.sides = String(sides);
  const back = card.querySelector(".card-back");
  back.hidden = sides === 1;
  const to = card.querySelector(sides === 1 ? ".card-front .card-facts" : ".card-back .card-facts");
  for (const name of ["use", "keep", "cautions"]) {
    const part = card.querySelector(`[data-part="${name}"]`);
    if (part) to.append(part);
  }
  const qr = card.querySelector('[data-part="qr"]');
  if (qr) to.before(qr);
}
