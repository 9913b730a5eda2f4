"""Whether a recipe leaves open how long it keeps: no time, and no word that could mean one.

"Keep in the fridge" leaves it to the book; days, "over the winter", "for ages", a cellar or weeks
of any kind do not, whether they are understood or not. Leaves out what the book says then:
keeping.yml.
"""

from __future__ import annotations

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_A_TIME_OR_A_SHELF = clause_regex(
    r"(?i)\b(?:days?|tage?n?|jours?|d[ií]as?|giorn[oi]|dag(?:en|ar|e)?|dygn"
    r"|weeks?|fortnights?|months?|years?|winter|summer|seasons?|ages|for ?ever"
    r"|indefinitely|long(?:er|est)?|christmas|woche\w*|monat\w*|jahr\w*|lange|länger|\w{4,}elang"
    r"|weihnacht\w*|semaines?|mois|ans|un an|années?|hiver|longtemps|noël|semanas?|mes(?:es)?|años?"
    r"|invierno|tiempo|navidad|settiman\w*|mes[ei]|ann[oi]|inverno|lungo|natale|week|weken"
    r"|maand\w*|jaar|kerst\w*|veck\w*|månad\w*|måned\w*|år|länge|lenge|længe|cellars?|pantry"
    r"|cupboards?|larder|shel(?:f|ves)|counter|worktop|room temperature|keller|speisekammer"
    r"|vorratskammer|schrank|cave|cellier|placard|cantina|dispensa|despensa|armario|kelder|kast"
    r"|skafferi\w*|källare\w*)\b"
)


def keeping_is_unsaid(recipe: Recipe) -> bool:
    """Tell whether nothing that a recipe says could be a time for which it keeps."""
    keeps = recipe.keeps
    if keeps.vaguely or recipe.timeline or (keeps.by != "book" and keeps.unopened):
        return False
    told = (recipe.summary, *(step.text for step in recipe.method))
    return not any(_A_TIME_OR_A_SHELF.search(text) for text in told)
