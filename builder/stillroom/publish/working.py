"""One recipe worked out: its page and all that the book says of it, from its file alone.

A pure function of the file, the book's settings and larder, its pictures and the day, so that it
can be done in another process (workers.py) and kept for the next time (keeping_work.py). Addresses
of other pages are left open until MkDocs says where they stand.
"""

from __future__ import annotations

import hashlib
import json
import pickle
import re
import zlib
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import Any, Final

from markupsafe import escape

from stillroom.core.checking import check_recipe
from stillroom.core.larder.shelves import Larder
from stillroom.core.method.spoken import larder_spoken
from stillroom.core.reading.loading import Head, head_of, read_recipe, short_name
from stillroom.core.reading.recipe_file import the_one
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import ProblemsFound
from stillroom.core.words.text_files import is_file_at, read_text
from stillroom.looks.photographs import open_pillow
from stillroom.publish.known_by_name import pack_known
from stillroom.publish.library import Library, Link, picture_name
from stillroom.publish.listed import Listed, list_recipe
from stillroom.publish.print_room import MOST_ON_PAGE, make_card_file
from stillroom.publish.recipe_page import RecipeLeaf
from stillroom.publish.searching import Found, find_words
from stillroom.publish.set_aside import Aside, Packed, take
from stillroom.publish.when_page import make_recipe_calendar
from stillroom.publish.whole_words import when_of, words_of

_OPEN: Final = re.compile("\ue000([^\ue000\ue001]*)\ue001")
"""An address left open; no keyboard types these signs."""


_PACKED: Final = ("body", "whole", "whole_when", "calendar", "card_file", "searched")
"""Parts of what a recipe came to that lie packed already."""


@dataclass
class Worked:
    """What one recipe's file came to; nothing of it is changed, but what was used is let go.

    `body` is the page's HTML, packed: a book of a thousand pages is built with all of them at hand;
    `whole` and `whole_when` are what the page of the whole book shows of it. Its calendar, and
    what the search finds on its page, are asked for once and lie packed until then; so does the
    card of a long book, which its print room fetches (b"" in another).
    `looked_at` are the pictures it looked for, each with the sum of its bytes or "" where it was
    not there.
    """

    recipe: Recipe
    shared: Head
    head: Mapping[str, Any]
    body: Packed
    whole: Packed
    whole_when: Packed
    calendar: Packed
    card_file: Packed
    searched: Packed
    listed: Listed
    looked_at: tuple[tuple[str, str], ...]

    def still_holds(self, library: Library) -> bool:
        """Say whether the pictures are what they were."""
        return self.looked_at == look_at_pictures(library, self.recipe)

    def lay_aside(self, aside: Aside) -> None:
        """Lay what is packed on the disk until it is asked for."""
        for name in _PACKED:
            setattr(self, name, aside.lay(getattr(self, name)))

    def let_go(self) -> None:
        """Let go of what its page was made of, once that is written and nobody serves it."""
        self.body, self.searched, self.head = b"", b"", {}

    def found_words(self) -> tuple[Found, ...]:
        """Return what the search finds on its page."""
        return tuple(json.loads(zlib.decompress(take(self.searched))))

    def in_whole(self, link: Link) -> tuple[str, str]:
        """Return what the page of the whole book shows of it: its words, and when in words."""
        return _unpack(self.whole, link), _unpack(self.whole_when, link)

    def packed(self) -> bytes:
        """Return it as it is kept and sent from process to process: without the book's larder."""
        recipe = self.recipe.model_copy(update={"larder": None})
        words = (take(getattr(self, name)) for name in _PACKED)
        bare: dict[str, Any] = dict.fromkeys(_PACKED, b"")
        alone = replace(self, recipe=recipe, **bare)
        rest = zlib.compress(pack_known(alone), level=1)
        return pickle.dumps((rest, *words), protocol=5)


def unpack(packed: bytes, larder: Larder) -> Worked | None:
    """Return what was packed, with the book's larder; None where it is something else."""
    rest, *words = pickle.loads(packed)
    worked = pickle.loads(zlib.decompress(rest))
    if not isinstance(worked, Worked):
        return None
    spoken = larder_spoken(worked.recipe, larder)
    recipe = the_one(worked.recipe.model_copy(update={"larder": spoken}))
    return replace(worked, recipe=recipe, **dict(zip(_PACKED, words, strict=True)))


def work_out(path: Path, library: Library, larder: Larder) -> Worked | None:
    """Return all that a recipe's file comes to, or None where anything is wrong with it."""
    book, said = library.book, library.settings
    name = short_name(path, book.root)
    try:
        text = read_text(path, name)
        recipe = read_recipe(text, name, path.stem, said.units, larder, said.language)
        shared = head_of(text, name, path.stem)
    except ProblemsFound:
        return None
    wrong = check_recipe(recipe, path, said, (book.pictures_dir,))
    if next(iter(wrong), None) is not None:
        return None
    listed = list_recipe(recipe, library)
    is_long = library.files_counted > MOST_ON_PAGE
    leaf = RecipeLeaf(recipe, listed.card)
    body = leaf.body(library, "", _left_open, "")
    return Worked(
        recipe=recipe,
        shared=shared,
        head=leaf.head(library, ""),
        body=_pack(body),
        whole=_pack(words_of(body, recipe.slug)),
        whole_when=_pack(when_of(body)),
        calendar=_pack(make_recipe_calendar(library, recipe)),
        card_file=_pack(make_card_file(listed.card, recipe, library)) if is_long else b"",
        searched=_pack(json.dumps(find_words(body, recipe.title))),
        listed=listed,
        looked_at=look_at_pictures(library, recipe),
    )


def look_at_pictures(library: Library, recipe: Recipe) -> tuple[tuple[str, str], ...]:
    """Return the pictures that a recipe's page shows, each with what tells it from another."""
    name = picture_name(recipe)
    folder = library.book.pictures_dir
    preview = f"previews/{Path(name).stem}.png"
    kept = f"{is_file_at(folder / preview)}, {open_pillow() is not None}"
    return ((name, _sum_of(folder / name)), (preview, kept))


def _sum_of(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest() if is_file_at(path) else ""


def _left_open(uri: str) -> str:
    return f"\ue000{uri}\ue001"


def _pack(html: str) -> bytes:
    return zlib.compress(html.encode(), level=1)


def _unpack(packed: Packed, link: Link) -> str:
    """Return HTML with its addresses filled in."""
    html = zlib.decompress(take(packed)).decode()
    return _OPEN.sub(lambda found: str(escape(link(found[1]))), html)


@dataclass(frozen=True)
class WorkedLeaf:
    """The page of a recipe that was worked out, at r/<slug>/."""

    worked: Worked
    in_nav: bool = False

    @cached_property
    def src_uri(self) -> str:
        """The Markdown file that this page stands for."""
        return f"r/{self.worked.recipe.slug}.md"

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return title, description and structured data."""
        return self.worked.head

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the whole page below its header, its addresses filled in."""
        return _unpack(self.worked.body, link)
