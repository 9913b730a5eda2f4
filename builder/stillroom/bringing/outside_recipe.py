"""What stands on a page beside its recipe and is nobody's words of it: taken out before it is read.

Only what says by itself that it leads elsewhere, or when and where it was posted. Leaves out heads
of other parts ("Comments"): words.yml.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.page_foot import is_of_page
from stillroom.bringing.page_menus import rows_of_menus, without_edit_marks

# at the foot of a page, in six languages
_LEGAL = (
    r"(?:impressum|datenschutz(?:erklärung)?|agb"
    r"|cookie[- ]?(?:policy|settings|einstellungen|richtlinie)"
    r"|privacy(?:\s+policy)?|terms\s+(?:of\s+(?:use|service)|(?:and|&)\s+conditions)"
    r"|mentions\s+légales"
    r"|politique\s+de\s+confidentialité|aviso\s+legal|política\s+de\s+(?:privacidad|cookies)|note\s+legali"
    r"|informativa\s+(?:sulla\s+)?privacy|privacybeleid|colofon|integritetspolicy|sitemap)"
)
_LEADS: Final = re.compile(
    r"(?:(?:skip|jump)\s+to\s+[^\W\d]+(?:\s+[^\W\d]+){0,3}|for\s+(?:a|the)\s+print(?:able|er)?[\s-].{0,60}click\s+here\.?"
    r"|click\s+here\s+(?:for|to)\s.{3,80}"
    r"|(?:go|return|back|jump|skip)\s+to\s+(?:the\s+)?(?:.{2,50})?(?:page|archive|line|index|home|top|recipes?|list|menu|contents?|board|forum|crafts?|gifts?|projects?|blog|site)\.?"
    r"|(?:popular|related|older|newer|recent|previous|next)\s+(?:posts?|entr(?:y|ies)|articles?|recipes?)(?:\s+from\s+this\s+blog)?"
    r"|(?:posted|published)\s+(?:by\s+\S.{0,40}\s)?(?:(?:on|at)\s)?(?=.{0,12}\d).{4,40}\d(?:\s*[ap]\.?m\.?)?"
    r"|posted\s+in\s.{3,60}|filed\s+under:?\s.{3,80}|leave\s+a\s+(?:reply|comment)|share\s+this:?|like\s+this:?|loading\W*"
    r"|share\s+this\s*:?(?:[\s,|·]+\w+){1,10}[\s,|·]*|(?:print|save|pin|rate|share)\s+(?:this\s+)?recipe"
    r"|(?:email\s+this|blogthis!|share\s+to\s+\w+|pin\s+it|tweet|facebook|twitter|pinterest|instagram|whatsapp|[\s|,·]){2,}"
    r"|(?:partager|partagez)\s+(?:cet?te?\s+)?(?:article|recette|page)|(?:rezept|beitrag|seite|artikel)\s+(?:teilen|drucken|merken)"
    r"|(?:condividi|stampa|salva)\s+(?:questa\s+|questo\s+|la\s+)?(?:ricetta|articolo|pagina)"
    r"|(?:compart\w+|imprimir|guardar)\s+(?:esta\s+|este\s+|la\s+)?(?:receta|artículo|entrada|página)"
    r"|(?:deel|print|bewaar)\s+(?:dit|deze|het)\s+(?:recept|artikel|pagina|blog\w*)|imprimer\s+(?:cette\s+|la\s+)?recette"
    r"|(?:dela|skriv\s+ut|spara)\s+(?:det\s+här\s+|detta\s+|inlägget|receptet|recept)\w*"
    r"|(?:seguici|seguimi|folg(?:e|t)\s+(?:mir|uns)|suivez[- ](?:moi|nous)|sígue(?:me|nos)"
    r"|volg\s+(?:mij|ons)|följ\s+(?:mig|oss))\b.{3,60}"
    r"|(?:par\s*[-–]?\s*)?publié\s+le\b(?!.*\bpar\s).{0,60}|pin\s+share|follow\s+(?:me|us)\s+(?:on|at)\s.{3,60}|subscribe\s+(?:to|for|by)\s.{3,60}|sign\s+up\s+(?:for|to)\s.{3,60}"
    rf"|(?:{_LEGAL}|(?:{_LEGAL}|contact(?:\s+us)?|kontakt|about(?:\s+us)?|home|faq)[\s|·•,/–-]+){{1,6}}"
    rf"(?:{_LEGAL}|contact|kontakt|about)?"
    r"|(?:©|copyright|\(c\))\s*(?:19|20)\d\d.{0,80}"
    r"|(?:compartir|partager|condividi|delen|dela|share|teilen)\s+(?:en|sur|su|op|på|on|auf)\s+\w+|auf\s+\w+\s+teilen|die\s+redaktion\s+empfiehlt"
    r"|(?:we|vi|wir|wij|nous|(?:this|our|the)\s+(?:web)?site|(?:diese|unsere)\s+\w*seiten?|ce\s+site|questo\s+sito|este\s+sitio|este\s+site|deze\s+\w*site)\s+"
    r"(?:also\s+)?(?:uses?|using|använder|verwende[nt]|nutz\w+|utilis\w+|utiliz\w+|us[ai]\w*|gebruik\w*|bruger|bruker)\s+(?:des\s+|i\s+)?cookies\s*(?:to|on|for|and|för|,?\s?um|auf|pour|para|per|om|til)\s(?!the\s(?:base|crust|top)).{0,300}"
    r"|sendung\s*:\s.{3,120}\d.{0,6}|(?:sendetermin|ausstrahlung|erstsendung|aired|broadcast)\s*(?::|on)\s.{3,100}\d.{0,20}"
    r"|(?:did|have)\s+you\s+(?:make|made|try|tried)\s+(?:this|it)\b.{0,80}|tag\s+me\s+(?:on|at|@).{0,60}"
    r"|add\s+(?:an?\s+|your\s+)?(?:reviews?|comments?|ratings?)(?:\s+or\s+(?:reviews?|comments?|ratings?))?|download\s+(?:the\s+|this\s+)?(?:file|pdf|recipe)"
    r"|(?:sign|view|read)\s+(?:my|our|the)\s+guest\s?-?book"
    r"|retour\s+(?:à\s+(?:l['’]|la\s+)|aux?\s+)?(?:accueil|sommaire|menu|recettes?|liste|blog|page\s+d['’]accueil)|zurück\s+zu[rm]?\s+(?:start|haupt|über|inhalt)\w*|zurück"
    r"|torna\s+al(?:la|l['’])?\s*(?:home\w*|indice|inizio)|volver\s+al?\s+(?:inicio|índice)|terug\s+naar\s+(?:home\w*|(?:het\s+)?(?:overzicht|begin))"
    r"|mehr\s+(?:news|nachrichten|artikel|beiträge|rezepte)\b.{0,40}"
    r"|recipe\s+index|(?:rezept|receptregister|rezeptverzeichnis)(?:übersicht)|index\s+des\s+recettes|indice\s+delle\s+ricette"
    r"|close\s+(?:this\s+)?window|(?:\d+|no)\s+(?:views?|likes?|shares?|comments?|downloads?|min(?:ute)?s?\s+read)|(?:\d+\s+)?min(?:ute)?s?\s+read"
    r"|your\s+e-?mail\s+address\s+will\s+not\s+be\s+published\b.{0,80}|required\s+fields\s+are\s+marked\W*|save\s+my\s+name\b.{0,80}"
    r"|notify\s+me\s+(?:of|when)\b.{0,80}|(?:deine?|ihre)\s+e-?mail-?adresse\s+wird\s+nicht\b.{0,80}|votre\s+adresse\s+e-?mail\s+ne\s.{0,80}"
    r"|il\s+tuo\s+indirizzo\s+e-?mail\s+non\s.{0,80}|tu\s+dirección\s+de\s+correo\s.{0,80}|(?:jouw|je)\s+e-?mailadres\s+wordt\s+niet\s.{0,80}"
    r"|din\s+e-?postadress\s+kommer\s+inte\s.{0,80}|goes\s+well\s+with:?|reply\s*delete|sent\s+from\s+my\s+\w+"
    r"|(?:von\s+meinem|enviado\s+desde\s+mi|envoyé\s+de(?:puis)?\s+mon|inviato\s+dal?(?:\s+mio)?|(?:verzonden|verstuurd)\s+vanaf\s+mijn"
    r"|skickat\s+från\s+min|sendt\s+fra\s+min|wysłan[eo]\s+z(?:\s+mojego)?|odesláno\s+z(?:\s+mého)?|enviado\s+do\s+meu)"
    r"\s+\w+(?:\s+(?:gesendet|\w+))?\.?)",
    re.IGNORECASE,
)
# what a blog sets below each page: who posted it and when, its labels, its feed
_BLOG: Final = re.compile(
    r"(?:posted|publicado|gepostet|eingestellt|veröffentlicht|pubblicato|postato|publié|upplagd|geplaatst|gepost|lagt\s+ut|opslået|postado|opublikowane)"
    r"\s+(?:by|por|von|da|par|av|door|af|przez)\s+[^\W\d].{1,40}?\s(?:at|en|um|alle|à|kl\.?|op|o|às|a\s+las?|den|le|il|el|am|on)\s+\d.{0,40}"
    r"|(?:labels|etiquetas|etichette|libellés|etiketter|marcadores|etykiety|štítky|tags)\s*:\s*(?:[^\W\d][\w'’&-]*,?\s*){1,12}"
    r"|[^.!?]{3,40}\s?:\s[^.!?:]{3,60}\(Atom\)",
    re.IGNORECASE,
)
_BETWEEN: Final = re.compile(r"\s[|·•»›]\s")
_HOME = (
    r"(?:home(?:\s*page)?|start(?:seite|sida|side)|inicio|início|accueil|pagina\s+iniziale|hoofdpagina|página\s+(?:inicial|principal)"
    r"|hem|hjem|forside|strona\s+główna|domů|etusivu)"
)
_FIRST_PAGE: Final = re.compile(_HOME, re.IGNORECASE)
# the way to a page, or a site's menu: it begins or ends at the site's first page
_WAY: Final = re.compile(
    rf"(?:[^|»›\d]{{2,40}}\s[-–—]\s)?{_HOME}(?:\s*[»›>|/·•]\s*[^»›>|/·•\d]{{2,40}}){{1,8}}|(?:[^|»›\d]{{2,40}}\s[|»›]\s){{1,8}}{_HOME}|(?:[^|\d]{{2,30}}\s\|\s){{1,6}}"
    r"(?:contact|kontakt|contacto|contatti|contato|about(?:\s+me|\s+us)?|über\s+(?:mich|uns)|sobre\s+(?:mí|mim|nosotros)|à\s+propos|chi\s+sono|over\s+mij|om\s+mig)",
    re.IGNORECASE,
)
# "8 décembre 2021 · Bretagne · 2 commentaires": when it was posted, and what was said of it
_REMARKED: Final = re.compile(
    r"(?:\d+|no|keine?|aucun|nessun|sin|geen|inga|ingen|ei)\s+"
    r"(?:comments?|commentaires?|kommentare?|comentarios?|comentários?|commenti|commento|reacties?|kommentar(?:er)?|komentarz\w*|kommenttia)",
    re.IGNORECASE,
)
# a blog's buttons in its own languages: to the page before, to a friend
_BUTTON: Final = re.compile(
    r"entradas?\s+(?:más\s+)?(?:recientes?|antiguas?)|(?:neuer|älter)er?\s+(?:post|eintrag)|(?:article|message)\s+plus\s+(?:récent|ancien)"
    r"|post\s+più\s+(?:recente|vecchio)|(?:nieuwere|oudere)\s+post|(?:nyare|äldre)\s+inlägg|postagem\s+mais\s+(?:recente|antiga)"
    r"|(?:nyere|ældre|eldre)\s+(?:opslag|innlegg)"
    r"|envoyer\s+par\s+e-?mail|(?:diesen\s+post\s+)?per\s+e-?mail\s+(?:ver)?senden|enviar\s+por\s+(?:correo(?:\s+electrónico)?|e-?mail)"
    r"|invia(?:lo)?\s+(?:tramite|via)\s+e-?mail|(?:dit|deze)\s+e-?mailen|skicka\s+med\s+e-?post",
    re.IGNORECASE,
)
_COURTESY: Final = re.compile(
    r"(?:courtesy\s+of|with\s+thanks\s+to|thanks\s+to)\s+(?:our\s+)?(?:member\s+)?(?P<who>[A-ZÀ-Ý][^,.;:]{2,40})(?:[,;].{0,80}|\.?)",
    re.IGNORECASE,
)
# "3 tsp = 1 tbsp", "16 cups – 1 gallon": a table of measures, for any recipe
_A_UNIT = (
    r"(?:about\s+)?[\d½¼¾⅓⅔⅛][\d\s./,½¼¾⅓⅔⅛-]*(?:tsps?|tbsps?|teaspoons?|tablespoons?|cups?|fl\.?\s?oz|fluid\s+ounces?|oz|ounces?|pints?|pts?|quarts?|qts?"
    r"|gallons?|gal|lbs?|pounds?|sticks?|k?g|grams?|mg|ml|cl|dl|l|lit(?:re|er)s?|EL|TL|tassen?)\.?"
)
_SAME_MEASURE: Final = re.compile(
    rf"{_A_UNIT}(?:\s*(?:=|–|—|≈|equals?|is)\s*{_A_UNIT}){{1,3}}", re.I
)
_NAMES: Final = re.compile(r"(?:[A-ZÀ-Ý][\w'’.-]+\s?){2,4}")


def _leads_elsewhere(text: str) -> bool:
    """Whether a line leads to another page, or several pieces of it do.

    >>> _leads_elsewhere("back to crafts | sign my guestbook")
    True
    >>> _leads_elsewhere("Home » Kitchen » Teas & Syrups"), _leads_elsewhere("Entrada antigua")
    (True, True)
    >>> _leads_elsewhere("Back to the boil."), _leads_elsewhere("flour | sugar | butter")
    (False, False)
    """
    links = [one.strip() for one in _BETWEEN.split(text) if one.strip()]
    remarked = len(links) > 1 and any(map(_REMARKED.fullmatch, links))
    leads = bool(_LEADS.fullmatch(text) or _WAY.fullmatch(text) or remarked)
    links = [one for one in links if len(links) == 1 or not _FIRST_PAGE.fullmatch(one)]
    return leads or (bool(links) and all(map(_is_link, links)))


def _is_link(text: str) -> bool:
    return any(pattern.fullmatch(text) for pattern in (_LEADS, _BUTTON, _REMARKED))


def _is_of_no_recipe(text: str) -> bool:
    return bool(_leads_elsewhere(text) or _SAME_MEASURE.fullmatch(text) or is_of_page(text))


def without_furniture(rows: Sequence[Row]) -> list[Row]:
    """Return rows without what leads elsewhere; whose recipe it is stands there in plain words."""
    found: list[Row] = []
    gap = False
    rows = without_edit_marks(rows)
    menu = rows_of_menus(rows)
    for at, row in enumerate(rows):
        text = row.text.strip()
        who = _COURTESY.fullmatch(text) if row.shape != "item" else None
        if who and _NAMES.fullmatch(who["who"].strip()):
            found.append(replace(row, text=f"Submitted by {who['who'].strip()}"))
        elif at in menu or (row.shape == "line" and _BLOG.fullmatch(text)):
            gap = True
            continue
        elif row.shape != "step" and _is_of_no_recipe(text):
            gap = True  # what follows begins anew
            continue
        else:
            found.append(replace(row, gap=True) if gap and row.shape == "line" else row)
        gap = False
    return found
