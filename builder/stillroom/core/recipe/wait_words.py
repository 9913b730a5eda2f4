"""The words by which a method says that something waits, and what only looks like one.

Leaves out how a sentence of them is read: method_times.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.when.span_words import NUMBER, UNIT
from stillroom.core.when.spans import SPAN_PATTERN
from stillroom.core.words.patterns import late_regex

# the verb of a wait, and the word of a timeline it is written as
WAITS: Final = {
    "steep": "steep", "steeping": "steep", "infuse": "infuse", "infusing": "infuse",
    "macerate": "macerate", "marinate": "steep", "soak": "soak", "ferment": "ferment",
    "fermenting": "ferment", "mature": "mature", "maturing": "mature", "age": "mature",
    "mellow": "mature", "cure": "cure", "dry": "dry", "drying": "dry", "hang": "dry",
    "rise": "rise", "prove": "prove", "drip": "drip", "drain": "drip", "strain through": "drip",
    "chill": "chill", "refrigerate": "chill", "freeze": "freeze", "set": "set", "cool": "cool",
    "settle": "settle", "clear": "clear", "stand": "stand", "rest": "rest", "sit": "rest",
    "leave": "rest", "left": "rest", "set aside": "rest", "put aside": "rest", "put away": "rest",
    "wait": "wait", "store": "rest", "keep": "rest", "kept": "rest",
    "stir": "stir", "shake": "shake",
    "turn": "turn", "let": "rest", "forget": "rest", "bubble": "ferment", "harden": "harden",
    "stay": "rest", "remain": "rest", "return": "rest", "cover": "rest",
    "put": "rest", "pack": "rest", "develop": "mature", "allow": "rest",
    "lay": "rest", "laid": "rest", "lie": "rest", "suspend": "drip",
    "shaken": "shake", "pop": "rest", "popped": "rest", "shove": "rest",
    "stick": "rest", "tuck": "rest", "feed": "feed", "fed": "feed",
    "press": "rest", "brew": "steep", "bury": "cure", "buried": "cure",
}  # fmt: skip
TENDED: Final = {
    "shak": "shake",
    "stir": "stir",
    "turn": "turn",
    "swirl": "shake",
    "fe?ed": "feed",
    "flip": "turn",
    "add": "feed",
}
TENDED_OFTEN: Final = late_regex(
    rf"\b(?:{'|'.join(TENDED)})\w*\b(?: [a-z]+){{0,4}} (?:daily|weekly|regularly|occasionally|often"
    r"|(?:every|each|once|twice)\b|now and|from time to time)",
    re.IGNORECASE,
)
_PLACE: Final = r"(?!,? (?:dark|dry|cool|airy|place|cupboard|room|larder|spot|and|or)\b)"
VERB: Final = late_regex(
    rf"\b(?<!somewhere )(?:{'|'.join(sorted(WAITS, key=len, reverse=True))})"
    rf"(?:s|ed|ing|(?<=e)d)?\b{_PLACE}"
)
WAITED: Final = late_regex(rf"\b(?P<span>{SPAN_PATTERN}|overnight)")
# a clause that says how it keeps, how often or how old, but nothing to wait for
KEEPS: Final = late_regex(
    r"\b(?:keeps|kept|(?:will|(?<!you )(?:should|can|may|might|would|could|ought to)) (?:keep|last|"
    r"store|hold)|lasts?|stores well|stored (?:for|in)|shelf|within(?! an? (?:container|bowl|"
    r"jar|dish|bag|box|pan|pot|tub))|good for|best before|use by|"
    r"once opened|after opening|freezes? (?:well|for)|upto|(?<=days |eeks |nths |ears )old|ago|"
    r"(?:stays?|remains?) (?:[a-z]+ )?(?:good|fresh|crisp|crisply|crunchy|delicious|tasty|edible|"
    r"usable|soft|moist|chewy|perfect)|"
    r"in advance|ahead|per day|if you forget|must not|never|do not|don't|no longer than|"
    r"not be left)\b"
)
IF_YOU_CAN: Final = late_regex(r"\bif you can\b")
# "heat up to boiling" says nothing of how long
NO_LONGER: Final = late_regex(rf"\bup to (?={SPAN_PATTERN}|the )", re.IGNORECASE)
UP_TO: Final = late_regex(r"\s*(?:to|-|–)\s*")
ELSE: Final = late_regex(r"\b(?:after|or) $")
STORED: Final = late_regex(r"\b(?:store|keep|refrigerat|freez)")
MEANT: Final = late_regex(
    r"\bbefore\b|\bmust be (?:refrigerat|kept|stored|chill)|\b(?:shak|stirr|turn)ing\b"
    r"|\bat least\b|\bminimum\b|daily"
    r"|\b(?:shake|stir|turn|swirl)\b(?: [a-z]+){0,2} (?:regularly|occasionally|often|every|once)\b"
)
READY: Final = late_regex(
    r"\b(?P<what>ready|fit|usable|drinkable|(?:be|being) (?:used|eaten|drunk|opened)|"
    r"(?:use|eat|drink|taste|try|open|serve|sample|enjoy)(?: it| them| this)?|at its best|best)\b"
    r"(?P<between>(?: (?!not\b)[a-z]+){0,4}?) (?:after|in|from|for|at|when) "
    rf"(?:it is |they are |about )?(?P<span>{SPAN_PATTERN})"
)
# "in six months it will be fit to drink": the length before what it is ready for
# "eat in 5 days", "best eaten in 4 days": how long it keeps, and nothing to wait for
EATEN_WITHIN: Final = late_regex(
    r"(?:^|[,;:(] ?|\b(?:and|then|best|please|(?:should|must|is|are) (?:all )?(?:be|to be)|to be) )"
    r"(?:best )?(?:be )?(?:used?|eat(?:en)?|consumed?|finish(?:ed)?|served?|enjoy(?:ed)?)"
    rf"(?: (?:it|them|this|these|up|all))* in {SPAN_PATTERN}"
    rf"|\b(?:with)?in {SPAN_PATTERN},? (?:it|they|this|these) (?:should|must|ought to) be "
    r"(?:used|eaten|consumed|finished)"
)
READY_IN: Final = late_regex(
    rf"\b(?:in|after|within|at the end of|in the course of) (?:about )?(?P<span>{SPAN_PATTERN})"
    r"(?:'s? time)?(?:,| after [^,.;]{3,50},)? "
    r"(?:(?:it|they|this|these|the [a-z]+|which|you) )?(?:will|should|may|can|is|are|ought to)"
    r"(?: (?!not\b)[a-z]+){0,4}? "
    r"(?P<what>fit|ready|good|usable|drinkable|used|eaten|drunk|opened|best)\b"
)
# "after ten days, strain": what was waited for without a word that says so
_DONE: Final = (
    r"(?:strain|filter|sieve|bottle|rack|decant|transfer|press|drain|siphon|remove|take out|"
    r"fish out|unmould|taste|blend|blitz|pur[ée]e|whizz|pour off|"
    r"draw (?:(?:it|them) )?(?:off|out|into))"
)
AFTER: Final = late_regex(
    rf"\b(?:(?:after|at the end of) (?:about )?(?P<first>{SPAN_PATTERN})"
    rf"(?: or so| to {SPAN_PATTERN})?,? "
    rf"|(?P<later>{SPAN_PATTERN}) later,? )(?:[a-z]+ ){{0,2}}?{_DONE}\b"
    rf"|\b{_DONE}(?: (?!in\b|after\b)[a-z]+){{0,3}} (?:in|after|between) (?:about )?"
    rf"(?P<last>{SPAN_PATTERN})"
    rf"|\b{_DONE}(?: (?!after\b)[a-z]+){{4,7}} after (?:about )?(?P<leaves>{SPAN_PATTERN})"
    # "after 3 weeks the bubbling will slow down", "at three days' end", "takes about 6 weeks"
    rf"|\bafter (?:about |around )?(?P<slows>{SPAN_PATTERN})(?: or so| in [^,]{{3,30}})?,? "
    r"(?:it|they|the [a-z]+) (?:will |should )?(?:have |has )?"
    r"(?:start |begin |started |begun )?(?:to )?"
    r"(?:slow|stop|ceas|finish|clear|settl|sunk|sink|dissolv|los|soften|darken)"
    rf"|\bat (?P<ends>{SPAN_PATTERN})['’]? end\b"
    r"|\b(?:process|fermentation|maceration|infusion|steeping|curing|drying|age?ing|whole thing)"
    r" (?:will |should |can |may |usually |generally )*takes? (?:anything |anywhere )?"
    rf"(?:between |about |around |roughly )?(?P<takes>{SPAN_PATTERN})"
)
# "do not open it for 3 months", "not ripe before six months": what must be waited for
NOT_BEFORE: Final = late_regex(
    r"\b(?:not|n['’]t) (?:be )?(?:(?:[a-z]+ )??(?:ready|ripe|fit)(?: (?:for|to) [a-z]+)?|"
    r"(?:us(?:e|ed)|open(?:ed)?|eat(?:en)?|dr[iu]nk|touch(?:ed)?|tast(?:e|ed)|broach(?:ed)?))"
    rf"(?: (?:it|them|this|these))?(?: (?:for|before|until|till))? (?P<span>{SPAN_PATTERN})"
    rf"|\bresist (?:[a-z]+ ){{1,6}}?(?:for|before|until) (?:at least )?(?P<resisted>{SPAN_PATTERN})"
    rf"|\b(?:make|made|prepare|prepared|bake|baked)\b[^.;]{{0,60}}? (?P<made>{SPAN_PATTERN}) "
    r"(?:before|ahead|in advance)\b"
)
THEN: Final = late_regex(
    rf"\b(?:then|and) (?:[a-z]+ ){{0,2}}?{_DONE}\b"
    # "keep for three months, rack again"; what is drained when it is used has only kept
    rf"|^[,;] ?(?:(?:carefully|gently|finally) )?{_DONE}\b(?![^.;]{{0,40}}\b(?:before|when|as)\b)"
    # "keep in the dark for six weeks, then eat": till then it is not to be eaten
    r"|[,;] ?(?:and )?then (?:it (?:is|will be) |they (?:are|will be) )?"
    r"(?:ready|eat|enjoy|open|drink|serve|use)\b"
)
BEGINS: Final = late_regex(rf"(?:then |now |and |when ready,? )?{_DONE}\b")
ON_A_SHELF: Final = late_regex(r"\bon (?:a |the )?shelf\b")
BEFORE_USE: Final = late_regex(
    r"\bbefore (?:(?:it|they|you|we|being) ?(?:is|are|be)? ?)?"
    r"(?:us(?:e|ed|ing)|eat|drink|drunk|open|tap|broach|touch|tast|bottl|cut|serv|giv)"
)
THEREAFTER: Final = (
    r"(?:then|after (?:that|which)|thereafter|afterwards?|from then on(?:wards)?|subsequently)"
)
# "shake daily until the sugar has melted, then leave": the first of it has no length of its own
LAST_PART: Final = late_regex(
    r"[,;]? ?(?:and |but )?then\b|,? (?:and |then )?(?=(?:leave|let|store|keep|put|set aside|place|"
    r"return|allow|weekly|once an?|every)\b)"
)
TILL: Final = late_regex(r"\b(?:until|till|'?til)\b")
_EVERY: Final = (
    rf"\b(?:(?:every|each|per) (?:other |second |third )?(?:(?:{NUMBER}|few) )?{UNIT}|daily|weekly|"
    r"(?:once|twice|(?:(?:(?:three|four|\d) or )?(?:three|four|\d)|a (?:couple|few)(?: of)?|several"
    r"|many) times) (?:a|each|per) (?:day|week))"
)
EVERY: Final = late_regex(_EVERY)
GOES_ON: Final = late_regex(rf"[,;]? ?(?:(?:and |but )?{THEREAFTER}\b|(?:and|but) (?={_EVERY}))")
# "then weekly", "and weekly thereafter", "After that, shake it once a week": how often from then on
THEN_SO_OFTEN: Final = late_regex(
    rf"\b{THEREAFTER},? (?:(?!for\b)[a-z]+ ){{0,4}}?(?P<then>{_EVERY})"
    rf"|(?P<so>{_EVERY}) {THEREAFTER}\b(?! [a-z]+ it)"
)
FIRST_PART: Final = late_regex(rf"\bfirst (?:{NUMBER}(?:\s*(?:-|to|or)\s*{NUMBER})? ?)?{UNIT}")
IN_ALL: Final = late_regex(
    r"\b(?:in (?:all|total)|altogether|all told|insgesamt|zusammen|au total|en tout|en total"
    r"|in totaal|in tutto|totalt|sammanlagt|i alt|no total|łącznie)\b",
    re.IGNORECASE,
)
SEVERAL: Final = late_regex(r"^(?:a (?:couple|few)(?: of)?|several|many) times ")
OR_SO_OFTEN: Final = late_regex(r"^(?:three|four|\d) or (?=(?:three|four|\d) times)")


# "stirring for 10 minutes each day" is how often, "over the next ten days shake it daily" how long
BRIEFLY: Final = late_regex(
    r"\b((?:stir|shak|swirl|turn)(?:e|ing|ring)?(?: (?:it|well|gently|thoroughly))?) for "
    r"(?:about )?(?:an?|one|\w+)(?: ?(?:to|-|–) ?\w+)? (?:few )?(?:min(?:ute)?s?|sec(?:ond)?s?) "
    r"(?=(?:each|every|a|per|once|twice)\b)",
    re.IGNORECASE,
)
OVER_THE_NEXT: Final = late_regex(
    rf"\b(?:over|during|throughout) the (?:next|following|coming) ({SPAN_PATTERN}),? "
    r"((?:shake|stir|turn|swirl)\b[^.;,]{0,40})",
    re.IGNORECASE,
)
# as a cook shortens on a card
SHORT: Final = {
    "dly": "daily", "wkly": "weekly", "rdy": "ready", "aft": "after", "kps": "keeps",
    "abt": "about", "lve": "leave", "stp": "steep",
    "everyday": "every day",
    "approx": "about", "approximately": "about", "bfr": "before", "til": "until",
}  # fmt: skip
# "(do not leave longer than this)" says nothing against the wait beside it
WARNED: Final = late_regex(
    r"\s*\([^()]*\b(?:do not|don['’]t|never|no longer)\b[^()]*\)", re.IGNORECASE
)
# "Twenty Four Hours", as older books have it
TENS: Final = late_regex(
    r"\b(twenty|thirty|forty|fifty|sixty) (one|two|three|four|five|six|seven|eight|nine)\b", re.I
)
# "another month" is one, "a further 2 weeks" are two
ONE_MORE: Final = late_regex(
    rf"\b(?:another|a further|a second|one more)\s+(?={UNIT})", re.IGNORECASE
)
SO_MANY_MORE: Final = late_regex(rf"\b(?:another|a further)\s+(?={NUMBER}\b)", re.IGNORECASE)
# "Another month.", "Two more weeks in the dark, then strain": a wait without a word that says so
_DARK: Final = r"(?:,? (?:in|at|on|out of|somewhere|away from)\b(?:(?!\b(?:then|and)\b)[^.;,])*)?"
BARE_WAIT: Final = late_regex(
    rf"(?:then |and |and then |leave it )?(?:for )?(?P<span>{SPAN_PATTERN})(?P<where>{_DARK})"
    rf"(?P<then>,? (?:and |and then |then ){_DONE}\b.*|,? before {_DONE}\w*.*)?"
)
WORKED: Final = late_regex(
    r"(?:then |now |and |next,? )?(?:hang|dry|wipe|rinse|wash|pat|brush|scrape|remove|take|lift|"
    r"cut|slice|cook|boil|simmer|smoke|roll|pack|add|mix|stir|turn|dip|coat|shape|form|bake|knead|"
    r"spread|break|peel|unmould|unmold|dust|divide|whisk|beat|skim|discard|scoop|spoon|pour|whip|"
    r"heat|warm|melt|fold|blend|sprinkle|squeeze|mince|chop|grate|brine)\b"
)
MORE_TIME: Final = late_regex(r"\b(?:another|more|further|longer|a second)\b", re.IGNORECASE)
# "till next day", "a day and a night", "for the first week or two"
NEXT_DAY: Final = late_regex(
    r"\b(?:until|till|'?til|to) (?:the )?(?:next|following) (?:day|morning)\b", re.IGNORECASE
)
# "chill eight hours or overnight": a night will do, and a shorter wait is none of a day's
_HOURS: Final = r"(?:[1-9]|1[01]|one|two|three|four|five|six|seven|eight|nine|ten)"
OR_A_NIGHT: Final = late_regex(
    rf"\b(?:for )?(?:at least |about |a minimum of |minimum )?{_HOURS}"
    rf"(?:\s?(?:to|-|–)\s?(?:12|twelve|{_HOURS}))?[\s-]hours?,?"
    r" (?:or (?:even |better |preferably |ideally )?|to |and up to |or up to )overnight\b",
    re.IGNORECASE,
)
# "nach ca. 5 Tagen": no sentence ends there
STOPPED: Final = late_regex(
    r"\b(ca|c|circa|approx|aprox|env|mind|min|max)\.\s*(?=\d)", re.IGNORECASE
)
AND_NIGHT: Final = late_regex(
    r"\b(an?|one|two|three|four|\d+) (days?) and (?:(?:an?|one|two|three|four|\d+) )?nights?\b",
    re.IGNORECASE,
)
FIRST: Final = late_regex(
    rf"\b(?:for|during|in|over|throughout) the first ({UNIT})( or two)?", re.IGNORECASE
)
# "For the first fortnight, shake every day" is shaken daily for so long
FIRST_WEEK_BEFORE: Final = late_regex(
    rf"\b(?:for|during|in|over|throughout) the first ((?:{NUMBER} )?{UNIT}(?: or two)?),? "
    r"((?:shake|stir|turn|swirl|give)\b[^.;,]{0,30}?"
    r"(?:daily|(?:every|each|twice a|once a) (?:other )?day))",
    re.IGNORECASE,
)
ASIDE: Final = late_regex(r"\s*\([^()\d]{1,60}\)")
IF: Final = late_regex(r"(?:if|when|should)\b", re.IGNORECASE)
# "til" is a word of the Nordic languages too: "tre til fire uger", "til næste dag"
_NORDIC_TIL: Final = (
    r"(?!til\s+(?:\d|to|tre|fire|fem|seks|syv|otte|åtte|ni|ti|tolv|neste|næste|dagen|slut|slutt|sidst|sist"
    r"|den|det|de|et|en|servering|pynt)\b)"
)
SHORTENED: Final = late_regex(rf"\b{_NORDIC_TIL}(?:{'|'.join(SHORT)})\b\.?", re.IGNORECASE)
