"""What kind of making a recipe is, by its title or, with a question, by what is done in it.

A title says it by its last word before "with" or "of". What two kinds could be, or none, is asked
and never chosen.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.found import Origin, Recipe
from stillroom.bringing.heads import plain, words
from stillroom.bringing.kinds_by_work import Guess, by_what_is_done
from stillroom.bringing.soup_mixes import MEND, WORD, asked_of_mix, is_soup_mix
from stillroom.bringing.title_kinds import begun_elsewhere, by_its_ending, named_elsewhere
from stillroom.bringing.title_names import names_a_part, without_hyphens
from stillroom.bringing.titles import RECIPE_WORD, without_guide
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.recipe.kinds import Kind, all_kinds, find_kind, kind_called
from stillroom.core.words.problems import Unreadable

_BEFORE: Final = re.compile(
    r"^(?:(?:how\s+)?to\s+make\s+|the\s+(?:best|perfect|ultimate)\s+|my\s+|homemade\s+|recipe\s*:\s*)+"
    r"(?:an?\s+|the\s+)?",
    re.IGNORECASE,
)
# "FUDGE (Dad's)", "TOMATO CHUTNEY - Gran's"
_SHOUTED: Final = re.compile(r"[A-ZÀ-Þ][A-ZÀ-Þ'’& -]{3,}?(?=\s+(?:\(|[-–—]\s))")
# "No. 150. Gooseberry Vinegar", "Nr. 12: Hagebuttenmus", "N° 3 - Gelée de coings"
_COUNTED_OFF: Final = re.compile(
    r"^(?:no|nr|num|n[°º]|№)\.?\s{0,2}\d{1,4}\s{0,2}[.:)–—-]+\s{0,2}(?=[^\W\d]{2})", re.IGNORECASE
)
# "Kookboek/Appelchutney", "Cookbook:Fudge": the leaf of a common book
_OF_A_BOOK: Final = re.compile(
    r"^(?:(?:cook|kook|koch|kok|koge|koke)(?:book|boek|buch|bok|bog)|livre\s+de\s+cuisine|libro\s+d[ei]\s+c[ou][cz]+ina|livro\s+de\s+receitas"
    r"|książka\s+kucharska)\s?[:/]\s?(?=[^\W\d]{2})",
    re.IGNORECASE,
)
# "Pierniczki [PRZEPIS]", "[Recipe] Fudge"
_SAYS_RECIPE: Final = re.compile(
    rf"\s*[\[(](?:(?:the|il|la|le)\s)?(?:{RECIPE_WORD}|przepis|video|\+\s?video)[\])]\s*",
    re.IGNORECASE,
)
_STEM: Final = 8
_LEAST_STEM: Final = 4
_SAYS_NOTHING: Final = frozenset(
    {
        "recipe",
        "recipes",
        "diy",
        "tutorial",
        "gift",
        "gifts",
        "idea",
        "rezept",
        "recette",
        "ricetta",
        "receta",
        "recept",
    }
)
_JOINED: Final = frozenset({"and", "und", "et", "y", "e", "en", "&", "or"})
_BEHIND: Final = re.compile(
    r"\s*(?:[-–—|:]\s*)?\b(?:cooking\s+)?recipe(?:\s+for\s+(?:about\s+)?\d.*)?\s*$", re.IGNORECASE
)
# "Rezept Vanillekipferl", "Deine Quittenmarmelade", "How to make X - a step by step guide"
_NAMED_A_RECIPE: Final = re.compile(
    r"^(?:(?:rezept|recette|receta|ricetta|recept|receita|opskrift|oppskrift|przepis)(?:(?:\s+[^\W\d]{5,}(?=\s+(?:de|du|di|del|della|d[ao])\s))?\s+(?:für|vom|von|des?|du|di|del|della|voor|d[aeo]|på|til|na))?\s*[:–-]?\s+(?=\S)"
    r"|(?:dein|eur|unser)e?[nr]?\s+(?=[A-ZÄÖÜ])"
    r"|(?:how\s+(?:to|i|we)|to)\s+make\s+(?:(?:your\s+own|the\s+(?:best|perfect)|an?|my)\s+)?(?=\S))",
    re.IGNORECASE,
)
# "Feel Good Friday: coffee scrub", "Rezept der Woche: Quittengelee": the column it was printed in
_COLUMN: Final = re.compile(
    r"(?:[^:]{0,30}\b(?:(?:mon|tues|wednes|thurs|fri|satur|sun)days?|(?:mon|diens|donners|frei|sams|sonn)tags?|mittwochs?|sonnabends?"
    r"|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche|lunedì|martedì|mercoledì|giovedì|venerdì|sabato|domenica|lunes|martes"
    r"|miércoles|jueves|viernes|sábado|domingo|maandag|dinsdag|woensdag|donderdag|vrijdag|zaterdag|zondag|(?:mån|tis|ons|tors|fre|lör|sön)dag)"
    r"|(?:recipe|project|craft)s?\s+of\s+the\s+(?:day|week|month)|(?:rezept|recept)\s+(?:der\s+woche|des\s+(?:tages|monats)|van\s+de\s+(?:week|maand))"
    r"|recette\s+(?:du\s+(?:jour|mois)|de\s+la\s+semaine)|ricetta\s+(?:del\s+(?:giorno|mese)|della\s+settimana)"
    r"|receta\s+(?:del\s+(?:día|mes)|de\s+la\s+semana)|veckans\s+recept)\s*:\s+(?=[^\W\d]{2})",
    re.IGNORECASE,
)
# "Cookies in a jar": the dry things for them, layered, or baked in it
_IN_A_JAR: Final = re.compile(
    r"\bin (?:an? |the )?(?:\w+ )?(?:jars?|mugs?|bottles?)\b", re.IGNORECASE
)
_MIX_OR_BAKE: Final = (
    'Write "kind: dry mix" for the dry things that somebody bakes it of, '
    '"kind: bake" if it is baked.'
)
_FOR_ANIMALS: Final = re.compile(
    r"\b(?:for|your|my|our|the)\s+(?:\w+\s+)?(?:dogs?|puppy|puppies|pups?|cats?|kitten|horses?|ponies|pony|rabbits?"
    r"|hamsters?|guinea pigs?|birds)\b",
    re.IGNORECASE,
)
_SPIRIT: Final = re.compile(r"\b(?:gin|vodka|rum|whisk(?:e)?y|brandy)\b", re.IGNORECASE)
_LEFT_FOR: Final = re.compile(
    r"\b(?:leave|steep|infuse|rest|stand|sit|store|place|keep|after)\b[^.!?]{0,60}?"
    r"\b(?:days?|weeks?|months?|24 hours)\b",
    re.IGNORECASE,
)


def title_of(text: str) -> str:
    """Return a title without what pages put round it.

    >>> title_of("Limoncello - cooking recipe"), title_of("PLUM JAM"), title_of("FUDGE (Dad's)")
    ('Limoncello', 'Plum jam', "Fudge (Dad's)")
    >>> title_of("Feel Good Friday: Coffee scrub"), title_of("Sunday marmalade: the quick way")
    ('Coffee scrub', 'Sunday marmalade: the quick way')
    >>> title_of("Kookboek/Appelchutney"), title_of("Szybkie pierniczki [PRZEPIS]")
    ('Appelchutney', 'Szybkie pierniczki')
    """
    bare = _BEHIND.sub("", text.strip(" *_#※★☆♥•~")).strip(" -–—|:") or text.strip()
    bare = _OF_A_BOOK.sub("", _SAYS_RECIPE.sub("", _COUNTED_OFF.sub("", bare))) or bare
    bare = without_column(bare)
    bare = re.sub(r"(?<=recipe)!+$", "", bare, flags=re.IGNORECASE)
    bare = _BEHIND.sub("", bare) or bare
    bare = _NAMED_A_RECIPE.sub("", without_guide(bare)) or bare
    if bare.isupper() and len(bare) > 4:
        return bare.capitalize()
    if shouted := _SHOUTED.match(bare):
        return f"{shouted[0].capitalize()}{bare[shouted.end() :]}"
    return bare[:1].upper() + bare[1:]


def without_column(title: str) -> str:
    """Return a title without the column that it was printed in: "Meatless Monday: …"."""
    column = _COLUMN.match(title)
    return title[column.end() :] if column and not says_its_kind(column[0]) else title


def guess_kind(recipe: Recipe) -> Guess:
    """Return what kind a recipe is by its title, or a question."""
    said = _by_title(recipe.title)
    if not (said and said.word) and is_soup_mix(recipe):
        return Guess(WORD, asked_of_mix(recipe), MEND)
    if said is None:
        return by_what_is_done(recipe)
    if said.word:
        return _perhaps_for_animals(recipe, said.word)
    return _in_vinegar(recipe, said) or _steeped(recipe, said)


def kind_of_title(title: str) -> Guess:
    """Return what kind of making a title alone says, or a question.

    >>> kind_of_title("Grandmother's fudge").word, kind_of_title("Cookies in a jar").word
    ('fudge', '')
    """
    return _by_title(title) or by_what_is_done(Recipe(title=title))


def says_kind_or_doubt(title: str) -> bool:
    """Whether a title says what kind it is, or one of two kinds that are then asked about.

    >>> says_kind_or_doubt("Rhubarb gin"), says_kind_or_doubt("Solbærsyltetøj")
    (True, True)
    >>> says_kind_or_doubt("Our kitchen")
    False
    """
    return _by_title(title) is not None


def _by_title(title: str) -> Guess | None:
    asked: Guess | None = None
    if named := named_elsewhere(title):
        return _of_word(named)
    for word in (*_last_words(title), *_last_words(without_hyphens(title))):
        try:
            found = kind_called(word)
        except Unreadable as wrong:
            asked = asked or Guess("", wrong.what, wrong.mend)
            continue
        if found is None:
            continue
        if found.name == "bake" and _IN_A_JAR.search(title):
            return Guess("", f'"{title_of(title)}" may be two kinds.', _MIX_OR_BAKE)
        if asked is None or len(word.split()) > 1:
            return Guess(_wider(found, word) if names_a_part(word, title) else found.spoken)
    if asked:
        return asked
    said = begun_elsewhere(title_of(title)) or by_its_ending(title_of(title))
    return _of_word(said) if said else _by_last_of_all(title)


def _wider(found: Kind, word: str) -> str:
    """Return what names more than an everyday word does: its last word's kind, or the kind."""
    try:
        last = kind_called(word.split()[-1])
    except Unreadable:
        last = None
    return last.spoken if last else found.name


def _by_last_of_all(title: str) -> Guess | None:
    """Return what the very last word says, behind a name of several: "Herbes de Provence Salt"."""
    found = re.fullmatch(r"[^\W\d]+ (?:de|du|di|del) .*?(?P<last>[^\W\d]+)", title_of(title))
    if found is None:
        return None
    try:
        known = kind_called(found["last"])
    except Unreadable as wrong:
        return Guess("", wrong.what, wrong.mend)
    return Guess(known.spoken) if known else None


def _of_word(said: str) -> Guess:
    """Return the kind of an everyday word, or what is asked about it."""
    try:
        return Guess(find_kind(said).spoken)
    except Unreadable as wrong:
        return Guess("", wrong.what, wrong.mend)


def _in_vinegar(recipe: Recipe, asked: Guess) -> Guess | None:
    """Return a preserve for "Pickles" where vinegar stands in the list, with a question."""
    if "if vinegar keeps it" not in asked.mend:
        return None
    for _, row in recipe.ingredients:
        sour = [food.name for food in staples_named(row) if "vinegar" in food.tags]
        if sour:
            what = f'{asked.what[:-1]}; "{sour[0]}" makes it look like "preserve".'
            return Guess("preserve", what, asked.mend)
    return None


def _steeped(recipe: Recipe, asked: Guess) -> Guess:
    """Return an infusion for "Rhubarb gin" where its method leaves fruit in it, with a question."""
    told = " ".join(row for _, row in recipe.steps)
    found = _LEFT_FOR.search(told) if "infusion" in asked.mend else None
    if found is None or not _SPIRIT.search(recipe.title):
        return asked
    what = f'{asked.what[:-1]}; "{" ".join(found[0].split())}" makes it look like "infusion".'
    return Guess("infusion", what, f"If it is another, write that: {', '.join(all_kinds())}.")


def says_its_kind(title: str) -> bool:
    """Whether a title says by its words what kind of making it is.

    >>> says_its_kind("Pear chutney"), says_its_kind("Icing")
    (True, False)
    """
    for word in _last_words(title):
        try:
            known = kind_called(word) is not None
        except Unreadable as wrong:
            known = "may be two kinds" in wrong.what
        if known:
            return True
    return bool(by_its_ending(title_of(title), as_title=True))


def _last_words(title: str) -> list[str]:
    """Return the words by which a title may say what it makes, the longest first.

    >>> _last_words("Dark chocolate fudge with nuts")
    ['dark chocolate fudge', 'chocolate fudge', 'fudge']
    >>> _last_words("Quick & easy marmalade")
    ['quick and easy marmalade', 'easy marmalade', 'marmalade', 'quick']
    >>> _last_words("Apple, pear and ginger jam")[-2:]
    ['jam', 'pear']
    """
    bare = re.sub(r"\([^)]*\)", " ", _BEFORE.sub("", title_of(title).lower()))
    bare = re.sub(r"\s[&+]\s", " and ", bare)
    parts = [part.strip() for part in re.split(r"\s[-–—|]\s|[:,/]", bare) if part.strip()]
    found: list[str] = []
    # "Apple, pear and ginger jam", but "Plum jam, with rum"
    last = [one for one in parts[1:][-1:] if "," in bare and one.split()[0] not in words("behind")]
    for part in [*parts[:1], *last]:
        said = re.findall(r"[^\W_]+(?:['’-][^\W_]+)*", part)
        if 2 < len(said) < 5:  # "herbes de Provence": a name of which "de" is a part
            found.append(" ".join(said))
        cut = next(
            (at for at, word in enumerate(said) if at and word in words("behind")), len(said)
        )
        # "standard mead recipe", "cocoa mint lip balm DIY": no kind is called so
        while cut > 1 and (said[cut - 1] in _SAYS_NOTHING or said[cut - 1].isdigit()):
            cut -= 1
        # "strawberry and rhubarb jam", "bread and butter pickles": what it is stands at the end
        if cut < len(said) and said[cut] in _JOINED:
            found += _last_words(" ".join(said[cut + 1 :]))
        found += _tails(said[:cut])
    return found


def _tails(said: list[str]) -> list[str]:
    return [" ".join(said[at:]) for at in range(max(0, len(said) - 4), len(said))]


def _perhaps_for_animals(recipe: Recipe, word: str) -> Guess:
    """Return the kind of a title; "biscuits" of a recipe that speaks of the dog are asked about."""
    said = " ".join((recipe.title, *(row for _, row in (*recipe.ingredients, *recipe.steps))))
    animals = _FOR_ANIMALS.search(said)
    if animals is None or find_kind(word).name not in ("bake", "confection"):
        return Guess(word)
    what = f'It says "{animals[0]}", and is taken for something that an animal eats.'
    return Guess("pet treat", what, f'If people eat it, it is of another kind: "{word}".')


def named_by_subject(recipe: Recipe, origin: Origin) -> str:
    """Return what a recipe is called: by its title, or by the subject of its letter.

    The subject names it where no title does, or one that says nothing of what is made.

    >>> letter = Origin("a.eml", title="Sloe cordial")
    >>> told = [("", "Bottle the cordial while it is hot.")]
    >>> named_by_subject(Recipe(title="Trial finished", steps=told), letter)
    'Sloe cordial'
    >>> named_by_subject(Recipe(title="Cordial of sloes", steps=told), letter)
    'Cordial of sloes'
    """
    if not recipe.title or origin.others or not origin.title:
        return recipe.title or origin.title
    said = (row for _, row in (*recipe.ingredients, *recipe.steps))
    words_of = " ".join((*said, *recipe.intro)).lower()
    if kind_of_title(recipe.title).word or is_said_again(recipe.title, words_of):
        return recipe.title
    if not is_said_again(origin.title, words_of):
        return recipe.title
    if plain(recipe.title) not in plain(origin.title.replace("(", " ").replace(")", " ")):
        recipe.intro.insert(0, recipe.title)  # "Pickled beets (Inlagda rödbetor)" says both
    return origin.title


def is_said_again(title: str, words_of: str) -> bool:
    """Whether a word of a title, or most of it, is said in a recipe's other words."""
    named = [word.lower()[:_STEM] for word in re.findall(r"[^\W\d_]+", title)]
    return any(len(word) >= _LEAST_STEM and word in words_of for word in named)
