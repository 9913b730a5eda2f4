"""A built book made to be opened by a double click: from a stick, a shared folder, a zip.

From a disk a browser takes no module and no data, and finds no page in the name of a folder. So
each link names its page, the scripts are one, and the search has its words beside it. Nothing else
of the pages is changed.
"""

from __future__ import annotations

import html
import json
import re
from pathlib import Path
from typing import Final

from stillroom.publish.book_files import AMOUNTS_DATA, FOLDER
from stillroom.publish.one_script import one_script
from stillroom.publish.scripts import DEFINE, list_sources

_HERE: Final = Path(__file__).parent / "stick"
_LINK: Final = re.compile(r"""(<(?:a|link|area)\b[^>]*?\shref=)(["'])([^"']*)\2""")
_DATA: Final = re.compile(r"""("href": ?)(")([^"]*)\2""")
_TO_FOLDER: Final = re.compile(r"(?P<path>(?:(?:\.{1,2}|[\w%.~-]+)/)*(?:\.{1,2})?)(?P<end>[?#].*)?")
_MODULE: Final = re.compile(
    r'<script src="(?P<base>[^"]*?)/?assets/stillroom/js/elements/define\.js"'
    r' type="module"></script>'
)
_THEME: Final = re.compile(r'<script src="[^"]*assets/javascripts/bundle\.[^"]*"></script>\s*')
_BEFOREHAND: Final = re.compile(r'<link rel="modulepreload"[^>]*>\s*')
_FROM_FILE: Final = re.compile(r"<p class=\"from-file[^>]*>.*?</p>\s*", re.DOTALL)
_TAGS: Final = re.compile(r"<[^>]+>")
_OWN: Final = f"{FOLDER}/js"


def make_stick(site: Path) -> None:
    """Change a built site in its place; raises OSError, or ValueError for what cannot be changed.

    It may not be the site that is put on a host: search engines and old addresses are not served.
    """
    amounts = (site / AMOUNTS_DATA).read_text(encoding="utf-8")
    script = one_script(list_sources(), DEFINE, {"data/amounts.json": amounts})
    (site / _OWN / "book.js").write_text(script, encoding="utf-8")
    (site / _OWN / "find.js").write_bytes((_HERE / "find.js").read_bytes())
    (site / _OWN / "words.js").write_text(_words(site), encoding="utf-8")
    for path in sorted(site.rglob("*.html")):
        page = path.read_text(encoding="utf-8")
        path.write_text(_changed(page), encoding="utf-8")
    for left in ("sitemap.xml", "sitemap.xml.gz"):
        (site / left).unlink(missing_ok=True)


def _changed(page: str) -> str:
    page = _DATA.sub(_named, _LINK.sub(_named, page))  # and what a script makes links of
    page = _FROM_FILE.sub("", _BEFOREHAND.sub("", _THEME.sub("", page)))
    return _MODULE.sub(_scripts, page)


def _named(found: re.Match[str]) -> str:
    """Return a link with the page that it leads to, where it names a folder of the book."""
    if 'rel="canonical"' in found[1]:
        return found[0]
    whole = _TO_FOLDER.fullmatch(found[3])
    if not whole or not whole["path"]:
        return found[0]
    folder = whole["path"] if whole["path"].endswith("/") else f"{whole['path']}/"
    return f"{found[1]}{found[2]}{folder}index.html{whole['end'] or ''}{found[2]}"


def _scripts(found: re.Match[str]) -> str:
    base = found["base"].rstrip("/") or "."
    folder = f"{base}/{_OWN}"
    return (
        f'<script src="{folder}/words.js"></script>'
        f'<script src="{folder}/find.js" data-base="{base}"></script>'
        f'<script src="{folder}/book.js"></script>'
    )


def _words(site: Path) -> str:
    """Return the words of the search as a script, each page by the file it stands in."""
    found = json.loads((site / "search" / "search_index.json").read_text(encoding="utf-8"))
    titles = {row["location"]: _plain(row["title"], "") for row in found["docs"]}
    pages = [
        {
            "location": _file_of(row["location"]),
            "page": titles.get(row["location"].partition("#")[0], ""),
            "title": _plain(row["title"], ""),
            "text": _plain(row["text"], " "),
        }
        for row in found["docs"]
    ]
    return f"window.wordsOfTheBook = {json.dumps(pages, ensure_ascii=False)};\n"


def _plain(words: str, between: str) -> str:
    return html.unescape(_TAGS.sub(between, words))


def _file_of(location: str) -> str:
    """Return the file of a page's address.

    >>> _file_of("r/plum-gin/#method"), _file_of("")
    ('r/plum-gin/index.html#method', 'index.html')
    """
    path, sign, anchor = location.partition("#")
    return f"{path}index.html{sign}{anchor}" if path.endswith("/") or not path else location
