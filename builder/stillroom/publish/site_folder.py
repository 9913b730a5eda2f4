"""The site as it is being built: aside, until it is whole, and then in the old one's place.

Leaves out what is in it. A build that fails or is ended leaves the old site as it was.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.words.problems import Problem
from stillroom.saving.whole import begin_folder, give_up, put_in_place, told

_A_SITE_HAS: Final = ("index.html", "404.html", "sitemap.xml")
_NAME_ANOTHER: Final = 'Name a folder that holds nothing of yours: "site_dir: site".'


def find_taken(book: Book) -> Iterator[Problem]:
    """Find what a build would take away: a site takes the place of all that lies in its folder.

    Only an earlier site gives way; what is hidden (`.git`) stays in any case.
    """
    site = Path(os.path.realpath(book.site_dir))
    if site.exists() and not site.is_dir():
        what = "A file stands where the site would go, and would be taken away."
        yield Problem(str(book.site_dir), 0, what, _NAME_ANOTHER)
        return
    own = {"the recipes": book.recipes_dir, "the pictures": book.pictures_dir}
    for name, folder in own.items():
        inner = Path(os.path.realpath(folder))
        if site == inner or site in inner.parents:
            what = f"The site would stand where {name} lie ({folder.name})."
            yield Problem(str(book.site_dir), 0, what, _NAME_ANOTHER)
            return
    try:
        there = {path.name for path in site.iterdir() if not path.name.startswith(".")}
    except OSError:
        return  # there is none yet, or it is told where it is begun
    if there and there.isdisjoint(_A_SITE_HAS):
        what = "This folder holds something other than a site, which the site would take away."
        yield Problem(str(book.site_dir), 0, what, _NAME_ANOTHER)


@dataclass(frozen=True)
class SiteInTheMaking:
    """A new site at `new`, which is to stand at `place`."""

    place: Path
    new: Path

    @classmethod
    def begin(cls, place: Path) -> SiteInTheMaking:
        """Return an empty site aside; raises ProblemsFound where none may be written."""
        real = Path(os.path.realpath(place))
        return cls(real, begin_folder(real))

    def finish(self) -> None:
        """Put the new site in place; raises ProblemsFound, and then the old one still stands.

        Hidden files of the old one (`.git`, `.nojekyll`) are no page's: they stay.
        """
        with told(self.place):
            for path in sorted(self.place.glob(".*")):
                there = self.new / path.name
                if path.is_dir() and not path.is_symlink():
                    shutil.copytree(path, there, symlinks=True, dirs_exist_ok=True)
                elif not there.exists():
                    shutil.copy2(path, there, follow_symlinks=False)
            put_in_place(self.new, self.place)

    def give_up(self) -> None:
        """Clear the new site away."""
        give_up(self.new)
