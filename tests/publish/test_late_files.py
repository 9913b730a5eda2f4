"""A file that lies packed until it is written is written as MkDocs would have written it."""

from pathlib import Path

import pytest
from mkdocs.config import load_config
from mkdocs.structure.files import File

from stillroom.publish.book_files import MadeFile
from stillroom.publish.late_files import LateFile, file_of


@pytest.fixture
def config(tmp_path: Path) -> object:
    (tmp_path / "docs").mkdir()
    (tmp_path / "mkdocs.yml").write_text("site_name: A book\n", encoding="utf-8")
    loaded = load_config(str(tmp_path / "mkdocs.yml"))
    loaded.plugins._current_plugin = "stillroom"
    return loaded


@pytest.mark.parametrize("content", ["", "Zwölf Quitten\r\n½ l\n", "BEGIN:VCALENDAR\r\n" * 400])
def test_a_text_is_written_as_it_is(config: object, content: str) -> None:
    late = file_of(MadeFile("r/a/a.ics", content=content), config)  # type: ignore[arg-type]
    plain = File.generated(config, "r/b/b.ics", content=content)  # type: ignore[arg-type]
    for file in (late, plain):
        file.copy_file()
    assert isinstance(late, LateFile)
    assert Path(late.abs_dest_path).read_bytes() == Path(plain.abs_dest_path).read_bytes()
    assert (late.content_string, late.is_modified()) == (content, True)


def test_what_another_plugin_writes_into_it_stays(config: object) -> None:
    late = file_of(MadeFile("r/a/a.ics", content="1"), config)  # type: ignore[arg-type]
    late.content_bytes = b"\xff\x00"
    assert late.content_bytes == b"\xff\x00"
    late.content_string = "zwölf"
    assert late.content_bytes == "zwölf".encode()


def test_a_file_of_a_folder_is_copied(config: object, tmp_path: Path) -> None:
    (tmp_path / "a.css").write_bytes(b"p {}")
    file = file_of(MadeFile("a.css", path=tmp_path / "a.css"), config)  # type: ignore[arg-type]
    file.copy_file()
    assert Path(file.abs_dest_path).read_bytes() == b"p {}"
