// What a browser keeps: choices until the window closes (sessionStorage), a reader's own printer and
// label sheets until they are cleared (localStorage). A browser may refuse to keep anything, have no
// room left, or hand back what is not ours: then nothing was kept, and the page works all the same.

/**
 * Return what was kept under a name, as an object; empty when there is nothing.
 * @param {string} name
 * @param {"sessionStorage" | "localStorage"} [place]
 * @returns {Written}
 */
export function kept(name, place = "sessionStorage") {
  try {
    const found = JSON.parse(window[place].getItem(name) ?? "{}");
    return typeof found === "object" && found !== null ? found : {};
  } catch {
    return {};
  }
}

/**
 * Keep an object under a name; false when the browser will not.
 * @param {string} name
 * @param {unknown} values
 * @param {"sessionStorage" | "localStorage"} [place]
 */
export function keep(name, values, place = "sessionStorage") {
  try {
    window[place].setItem(name, JSON.stringify(values));
    return true;
  } catch {
    return false; // said above
  }
}

/**
 * Write a kept value into a field; what the field does not take leaves it as it was.
 * @param {any} field
 * @param {unknown} value
 */
export function fillField(field, value) {
  if (field.type === "checkbox") {
    if (typeof value === "boolean") field.checked = value;
    return;
  }
  if (typeof value !== "string") return;
  const before = field.value;
  field.value = value;
  if (field.value !== value) field.value = before;
}
