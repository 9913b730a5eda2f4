/**
 * What the reader chose, kept in the page's address: a link opens it again and Back undoes it.
 *
 * Every element writes only its own names and leaves the others' alone.
 */

const CHANGED = "stillroom:address";

/** Return everything the address holds, name to text. */
export function readState() {
  return Object.fromEntries(new URLSearchParams(window.location.search));
}

/**
 * Write changes into the address; an empty or missing value takes its name out. Adds one step for Back.
 * @param {Record<string, unknown>} changes
 */
export function writeState(changes) {
  const query = new URLSearchParams(window.location.search);
  for (const [name, value] of Object.entries(changes)) {
    if (value === "" || value === null || value === undefined) query.delete(name);
    else query.set(name, String(value));
  }
  const search = query.toString();
  if (`?${search}` === window.location.search || (!search && !window.location.search)) return;
  const address = `${window.location.pathname}${search ? `?${search}` : ""}${window.location.hash}`;
  window.history.pushState(null, "", address);
  window.dispatchEvent(new Event(CHANGED));
}

/**
 * Call back with the state when it changes, by Back, Forward or another element; returns how to stop.
 * @param {(state: Texts) => void} callback
 */
export function onStateChange(callback) {
  const tell = () => callback(readState());
  window.addEventListener("popstate", tell);
  window.addEventListener(CHANGED, tell);
  return () => {
    window.removeEventListener("popstate", tell);
    window.removeEventListener(CHANGED, tell);
  };
}

/**
 * Show a form that needs script and keep an element in step with it and with the address.
 * `filled` hears of each changed field; `readAddress` is called now and at every Back.
 * Returns what stops it all.
 * @param {HTMLFormElement} form
 * @param {(field: any) => void} filled
 * @param {() => void} readAddress
 */
export function followForm(form, filled, readAddress) {
  const stop = new AbortController();
  const listen = { signal: stop.signal };
  form.hidden = false;
  form.addEventListener("change", (event) => filled(event.target), listen);
  form.addEventListener("submit", (event) => event.preventDefault(), listen);
  const stopWatching = onStateChange(readAddress);
  readAddress();
  return () => {
    stop.abort();
    stopWatching();
  };
}
