// What is typed into the boxes of a room and not kept: the desk takes it down after each pause, and
// it is put back when the room is opened again. Where a file was changed meanwhile it is shown only.
// Without this script a page loses what nobody kept.

import { addFormsFor, headForms } from "./further.js";
import { isTyped } from "./leaving.js";

const PAUSE_MS = 300;

// The files that a form was made of, by their sums.
function filesOf(form) {
  const sums = [...form.elements].filter((box) => /^(?:opened|sum_)/.test(box.name));
  return sums.map((box) => `${box.name}=${box.value}`).join("\n");
}

function isKept(box) {
  return box.name && box.willValidate && !["file", "submit"].includes(box.type) && box.name !== "afresh";
}

// Of boxes that are one choice, only the one that is chosen says anything.
function typedIn(form, had) {
  const whole = "unkept" in form.dataset; // what was refused: no box says what the file says
  const typed = [...form.elements].filter(
    (box) => isKept(box) && (whole || isTyped(box) || box.name in had),
  );
  const chosen = typed.filter((box) => box.type !== "radio" || box.checked);
  return Object.fromEntries(
    chosen.map((box) => [box.name, box.type === "checkbox" ? box.checked : box.value]),
  );
}

function isSame(box, value) {
  return box.type === "checkbox" ? box.checked === value : box.value === value;
}

// Puts words back into their boxes; returns those that have no box, and whether anything was put.
function putBack(form, boxes) {
  const homeless = {};
  let isPut = false;
  addFormsFor(Object.keys(boxes));
  for (const [name, value] of Object.entries(boxes)) {
    const box = form.elements.namedItem(name);
    if (!box) {
      homeless[name] = value;
    } else if (!isSame(box, value)) {
      if (box.type === "checkbox") {
        box.checked = value;
      } else {
        box.value = value;
      }
      isPut = true;
      (box.closest ? box : box[0]).closest("details")?.setAttribute("open", "");
    }
  }
  headForms();
  return { homeless, isPut };
}

// What a box is called: a list speaks of the label, where there is one.
function nameOf(form, name) {
  const box = form.elements.namedItem(name);
  return (box && box.labels && box.labels[0]?.textContent.trim()) || name.split("|").join(" ");
}

// Says that words were put back, and shows those that were not.
function tell(form, said, isPut, shown) {
  said.querySelector("[data-put]").hidden = !isPut;
  for (const [name, value] of Object.entries(shown)) {
    const item = document.createElement("li");
    item.textContent = `${nameOf(form, name)}: ${value === true ? "yes" : value}`;
    said.querySelector("ul").append(item);
  }
  said.querySelector("[data-shown]").hidden = !Object.keys(shown).length;
  said.hidden = false;
}

function watch(form) {
  const told = [...document.querySelectorAll("[data-typed-said]")];
  const said = told.find((one) => one.dataset.typedSaid === form.dataset.room);
  const before = form.dataset.had ? JSON.parse(form.dataset.had) : { boxes: {}, shown: {} };
  let { boxes: had, shown } = before;
  let waiting = 0;

  function send(boxes) {
    const typed = JSON.stringify({ over: filesOf(form), boxes, shown });
    const visit = form.elements.namedItem("visit").value;
    return fetch("/typed", {
      method: "POST",
      body: new URLSearchParams({ room: form.dataset.room, visit, typed }),
      keepalive: typed.length < 20000, // the browser takes no more along from a page that is left
    });
  }
  function flush() {
    clearTimeout(waiting);
    waiting = 0;
    send(typedIn(form, had)).catch(() => null); // the desk is closed: leaving is asked about
  }

  if ("unkept" in form.dataset) {
    had = {}; // its boxes say what was sent
  } else if (form.dataset.had && before.over !== filesOf(form)) {
    shown = { ...shown, ...had };
    had = {};
  }
  const { homeless, isPut } = putBack(form, had);
  shown = { ...shown, ...homeless };
  if (isPut || Object.keys(shown).length) {
    tell(form, said, isPut, shown);
  }
  said.querySelector("button").addEventListener("click", async () => {
    [had, shown] = [{}, {}];
    form.reset();
    await send({});
    said.hidden = true;
    document.getElementById("main").focus();
  });
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(flush, PAUSE_MS);
  });
  form.addEventListener("submit", flush);
  window.addEventListener("pagehide", () => waiting && flush());
}

for (const form of document.querySelectorAll("form[data-room]")) {
  watch(form);
}
