"""What is looked for on a page by axe, by finger, by keyboard and enlarged, in any browser."""

from __future__ import annotations

import json
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import axe_playwright_python

from sampling import is_whole

RULES = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "resultTypes": ["violations"],
}
WAYS = [(scheme, width) for width in (320, 1280) for scheme in ("light", "dark")]
AXE = Path(axe_playwright_python.__file__).with_name("axe.min.js")
INJECT = (
    "() => { if (!window.axe) { "
    f"{AXE.read_text(encoding='utf-8')}; window.axe = axe; }} return true; }}"
)
# Contrast is most of what axe costs. It hangs on colours, type and what lies behind: of the words
# of a page that have all of these alike, the first and the last are asked, unless all of it is.
MARK_ALIKE = r"""() => {
  const behind = ["backgroundColor", "backgroundImage", "opacity", "position", "zIndex", "float",
    "transform", "filter", "mixBlendMode", "clip", "clipPath", "visibility"];
  const own = ["color", "fontSize", "fontWeight", "textShadow", "webkitTextStrokeWidth"];
  const numbers = new Map();
  const number = (key) => numbers.get(key) ?? numbers.set(key, numbers.size).get(key);
  const alike = new Map();
  const walk = (one, above, room) => {
    const style = getComputedStyle(one);
    if (style.display === "none") return;
    const box = one.getBoundingClientRect();
    const here = number([above, one.matches(":disabled, [aria-disabled=true], label"),
      ...behind.map((name) => style[name])].join("|"));
    const inside = { left: Math.max(room.left, box.left), top: Math.max(room.top, box.top),
      right: Math.min(room.right, box.right), bottom: Math.min(room.bottom, box.bottom) };
    const words = [...one.childNodes].filter((part) => part.nodeType === Node.TEXT_NODE)
      .map((part) => part.data).join("");
    // what axe doubts in one letter or sign alone is asked wherever it stands
    if (/[a-z0-9]\s*[a-z0-9]/i.test(words) && !one.shadowRoot && box.width > 1 && box.height > 1
        && inside.right - inside.left > box.width - 1
        && inside.bottom - inside.top > box.height - 1) {
      const key = [here, ...own.map((name) => style[name])].join("|");
      alike.set(key, [...(alike.get(key) ?? []), one]);
    }
    // what the root and the body hide is hidden by the window, which scrolls
    const whole = style.overflowX === "visible" && style.overflowY === "visible"
      || one.contains(document.body);
    const next = whole ? room : inside;
    for (const part of one.children) walk(part, here, next);
  };
  // a page that is seen in two ways was marked for the other
  for (const one of document.querySelectorAll("[data-set-alike]")) {
    one.removeAttribute("data-set-alike");
  }
  const room = { left: 0, top: -Infinity, right: Infinity, bottom: Infinity };
  walk(document.documentElement, -1, room);
  for (const all of alike.values()) {
    for (const one of all.slice(1, -1)) one.setAttribute("data-set-alike", "");
  }
  axe.configure({ rules: [{ id: "color-contrast", selector: "*:not([data-set-alike])" }] });
  return [...alike.values()].flat().length;
}"""
RUN = """() => axe.run(RULES).then((found) => found.violations.flatMap((one) =>
  one.nodes.map((node) => `${one.id}: ${node.target} ${node.html.slice(0, 140)}`)))"""

# WCAG 2.2 SC 1.4.12, its four values (from memory); a sheet of one's own, as such readers have
SPACED = """() => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`* { line-height: 1.5 !important; letter-spacing: 0.12em !important;
    word-spacing: 0.16em !important } p { margin-bottom: 2em !important }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  return true;
}"""
# what is wider than the screen, or whose words are cut off by its own edge
CUT_OFF = r"""() => [
  ...(document.documentElement.scrollWidth > innerWidth ? ["wider than the screen"] : []),
  ...[...document.querySelectorAll("body *")].filter((one) => {
    // a sheet is paper of one size, set as it will be printed: its words stand beside it
    if (one.closest(".sheet-page")) return false;
    if (!one.checkVisibility() || !one.innerText?.trim() || one.clientWidth <= 2) return false;
    const style = getComputedStyle(one);
    const wide = one.scrollWidth > one.clientWidth + 1;
    const tall = one.scrollHeight > one.clientHeight + 1;
    const cut = (overflow, over) => over && /hidden|clip/.test(overflow);
    return cut(style.overflowX, wide) || cut(style.overflowY, tall);
  }).map((one) => one.outerHTML.slice(0, 120)),
]"""
# WCAG 2.2 SC 2.5.8: 24 by 24 CSS px, links within a sentence excepted; and no stop without a name
STOPS = r"""() => [...document.querySelectorAll(
    "a[href], button, input, select, textarea, summary, [tabindex]")]
  .filter((one) => one.tabIndex >= 0 && one.getClientRects().length
    && one.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }))
  .flatMap((one) => {
    const box = one.getBoundingClientRect();
    const name = one.getAttribute("aria-label") || one.getAttribute("aria-labelledby")
      || one.innerText || one.title || one.labels?.[0]?.textContent
      || one.querySelector("[alt]")?.alt || one.querySelector("title")?.textContent;
    const around = one.parentElement.innerText.trim();
    const sentence = one.tagName === "A" && getComputedStyle(one).display.startsWith("inline")
      && around !== one.innerText.trim() && getComputedStyle(one).display === "inline";
    const small = (box.width < 24 || box.height < 24) && !sentence;
    const said = one.outerHTML.slice(0, 120);
    return [...(name?.trim() ? [] : [`no name: ${said}`]), ...(small ? [`small: ${said}`] : [])];
  })"""


class Looker:
    """One browser in one way: opens a page and asks it something, in JavaScript."""

    def __init__(self, go: Callable[[str], object], ask: Callable[[str], Any]) -> None:
        self.go = go
        self.ask = ask

    def wait_for(self, condition: str) -> None:
        for _ in range(300):
            if self.ask(f"() => Boolean({condition})"):
                return
            time.sleep(0.05)
        raise AssertionError(f"not so within 15 s: {condition}")

    def told_by_axe(self, rules: dict[str, Any] = RULES) -> list[str]:
        """Return what axe finds wrong with a page as it stands, and where."""
        self.ask(INJECT)
        if not is_whole():
            self.ask(MARK_ALIKE)
        found: list[str] = self.ask(RUN.replace("RULES", json.dumps(rules)))
        return found

    def faults(self) -> list[str]:
        """Return all that is wrong with a page as it stands, spaced out at the end."""
        found = [*self.told_by_axe(), *self.ask(STOPS)]
        self.ask(SPACED)
        return [*found, *self.ask(CUT_OFF)]
