"""What is looked for on a page by axe, by finger, by keyboard and enlarged, in any browser."""

from __future__ import annotations

import json
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import axe_playwright_python

RULES = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "resultTypes": ["violations"],
}
WAYS = [(scheme, width) for width in (320, 1280) for scheme in ("light", "dark")]
AXE = Path(axe_playwright_python.__file__).with_name("axe.min.js")
RUN = f"""() => axe.run({json.dumps(RULES)}).then((found) => found.violations.flatMap((one) =>
  one.nodes.map((node) => `${{one.id}}: ${{node.target}} ${{node.html.slice(0, 140)}}`)))"""

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

    def faults(self) -> list[str]:
        """Return all that is wrong with a page as it stands, spaced out at the end."""
        self.ask(f"() => {{ {AXE.read_text(encoding='utf-8')}; window.axe = axe; return true; }}")
        found = [*self.ask(RUN), *self.ask(STOPS)]
        self.ask(SPACED)
        return [*found, *self.ask(CUT_OFF)]
