// What is typed on a page and not kept is never left behind unasked: the browser puts its own question
// before the page is left, whichever way. A form that is sent takes along its own boxes, not another's.

let sent = null;

// Says whether a box says something else than when the page came.
export function isTyped(box) {
  if (box.name === "afresh") {
    return false; // how to work it out: nothing that is kept
  }
  if (box.type === "checkbox" || box.type === "radio") {
    return box.checked !== box.defaultChecked;
  }
  if (box.tagName === "SELECT") {
    const first = [...box.options].findIndex((option) => option.defaultSelected);
    return box.selectedIndex !== Math.max(0, first);
  }
  if (box.tagName === "INPUT") {
    return box.type !== "hidden" && box.value !== box.defaultValue.replace(/[\r\n]/g, "");
  }
  return box.tagName === "TEXTAREA" && box.value !== box.defaultValue;
}

function isUnkept(form) {
  return "unkept" in form.dataset || [...form.elements].some(isTyped);
}

document.addEventListener("submit", (event) => (sent = event.target));
window.addEventListener("beforeunload", (event) => {
  const others = [...document.querySelectorAll("main form")].filter((form) => form !== sent);
  sent = null; // whoever stays is asked again
  if (others.some(isUnkept)) {
    event.preventDefault();
  }
});
