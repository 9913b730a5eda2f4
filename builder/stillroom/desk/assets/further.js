// One more empty form for somebody else, another basket or another thing: it is put behind the last one,
// and nothing that is typed is touched. Without this script the desk sends the page with one more.

const NEW = /\|new(\d*)\|/;

function formsOf(part) {
  return [...document.querySelectorAll(`details[data-new="${part}"]`)];
}

function numberOf(name) {
  const found = NEW.exec(name);
  return found ? Number(found[1] || 1) : 0;
}

function clear(box) {
  box.removeAttribute("aria-invalid");
  if (box.tagName === "SELECT") {
    for (const option of box.options) {
      option.toggleAttribute("selected", option === box.options[0]);
    }
    box.selectedIndex = 0;
  } else {
    box.setAttribute("value", "");
    box.value = "";
  }
}

// A form is headed by its name as soon as one is typed or chosen, as the rows that are kept are.
function head(form) {
  const box = [...form.querySelectorAll("input, select")].find((one) =>
    one.name.endsWith(`|${form.dataset.namedIn}`),
  );
  const name = box.tagName === "SELECT" ? box.value && box.selectedOptions[0].text : box.value;
  form.querySelector("summary").textContent = name.trim() || form.dataset.nameless;
}

// Heads every form that is not kept yet by what is in it.
export function headForms() {
  document.querySelectorAll("details[data-new]").forEach(head);
}

// Puts a form of this number behind the last of its part, with every name and mark its own.
function add(part, number) {
  const last = formsOf(part).at(-1);
  const made = last.cloneNode(true);
  const anew = (words) => words.replaceAll(new RegExp(NEW, "g"), `|new${number}|`);
  for (const one of made.querySelectorAll("[id], [name], [for], [aria-describedby]")) {
    for (const mark of ["id", "name", "for", "aria-describedby"]) {
      if (one.hasAttribute(mark)) {
        one.setAttribute(mark, anew(one.getAttribute(mark)));
      }
    }
  }
  made.querySelectorAll("input, select").forEach(clear);
  made.querySelectorAll(".wrongs-at").forEach((one) => one.replaceChildren());
  made.querySelectorAll("details").forEach((one) => one.removeAttribute("open"));
  made.querySelector("summary").removeAttribute("autofocus");
  head(made);
  made.open = true;
  last.after(made);
  return made;
}

// The forms of what was typed before and not kept are there again, so that it can be put back.
export function addFormsFor(names) {
  for (const name of names) {
    const part = name.split("|")[0];
    const number = numberOf(name);
    const last = number && formsOf(part).at(-1);
    if (last && !document.getElementsByName(name).length) {
      add(part, number);
    }
  }
}

document.addEventListener("input", (event) => {
  const form = event.target.closest("details[data-new]");
  if (form) {
    head(form);
  }
});

document.addEventListener("click", (event) => {
  const button = event.target.closest('button[name="further"]');
  if (!button) {
    return;
  }
  event.preventDefault();
  const forms = formsOf(button.value);
  const isEmpty = ![...forms.at(-1).querySelectorAll("input, select")].some((box) => box.value);
  if (forms.length === 1 && !forms[0].open && isEmpty) {
    forms[0].open = true; // the one that was folded away is the one more
  } else {
    const names = forms.flatMap((one) => [...one.querySelectorAll("[name]")].map((box) => box.name));
    add(button.value, Math.max(...names.map(numberOf)) + 1);
  }
  formsOf(button.value).at(-1).querySelector("input, select").focus();
});
