"""What kind of making a recipe may be by what is done in it, where its title does not say.

What is found so is written down and asked about, never taken for certain.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.core.recipe.kinds import all_kinds, find_kind
from stillroom.core.words.problems import Unreadable

# "Pot up your chutney": what is filled at last, where no title says it
_FILLED: Final = re.compile(
    r"\b(?:pot(?:\s+up)?|bottle|spoon|ladle|jar|cut|wrap|turn|seal|store|keep)\s+(?:up\s+)?(?:the|your|this)\s+(?:\w+\s+)?"
    r"(?P<said>chutney|jam|jelly|marmalade|relish|curd|ketchup|liqueur|cordial|fudge|toffee|mead|soap|shortbread)\b",
    re.IGNORECASE,
)
# the thing by its name, and no jar, sugar or pan for it
_SAID_TO_BE: Final = re.compile(
    r"\b(?:chutney|jam|jelly|marmalade|relish|curd|ketchup|liqueur|cordial|fudge|toffee|mead|shortbread)\b"
    r"(?!\s?(?:-?making|sugar|jars?|pots?|pan|thermometer|funnel|labels?|lids?|covers?|setting|bags?|babies|beans?)\b)",
    re.IGNORECASE,
)
_OFTEN: Final = 3
# what is done, or what it is done with, and the kind it makes likely: asked all the same
_SIGNS: Final = (
    ("ferment", r"\bairlock|\bdemijohn|\bwine yeast|\bchampagne yeast|\bcarboy"),
    ("infusion", r"\b(?:vodka|gin|rum|brandy|grappa|korn|weinbrand|eau de vie)\b"
     r"(?=.*\b(?:steep|infuse|strain|shake|let (?:it )?(?:sit|stand)|ziehen|filter))"),
    ("preserve", r"\b(?:sterili[sz]ed|hot|clean|canning|mason)\s+jars|\bjam sugar|\bpectin|"
     r"\bgelierzucker"),
    ("bake", r"\bpreheat|\bbake\b|\bbaking (?:sheet|tray)|\boven\b|\bbacken|\bofen\b"),
    ("confection", r"\bsoft[- ]ball|\bhard[- ]crack|\bsugar thermometer|\bcandy thermometer"),
    # in other languages, where nothing is baked
    ("infusion", r"\b(?:spirytus\w*|wódk\w+|wodk\w+|alcool|eau-de-vie|alcohol|aguardiente|orujo"
     r"|anís|brännvin|brennevin|brændevin|brandewijn|jenever|álcool|aguardente|cachaça|pálinka|alkohol\w*|vodk\w+|wodka)\b"
     r"(?=.*(?:\bmac[ée]r|\bfiltr|\bprzefiltr|\bodstawi|\blouhovat|\btr(?:e|æ)kken?\b))"),
    ("craft", r"\bbeeswax|\bsoy wax|\bbienenwachs|\bneedle\b|"
     r"\bcrochet|\bknit\b|\bsew\b|\blye\b|\bwick\b"),
)  # fmt: skip
# "Dry the jars in the oven": it bakes nothing
_JAR: Final = r"(?:jars?|bottles?|lids?|gl[aä]s(?:er)?|flaschen?)"
_JARS_IN_IT: Final = re.compile(
    rf"(?:\bpreheat\s+)?(?:\bthe\s+)?\b(?:oven|ofen)\b[^.!?]{{0,80}}\b{_JAR}\b"
    rf"|\b{_JAR}\b[^.!?]{{0,80}}\b(?:oven|ofen)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Guess:
    """The word to write for a kind, "" for none, and the question to ask about it, "" for none."""

    word: str
    what: str = ""
    mend: str = ""

    @property
    def pours(self) -> bool:
        """Whether what is made is a drink that is bottled, of which servings tell no quantity."""
        if not self.word:
            return False
        try:
            return find_kind(self.word).is_("drink")
        except Unreadable:
            return False


def by_what_is_done(recipe: Recipe) -> Guess:
    """Return what kind is likely by what is done and listed, with a question, or none.

    >>> method = [("", "Sterilise the bottle in the oven. Cover the thyme with vinegar.")]
    >>> by_what_is_done(Recipe(steps=method)).word
    ''
    >>> by_what_is_done(Recipe(steps=[("", "Heat the oven. Bake the loaf.")])).word
    'bake'
    """
    done = " ".join(row for _, row in (*recipe.ingredients, *recipe.steps))  # and not the story
    text = " ".join((*recipe.intro, done))
    names = ", ".join(all_kinds())
    filled = [*_FILLED.finditer(text)]
    said_so = Counter(one[0].lower() for one in _SAID_TO_BE.finditer(text))
    if not filled and said_so and said_so.most_common(1)[0][1] >= _OFTEN:
        word = said_so.most_common(1)[0][0]
        what = f'Its title does not say what kind it is; "{word}" is said of it again and again.'
        return Guess(find_kind(word).spoken, what, f"If it is another, write that: {names}.")
    if filled:
        word, said = filled[-1]["said"].lower(), " ".join(filled[-1][0].split())
        what = f'Its title does not say what kind it is; "{said}" makes it look like "{word}".'
        return Guess(find_kind(word).spoken, what, f"If it is another, write that: {names}.")
    worked = _JARS_IN_IT.sub(" ", done)
    for kind, signs in _SIGNS:
        if found := re.search(signs, worked, re.IGNORECASE | re.DOTALL):
            said = found[0].strip()
            what = f'Its title does not say what kind it is; "{said}" makes it look like "{kind}".'
            return Guess(kind, what, f"If it is another, write that: {names}.")
    mend = f'Write "kind:" and one of these, or an everyday word such as jam or cookies: {names}.'
    return Guess("", "What kind of making it is could not be told.", mend)
