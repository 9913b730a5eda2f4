// Which face of a usage card carries which of its parts. A card has two faces; the folded card's
// are its whole outside and its whole inside, of two panels each, and fold between them: cover and back
// with the cautions outside, what is in it and its use inside.

// In the order they are tried: all on the front; the front a gift and all facts on the back, with its
// drawing, a small one or none; the contents on the front. Before a gift, for a design whose picture has a
// front to itself: all but title and names on the back, then with the foot on the front again. As
// printing/templates/card_faces.typ tries them.
export const FLAT = [
  { sides: 1, front: "all" },
  { sides: 2, front: "bare gift" },
  { sides: 2, front: "portrait gift" },
  { sides: 2, front: "gift" },
  { sides: 2, front: "small gift" },
  { sides: 2, front: "plain gift" },
  { sides: 2, front: "contents" },
];

/** Whether a front is all picture but for title and names. @param {string} front */
export const isPortrait = (front) => front === "bare gift" || front === "portrait gift";

// printing/templates/folded_cards.typ has one arrangement.
export const FOLDED = [{ sides: 2, front: "folded" }];

const FACTS = ["contents", "use", "keep", "cautions"];
/** @type {Record<string, string[]>} */
const STAYS = { all: FACTS, contents: ["contents"], folded: ["contents"] };

/**
 * The inner panels of a folded card that may bear its foot: its lines for the giver stand on the other.
 * @param {HTMLElement} card
 * @param {string} front
 * @returns {string[]}
 */
export const feetOf = (card, front) => {
  if (front !== "folded") return [""];
  return card.hasAttribute("data-hand") ? ["contents"] : ["contents", "advice"];
};

/**
 * Move every part of a card to where an arrangement has it, and set its levels of type.
 * @param {HTMLElement} card
 * @param {Arrangement & {level: string}} arrangement
 */
export function arrange(card, { sides, front, level, back = level, foot = "contents" }) {
  const parts = partsOf(card);
  card.dataset.level = level;
  card.dataset.sides = String(sides);
  // a full front makes no small back; the panels of a fold are of one level
  if (front === "folded") delete parts.back.dataset.level;
  else parts.back.dataset.level = back;
  const arranged = `${front}${parts.isLarge ? ", large" : ""}${foot === "advice" ? ", turned" : ""}`;
  if (card.dataset.arranged !== arranged) {
    const stays = STAYS[front] ?? [];
    for (const fact of parts.facts) {
      parts.lists[stays.includes(fact.dataset.cardPart) ? 0 : 1].append(fact);
    }
    for (const told of card.querySelectorAll(".card-told")) told.remove();
    if (front === "folded") fold(parts, foot);
    else flatten(parts, sides, front);
  }
  parts.back.hidden = sides === 1;
  card.dataset.front = front;
  card.dataset.arranged = arranged;
}

/**
 * The boxes that must hold their words: the faces in use, or the panels of a folded card.
 * @param {HTMLElement} card
 * @returns {HTMLElement[]}
 */
export function boxesOf(card) {
  const box = card.dataset.front === "folded" ? ".card-panel" : ".card-face:not([hidden])";
  return [...card.querySelectorAll(box)];
}

/** @param {HTMLElement} card */
function partsOf(card) {
  /** @param {string} name */
  const part = (name) => card.querySelector(name);
  return {
    face: part(".card-front"),
    back: part(".card-back"),
    emblem: part(".card-emblem"),
    head: part(".card-head"),
    lists: [...card.querySelectorAll(".card-facts:not(.card-care)")],
    facts: FACTS.map((name) => part(`[data-card-part="${name}"]`)).filter(Boolean),
    code: part(".card-qr"),
    foot: part(".card-foot"),
    mark: part(".card-mark"),
    address: part(".card-address"),
    isLarge: card.hasAttribute("data-large"),
  };
}

/** @param {CardParts} parts @param {number} sides @param {string} front */
function flatten({ face, back, emblem, head, lists, code, foot, mark, address, isLarge }, sides, front) {
  /** @param {HTMLElement} place @param {any[]} parts */
  const put = (place, ...parts) => place.replaceChildren(...parts.filter(Boolean));
  const isBare = front === "bare gift";
  if (isPortrait(front)) lists[1].prepend(whatItIs(head));
  put(face, emblem, head, lists[0], sides === 1 ? code : null, isBare ? null : foot);
  const end = sides === 2 || !isLarge ? address : null;
  put(back, lists[1], sides === 2 ? code : null, mark, isBare ? foot : null, end);
  if (sides === 1 && isLarge && address) foot.append(address);
}

/** What it is, where the front leaves that to the back. @param {HTMLElement} head */
function whatItIs(head) {
  const told = document.createElement("div");
  told.className = "card-fact card-told";
  told.dataset.cardPart = "head";
  for (const [name, part] of [["dt", ".card-kind"], ["dd", ".card-what"]]) {
    const said = document.createElement(name);
    said.textContent = head.querySelector(part)?.textContent ?? "";
    told.append(said);
  }
  return told;
}

/** @param {CardParts} parts @param {string} bearer */
function fold({ face, back, emblem, head, lists, facts, code, foot, mark, address }, bearer) {
  const care = document.createElement("dl");
  care.className = "card-facts card-care";
  care.append(...facts.filter((fact) => fact.dataset.cardPart === "cautions"));
  face.replaceChildren(panel("back cover", care, mark, code, address), panel("cover", emblem, head));
  const [under, beside] = bearer === "contents" ? [foot, tail(emblem)] : [tail(emblem), foot];
  back.replaceChildren(panel("contents", lists[0], under), panel("advice", lists[1], beside));
}

/**
 * What closes the inside: the drawing once more, or lines for the giver's own words.
 * @param {HTMLElement | null} emblem
 */
function tail(emblem) {
  const made = document.createElement("div");
  made.className = "card-tail";
  made.setAttribute("aria-hidden", "true");
  const lines = [1, 2, 3].map(() => document.createElement("span"));
  const drawing = emblem?.cloneNode(false);
  drawing?.classList.replace("card-emblem", "card-tail-picture");
  made.append(.../** @type {Element[]} */ ([drawing].filter(Boolean)), ...lines);
  return made;
}

/** @param {string} name @param {...(Node | null)} parts */
function panel(name, ...parts) {
  const made = document.createElement("div");
  made.className = "card-panel";
  made.dataset.panel = name;
  made.append(.../** @type {Node[]} */ (parts.filter(Boolean)));
  return made;
}
