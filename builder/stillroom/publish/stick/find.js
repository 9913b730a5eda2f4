/* The search of a book that is opened from a disk: it looks through the words that lie beside it, each
   word that is typed at the beginning of a word of the page, the title's before the text's. A page is
   named once, and what was found in it stands below its title. */

"use strict";

(() => {
  const field = document.querySelector("[data-md-component=search-query]");
  const list = document.querySelector(".md-search-result__list");
  const told = document.querySelector(".md-search-result__meta");
  const open = document.querySelector("[data-md-toggle=search]");
  const base = document.currentScript.dataset.base;
  if (!field || !list || !window.wordsOfTheBook) return;
  document.documentElement.classList.replace("no-js", "js");

  const plain = (text) => text.toLowerCase().normalize("NFD").replace(/\p{M}/gu, "");
  const pages = window.wordsOfTheBook.map((page) => ({
    ...page,
    inTitle: ` ${plain(page.title).replace(/[^\p{L}\p{N}]+/gu, " ")}`,
    inText: ` ${plain(page.text).replace(/[^\p{L}\p{N}]+/gu, " ")}`,
  }));

  function found(asked) {
    const words = plain(asked).split(/[^\p{L}\p{N}]+/u).filter(Boolean);
    if (!words.length) return null;
    const score = (page) =>
      words.reduce((sum, word) => {
        if (page.inTitle.includes(` ${word}`)) return sum + 100;
        return page.inText.includes(` ${word}`) ? sum + 1 : -Infinity;
      }, 0);
    const scored = pages
      .map((page) => [score(page), page])
      .filter(([points]) => points > 0)
      .sort(([one], [other]) => other - one);
    const whole = new Map();
    for (const [, part] of scored) {
      const [place] = part.location.split("#");
      if (!whole.has(place)) whole.set(place, { place, title: part.page || part.title, parts: [] });
      if (part.title !== part.page) whole.get(place).parts.push(part);
    }
    return [...whole.values()].slice(0, 30);
  }

  function link(location, tag, words) {
    const link = document.createElement("a");
    const leaf = document.createElement("article");
    const head = document.createElement(tag);
    link.className = "md-search-result__link";
    leaf.className = "md-search-result__article md-typeset";
    link.href = `${base}/${location}`;
    head.textContent = words;
    leaf.append(head);
    link.append(leaf);
    return link;
  }

  function show(results) {
    list.replaceChildren();
    if (!results) {
      told.textContent = "Type to look through the recipes.";
      return;
    }
    told.textContent = results.length ? `${results.length} found` : "Nothing was found.";
    for (const page of results) {
      const item = document.createElement("li");
      item.className = "md-search-result__item";
      item.append(link(page.place, "h1", page.title));
      for (const part of page.parts) item.append(link(part.location, "h2", part.title));
      list.append(item);
    }
  }

  field.addEventListener("focus", () => {
    open.checked = true;
  });
  field.addEventListener("input", () => show(found(field.value)));
  field.form.addEventListener("submit", (event) => {
    event.preventDefault();
    list.querySelector("a")?.click();
  });
  field.form.addEventListener("reset", () => show(null));
  document.addEventListener("keydown", (event) => {
    const typing = event.target.matches?.("input, textarea, select");
    if (event.key === "/" && !typing) {
      event.preventDefault();
      field.focus();
    } else if (event.key === "Escape" && open.checked) {
      open.checked = false;
      field.blur();
    }
  });
})();
