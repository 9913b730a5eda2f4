// What happens while a recipe is typed: after each pause the desk reads it again, says beside every
// line how it was read, and puts the page as it will be beside it. Without this script the same comes
// with "Keep".

const PAUSE_MS = 60;

// the elements of a page that reckon from the recipe's figures, which stand apart from them
const READS_FIGURES = /<stillroom-(?!card)/;

const form = document.getElementById("recipe");
const frame = document.getElementById("page");
const said = document.getElementById("said-now");
const kind = document.getElementById("kind");
let waiting = 0;
let asking = false;
let again = false;
let looked = 0;
let chosen = Boolean(kind && kind.value);
let dirty = false;
let shown = { leaf: null, words: [], touched: false };
let wanted = false; // whether a page is to be had that the frame, still loading, does not show yet

function fillIn(answer) {
  for (const [id, html] of Object.entries(answer.parts)) {
    const place = document.getElementById(id);
    if (place && place.innerHTML !== html) {
      place.innerHTML = html;
    }
    const box = id.startsWith("wrong-") ? document.getElementById(id.slice(6)) : null;
    if (box) {
      box.setAttribute("aria-invalid", String(Boolean(place && place.textContent.trim())));
    }
  }
  if (said.textContent !== answer.said) {
    said.textContent = answer.said;
  }
  if (kind && !chosen) {
    if (answer.kind && ![...kind.options].some((option) => option.value === answer.kind)) {
      kind.add(new Option(answer.kind, answer.kind));
    }
    kind.value = answer.kind;
  }
  showPage(answer.page);
  markLine();
}

// Only what has changed of the page is put there anew, and what reads the recipe's own figures with
// it: its elements come to life again where they are put, and it keeps its place meanwhile.
function showPage(html) {
  const leaf = frame.contentDocument && frame.contentDocument.querySelector("article");
  if (!leaf || html === null) {
    wanted = html !== null;
    frame.classList.toggle("old", html === null);
    return;
  }
  frame.classList.remove("old");
  if (!leaf.querySelector("stillroom-scale")) {
    frame.contentWindow.location.reload(); // the first page: its elements come to life as it loads
    return;
  }
  const top = frame.contentWindow.scrollY;
  const made = frame.contentDocument.createElement("template");
  made.innerHTML = html;
  const parts = [...made.content.children];
  const words = parts.map((part) => part.outerHTML);
  if (leaf === shown.leaf && !shown.touched && words.length === leaf.children.length) {
    const figures = words.findIndex((one) => one.includes('id="recipe-data"'));
    const isOther = words[figures] !== shown.words[figures];
    for (const [at, place] of [...leaf.children].entries()) {
      if (words[at] !== shown.words[at] || (isOther && READS_FIGURES.test(words[at]))) {
        place.replaceWith(parts[at]);
      }
    }
  } else {
    leaf.replaceChildren(made.content);
    leaf.addEventListener("input", () => (shown.touched = true), { once: true });
  }
  shown = { leaf, words, touched: false };
  frame.contentWindow.scrollTo({ top, behavior: "instant" });
}

// A page that was right before the frame had come is asked for once more.
frame.addEventListener("load", () => {
  const isThere = frame.contentDocument && frame.contentDocument.querySelector("stillroom-scale");
  if (wanted && !isThere) {
    frame.contentWindow.location.reload();
  }
  wanted = false;
});

// One question at a time: what is typed while the desk answers is asked about next.
async function look() {
  if (asking) {
    again = true;
    return;
  }
  asking = true;
  const sent = new URLSearchParams(new FormData(form));
  if (!chosen) {
    sent.delete("kind"); // it goes with the title until somebody chooses: "Jam" may become "Jam tarts"
  }
  try {
    const reply = await fetch(form.dataset.look, { method: "POST", body: sent });
    if (reply.ok) {
      fillIn(await reply.json());
      looked += 1;
      document.documentElement.dataset.looked = String(looked);
    } else {
      said.textContent = "The desk cannot read this now. Keep it to see why.";
    }
  } catch {
    said.textContent = "The desk does not answer. What you type is still here: open the desk again.";
  }
  asking = false;
  if (again) {
    again = false;
    look();
  }
}

function soon() {
  dirty = true;
  clearTimeout(waiting);
  waiting = setTimeout(look, PAUSE_MS);
}

// What stands in a box with a line more: behind the last note, or the last line. As pressing.py does it.
function withMore(text, more, box) {
  if (box === "settled" || !text.trim()) {
    return `${text}\n${more}`.replace(/^\n+|\n+$/g, "");
  }
  const whole = /^(?:#{1,6}\s|.{1,59}:[ \t]*\n)/.test(text) ? text : `Notes:\n\n${text}`; // no heading: notes
  const notes = /^Notes:[ \t]*\n+/m.exec(whole);
  if (!notes) {
    return `Notes:\n\n${more}\n\n${whole}`;
  }
  const begin = notes.index + notes[0].length;
  const below = whole.slice(begin).search(/^#{1,6}\s|(?<=\n\n).{1,59}:[ \t]*$/m);
  const end = below < 0 ? whole.length : begin + below;
  return `${whole.slice(0, end).trimEnd()}\n\n${more}\n\n${whole.slice(end)}`.replace(/\n+$/, "");
}

// Where lines stand that were asked about; an answer above them that took one out has moved them.
function placeOf(asked, lines, first) {
  const at = lines.flatMap((_, from) => (asked.every((one, on) => lines[from + on] === one) ? [from] : []));
  if (at.includes(first)) {
    return first;
  }
  return at.length === 1 ? at[0] : -1;
}

// Puts an answer that was pressed in its line, and the hand back where it was. A line that was typed
// on since it was asked about stays as it is, and is read anew.
function answer(button) {
  const { box, first, was, line, to, more } = JSON.parse(button.value);
  const area = document.getElementById(box);
  const lines = area.value.split("\n");
  const asked = was.split("\n");
  const put = line ? line.split("\n") : []; // what goes elsewhere leaves no gap
  const place = placeOf(asked, lines, first);
  const stands = place >= 0;
  if (stands) {
    lines.splice(place, asked.length, ...put);
    area.value = lines.join("\n");
  }
  if (stands && to) {
    const other = document.getElementById(to);
    other.value = withMore(other.value, more, to);
  }
  const last = stands ? place + put.length : first + asked.length;
  const end = lines.slice(0, last).join("\n").length;
  area.focus();
  area.setSelectionRange(end, end);
  soon();
}

// Shows which of the lines beside belongs to the one that is being typed.
function markLine() {
  const area = document.activeElement;
  const list = area && document.getElementById(`read-${area.id}`);
  if (!list || area.tagName !== "TEXTAREA") {
    return;
  }
  const row = area.value.slice(0, area.selectionStart).split("\n").length - 1;
  for (const item of list.children) {
    item.classList.toggle("read--here", item.dataset.row === String(row));
  }
}

form.addEventListener("input", (event) => {
  chosen ||= event.target === kind;
  soon();
});
form.addEventListener("click", (event) => {
  const button = event.target.closest('button[name="answer"]');
  if (button) {
    event.preventDefault();
    answer(button);
  }
});
// Pressing the picture says which point of it is to be seen wherever it is cut.
document.querySelector(".taken")?.addEventListener("click", (event) => {
  const box = event.target.getBoundingClientRect();
  const part = (at, from, size) => `${Math.round((100 * (at - from)) / size)}%`;
  const focus = document.getElementById("picture_focus");
  focus.value = `${part(event.clientX, box.left, box.width)} ${part(event.clientY, box.top, box.height)}`;
  soon();
});
document.addEventListener("selectionchange", markLine);
document.addEventListener("keydown", (event) => {
  if ((event.ctrlKey || event.metaKey) && event.key === "s") {
    event.preventDefault();
    form.requestSubmit(form.querySelector('button[name="as"][value="book"]'));
  }
});

// What was typed in the last moment goes along when the page is left, so that nothing is lost.
window.addEventListener("pagehide", () => {
  if (dirty) {
    fetch(form.dataset.look, {
      method: "POST",
      body: new URLSearchParams(new FormData(form)),
      keepalive: true,
    });
  }
});
// What was typed before this script was there is read as well.
const boxes = [...form.querySelectorAll("input:not([type=hidden]), textarea")];
if (boxes.some((box) => box.value !== box.defaultValue)) {
  soon();
}

// After a picture was taken in, or was not, the hand is where it was.
document.getElementById(form.dataset.goTo)?.focus();

// A picture that is chosen and not taken in would be forgotten without a word: its button is shown first.
form.addEventListener("submit", (event) => {
  const chosen = form.elements.namedItem("picture_file");
  const button = chosen.closest(".box").querySelector("button");
  const place = document.getElementById("wrong-picture_file");
  const isTold = place.querySelector("[data-untaken]");
  if (!chosen.files.length || event.submitter === button || isTold) {
    return;
  }
  event.preventDefault();
  event.stopImmediatePropagation();
  const told = document.createElement("p");
  told.className = "wrong";
  told.setAttribute("role", "alert");
  told.dataset.untaken = "";
  told.textContent = `“${chosen.files[0].name}” is chosen and not taken in yet: press “${button.textContent}”. To go on without it, press the same button again.`;
  place.replaceChildren(told);
  chosen.closest("details").open = true;
  button.focus();
});

form.addEventListener("submit", () => {
  clearTimeout(waiting);
  dirty = false;
});
