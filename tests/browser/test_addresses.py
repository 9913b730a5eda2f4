"""Whatever a link's address carries, the page stands: it answers, or keeps what is written.

Right addresses, mangled as in tests/fuzz; one page load for some hundreds of them.
"""

from __future__ import annotations

from random import Random
from urllib.parse import quote

import pytest
from playwright.sync_api import Page

from fuzz.mangling import mangled
from fuzz.readers import TARGETS

PLANS = ("give=2027-12-18", "start=2027-02-01", "begin=2027-01-01", "units=us", "by=weight")
SEEDS = (*TARGETS, *PLANS, "recipe=quince-ratafia&count=8", "q=quince", "kind=infusion")
PAGES = {
    "/r/quince-ratafia/": 300,
    "/r/almond-shortbread/": 200,
    "/r/felted-bauble/": 100,
    "/year/": 150,
    "/browse/": 150,
}
# a page that lets what was never a number or a word show through
NOT_WORDS = r"""(addresses) => addresses.flatMap((address) => {
  const answer = () => {
    const begun = performance.now();
    history.replaceState(null, "", address);
    dispatchEvent(new PopStateEvent("popstate"));
    return performance.now() - begun;
  };
  // what is slow is slow each time; a machine that pauses for a moment is not
  let took = answer();
  for (let again = 0; took > 1000 && again < 3; again += 1) took = Math.min(took, answer());
  const said = document.querySelector("main").innerText;
  const found = said.match(/\b(NaN|undefined|Infinity|Invalid Date)\b|\[object|e\+\d/);
  return [
    // what was asked may be repeated in the answer
    ...(found && !decodeURIComponent(address).includes(found[0]) ? [[address, found[0]]] : []),
    ...(took > 1000 ? [[address, `took ${took} ms`]] : []),
    ...(document.querySelector("main [onerror]") ? [[address, "HTML"]] : []),
  ];
})"""


def address(seed: str) -> str:
    parts = (part.partition("=") for part in seed.split("&"))
    said = (f"{quote(name)}={quote(value, errors='replace')}" for name, _, value in parts)
    return "?" + "&".join(said)


@pytest.mark.parametrize("path", PAGES)
def test_a_page_stands_whatever_its_address_says(page: Page, book_address: str, path: str) -> None:
    chance = Random(path)
    asked = [address(seed) for seed in SEEDS]
    for _ in range(PAGES[path]):
        name, _, value = chance.choice(SEEDS).partition("=")
        asked.append(address(f"{name}={mangled([value], 2, chance)}"))
    page.goto(book_address + path)
    page.wait_for_load_state("networkidle")
    assert page.evaluate(NOT_WORDS, asked) == []
    # the page still answers what is right
    page.goto(f"{book_address}{path}?{'&'.join(PLANS[:2])}")
    assert page.locator("main h1").count() == 1


def test_a_link_with_anything_in_it_opens(page: Page, book_address: str) -> None:
    chance = Random(3)
    for _ in range(12):
        name, _, value = chance.choice(SEEDS).partition("=")
        path = chance.choice(list(PAGES))
        page.goto(f"{book_address}{path}{address(f'{name}={mangled([value], 3, chance)[:900]}')}")
        assert page.evaluate("document.querySelectorAll('main h1').length") == 1
