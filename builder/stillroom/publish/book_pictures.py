"""The book's pictures as they are published: clean, and cut for those who show a link to a page.

Leaves out what a picture is in a page: pictures.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import get_plugin_logger
from mkdocs.structure.files import File, Files

from stillroom.core.words.problems import Problem, Unreadable
from stillroom.looks.link_previews import cut_preview
from stillroom.looks.photographs import PHOTOGRAPHS, UNCLEAN, open_pillow, published
from stillroom.publish.library import Library, picture_name
from stillroom.publish.shown_pictures import find_unshown

log = get_plugin_logger(__name__)


def publish_pictures(files: Files, config: MkDocsConfig, library: Library) -> Iterator[Problem]:
    """Publish the pictures that something shows, clean, and the pieces cut for previews of links.

    A photograph that was taken in and gave way to another is shown by nothing, and stays out.
    """
    known = {picture_name(recipe) for recipe in library.recipes}
    for path in find_unshown(library.book, known):
        file = files.get_file_from_path(path.relative_to(library.book.docs_dir).as_posix())
        if file is not None:
            files.remove(file)
            log.info(f"{file.src_uri} is left out: nothing in the book shows it.")
    yield from _clean(files, config)
    yield from _cut_previews(files, config, library)


def _clean(files: Files, config: MkDocsConfig) -> Iterator[Problem]:
    """Take from every picture what its camera added; what cannot be cleaned stays out."""
    for file in tuple(files):
        path = Path(file.abs_src_path or "")
        ending = path.suffix.lower()
        if Path(config.docs_dir) not in path.parents:  # the theme's own
            continue
        if ending in UNCLEAN:
            files.remove(file)
            log.info(f"{file.src_uri} is left out: it could say where it was made.")
        elif ending == ".svg" or ending in PHOTOGRAPHS:
            try:
                clean = published(path)
            except Unreadable as found:
                yield Problem(file.src_uri, 1, found.what, found.mend)
                continue
            files.remove(file)
            files.append(File.generated(config, file.src_uri, content=clean))


def _cut_previews(files: Files, config: MkDocsConfig, library: Library) -> Iterator[Problem]:
    """Publish of each recipe's photograph the piece that is shown with a link to its page."""
    for recipe in library.recipes:
        path = library.photograph_of(recipe)
        if path is None or open_pillow() is None:
            continue
        try:
            piece = cut_preview(path, recipe.picture_focus)
        except Unreadable as found:
            yield Problem(path.name, 1, found.what, found.mend)
            continue
        files.append(File.generated(config, library.preview_of(recipe), content=piece))
