"""Lists the licence of all that Stillroom runs on or hands out: packages and faces.

`python tests/list_licences.py --write` writes the list; test_house_rules.py looks that it names
every package. Versions are left out: the list is of names and terms.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, distribution, metadata
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
LIST = ROOT / "builder" / "LICENCES.md"
EXTRAS = ("paper", "giving", "pictures", "desk")
FACES = (
    ("Alegreya Sans (a subset)", "SIL Open Font License 1.1; OFL-AlegreyaSans.txt beside it"),
    ("EB Garamond (a subset)", "SIL Open Font License 1.1; OFL-EBGaramond.txt beside it"),
)
HEAD = """# Licences

What Stillroom runs on, and what it hands out. Made by `python tests/list_licences.py --write`; by
hand only its script is changed. Stillroom's own licence is in LICENSE.

"""


def needed(extras: tuple[str, ...] = EXTRAS) -> set[str]:
    """Return every package that the book, paper and the pack need, whatever needs it."""
    waiting = [("stillroom", frozenset(extras))]
    seen: set[str] = set()
    while waiting:
        name, extras = waiting.pop()
        try:
            lines = distribution(name).requires or []
        except PackageNotFoundError:
            continue  # asked for by another system or an older Python only
        for line in lines:
            one, _, when = line.partition(";")
            wanted = re.search(r"extra\s*==\s*['\"]([\w-]+)['\"]", when)
            if wanted and wanted[1] not in extras:
                continue
            found = re.match(r"[\w.-]+", one)
            own = re.search(r"\[([\w, -]+)\]", one)
            assert found, line
            plain = re.sub(r"[-_.]+", "-", found[0]).lower()
            if plain not in seen and plain != "stillroom":
                seen.add(plain)
                waiting.append((plain, frozenset(own[1].split(",") if own else ())))
    return {name for name in seen if _is_there(name)}


def _is_there(name: str) -> bool:
    try:
        distribution(name)
    except PackageNotFoundError:
        return False
    return True


def terms_of(name: str) -> str:
    """Return a package's terms as it states them: an SPDX expression, its words, or its classes."""
    said = metadata(name)
    classes = [
        line.rpartition("::")[2].strip()
        for line in said.get_all("Classifier") or []
        if line.startswith("License ::") and not line.endswith("OSI Approved")
    ]
    written = (said.get("License") or "").strip().split("\n")[0]
    short = written if 0 < len(written) <= 60 and written.upper() != "UNKNOWN" else ""
    stated = said.get("License-Expression") or short or ", ".join(classes)
    return stated or _head_of_its_file(name) or "see its own files"


def _head_of_its_file(name: str) -> str:
    """Return the first line of the licence that lies in a package, "" where there is none."""
    for path in distribution(name).files or ():
        if path.name.upper().startswith(("LICENSE", "LICENCE", "COPYING")):
            lines = Path(str(path.locate())).read_text(encoding="utf-8").split("\n")
            return next((line.strip() for line in lines if line.strip()), "")
    return ""


def rows() -> Iterator[str]:
    """Yield the lines of the two tables."""
    yield "| package | licence |"
    yield "| --- | --- |"
    yield from (f"| {name} | {terms_of(name)} |" for name in sorted(needed()))
    yield ""
    yield "| what the checks alone need | licence |"
    yield "| --- | --- |"
    tools = needed((*EXTRAS, "test")) - needed()
    yield from (f"| {name} | {terms_of(name)} |" for name in sorted(tools))
    yield ""
    yield "| face | licence |"
    yield "| --- | --- |"
    yield from (f"| {name} | {terms} |" for name, terms in FACES)


if __name__ == "__main__":
    made = HEAD + "\n".join(rows()) + "\n"
    if "--write" in sys.argv:
        LIST.write_text(made, encoding="utf-8")
    else:
        sys.stdout.write(made)
