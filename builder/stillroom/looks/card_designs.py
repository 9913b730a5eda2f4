"""The designs of cards and tags: each a folder with its inks, faces, drawings and a few numbers.

Page and paper read the same folders: those of Stillroom, and a book's own in `designs/` beside its
mkdocs.yml. A design is checked when it is read. Leaves out how it is set (printing/, publish/).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Annotated, Any, Final, Literal

import yaml
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from stillroom.core.book import Book
from stillroom.core.paper.contrast import LEAST, contrasts
from stillroom.core.recipe.settings import place_of
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.looks import LOOKS

DESIGNS: Final = LOOKS / "designs"
OWN: Final = "designs"
"""The folder beside a book's settings in which its own designs lie."""
FILE: Final = "design.yml"
USUAL: Final = "plain"
_NAME: Final = re.compile(r"[a-z][a-z0-9-]{0,39}")
_REACHES_OUT: Final = re.compile(
    rb"<script|<foreignObject|<image|href\s*=\s*[\"'](?!#)|url\(\s*[\"']?(?!#)", re.I
)
Colour = Annotated[str, Field(pattern=r"^#[0-9a-fA-F]{6}$")]
_MM = Field(ge=0, le=40)


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Inks(_Part):
    """What is printed in which colour: words, small words, headings, lines."""

    ink: Colour
    soft: Colour
    accent: Colour
    line: Colour


class Faces(_Part):
    """Which of the book's two faces the title and text, and the facts, are set in."""

    text: Literal["serif", "plain"] = "serif"
    facts: Literal["serif", "plain"] = "serif"


class Title(_Part):
    """How a title is set; `size` is a share of the usual one."""

    style: Literal["normal", "italic"] = "normal"
    weight: Literal["regular", "semibold"] = "regular"
    capitals: bool = False
    size: Annotated[float, Field(ge=0.8, le=1.3)] = 1.0


class Picture(_Part):
    """Where the drawing goes: mm wide beside the words, mm high at least alone on a front.

    With `alone` a front is nothing else but title and names, where the back holds the rest and the
    picture stands so many mm high. `ground` is the tint of the plate it stands on, `tag` its
    breadth in mm beside the words of a tag; 0 leaves it out.
    """

    column: Annotated[float, Field(ge=12, le=30)] = 19.0
    least: Annotated[float, Field(ge=10, le=40)] = 16.0
    framed: bool = False
    alone: Annotated[float, Field(ge=0, le=45)] = 0.0
    ground: Annotated[str, Field(pattern=r"^(#[0-9a-fA-F]{6})?$")] = ""
    tag: Annotated[float, Field(ge=0, le=30)] = 0.0


class Border(_Part):
    """A square drawing cut into corners and sides, so many of its units from its edges.

    `across` is the border's breadth on paper, `edge` what is left outside it, `room` inside; mm.
    """

    file: Annotated[str, Field(pattern=r"^[a-z0-9-]+\.svg$")]
    corner: Annotated[float, Field(gt=0)]
    across: Annotated[float, Field(ge=1, le=15)]
    edge: Annotated[float, _MM] = 2.0
    room: Annotated[float, _MM] = 2.0


class Design(_Part):
    """One design as its folder says it; `slug` is the folder's name, `border_svg` its drawing."""

    name: Annotated[str, Field(min_length=1, max_length=40)]
    about: Annotated[str, Field(min_length=1, max_length=160)]
    order: int = 100
    paper: Colour
    inks: Inks
    one_ink: bool = False
    large: bool = False
    faces: Faces = Faces()
    title: Title = Title()
    sides: Literal["one", "two"] = "one"
    picture: Picture = Picture()
    border: Border | None = None
    slug: str = ""
    border_svg: str = ""

    def for_tags(self) -> Design:
        """Return the same design with its border as a tag has it: narrower, nearer to the edge."""
        if self.border is None:
            return self
        slim = {"across": self.border.across * 0.62, "edge": 1.6, "room": 1.0}
        return self.model_copy(update={"border": self.border.model_copy(update=slim)})

    @property
    def edge_mm(self) -> float:
        """What a border takes from each edge of a front, its room inside with it."""
        return self.border.edge + self.border.across + self.border.room if self.border else 0.0

    def made_large(self) -> Design:
        """Return the same design for old eyes: black on white, nothing under 12 points."""
        black = Inks(ink="#000000", soft="#000000", accent="#000000", line="#000000")
        picture = self.picture.model_copy(update={"alone": 0.0, "ground": "", "tag": 0.0})
        changed = {"large": True, "inks": black, "paper": "#ffffff", "picture": picture}
        return self.model_copy(update=changed)


@dataclass(frozen=True)
class Step:
    """One step of type: its name, and its sizes in points and em."""

    name: str
    text: float
    plain: float
    title: float
    leading: float
    gap: float


@cache
def type_steps() -> Mapping[str, tuple[Step, ...]]:
    """Return the steps of type by what they are for."""
    written = yaml.safe_load((DESIGNS / "type.yml").read_text(encoding="utf-8"))
    return {
        use: tuple(Step(name, *figures) for name, figures in steps.items())
        for use, steps in written.items()
    }


def steps_of(design: Design, thing: Literal["card", "folded", "tag"]) -> tuple[Step, ...]:
    """Return the steps of type that are tried, the largest first."""
    steps = type_steps()
    if thing == "folded" and design.large:
        return steps["large folded"]
    if thing == "folded":
        return (*steps["folded"], *steps["card"])
    return steps[f"large {thing}" if design.large else thing]


def designs_of(book: Book | None = None) -> Mapping[str, Design]:
    """Return every design by the name of its folder, a book's own after Stillroom's.

    Raises Unreadable for the first that is not right.
    """
    folders = [DESIGNS, *([book.root / OWN] if book else [])]
    found = [
        read_design(folder)
        for place in folders
        if place.is_dir()
        for folder in sorted(place.iterdir())
        if (folder / FILE).is_file()
    ]
    ordered = sorted(found, key=lambda one: (one.order, one.slug))
    return {design.slug: design for design in ordered}


def choose_design(name: str, book: Book | None = None) -> Design:
    """Return the design of that name; raises Unreadable with the names there are."""
    designs = designs_of(book)
    if name in designs:
        return designs[name]
    there = ", ".join(f'"{one}"' for one in designs)
    close = nearest(name, designs, 0.6)
    meant = f'Write "{close}". ' if close else ""
    raise Unreadable(f'There is no design "{name}".', f"{meant}There are {there}.")


def design_of(book: Book) -> Design:
    """Return the design a book's cards have unless another is asked for.

    Raises ProblemsFound at the line of the setting for one that is not there.
    """
    try:
        return choose_design(book.settings.design, book)
    except Unreadable as wrong:
        place = place_of(("design",), book.places, book.config.name)
        raise ProblemsFound([Problem(*place, wrong.what, wrong.mend)]) from None


def read_design(folder: Path) -> Design:
    """Read one design and check it; raises Unreadable naming its file and what is wrong."""
    file = folder / FILE
    changed = max((path.stat().st_mtime_ns for path in folder.iterdir()), default=0)
    try:
        return _read(folder, changed)
    except ValidationError as error:
        first = error.errors()[0]
        where = " ".join(str(part) for part in first["loc"]) or "the whole"
        raise Unreadable(
            f'{folder.name}/{file.name}: "{where}" is not right: {_say(first)}.',
            f'Compare "{USUAL}/{FILE}" among the designs of Stillroom.',
        ) from None


def _say(error: Any) -> str:
    if error["type"] == "missing":
        return "it is missing"
    if error["type"] == "extra_forbidden":
        return "a design says nothing of that name"
    return f'it says "{str(error["input"])[:40]}"'


@lru_cache(maxsize=64)
def _read(folder: Path, changed_ns: int) -> Design:
    place = f"{folder.name}/{FILE}"
    if not _NAME.fullmatch(folder.name):
        raise Unreadable(
            f'"{folder.name}" is no name for the folder of a design.',
            'Write small letters, figures and hyphens: "summer-fair".',
        )
    try:
        written = yaml.safe_load((folder / FILE).read_text(encoding="utf-8"))
    except (yaml.YAMLError, UnicodeDecodeError) as error:
        line = getattr(getattr(error, "problem_mark", None), "line", 0) + 1
        raise Unreadable(
            f"{place}:{line}: this cannot be read.", "Write it as the others."
        ) from None
    if not isinstance(written, dict) or {"slug", "border_svg"} & set(written):
        raise Unreadable(f"{place}: this is no design.", "Write it as the others.")
    design = Design.model_validate(written)
    _refuse_pale(design, place)
    return design.model_copy(
        update={"slug": folder.name, "border_svg": _border(design, folder, place)}
    )


def _refuse_pale(design: Design, place: str) -> None:
    """Raise Unreadable for the first ink that is hard to read somewhere it may be printed."""
    for name in ("ink", "soft", "accent"):
        ink = getattr(design.inks, name)
        for where, found in contrasts(ink, design.paper).items():
            if found < LEAST:
                raise Unreadable(
                    f'{place}: the ink "{name}" {ink} is too pale {where}: {found:.1f} to 1.',
                    f"Take a darker one, of {LEAST} to 1 at least.",
                )


def _border(design: Design, folder: Path, place: str) -> str:
    if design.border is None:
        return ""
    path = folder / design.border.file
    if not path.is_file():
        raise Unreadable(f'{place}: there is no "{path.name}" beside it.', "Put the drawing there.")
    data = path.read_bytes()
    side = border_side(data.decode("utf-8", "replace"))
    if not side or not 0 < design.border.corner < side / 2:
        raise Unreadable(
            f'{place}: "{path.name}" is not a square that can be cut at {design.border.corner:g}.',
            'Write viewBox="0 0 72 72" in it, and a corner of less than half of that.',
        )
    if _REACHES_OUT.search(data):
        raise Unreadable(
            f'{place}: "{path.name}" holds more than lines and shapes.', "Take out what it fetches."
        )
    return data.decode("utf-8")


def border_side(svg: str) -> float:
    """Return the side of a square drawing in its own units; 0 for what is none.

    >>> border_side('<svg viewBox="0 0 72 72"/>')
    72.0
    """
    found = re.search(r'<svg[^>]*viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    return float(found[1]) if found and found[1] == found[2] else 0.0
