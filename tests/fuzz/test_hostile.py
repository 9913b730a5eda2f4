"""Texts that nobody had tried: read, or told of in a cook's words, within a second, nothing lost.

What was expected of all of them stood before the first was read; a larder of three thousand foods
took half a minute then.
"""

from __future__ import annotations

import pytest

from fuzz.readers import fault_of, readers
from stillroom.core.larder.own import read_own_larder

R = readers()
rec = R["recipe"].seeds[0]
top, _, body = rec.partition("\n---\n")


def fact(line: str) -> str:
    return f"{top}\n{line}\n---\n{body}"


giv = R["list"].seeds[1]
log = R["log"].seeds[0]
lar = R["larder"].seeds[0]
st = R["settings"].seeds[1]
CASES: list[tuple[str, str]] = []


def tried(name: str, *texts: str) -> None:
    CASES.extend((name, text) for text in texts)


tried(
    "recipe",
    fact("tags: " + "[a]" * 400),
    fact("tags: [" + ", ".join(f"t{i}" for i in range(20000)) + "]"),
    fact("keeps: !!binary aGk="),
    fact("keeps: !!timestamp 2027-01-01"),
    fact("keeps: 0x1F weeks"),
    fact("keeps: 1:30:00"),
    fact("keeps: .5"),
    fact("note: &a [*a]"),
    fact("<<: {title: x}"),
    fact("? [a, b]\n: c"),
    fact("title : again"),
    fact("TITLE: again"),
    fact("season: [Octember, 31 February]"),
    fact("card: {use: '%s'}" % ("w" * 20000)),
    fact("source: http://[::1"),
    fact("source: 'javascript:alert(1)'"),
    fact("picture: ../../etc/passwd"),
    fact("picture: con.svg"),
    fact("was: ../../x"),
    fact("was: 'a/b'"),
    fact("was: [a, [b]]"),
    rec.replace("\n", "\r"),
    rec.replace("\n", "\u2028"),
    rec.replace(" ", "\u00a0"),
    rec.replace(" ", "\u3000"),
    rec.upper(),
    rec[::-1],
    rec * 3,
    rec + "\n" + "> " * 3000 + "x",
    rec + "\n" + "- " * 3000 + "x",
    rec + "\n" + "*" * 20000,
    rec + "\n" + "_a" * 9000,
    rec + "\n" + "[a](" * 4000,
    rec + "\n" + "`" * 15001,
    rec + "\n```\n",
    rec + "\n<!-- never closed",
    rec + "\n<![CDATA[ x",
    rec + "\n<svg/onload=alert(1)>",
    rec + "\n[x](data:text/html,a)",
    rec + "\n![x](//h/x.png)",
    rec + "\n[a]: javascript:x\n\n[a]",
    rec + "\n" + "|a" * 3000 + "|\n" + "|-" * 3000 + "|\n",
    rec + "\n1. " + "a{quinces}" * 2000,
    rec + "\n1. {" + "{" * 500 + "quinces" + "}" * 500,
    rec + "\n1. {}",
    rec + "\n1. {quinces",
    rec + "\n## Method\n\n1. Again.",
    rec + "\n" + "## A\n\nb\n\n" * 3000,
    rec + "\n1. Bake at " + "9" * 400 + " °C for 1e400 minutes.",
    rec + "\n1. Wait -3 days, then ½/0 hours.",
    rec + "\n1. Keeps 3 weeks 2 weeks 1 week 99999 years.",
    "\ufeff\ufeff" + rec,
    "---\n---\n",
    "---",
    "",
    "\x00",
    "---\ntitle: a\n...\n---\n",
    top + "\n...\n" + body,
    "+++\ntitle='x'\n+++\n",
    '{"title": "x"}\n',
    "title: a\n\nno fences\n" * 2000,
    rec.replace("---", "***", 1),
    rec.replace("---", "———"),
    rec.replace(":", "："),
    rec.replace("- ", "‐ "),
    rec.replace("-", "−"),
)
tried(
    "list",
    giv.replace("households:", "households: !!set"),
    giv + "\nhouseholds: again\n",
    giv + "\n? x\n",
    giv.replace("basket: small", "basket: {small: {small: small}}"),
    giv.replace("small", '"' + "s" * 9000 + '"'),
    giv + "\nprices: {sugar: 1e309}\n",
    giv + "\nprices:\n  - {item: sugar, packs: 0 g for 0}\n",
    giv + "\nprices:\n  - {item: sugar, packs: [1 kg for £-3]}\n",
    giv + "\nprices:\n  - {item: sugar, packs: [1 kg for 3 EUR, 1 kg for 3 USD]}\n",
    giv + "\nprices: [[[[[]]]]]\n",
    giv + "\nmakes:\n" + "".join(f"  - {{recipe: r{i}}}\n" for i in range(3000)),
    giv + "\npeople:\n" + "".join(f"  - P{i} Q: no nuts\n" for i in range(1500)),
    giv.replace("giving day", "giving day: 2027-13-45 #"),
    "giving list: " + "[a, " * 900,
    "giving list: x\ngiving day: 24 December\nhouseholds:\n"
    "  - Jo: avoid nuts but not really, adults: -1, children: 1/0\n",
    "giving list: x\nhouseholds:\n  - {name: A, children: [9999999999]}\n",
    "giving list: x\nhouseholds:\n  - {name: A, pregnant: perhaps, adults: 2.5}\n",
    "giving list: x\nhouseholds: 7\n",
    "giving list: x\nhouseholds:\n  - \n  - null\n  - ~\n",
    giv.replace("\n", "\n\t"),
    giv.encode("utf-16").decode("latin-1"),
)
tried(
    "log",
    log + "  - {day: 0000-00-00, begun: x}\n",
    log + "  - {day: 2027-06-03, begun: [a, b]}\n",
    log + "  - {day: 2027-06-03}\n",
    log + "  - {begun: quince-ratafia}\n",
    log + "  - []\n",
    log + "  - {day: tomorrow, given: Jo, things: {jam: {a: 1}}}\n",
    log + "  - &a {day: 2027-06-03, begun: x, on: *a}\n",
    log * 50,
    log + "  - {day: 2027-06-03, begun: x, begun: y}\n",
    "giving log:\n" + "  - {day: 2027-06-03, begun: a}\n" * 5000,
    "giving log: {}\n",
    log.replace("-", "–"),
)
tried(
    "larder",
    lar + "\nself:\n  is: self\n",
    lar + "\na1:\n  is: a2\na2:\n  is: a1\n",
    lar + "\nx:\n  density: 1 cup weighs 0 g\n",
    lar + "\nx:\n  density: 0 cups weigh 3 g\n",
    lar + "\nx:\n  strength: 1e99% vol\n",
    lar + "\nx:\n  parts: [x, x, x]\n",
    lar + "\nx:\n  price: [1 kg for free]\n",
    lar + "\n'':\n  is: rum\n",
    lar + "\n" + "n" * 5000 + ":\n  is: rum\n",
    "".join(f"food{i}:\n  is: rum\n" for i in range(3000)),
)
tried(
    "settings",
    st + "\nnav: [[[[a]]]]\n",
    st + "\nextra: &a {b: *a}\n",
    st.replace("NO", "!!python/object/apply:os.system [id]"),
    st + "\nINHERIT: /dev/zero\n",
    st + "\nINHERIT: /etc/passwd\n",
    st + "\nINHERIT: .\n",
    st + "\nsite_url: http://" + "a." * 3000 + "\n",
    st + "\nhooks: [x.py]\n",
    st + "\nsite_dir: /\n",
    st + "\nsite_dir: .\n",
    st + "\ndocs_dir: site\nsite_dir: site\n",
    st + "\nsite_name: [a]\n",
    st + "\nplugins: {stillroom: {stillroom: {}}}\n",
    st + "\n%TAG ! x\n",
    st + "\n---\nsite_name: second\n",
    st + "\nextra_css: ['//h/x.css']\n",
    st + "\ntheme: {name: material, font: {text: X}, logo: https://h/x}\n",
)
tried(
    "import",
    "html~" + "<div>" * 20000,
    "html~<script type='application/ld+json'>" + "[" * 5000,
    "html~<script type='application/ld+json'>{"
    '"@type":"Recipe","name":{"a":[]},"recipeIngredient":{"x":1},'
    '"recipeInstructions":[[["a"]]]}</script>',
    'html~<script type=\'application/ld+json\'>{"@graph":[{"@type":["Recipe"],"recipeYield":1e999,'
    '"recipeIngredient":[null,3,true]}]}</script>',
    "html~<h1>Quince drops</h1><![x](y)><p>1 l vodka</p>",
    "html~<![CDATA[x]]><![endif]--><![ <p>1 l vodka</p>",
    "html~<p>&#1114112;&#0;&#xD800;</p>",
    "txt~" + "1 " * 20000,
    "txt~" + " ".join(f"a {n}th" for n in range(20000)),
    "txt~" + " ".join(f"a weight{'x' * (n % 9)} of word{n}" for n in range(9000)),
    "md~# A\n\nTake " + " of the rind of half an x and a y" * 4000,
    "txt~" + "a" * 300000,
    "txt~" + "½" * 9000,
    "txt~1/0 g sugar\n0 eggs\n-3 lemons\n",
    "md~" + "#" * 9000,
    "md~" + "* " * 9000,
    "md~# A\n\n- 1 g\n- g\n- ,\n- ()\n",
    "txt~\ufeff\n\n\n",
    "html~<table>" + "<tr><td>1 g salt" * 3000,
    "md~---\ntitle: [x\n---\n# A\n",
)
tried(
    "target",
    "times=1e999",
    "times=NaN",
    "times=0/0",
    "times=-0",
    "times=½½",
    "times=" + "9" * 4000,
    "makes=1 furlong",
    "makes=0 ml",
    "makes=900",
    "fill=0 x 50 ml",
    "fill=1 x 0 ml",
    "fill=" + " + ".join(["1 x 50 ml"] * 3000),
    "have=0 kg quinces",
    "have=1 kg",
    "have=1 kg " + "q" * 9000,
    "vessel=0 cm round",
    "vessel=9e99 l",
    "vessel=round",
    "times=３",
    "times=٣",
    "fill=3x50ml+",
    "have=+",
)


@pytest.mark.parametrize("number", range(len(CASES)))
def test_a_text_that_nobody_had_tried(number: int) -> None:
    name, text = CASES[number]
    assert fault_of(R[name], text) == "", name


def test_they_are_more_than_a_hundred_and_of_every_sort() -> None:
    assert len(CASES) > 150
    assert {name for name, _ in CASES} == set(R) - {"page", "line", "plan", "small"}


def test_a_food_of_a_long_larder_may_be_made_of_one_above() -> None:
    few = "ash rum:\n  also: [grey rum]\n  is: rum\n  contains: [nuts]\n"
    many = "".join(f"food {number}:\n  is: rum\n" for number in range(300))
    last = "our punch:\n  parts: [grey rum, sugar]\nour rum:\n  is: grey rum\n"
    short = read_own_larder(few + last, "larder.yml").larder.own
    long = read_own_larder(few + many + last, "larder.yml").larder.own
    assert long[-2:] == short[-2:]
    assert all("nuts" in food.allergens for food in long[-2:])
