"""Where a page that was saved was published: its address as the page states it, else its site.

A page states its address in several places, and some name the site's first page on every page, or
only a path. What only the computer or the house that it was saved in can open is no source.
Sources: HTML Living Standard, 4.6.7.4 (canonical) and 4.2.3 (base); The Open Graph protocol (url,
site_name); both from memory.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from ipaddress import ip_address
from typing import Final
from urllib.parse import urljoin, urlsplit

from stillroom.bringing.plain_text import tidy
from stillroom.bringing.tags import Tag
from stillroom.bringing.typed_marks import bare

_ADDRESS: Final = re.compile(r"https?://[^\s<>\"]+")
_AT_HOME: Final = frozenset(["localhost", "local", "internal", "lan", "home", "invalid", "test"])
"""Last words of names that no public host has: RFC 6761, 6762, 8375 (from memory), and others."""
_UNFILLED: Final = re.compile(r"[{}<>%$|]")
_LONGEST_SITE: Final = 60


def public_address(said: object) -> str:
    """Return an address that anybody can open; "" for every other.

    >>> public_address(" https://orchard.example/jam "), public_address("http://localhost:8000/jam")
    ('https://orchard.example/jam', '')
    """
    words = said.strip() if isinstance(said, str) else ""
    if not _ADDRESS.fullmatch(words):
        return ""
    try:
        parts = urlsplit(words)
        host = (parts.hostname or "").rstrip(".")
    except ValueError:
        return ""
    if parts.username or "." not in host or host.rpartition(".")[2] in _AT_HOME or _is_number(host):
        return ""
    return words


def _is_number(host: str) -> bool:
    try:
        return bool(ip_address(host))
    except ValueError:
        return False


def published_at(page: Tag, title: str = "") -> str:
    """Return a page's address, "from" and its site's name where only that is known, or ""."""
    said = list(_stated(page))
    bases = [page.said.get("saved from", ""), *_hrefs(page, "base"), *said]
    base = next(filter(None, map(public_address, bases)), "")
    found = [one for words in said if (one := public_address(_joined(base, words)))]
    if not found:
        site = said_by_meta(page, "og:site_name") or said_by_meta(page, "application-name")
        is_name = site and site != title and len(site) <= _LONGEST_SITE
        return f"from {site}" if is_name and not _UNFILLED.search(site) else ""
    host = urlsplit(found[0]).netloc
    of_the_page = (one for one in found if urlsplit(one).netloc == host and _leads_within(one))
    return next(of_the_page, found[0])


def _stated(page: Tag) -> Iterator[str]:
    """Yield the addresses that a page states of itself, the surest first."""
    for tag in page.walk():
        if tag.name == "link" and "canonical" in tag.said.get("rel", "").lower().split():
            yield tag.said.get("href", "")
    yield said_by_meta(page, "og:url")
    yield page.said.get("saved from", "")
    yield said_by_meta(page, "twitter:url")


def _hrefs(page: Tag, name: str) -> Iterator[str]:
    return (tag.said.get("href", "") for tag in page.walk() if tag.name == name)


def _joined(base: str, words: str) -> str:
    try:
        return urljoin(base or "https:", words.strip()) if words.strip() else ""
    except ValueError:
        return ""


def _leads_within(address: str) -> bool:
    """Whether an address is of one page, and not of the whole site."""
    parts = urlsplit(address)
    return bool(parts.path.strip("/") or parts.query)


def said_by_meta(page: Tag, name: str) -> str:
    """Return what a page states of itself under a name; "" where it says nothing."""
    for tag in page.walk():
        if tag.name != "meta":
            continue
        called = [tag.said.get(key, "").lower() for key in ("name", "property")]
        if name in called and (words := bare(tidy(tag.said.get("content", "")))):
            return words
    return ""
