"""While a book is served, what did not change is linked from the site aside, and nothing is stale.

Each edit's site is held against a build from nothing; no file may change in the site aside.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from publish.test_kept_work import NAMES, NOON, write_book
from stillroom.publish.served_links import link_same

Files = dict[str, bytes]


class Server:
    """What the book asks of MkDocs' own server."""

    _inject_js_into_html = None

    def __init__(self, builder: Any) -> None:
        self.builder = builder

    def watch(self, place: str) -> None:
        """Watch nothing: each change is told."""


def files_of(site: Path) -> Files:
    files = (path for path in sorted(site.rglob("*")) if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}


def test_what_did_not_change_is_linked_and_the_rest_is_new(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("STILLROOM_CACHE", "off")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", str(NOON))
    book, site, anew = (tmp_path / name for name in ("book", "site", "anew"))
    write_book(book)

    def build_in(place: Path, command: str) -> Any:
        config = load_config(str(book / "mkdocs.yml"), site_dir=str(place))
        config.plugins.on_startup(command=command, dirty=False)
        build(config)
        return config

    config = build_in(site, "serve")
    server = Server(lambda: build_in(site, "serve"))
    config.plugins.on_serve(server, config=config, builder=None)
    recipe = book / "recipes" / f"{NAMES[0]}.md"
    first, good = recipe.read_text(encoding="utf-8"), server.builder.good
    # the third cannot be built, and what was aside before it is put back
    edits = (
        f"{first}\nOne line more.\n",
        f"{first}\nAnother line.\n",
        "---\ntitel: a\n---\n",
        first,
    )
    for said in edits:
        recipe.write_text(said, encoding="utf-8")
        before = files_of(site)
        server.builder()
        if "titel" in said:
            assert b"to mend" in (site / "index.html").read_bytes()
            continue
        now = files_of(site)
        assert files_of(good) == before or b"to mend" in before["index.html"]
        linked = {
            name for name in now if (good / name).is_file() and (site / name).samefile(good / name)
        }
        assert {f"r/{name}/index.html" for name in NAMES[1:]} < linked
        assert f"r/{NAMES[1]}/{NAMES[1]}.ics" in linked
        assert f"r/{NAMES[0]}/index.html" not in linked
        for name in anew.rglob("*.html"):
            name.unlink()
        build_in(anew, "serve")
        assert [name for name, data in files_of(anew).items() if now[name] != data] == []
    server.builder._aside.cleanup()


def test_only_the_same_bytes_are_linked(tmp_path: Path) -> None:
    kept, place = tmp_path / "kept", tmp_path / "new" / "place"
    assert not link_same(b"1", kept, place)  # there is none
    kept.write_bytes(b"1")
    assert not link_same(b"2", kept, place)
    assert not place.exists()
    assert link_same(b"1", kept, place)
    assert place.samefile(kept)
    assert not link_same(b"1", kept, place)  # it stands there already
