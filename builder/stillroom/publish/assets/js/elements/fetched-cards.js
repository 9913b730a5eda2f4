// The cards of a long book, which lie beside its recipes: those that are chosen are fetched, each
// once. Nothing goes with the request but the card's own address.

const coming = new Map();

/** Bring the card and the tag of every chosen recipe into `cards`; returns the fields of those
 * that could not be fetched.
 * @param {HTMLFormElement} form
 * @param {HTMLElement} cards
 * @returns {Promise<HTMLInputElement[]>}
 */
export async function bringCards(form, cards) {
  const chosen = [...form.querySelectorAll("[data-card]")].filter(({ value }) => Number(value) > 0);
  const brought = await Promise.all(chosen.map((field) => bringOnce(field, cards)));
  return chosen.filter((_, place) => !brought[place]);
}

/**
 * Leave in the list only what holds the words, and what is chosen already.
 * @param {HTMLFormElement} form
 * @param {string} words
 */
export function findTitles(form, words) {
  const sought = words.trim().toLowerCase();
  for (const field of form.querySelectorAll("[data-recipe]")) {
    const stays = Number(field.value) > 0 || field.dataset.title.toLowerCase().includes(sought);
    field.closest("li").hidden = !stays;
  }
}

/** @param {HTMLInputElement} field @param {HTMLElement} cards @returns {Promise<boolean>} */
async function bringOnce(field, cards) {
  const { href } = new URL(field.dataset.card ?? "", document.baseURI);
  if (!coming.has(href)) coming.set(href, bring(href, cards));
  const brought = await coming.get(href);
  if (!brought) coming.delete(href); // to be tried again when it is chosen again
  return brought;
}

/** @param {string} href @param {HTMLElement} cards @returns {Promise<boolean>} */
async function bring(href, cards) {
  const answer = await fetch(href).catch(() => null);
  if (!answer?.ok) return false;
  const brought = document.createElement("template");
  brought.innerHTML = await answer.text();
  for (const own of brought.content.querySelectorAll("meta")) own.remove(); // of the file alone
  for (const picture of brought.content.querySelectorAll("img")) {
    picture.src = new URL(picture.getAttribute("src"), href).href;
  }
  cards.append(brought.content);
  return true;
}
