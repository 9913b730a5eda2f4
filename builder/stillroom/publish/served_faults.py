"""While a book is served: a mistake stands at the head of every page, and the pages stay.

MkDocs writes a mistake to its terminal and answers nobody until it is mended. Whoever writes looks
at the page. So the last good site is kept aside, is put back when a build fails, and bears what is
wrong until the next one succeeds. Where there is no good site yet, what is wrong is a page alone.
"""

from __future__ import annotations

import logging
import re
import shutil
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Final

from markupsafe import Markup, escape
from mkdocs.exceptions import MkDocsException
from mkdocs.plugins import get_plugin_logger

from stillroom.core.words.plurals import counted
from stillroom.core.words.problems import ProblemsFound

log = get_plugin_logger(__name__)

_BODY: Final = re.compile(rb"<body\b[^>]*>")
_OURS: Final = "stillroom: "
_STYLE: Final = (
    "padding: 1rem; border-bottom: 2px solid var(--care-rule, #a3391f); "
    "background: var(--care-ground, #fdebd2); color: var(--care-ink, #4a1a0f); "
    "font: 1rem/1.5 var(--text-face, serif)"
)
_FAULTS: Final = Markup(
    '<aside role="alert" style="{}"><p><strong>{}</strong> {}</p><ul>{}</ul></aside>'
)

_ALONE: Final = Markup(
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>To be mended</title>'
    '<meta name="viewport" content="width=device-width"></head><body>{}</body></html>'
)


class ServedFaults:
    """Builds the book again, and shows in the site that is served what kept it from being built."""

    def __init__(
        self,
        build: Callable[[], None],
        site: Path,
        dirty: bool = False,
        check: Callable[[], None] = lambda: None,
    ) -> None:
        """`check` raises ProblemsFound where MkDocs is not to read the settings again."""
        self.build, self.site, self.dirty, self.check = build, site, dirty, check
        self._aside = tempfile.TemporaryDirectory(prefix="stillroom-served-")
        self.good = Path(self._aside.name) / "site"
        self.is_good = True

    def __call__(self) -> None:
        """Build; a mistake of the book's is shown, anything else is raised as ever."""
        if self.is_good:
            self._keep_aside()
        self.is_good = False
        with _heard() as said:
            try:
                self.check()
                self.build()
            except ProblemsFound as found:
                for problem in found.problems:
                    log.error(str(problem))
                self._show([str(problem) for problem in found.problems])
                return
            except (MkDocsException, SystemExit) as wrong:
                self._show(_told(said) or [str(wrong)])
                return
        self.is_good = True

    def begin_with(self, faults: Sequence[str]) -> None:
        """Show what kept the book from being built when it was first served."""
        self.is_good = False
        self._show(faults)

    def _show(self, faults: Sequence[str]) -> None:
        if self.good.is_dir():
            _put(self.good, self.site)
            show_faults(self.site, faults)
        else:
            show_alone(self.site, faults)

    def _keep_aside(self) -> None:
        """Lay the good site aside: moved, which costs nothing, as a build makes every page anew.

        Nobody sees that it is gone: MkDocs answers when it has built. A dirty build goes on from
        the pages that are there.
        """
        if self.dirty:
            _put(self.site, self.good)
            return
        shutil.rmtree(self.good, ignore_errors=True)
        shutil.move(self.site, self.good)
        self.site.mkdir()


def show_alone(site: Path, faults: Sequence[str]) -> None:
    """Write what is wrong as the only page of a site that could not be built at all."""
    site.mkdir(parents=True, exist_ok=True)
    shown = _shown(faults, "There are no pages yet: they come as soon as it is mended.")
    for name in ("index.html", "404.html"):
        (site / name).write_text(str(_ALONE.format(shown)), encoding="utf-8")


def _shown(faults: Sequence[str], then: str) -> Markup:
    count = f"{counted(len(faults), 'thing')} to mend."
    lines = Markup("").join(Markup("<li>{}</li>").format(escape(one)) for one in faults)
    return _FAULTS.format(_STYLE, count, then, lines)


def show_faults(site: Path, faults: Sequence[str]) -> None:
    """Write what is wrong at the head of every page of a site."""
    shown = str(_shown(faults, "The pages are as they were.")).encode()
    for page in site.rglob("*.html"):
        html = page.read_bytes()
        if found := _BODY.search(html):
            page.write_bytes(html[: found.end()] + shown + html[found.end() :])


def _put(kept: Path, place: Path) -> None:
    shutil.rmtree(place, ignore_errors=True)
    shutil.copytree(kept, place)


class _Ear(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[logging.LogRecord] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(record)


@contextmanager
def _heard() -> Iterator[list[logging.LogRecord]]:
    """Gather what MkDocs and its plugins warn of."""
    ear = _Ear()
    log = logging.getLogger("mkdocs")
    log.addHandler(ear)
    try:
        yield ear.said
    finally:
        log.removeHandler(ear)


def _told(said: list[logging.LogRecord]) -> list[str]:
    """Return what kept the book from being built: our own words where there are any."""
    errors = [one.getMessage() for one in said if one.levelno >= logging.ERROR]
    lines = errors or [one.getMessage() for one in said]
    ours = [line.removeprefix(_OURS) for line in lines if line.startswith(_OURS)]
    return list(dict.fromkeys(ours or lines))
