"""The giving list as its maker writes it: households, baskets, makes, prices, stock, batches.

Read and frozen. A key in the file is a field's name with spaces ("giving day"); the JSON Schema
that editors use is made from these models. Leaves out the file (reading.py) and whatever needs
the recipes (against_book.py).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainValidator,
    WithJsonSchema,
)

from stillroom.core.amounts.quantities import Amount, show_amount
from stillroom.core.recipe.holders import read_container
from stillroom.core.words.day_words import MONTH_NAMES
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.days_said import Day, DayNear, read_off_days
from stillroom.giving.said_by_book import bands_said, money_said, pack_said, stock_line_said
from stillroom.giving.who import age_said, count_said, each_child, pregnant_said, read_pets
from stillroom.giving.written import (
    Currency,
    Language,
    packs_written,
    read_hours,
)
from stillroom.giving.written_time import (
    read_countries,
    read_day_hours,
    read_few_hours,
    read_filled,
    read_weight,
)

Sort = Literal["eat", "drink", "craft"]
SORTS: tuple[Sort, ...] = ("eat", "drink", "craft")
_SIZE = re.compile(r"\d+(?:[.,/]\d+)?\s*[a-zA-Z]+")
SORT_WORDS = {"eat": "thing to eat", "drink": "drink", "craft": "thing made by hand"}


def _read(reader: Callable[..., Any], schema: dict[str, Any]) -> Any:
    return PlainValidator(reader), WithJsonSchema(schema)


def _list(value: Any) -> Any:
    return value if isinstance(value, list | tuple) else [value]


def _words(value: Any) -> Any:
    """Return a list written in one line, "nuts, gluten", as the list it is."""
    if isinstance(value, str):
        return [word.strip() for word in re.split(r"[,;]", value) if word.strip()]
    return _list(value)


def _containers(value: Any) -> Any:
    """Return containers, each with the size that YAML parts from it: "[bottle, 100 ml]"."""
    found: list[Any] = []
    for one in _list(value):
        if found and isinstance(one, str) and isinstance(found[-1], str) and _SIZE.fullmatch(one):
            found[-1] = f"{found[-1]}, {one}"
        else:
            found.append(one)
    return found


def _text(value: Any) -> Any:
    return str(value) if isinstance(value, int | float) and not isinstance(value, bool) else value


def container_words(text: str) -> str:
    """Return a container's name as it is counted: "bottle, 100 ml", its closure left out."""
    container = read_container(text, "metric")
    size = f", {show_amount(container.size)}" if container.size else ""
    return f"{container.name.lower()}{size}"


def _baskets(value: Any) -> dict[str, int]:
    if isinstance(value, str):
        return {value: 1}
    whole = isinstance(value, dict) and all(
        isinstance(count, int) and not isinstance(count, bool) and 0 < count <= 20
        for count in value.values()
    )
    if not whole or not value:
        raise Unreadable(
            f"{say_written(value)} is not a basket.",
            'Write "basket: small" or "basket: {small: 2}".',
        )
    return {str(kind): count for kind, count in value.items()}


def _had(value: Any) -> dict[int, tuple[str, ...]]:
    years = [str(year) for year in value] if isinstance(value, dict) else [""]
    if len(set(years)) < len(years) or not all(re.fullmatch(r"\d{4}", year) for year in years):
        raise Unreadable(
            f"{say_written(value)} is not what they had.", 'Write "had: {2026: [a-recipe]}".'
        )
    given = {int(year): _list(items) for year, items in value.items()}
    for year, items in given.items():
        if wrong := [item for item in items if not isinstance(item, str | int)]:
            raise Unreadable(
                f"{say_written(wrong[0])} is no recipe they had in {year}.",
                'Write "had: {2026: [a-recipe]}".',
            )
    return {year: tuple(str(item) for item in items) for year, items in given.items()}


def _delivery(value: Any) -> str:
    words = ("by hand", "by post")
    if value not in words:
        raise Unreadable(
            f"{say_written(value)} is not a way to deliver.", did_you_mean(str(value), words)
        )
    return str(value)


_LINE = {"type": "string", "minLength": 1}
Text = Annotated[str, BeforeValidator(_text), Field(min_length=1)]
Texts = Annotated[tuple[Text, ...], BeforeValidator(_list)]
Words = Annotated[tuple[Text, ...], BeforeValidator(_words)]
Containers = Annotated[tuple[Text, ...], BeforeValidator(_containers)]
Money = Annotated[
    Fraction, PlainValidator(money_said), WithJsonSchema({"type": ["number", "string"]})
]
Design = Annotated[str, Field(description="How all papers look; as the list, or the book, if not.")]
Count = Annotated[int, BeforeValidator(count_said), Field(ge=0, le=100_000)]
Grams = Annotated[Fraction, PlainValidator(read_weight), WithJsonSchema(_LINE)]
Filled = Annotated[Fraction, PlainValidator(read_filled), WithJsonSchema(_LINE)]
Country = Annotated[
    tuple[str, ...], PlainValidator(read_countries), WithJsonSchema({"type": ["string", "array"]})
]


class Part(BaseModel):
    """What all parts of the list share: frozen, and no key that is not known."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        arbitrary_types_allowed=True,
        populate_by_name=True,
        alias_generator=lambda name: name.rstrip("_").replace("_", " "),
    )


class BasketKind(Part):
    """A kind of basket: how many things of each sort it holds, in what containers if it matters."""

    eat: Count = 0
    drink: Count = 0
    craft: Count = 0
    containers: Annotated[
        Containers,
        Field(description="Only things in these containers go in; none named means any."),
    ] = ()
    cost: Annotated[
        Money | None, Field(description="What the empty basket, paper and string cost.")
    ] = None
    weighs: Annotated[Grams | None, Field(description="Empty, with its paper: 300 g.")] = None
    design: Design = ""

    def room(self, sort: Sort) -> int:
        """Return how many things of a sort it holds."""
        return {"eat": self.eat, "drink": self.drink, "craft": self.craft}[sort]


class Make(Part):
    """A recipe on offer this year, in one container, within the limits of the maker."""

    recipe: Text
    sort: Annotated[Sort | None, Field(description="eat, drink or craft; else by its kind.")] = None
    container: Annotated[str, Field(description='"bottle, 100 ml"; else the recipe\'s own.')] = ""
    per_batch: Annotated[
        Count | None, Field(gt=0, description="How many one batch gives; else worked out.")
    ] = None
    batches: Annotated[Count, Field(description="The most batches we are willing to make.")] = 3
    by_post: Annotated[bool | None, Field(description="false: this one never goes by post.")] = None
    at_a_time: Annotated[
        Count | None, Field(gt=0, description="How many times the recipe its pan or oven takes.")
    ] = None
    in_parts: Annotated[
        bool, Field(description="yes: a batch may be cut down to what is wanted, by the jar.")
    ] = False
    weighs: Annotated[Filled | None, Field(description="One, with its jar: 350 g.")] = None
    shop_price: Annotated[Money | None, Field(description="A like thing in a shop.")] = None
    cost: Annotated[Money | None, Field(description="Cost of one, if there are no prices.")] = None


class Household(Part):
    """One household: who they are, what they must not get, what they like, what they had."""

    name: Text
    to: Annotated[str, Field(description="The name on the card; else the household's.")] = ""
    basket: Annotated[
        dict[str, int],
        PlainValidator(_baskets),
        WithJsonSchema({"anyOf": [_LINE, {"type": "object"}]}),
        Field(description='"small", or {small: 2, large: 1}.'),
    ]
    avoid: Annotated[
        Words, Field(description="Allergens, alcohol, animal products, meat, pork …")
    ] = ()
    avoid_ingredients: Annotated[Words, Field(description="Any other ingredient by name.")] = ()
    traces_are_fine: Annotated[
        Words, Field(description='Allergens of "avoid" whose "may contain" they accept.')
    ] = ()
    adults: Count = 1
    children: Annotated[
        tuple[
            Annotated[
                int,
                PlainValidator(age_said),
                WithJsonSchema({"type": ["integer", "string"]}),
            ],
            ...,
        ],
        BeforeValidator(each_child),
        Field(description="Ages on giving day: [6, 18 months, 3 months]."),
    ] = ()
    pregnant: Annotated[
        bool | Literal["breastfeeding"],
        PlainValidator(pregnant_said),
        WithJsonSchema({"type": ["boolean", "string"]}),
    ] = False
    pets: Annotated[
        frozenset[str],
        PlainValidator(read_pets),
        WithJsonSchema({"type": ["boolean", "string", "array"]}),
        Field(description="Animals that live there: dog, or [dog, cat]."),
    ] = frozenset()
    delivery: Annotated[
        str, PlainValidator(_delivery), WithJsonSchema({"enum": ["by hand", "by post"]})
    ] = "by hand"
    country: Annotated[Country, Field(description="Where it is posted to; else your own.")] = ()
    service: Annotated[str, Field(description="The way it is posted; else any that reaches.")] = ""
    opens: Annotated[
        DayNear | None, Field(description="The day they open it; else giving day.")
    ] = None
    days_left: Annotated[
        Count | None,
        Field(description="How many days all must then still keep; else 7, 14 by post."),
    ] = None
    likes: Words = ()
    must_have: Words = ()
    never: Words = ()
    had: Annotated[
        dict[int, tuple[str, ...]], PlainValidator(_had), WithJsonSchema({"type": "object"})
    ] = {}
    said: Annotated[
        dict[int, tuple[str, ...]],
        PlainValidator(_had),
        WithJsonSchema({"type": "object"}),
        Field(description="Their word on it, year by year; close-year writes it from the log."),
    ] = {}
    budget: Annotated[Money | None, Field(description="The most one basket's contents cost.")] = (
        None
    )
    message: str = ""
    design: Design = ""
    address: Annotated[
        str, Field(description='For a parcel: "3 Net Lane, Skerrow, KW99 9ZZ"; commas part lines.')
    ] = ""


class Price(Part):
    """What an ingredient or container costs in each pack that can be bought."""

    item: Text
    packs: Annotated[
        tuple[
            Annotated[
                tuple[Amount, Fraction, int], PlainValidator(pack_said), WithJsonSchema(_LINE)
            ],
            ...,
        ],
        BeforeValidator(packs_written),
        Field(min_length=1, description='"700 ml for 14.50", "50 or more for 0.48 each".'),
    ]
    section: Annotated[str, Field(description="Section of the shop; else the staple's.")] = ""


class MadeBefore(Part):
    """Presents on the shelf already: how many, of what, filled when."""

    recipe: Text
    number: Count
    container: str = ""
    made_on: Day


class Service(Part):
    """One way to post: where it goes, the last day to post by, and what so much weight costs."""

    service: Text
    to: Annotated[Country, Field(description="Countries it reaches; else your own.")] = ()
    last_day: Annotated[DayNear | None, Field(description="The last day to post by it.")] = None
    bands: Annotated[
        tuple[tuple[Fraction, Fraction], ...],
        PlainValidator(bands_said),
        WithJsonSchema({"type": "object"}),
        Field(description="Postage up to a weight: {1 kg: 3.70, 2 kg: 5.60}."),
    ] = ()


class Stock(Part):
    """What is in the house: containers, ingredients, presents made earlier, pans and jars."""

    containers: dict[str, Count] = {}
    vessels: Annotated[
        dict[str, Count],
        Field(description='How many there are of a pan, jar or oven: {"5 l preserving pan": 1}.'),
    ] = {}
    ingredients: Annotated[
        tuple[Annotated[tuple[Amount, str], *_read(stock_line_said, _LINE)], ...],
        BeforeValidator(_list),
    ] = ()
    made: tuple[MadeBefore, ...] = ()


class LoggedBatch(Part):
    """One batch as it was really made; what is not known yet is left out."""

    recipe: Text
    started: Day
    batches: Annotated[Count, Field(gt=0, description="How many times the recipe.")] = 1
    tended: Annotated[tuple[Day, ...], BeforeValidator(_list)] = ()
    made_on: Annotated[Day | None, Field(description="The day it was filled.")] = None
    number: Annotated[Count | None, Field(description="How many it really gave.")] = None
    container: str = ""
    given: Count = 0
    notes: str = ""


class GivingList(Part):
    """The whole list. Only its name, giving day, baskets, makes and households are needed."""

    giving_list: Text
    giving_day: Annotated[Day, Field(description="The day the baskets go out: 2027-12-18.")]
    follows: Annotated[
        str, Field(description="The list of the year before; close-year writes it.")
    ] = ""
    from_: Annotated[str, Field(description="Who the cards are from.")] = ""
    address: Annotated[str, Field(description="The sender's, for parcels.")] = ""
    message: Annotated[str, Field(description="On each card that has none of its own.")] = ""
    design: Design = ""
    currency: Currency = ""
    language: Annotated[
        Language, Field(description="How prices are written: en_GB 14.50, de 14,50, or the book's.")
    ] = ""
    baskets: Annotated[dict[str, BasketKind], Field(min_length=1)]
    makes: Annotated[tuple[Make, ...], Field(min_length=1)]
    households: Annotated[tuple[Household, ...], Field(min_length=1)]
    stock: Stock = Stock()
    prices: tuple[Price, ...] = ()
    hours: Annotated[
        dict[int, Fraction],
        PlainValidator(read_hours),
        WithJsonSchema(
            {
                "type": "object",
                "propertyNames": {"enum": ["every month", *(name.lower() for name in MONTH_NAMES)]},
            }
        ),
        Field(description="Hands-on hours to give: {every month: 6, december: 10}."),
    ] = {}
    hours_a_week: Annotated[
        Fraction | None,
        PlainValidator(read_few_hours),
        WithJsonSchema({"type": ["number", "string"]}),
        Field(description="The most hands-on hours in any week, Monday to Sunday."),
    ] = None
    hours_a_day: Annotated[
        dict[int, Fraction],
        PlainValidator(read_day_hours),
        WithJsonSchema({"type": ["number", "string", "object"]}),
        Field(description="The most hands-on hours in a day: 4, or {every day: 2, saturday: 6}."),
    ] = {}
    days_off: Annotated[
        frozenset[date],
        PlainValidator(read_off_days),
        WithJsonSchema({"type": ["string", "array"]}),
        Field(description="Days nothing is done on: [3 August 2027 to 17 August 2027]."),
    ] = frozenset()
    posting: tuple[Service, ...] = ()
    batches: Annotated[
        tuple[LoggedBatch, ...], Field(description="The batch log: what was really made.")
    ] = ()
