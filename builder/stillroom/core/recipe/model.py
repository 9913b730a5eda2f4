"""The model of a recipe: its front matter, read and frozen, and its body.

`FrontMatter` holds the keys a cook may write; the JSON Schema that editors use is made from it.
`Recipe` adds the file, the words of the body and the line of every key. Leaves out files:
loading.py reads them.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ValidationInfo,
    WithJsonSchema,
    model_validator,
)

from stillroom.core.amounts.quantities import Amount, parse_amount
from stillroom.core.amounts.units import System, size_of, system_said
from stillroom.core.larder.shelves import Larder, common_larder
from stillroom.core.lines.ingredient import Ingredient, read_ingredient
from stillroom.core.recipe.holders import (
    Container,
    Vessel,
    container_made,
    read_container,
    read_makes,
    read_vessel,
)
from stillroom.core.recipe.keeps import Keeping, read_keeping
from stillroom.core.recipe.kinds import Kind, all_kinds, find_kind
from stillroom.core.recipe.making import Makes
from stillroom.core.recipe.months import months_listed, read_month
from stillroom.core.recipe.plain_facts import read_date, read_ph, read_title
from stillroom.core.recipe.read_by import ReadBy, as_written, read_by, system_of
from stillroom.core.recipe.summed import Summed
from stillroom.core.when.spans import Span
from stillroom.core.when.stages import (
    Stage,
    is_stage_word,
    parse_stage,
    stages_of_kind,
    without_colon,
)
from stillroom.core.words.day_words import MONTH_NAMES
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable, say_written


@dataclass(frozen=True)
class InGroup:
    """An ingredient as written, under a heading of the list."""

    written: Any
    group: str


def read_any_ingredient(value: Any, system: System, language: str = "en_GB") -> Ingredient:
    """Read an ingredient as written, whether it stands under a heading or not."""
    if not isinstance(value, InGroup):
        return read_ingredient(value, system, language)
    ingredient = read_ingredient(value.written, system, language)
    return replace(ingredient, group=ingredient.group or value.group)


def _read_stage(value: Any) -> Stage:
    if isinstance(value, str) and is_stage_word(value):
        return parse_stage(value, "")
    if isinstance(value, str) and (meant := without_colon(value)):
        raise Unreadable(f'"{value}" wants a colon after its first word.', f'Write "- {meant}".')
    if not isinstance(value, dict) or len(value) != 1:
        raise Unreadable(
            f"{say_written(value)} is not a stage.",
            'Write one stage a line, such as "- rest: 4 weeks".',
        )
    word, text = next(iter(value.items()))
    return parse_stage(str(word), "" if text is None else str(text))


# names that Windows keeps for its devices, whatever their ending; and the page of a folder itself
TAKEN_NAME = late_regex(r"con|prn|aux|nul|(?:com|lpt)[0-9]|index")
LONGEST_NAME = 80


def _read_earlier_name(value: Any) -> str:
    """Read an earlier file name; it becomes an address, so it may lead nowhere else."""
    name = str(value).strip().removesuffix(".md")
    fits = re.fullmatch(r"[a-z0-9]+(?:-[a-z0-9]+)*", name) and len(name) <= LONGEST_NAME
    if not fits or TAKEN_NAME.fullmatch(name):
        mend = 'Write the old file\'s name without its ending: "damson-gin".'
        raise Unreadable(f"{say_written(value)} is not an earlier name of the file.", mend)
    return name


def _read_focus(value: Any) -> str:
    """Read the point of a picture that is kept when it is cut, from left and from top."""
    found = re.fullmatch(r"\s*(\d{1,3})\s*%[\s,]+(\d{1,3})\s*%\s*", str(value))
    if not found or int(found[1]) > 100 or int(found[2]) > 100:
        mend = 'Write how far from the left and from the top it lies: "30% 60%".'
        raise Unreadable(f"{say_written(value)} is no point of a picture.", mend)
    return f"{int(found[1])}% {int(found[2])}%"


def _as_list(value: Any) -> Any:
    return value if isinstance(value, list) else [value]


def _as_text(value: Any) -> Any:
    if isinstance(value, dict) and len(value) == 1:  # "Note: the stones are sharp"
        word, rest = next(iter(value.items()))
        return f"{word}: {rest}" if isinstance(rest, str) else value
    return str(value) if isinstance(value, int | float) else value


def _read_net(value: Any, info: ValidationInfo) -> str:
    """Read a net quantity: a weight or a volume, as it will stand on the card."""
    text = str(value).strip()
    amount = parse_amount(text, system_of(info))
    if not isinstance(amount, Amount) or size_of(amount.unit) not in ("mass", "volume"):
        mend = 'Write what one jar or bottle holds: "net: 200 g" or "net: 100 ml".'
        raise Unreadable(f'"{text}" is no weight and no volume.', mend)
    return text


Text = Annotated[str, BeforeValidator(_as_text), Field(min_length=1)]
_LINE = {"type": "string", "minLength": 1}
_MONTH = {"anyOf": [{"enum": list(MONTH_NAMES)}, _LINE]}
_LINE_OR_MAPPING = {"anyOf": [_LINE, {"type": "object"}]}
AnIngredient = Annotated[
    Ingredient, as_written(read_any_ingredient), WithJsonSchema(_LINE_OR_MAPPING)
]
AStage = Annotated[
    Stage,
    read_by(_read_stage),
    WithJsonSchema({"type": "object", "minProperties": 1, "maxProperties": 1}),
]


class _Frozen(BaseModel):
    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        arbitrary_types_allowed=True,
        populate_by_name=True,
        defer_build=True,  # only a whole recipe is ever checked: what it is made of waits
    )


class Card(_Frozen):
    """The maker's own words on the usage card; what is absent comes from the kind.

    `net` is the net quantity to be printed on it; without it the card names none.
    """

    what: str = ""
    use: str = ""
    keep: str = ""
    net: Annotated[str, ReadBy(_read_net), WithJsonSchema(_LINE)] = ""


class Override(_Frozen):
    """A safety rule the maker sets aside, and the reason that the page shows in full."""

    rule: Text
    why: Annotated[str, Field(min_length=20)]


class Acidity(_Frozen):
    """The acidity of the finished food as pH, and who measured or published it."""

    ph: Annotated[
        Fraction,
        read_by(read_ph),
        WithJsonSchema({"type": "number", "minimum": 0, "maximum": 14}),
    ]
    source: Text


class FrontMatter(_Frozen):
    """What a cook may write above the recipe. Only the first four keys are needed."""

    title: Annotated[
        str,
        Field(min_length=1, max_length=90, description="What it is called."),
        AfterValidator(read_title),
    ]
    kind: Annotated[
        Kind,
        read_by(lambda value: find_kind(str(value))),
        WithJsonSchema({"enum": list(all_kinds())}),
        Field(description="What sort of making it is."),
    ]
    makes: Annotated[
        Makes,
        as_written(read_makes),
        WithJsonSchema(_LINE),
        Field(description='What one batch gives: "900 ml", "24 biscuits", "6 jars of 200 ml".'),
    ]
    ingredients: Annotated[
        tuple[AnIngredient, ...],
        Field(min_length=1, description='Lines such as "250 g sugar"; "materials" for a craft.'),
    ]
    summary: Annotated[str, Field(description="One sentence.")] = ""
    units: Annotated[
        System | None,
        BeforeValidator(system_said),
        Field(description="How spoons, cups and pints are read."),
    ] = None
    vessels: Annotated[
        tuple[Annotated[Vessel, as_written(read_vessel), WithJsonSchema(_LINE)], ...],
        BeforeValidator(_as_list),
        Field(description='What it is made in: "1.5 l clip-top jar".'),
    ] = ()
    containers: Annotated[
        tuple[Annotated[Container, as_written(read_container), WithJsonSchema(_LINE)], ...],
        BeforeValidator(_as_list),
        Field(description='What it is given in: "bottle, 100 ml, cork".'),
    ] = ()
    timeline: Annotated[
        tuple[AStage, ...],
        Field(description='Stages in order: "- shake: every day for 2 weeks".'),
    ] = ()
    keeps: Annotated[
        Keeping,
        read_by(read_keeping),
        WithJsonSchema(_LINE_OR_MAPPING),
        Field(description='"3 years unopened, 1 year once opened", or with its source.'),
    ] = Keeping()
    card: Card = Card()
    picture: Annotated[str, Field(description="A file among the book's pictures.")] = ""
    picture_focus: Annotated[
        str,
        read_by(lambda value: _read_focus(value)),
        WithJsonSchema(_LINE),
        Field(description='What a cut picture must show, from left and top: "30% 60%".'),
    ] = ""
    picture_alt: Annotated[str, Field(description="What the picture shows.")] = ""
    season: Annotated[
        tuple[
            Annotated[int, read_by(read_month), WithJsonSchema(_MONTH)],
            ...,
        ],
        BeforeValidator(months_listed),
        Field(description="Months in which the main produce is to be had."),
    ] = ()
    acidity: Acidity | None = None
    oven: Annotated[str, BeforeValidator(_as_text), Field(description='"160 C"')] = ""
    cautions: Annotated[
        tuple[Text, ...], Field(description="The maker's own further cautions.")
    ] = ()
    overrides: Annotated[
        tuple[Override, ...], Field(description="Safety rules set aside, each with its why.")
    ] = ()
    was: Annotated[
        tuple[Annotated[str, read_by(_read_earlier_name), WithJsonSchema(_LINE)], ...],
        BeforeValidator(_as_list),
        Field(description="Earlier file names, so that old links still lead here."),
    ] = ()
    author: str = ""
    date: Annotated[str, BeforeValidator(lambda value: str(value)), AfterValidator(read_date)] = ""

    @model_validator(mode="before")
    @classmethod
    def _one_word_each(cls, data: Any) -> Any:
        """Read "materials" and "vessel", the words a cook would write, as their keys."""
        if not isinstance(data, dict):
            return data
        renamed = dict(data)
        for written, key in (("materials", "ingredients"), ("vessel", "vessels")):
            if written in renamed and key not in renamed:
                renamed[key] = renamed.pop(written)
        return renamed


@dataclass(frozen=True)
class MethodStep:
    """One numbered step: its words with {braces} for amounts, its sub-heading, its line."""

    text: str
    group: str = ""
    line: int = 0


@dataclass(frozen=True)
class Section:
    """A section of the body other than the method, as Markdown, and the line of its text."""

    heading: str
    text: str
    line: int = 0


def _own_word(recipe: Recipe) -> Span | None:
    return recipe.keeps.unopened


class Recipe(Summed, FrontMatter):
    """A whole recipe. `file` is as the user named it; `slug` is the file's own name.

    `larder` is what its book knows of foods; its ingredients carry what was found there. `plans_by`
    tells how long it is planned to keep: its own word, until guidance is asked too.
    `waits_of_method` is a timeline read from a method that waits otherwise than its kind does.
    """

    slug: str
    file: str
    system: System = "metric"
    language: str = "en_GB"
    intro: str = ""
    method: tuple[MethodStep, ...] = ()
    sections: tuple[Section, ...] = ()
    waits_of_method: tuple[Stage, ...] = ()
    lines: dict[str, int] = Field(default_factory=dict, repr=False)
    larder: Larder = Field(default_factory=common_larder, repr=False)
    plans_by: Callable[[Recipe], Span | None] = Field(default=_own_word, repr=False)

    def kept_by(self) -> tuple[object, ...]:
        """Return what tells it from others: what each says, for two may bear one name."""
        said = [self.file, self.slug, self.title, self.summary, self.intro, self.card.use]
        said += [step.text for step in self.method]
        said += [part.text for part in self.sections]
        said += [stage.text for stage in self.timeline]
        said += [one.item for one in self.ingredients]
        amounts = [one.amount for one in self.ingredients]
        known = (self.larder, *(one.parts for one in self.ingredients))
        # a whole number's hash costs a twentieth of a fraction's
        return (
            *said,
            *known,
            *(one.low.numerator if isinstance(one, Amount) else 0 for one in amounts),
        )

    @property
    def stages(self) -> tuple[Stage, ...]:
        """The recipe's own timeline, or one with its method's longer waits, or its kind's."""
        return self.timeline or self.waits_of_method or self.stages_of_kind

    @property
    def stages_of_kind(self) -> tuple[Stage, ...]:
        """The timeline that its kind brings."""
        return stages_of_kind(self.kind.timeline)

    @property
    def vessel(self) -> Vessel | None:
        """The first vessel, in which the batch stands."""
        return self.vessels[0] if self.vessels else None

    @property
    def lasts(self) -> Span | None:
        """How long it is planned to keep unopened: what its card says, where that is shorter."""
        return self.plans_by(self)

    @property
    def made_in(self) -> Container | None:
        """The container that "makes" counts, with or without a size, where none are listed."""
        return None if self.containers else container_made(self.makes)

    @property
    def filled_into(self) -> tuple[Container, ...]:
        """The containers to give it in, those that "makes" counts, or the one its kind brings."""
        made = self.made_in
        if made and made.size and size_of(made.size.unit) == "volume":
            return (made,)
        return self.containers or (read_container(self.kind.container, "metric"),)

    def stays_in(self, ingredient: Ingredient) -> bool:
        """Whether an ingredient is still in what is given, not strained out of it."""
        if ingredient.left_in is not None:
            return ingredient.left_in
        return self.kind.solids_left_in

    def line_of(self, *path: str | int) -> int:
        """Return the line of a key, or of the nearest thing above it; 1 when unknown."""
        for size in range(len(path), 0, -1):
            line = self.lines.get("/".join(str(part) for part in path[:size]))
            if line:
                return line
        return 1
