"""Where a saved page was published is named as its source, and nothing else is.

How pages state it is taken from pages of public repositories (searched 2026-11-30, before this was
written): a path alone, one address for a whole site, forms that no program has filled, a site's
name alone, what a browser writes above a page that it saves. Hosts and names are invented.
"""

from __future__ import annotations

import pytest

from stillroom.beginning.book import Answers, settings_of
from stillroom.bringing import bring

BODY = (
    "<body><h1>Plum jam</h1><p>Makes 4 jars</p><h2>Ingredients</h2><ul><li>1 kg plums</li>"
    "<li>1 kg sugar</li></ul><h2>Method</h2><ol><li>Boil the plums with the sugar until thick."
    "</li><li>Fill the jars.</li></ol></body></html>"
)
JAM = "https://orchard.example/plum-jam"
SITE = "https://orchard.example/"
LD = (
    '<script type="application/ld+json">{"@type":"Recipe","name":"Plum jam",'
    '"recipeIngredient":["1 kg plums","1 kg sugar"],'
    '"recipeInstructions":["Boil the plums with the sugar until thick.","Fill the jars."],'
    '"recipeYield":"4 jars","url":"%s"}</script>'
)

# the head of a page, and what its draft names as its source
STATED = {
    "canonical": (f'<link rel="canonical" href="{JAM}">', JAM),
    "its words in capitals": (f'<LINK REL="Canonical" HREF="{JAM}">', JAM),
    "two words of it": (f'<link rel="canonical alternate" href="{JAM}">', JAM),
    "the other graph": (f'<meta property="og:url" content="{JAM}" />', JAM),
    "in capitals": (f'<meta property="OG:URL" content="{JAM}">', JAM),
    "for short messages": (f'<meta property="twitter:url" content="{JAM}">', JAM),
    "no scheme": ('<meta property="og:url" content="//orchard.example/plum-jam">', JAM),
    "a path and a base": (f'<base href="{SITE}"><link rel="canonical" href="/plum-jam">', JAM),
    "a path and the site": (
        f'<link rel="canonical" href="/plum-jam"><meta property="og:url" content="{SITE}">',
        JAM,
    ),
    "the site on each page": (
        f'<link rel="canonical" href="{SITE}"><meta property="og:url" content="{JAM}">',
        JAM,
    ),
    "the site alone": (f'<link rel="canonical" href="{SITE}">', SITE),
    "another host's copy": (
        f'<link rel="canonical" href="{JAM}"><meta property="og:url" content="https://b.example/x">',
        JAM,
    ),
    "a path alone": ('<link rel="canonical" href="/plum-jam">', ""),
    "left empty": (
        '<meta property="og:url" content=""><meta property="og:site_name" content="">', ""
    ),
    "not filled": ('<meta property="og:url" content="{{ $bot->chatUrl() }}">', ""),
    "a site's name": (
        '<meta property="og:site_name" content="The Orchard Pages">',
        "from The Orchard Pages",
    ),
    "a site called as its page": ('<meta property="og:site_name" content="Plum jam">', ""),
    "a name not filled": ('<meta property="og:site_name" content="{{ $siteTitle }}">', ""),
    "this computer": ('<link rel="canonical" href="http://localhost:8000/x">', ""),
    "a number": ('<meta property="og:url" content="http://192.168.1.20/jam">', ""),
    "the house": ('<meta property="og:url" content="http://kitchen.local/jam">', ""),
    "a file": ('<link rel="canonical" href="file:///home/ann/jam.html">', ""),
    "with a password": ('<meta property="og:url" content="https://a:pw@orchard.example/j">', ""),
    "for machines": (LD % JAM, JAM),
    "for machines, at home": (LD % "http://localhost/jam", ""),
    "nothing": ("", ""),
}  # fmt: skip


def source_of(page: str) -> str:
    """Return what the draft of a page names as its source."""
    found = bring("plum.html", page.encode(), settings_of(Answers("Ours")), None)
    (recipe,) = found.recipes
    _, _, source = recipe.text.partition("## Source\n\n")
    return source.strip().removeprefix("Brought in, ").removesuffix(".")


@pytest.mark.parametrize(("head", "source"), STATED.values(), ids=STATED)
def test_a_pages_own_address_is_its_source(head: str, source: str) -> None:
    page = f"<!doctype html><html><head><title>Plum jam</title>{head}</head>{BODY}"
    assert source_of(page) == source


@pytest.mark.parametrize(
    ("saved", "more", "source"),
    [
        (f"(0033){JAM}", "", JAM),
        ("(0013)about:internet", "", ""),
        (f"(0033){JAM}", f'<link rel="canonical" href="{SITE}">', JAM),
        (f"(0024){SITE}", '<link rel="canonical" href="/plum-jam">', JAM),
        ("(0027)http://localhost:8000/", f'<link rel="canonical" href="{JAM}">', JAM),
    ],
)
def test_what_a_browser_writes_above_a_page(saved: str, more: str, source: str) -> None:
    page = f"<!DOCTYPE html>\n<!-- saved from url={saved} -->\n<html><head>{more}</head>{BODY}"
    assert source_of(page) == source
