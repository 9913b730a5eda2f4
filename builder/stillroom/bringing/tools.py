"""What is only worked with, where it stands among a list of foods: jars, sieves, paper.

It goes to the notes, and that is said. Leaves out the list that a head of its own names: lists.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import words
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.one_line import things_on
from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_JARS: Final = re.compile(
    r"(?:(?:about|circa|ca\.?|etwa|environ|ongeveer|unos)\s+)?(?:\d+(?:\s*[-–]\s*\d+)?|[^\W\d]{2,7})\s+"
    r"(?:jars?|bottles?|tins?|gläser|glas|flaschen?|schraubgläser|bocaux|bocal|pots?|bouteilles?|vasetti|vasetto|barattoli|bottiglie?"
    r"|frascos?|tarros?|botes?|botellas?|garrafas?|potten|potjes|flessen|flesjes|burk(?:ar)?|flask(?:a|or|er?)|glass|słoik\w*|butel\w{2,3})"
    r"\s+(?:of|à|a|von|zu|de|d[ai]|van|på|po|each)\s+"
    r"(?:about\s+|circa\s+|je\s+)?\d+(?:[.,]\d+)?\s*(?:m?l|cl|dl|g|gr|oz|lb|liter|litres?|litri)\b\.?",
    re.IGNORECASE,
)
_ONLY_JARS: Final = re.compile(
    r"\b(?:jars?\s+with\s+(?:[^\W\d]+[\s-]){0,3}lids?|jars|bottles|gläser|flaschen|bocaux|bouteilles|vasetti|bottiglie|tarros|botellas|potten|flessen|burkar|flaskor)\b",
    re.IGNORECASE,
)
_WEIGHED: Final = re.compile(
    r"\d\s*(?:k?g|gr|gramm?(?:[eiosay]|as|os|es|ów)?|kilos?|quilos?|oz|ounces?|lbs?|pounds?|[mcd]l|tbsps?|tsps?|EL|TL|msk|tsk|spsk|cucharad\w+|cuill\w+)\b",
    re.IGNORECASE,
)
# "6 x 500ml jars with lids": how big they are, and not how much of something
_SIZE: Final = re.compile(
    r"\d+\s*(?:[x×]\s*\d+\s*)?(?:ml|cl|l|g|gr|oz|lb)\s+(?=(?:[^\W\d]+\s+)?(?:jars?|bottles?|gläser|flaschen|bocaux|vasetti"
    r"|tarros|frascos|potten|burkar|flaskor)\b)"
)
# what is said of a tool behind its name: "jars washed and sterilised in an oven. Boil the lids."
_SAID_OF_IT: Final = re.compile(
    r",|(?<=[^\W\d]{3})\.\s|\b(?:with|for|to|that|which|or|avec|mit|zum|für|con|com|per|voor|met|om|med|z|ze|do|po)\b|\s[-–—]\s"
    r"|(?<=[^\W\d]{3}[sn])\s+(?:washed|cleaned|warmed|greased|buttered|lined|ster[ie]?li[sz]ed|gewaschen|ausgekocht|sterilisiert|stérilisés"
    r"|sterilizzati|esterilizados|gesteriliseerd|steriliserade)\b"
)
_ARTICLES: Final = frozenset(
    {
        "en",
        "ett",
        "et",
        "um",
        "uma",
        "a",
        "an",
        "un",
        "una",
        "uno",
        "une",
        "unos",
        "unas",
        "des",
        "del",
        "le",
        "la",
        "el",
        "il",
        "ein",
    }
    | {"eine", "einen", "een"}
)
# what would be a measure by its first word alone
_OF_WOOD: Final = re.compile(
    r"(?:um?[ae]?\s+)?(?:cuchara\s+de\s+(?:madera|palo)|colher\s+de\s+pau|cuill[eè]re\s+en\s+bois|cucchiaio\s+di\s+legno)"
    r"|(?:an?\s+)?hole\s+punch|(?:safety|protective)\s+(?:glasses|gear|eyewear)"
)
# what holds or keeps the rest, by what it is made of; paper to bake on; and what holds tea
_OF_GLASS: Final = late_regex(
    r"(?:[^\W\d]+\s){0,2}(?:pots?|bocaux|bouteilles?|vasett[io]|barattol[io]|bottigli[ae]|frascos?|tarros?|botes?|botellas?|garrafas?|boi(?:ão|ões)|potes?|słoik\w*"
    r"|butel\w{2,3})\s(?:en|di|de|ze?)\s(?:verre|vetro|vidrio|cristal|vidro|szkła)\b.*"
    r"|papel\s(?:vegetal|de\shorno|manteiga)|papier\s(?:sulfurisé|cuisson|do\spieczenia)|carta\s(?:da\s)?forno|(?:thee|tee)\s?ei|tea\s(?:ball|infuser)"
)
# "1 tarro de miel" is honey, "1 tarro de cristal" a jar
_HOLDS_SOMETHING: Final = late_regex(
    r"^\W*(?:\d+\s+|une?\s+|una?\s+|uno\s+|um\s+)?[^\W\d]+\s+(?:de\s+|di\s+|d['’]\s*)(?!(?:\d|verre|vetro|vidrio|cristal|vidro|bois|legno|madera|pau|pano|tela|cuivre"
    r"|rame|cobre|acero|acier|acciaio|inox|cocina|cuisine|cucina|plástico|plastica|plastique|boca|fermentación|conserva|la\b|les?\b|ta\b|forme?)\b)"
)
_LIDS: Final = re.compile(
    r"\b(?:lids?|canning|jar)\s+(?:lids?\s+)?(?:and|&|\+|with)\s+(?:rings|bands|lids|seals)\b|\bcanning\s+(?:jars|lids|rings|bands)\b",
    re.IGNORECASE,
)
# food by what it comes in: "3 family-size tea bags", "4 sheets of filo", "2 gelatine sheets"
_PACKED_FOOD: Final = re.compile(
    r"\btea ?bags?\b|\b(?:gelatin\w*|nori|filo|phyllo|pastry|lasagn\w*|wafer) (?:sheets?|bags?)\b"
)
_LEAST_JOINED: Final = 3
"""Letters before the end of a word by which it names a tool."""
_FOODS: Final = 2
"""Foods known for certain, from which on a list is one of foods."""


def is_tool(text: str) -> bool:
    """Whether a line of a list names what is worked with: its last word, or its first abroad.

    >>> is_tool("1 quart-sized mason jar with lid"), is_tool("An A4 sheet of plain paper")
    (True, True)
    >>> is_tool("1 jar honey"), is_tool("Bassine à confiture en cuivre"), is_tool("rice paper")
    (False, True, False)
    >>> is_tool("7 regular tea bags"), is_tool("2 jelly bags")
    (False, True)
    >>> is_tool("a big pan"), is_tool("1 pan integral"), is_tool("1 marzipan")
    (True, False, False)
    >>> is_tool("6 x 500ml jars with lids (or equivalent)"), is_tool("1 x 700 ml bottle gin")
    (True, False)
    """
    bare = re.sub(r"\([^()]*\)|\([^()]*$", " ", text.lower())
    bare = _SIZE.sub(" ", bare)
    head = _SAID_OF_IT.split(bare, maxsplit=1)[0]
    said = re.findall(r"[^\W\d_]+", head)
    food = find_staple(" ".join(said))
    if _counts_a_food(text):  # "evaporated milk - 1 small tin (170g)"
        return False
    if re.search(r"[^\W\d].*\d\s*[^\W\d]+\s*$", head):  # "white vinegar: 6 cups"
        return False
    if _LIDS.search(text):
        return True
    alone = " ".join(said)
    if any(one.fullmatch(alone) for one in (_OF_WOOD, _OF_GLASS)):
        return True
    if _PACKED_FOOD.search(" ".join(said)):
        return False
    said = said[1:] if len(said) > 1 and said[0] in _ARTICLES else said
    said = said[1:] if len(said) > 1 and said[0] in words("size_first") else said
    if not said or bool(_WEIGHED.search(head)) or (food and "craft" not in food.tags):
        return False
    if said[-1] in words("tool_last") or (food is None and _joins_tool(said[-1])):
        return True
    bare_first = len(said) == 1 and said[0] in words("tool_alone")
    return bare_first or (said[0] in words("tool_first") and not _HOLDS_SOMETHING.match(head))


def _joins_tool(word: str) -> bool:
    """Whether a word of a language that joins them ends as what is worked with: "Mengkom"."""
    ends = words("tool_ends")
    return word in ends or any(
        word.endswith(end) and len(word) >= len(end) + _LEAST_JOINED for end in ends
    )


def is_never_given(text: str) -> bool:
    """Whether a line of a list of materials names what is only worked with, and no part of a thing.

    >>> is_never_given("Double boiler or a pot and a glass measuring cup"), is_never_given("2 jars")
    (True, False)
    >>> is_never_given("Stirring utensil (a wooden spoon)"), is_never_given("une balance précise")
    (True, True)
    """
    bare = re.sub(r"\([^()]*\)|\([^()]*$", " ", text.lower())
    said = re.findall(r"[^\W\d_]+(?:-[^\W\d_]+)*", _SAID_OF_IT.split(bare, maxsplit=1)[0])
    said = said[1:] if len(said) > 1 and said[0] in _ARTICLES else said
    last = {" ".join(said[-size:]) for size in (1, 2)}
    return bool(said) and bool(
        last & words("craft_tool_last") or said[0] in words("craft_tool_first")
    )


def _counts_a_food(text: str) -> bool:
    """Whether a line names a food and so much of it behind."""
    try:
        read = read_line(text)
    except Unreadable:
        return False
    behind = read.spans.get("amount", (0, 0))[0] > 0
    food = find_staple(read.item) if behind and isinstance(read.amount, Amount) else None
    return food is not None and "craft" not in food.tags


def jars_of(text: str) -> str:
    """Return what a line says of jars or bottles of a size, of which a list says how many it fills.

    >>> jars_of("due vasetti da 250 g;"), jars_of("4 Gläser à 200 ml"), jars_of("1 jar of honey")
    ('due vasetti da 250 g', '4 Gläser à 200 ml', '')
    """
    found = _JARS.fullmatch(text.strip(" ;.,"))
    return found[0] if found else ""


def take_tools(recipe: Recipe) -> list[str]:
    """Take what is only worked with out of a list of foods, and return it.

    A list that is not one of foods, as a craft's is, keeps all that may be of the present: jars,
    paper, ribbon. A thermometer and a double boiler are of none.
    """
    tools = [row for row in recipe.ingredients if is_tool(row[1]) and not _bids(row[1])]
    tools = _with_their_group(recipe.ingredients, tools)
    foods = sum(_is_food(one) for _, text in recipe.ingredients for one in things_on(text))
    jars = bool(tools) and all(_ONLY_JARS.search(text) for _, text in tools)
    if foods < (1 if jars else _FOODS):
        tools = [row for row in recipe.ingredients if is_never_given(row[1])]
    if not tools or len(tools) == len(recipe.ingredients):
        return []
    recipe.ingredients = [row for row in recipe.ingredients if row not in tools]
    if all(is_tool(text) and not _names_food(text) for _, text in tools):
        return [text for _, text in tools]
    said = ", ".join(f'"{text}"' for _, text in tools[:3])
    what = f"Under Equipment now, as things to work with: {said}{', …' if len(tools) > 3 else ''}."
    recipe.doubt("ingredients", what, "What is a part of the present belongs in the list again.")
    return [text for _, text in tools]


def _with_their_group(
    listed: Sequence[tuple[str, str]], tools: list[tuple[str, str]]
) -> list[tuple[str, str]]:
    """Return the tools of a list, and what stands among them under a head where no food does.

    >>> listed = [("", "250 g flour"), ("", "1 egg"), ("Needed", "a bowl"), ("Needed", "a dolly")]
    >>> _with_their_group(listed, [("Needed", "a bowl")])
    [('Needed', 'a bowl'), ('Needed', 'a dolly')]
    """
    heads = {head for head, _ in tools if head and head != listed[0][0]}
    for head in heads:
        group = [row for row in listed if row[0] == head]
        many = sum(row in tools for row in group) * 2 >= len(group)
        if many and not any(_is_food(one) or _WEIGHED.search(one) for _, one in group):
            tools = [row for row in listed if row in tools or row in group]
    return tools


def _bids(text: str) -> bool:
    """Whether a line says what is done with a tool: "Sterilise the jar"."""
    return not text[:1].isdigit() and is_plainly_work(text)


def _names_food(text: str) -> bool:
    return any("craft" not in food.tags for food in staples_named(text))


def _is_food(text: str) -> bool:
    try:
        food = find_staple(read_line(text).item)
    except Unreadable:
        return False
    return food is not None and "craft" not in food.tags
