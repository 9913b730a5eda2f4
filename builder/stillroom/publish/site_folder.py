"""The site as it is being built: aside, until it is whole, and then in the old one's place.

Leaves out what is in it. A build that fails or is ended leaves the old site as it was.
"""

from __future__ import annotations

import os
import shutil
from dataclasses import dataclass
from pathlib import Path

from stillroom.saving.whole import begin_folder, give_up, put_in_place, told


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
