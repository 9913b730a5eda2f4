// The faces of a card, and where they are measured.

/**
 * The faces of a fitted card, each in its own `.usage-card` so that the type keeps its level.
 * @param {HTMLElement} card
 * @returns {HTMLElement[]}
 */
export function cardFaces(card) {
  return [...card.querySelectorAll(".card-face:not([hidden])")].map((face) => {
    const shell = card.cloneNode(false);
    shell.removeAttribute("data-stacked");
    if (face.matches(".card-front") && shell.dataset.frontLevel) shell.dataset.level = shell.dataset.frontLevel;
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
