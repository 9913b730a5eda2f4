// The words of a card or tag as they are read, one after another, in whatever type and spacing their
// reader has set. A sheet is paper of one size and is shown as a picture of it; this is what it says.

/** Return the words of a filled card or tag under its title. @param {HTMLElement} element */
export function spokenCard(element) {
  const said = document.createElement("section");
  const title = document.createElement("h2");
  title.textContent = /** @type {string} */ (element.dataset.title);
  said.append(title);
  for (const part of element.querySelectorAll("p, .card-fact:not(.card-told)")) {
    const words = part.matches(".card-title") ? "" : wordsOf(part);
    if (!words) continue;
    const line = document.createElement("p");
    line.textContent = words;
    said.append(line);
  }
  return said;
}

/** @param {HTMLElement} part */
function wordsOf(part) {
  if (part.hidden) return "";
  const shown = part.cloneNode(true);
  for (const left of shown.querySelectorAll("[hidden]")) left.remove();
  const heading = shown.querySelector("dt");
  if (heading) heading.append(": ");
  const made = shown.querySelector(".card-made");
  if (made && !made.textContent.trim()) made.parentElement.remove(); // a line to write on
  return /** @type {string} */ (shown.textContent).replaceAll(/\s+/g, " ").trim();
}
