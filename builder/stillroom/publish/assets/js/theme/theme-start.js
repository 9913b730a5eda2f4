/* A word where a page is opened from a disk. What Material keeps between pages, under names of this book's own. A browser may refuse to keep
   anything, have no room left, or hand back what is not ours: then nothing was kept. */

addEventListener("DOMContentLoaded", () => {
  if (!location.host) document.querySelector("[data-from-file]")?.removeAttribute("hidden");
});

window.__md_scope = new URL(/** @type {any} */ (document.currentScript).dataset.base, location.href);

window.__md_hash = (text) => [...text].reduce((sum, letter) => (sum << 5) - sum + letter.charCodeAt(0), 0);

window.__md_get = (name, store = undefined, scope = window.__md_scope) => {
  try {
    return JSON.parse(/** @type {any} */ ((store ?? localStorage).getItem(`${scope.pathname}.${name}`)));
  } catch {
    return null;
  }
};

window.__md_set = (name, value, store = undefined, scope = window.__md_scope) => {
  try {
    (store ?? localStorage).setItem(`${scope.pathname}.${name}`, JSON.stringify(value));
  } catch {
    // said above: what cannot be kept is not kept
  }
};
