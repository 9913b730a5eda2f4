"""What the slip of a parcel says of the border it crosses, and of which presents it says nothing.

Fixed before it was tried: what borders let in, as GOV.UK, a ferry company after Regulation (EU)
2019/2122, US Customs, the Australian Department of Agriculture, Norwegian Customs, the Swiss food
safety office, the CFIA, Japan's quarantine service and New Zealand's MPI state it (posting.yml).
"""

from __future__ import annotations

from datetime import date

import pytest

from giving.lists import demo_recipes
from stillroom.giving.facts import facts_of
from stillroom.giving.posting import Parcel, to_ask, why_not_posted

BY_NAME = {recipe.slug: recipe for recipe in demo_recipes()}


@pytest.mark.parametrize(
    ("home", "to", "present", "asks"),
    [
        ("GB", "FR", "cocoa-marshmallow-mix", True),  # milk powder
        ("GB", "IE", "sea-buckthorn-curd", True),  # butter
        ("GB", "FR", "almond-shortbread", False),  # biscuits are let in
        ("GB", "DE", "salted-honey-toffee", False),  # sweets too
        ("GB", "FR", "bramble-jelly", False),
        ("GB", "FR", "felted-bauble", False),
        ("FR", "DE", "cocoa-marshmallow-mix", False),  # no border between them
        ("CH", "DE", "cocoa-marshmallow-mix", False),
        ("FR", "GB", "cocoa-marshmallow-mix", True),
        ("FR", "GB", "quince-chutney", False),
        ("GB", "US", "bramble-jelly", False),
        ("GB", "US", "almond-shortbread", False),
        ("GB", "AU", "dried-orange-garland", True),
        ("GB", "AU", "layered-soup-mix", True),
        ("GB", "AU", "oat-thyme-biscuits", False),
        ("AU", "AU", "dried-orange-garland", False),
        ("GB", "GB", "cocoa-marshmallow-mix", False),
        # Norwegian Customs: no milk by post from outside the EEA, but biscuits and chocolate
        ("GB", "NO", "cocoa-marshmallow-mix", True),
        ("GB", "NO", "almond-shortbread", False),
        ("GB", "NO", "quince-chutney", False),
        ("SE", "NO", "cocoa-marshmallow-mix", False),
        ("CH", "NO", "cocoa-marshmallow-mix", False),
        # the Swiss food safety office: from outside the EU, Norway and Iceland
        ("GB", "CH", "sea-buckthorn-curd", True),
        ("GB", "CH", "salted-honey-toffee", False),
        ("DE", "CH", "sea-buckthorn-curd", False),
        # CFIA: eggs and milk from elsewhere than the US
        ("GB", "CA", "sea-buckthorn-curd", True),
        ("GB", "CA", "almond-shortbread", False),
        ("GB", "CA", "bramble-jelly", False),
        ("US", "CA", "sea-buckthorn-curd", False),
        # Japan: no meat (here beef gelatine) by post
        ("GB", "JP", "cocoa-marshmallow-mix", True),
        ("GB", "JP", "layered-soup-mix", True),
        ("GB", "JP", "oat-thyme-biscuits", False),
        ("JP", "JP", "cocoa-marshmallow-mix", False),
        # New Zealand: every food is declared
        ("GB", "NZ", "salted-honey-toffee", True),
        # nothing was read of these, and that is said
        ("GB", "BR", "rosemary-salt", True),
        ("JP", "KR", "bramble-jelly", True),
        ("BR", "BR", "rosemary-salt", False),
        ("GB", "NZ", "rosemary-salt", True),
        ("NZ", "NZ", "rosemary-salt", False),
    ],
)
def test_a_border_is_asked_about_where_it_stops_such_a_present(home, to, present, asks):
    gifts = [(facts_of(BY_NAME[present]), "box")]
    said = [words for words, _ in to_ask(Parcel(to, home != to, None, None), home, gifts)]
    assert any(words.startswith("The border of") for words in said) is asks


def test_a_border_of_which_nothing_was_read_is_named_as_such():
    gifts = [(facts_of(BY_NAME["rosemary-salt"]), "box")]
    said = dict(to_ask(Parcel("BR", True, None, None), "GB", gifts))
    (words,) = (one for one in said if one.startswith("The border"))
    assert (
        words == "The border of Brazil: what it lets in is not known here. Ask before you pack it."
    )
    assert said[words] == "nothing was read of it"


def test_each_says_where_it_was_read():
    gifts = [(facts_of(BY_NAME["cocoa-marshmallow-mix"]), "box")]
    ((words, source),) = (
        row for row in to_ask(Parcel("IE", True, None, None), "GB", gifts) if "border" in row[0]
    )
    assert words.startswith("The border of the EU: ")
    assert "2019/2122" in source


@pytest.mark.parametrize(
    ("home", "to", "present", "goes"),
    [
        ("GB", "US", "heather-mead", False),  # as strong as a wine
        ("GB", "US", "quince-ratafia", False),
        ("DE", "US", "heather-mead", False),
        ("US", "US", "heather-mead", False),
        ("GB", "US", "bramble-jelly", True),
        ("GB", "US", "almond-shortbread", True),
        ("GB", "US", "rosemary-salt", True),
        ("GB", "US", "quince-chutney", True),
    ],
)
def test_the_postal_service_of_the_us_delivers_no_alcohol(home, to, present, goes):
    # USPS, Publication 52, 422.11 and 636: what it takes of nobody it delivers to nobody
    parcel = Parcel(to, home != to, None, None)
    facts = facts_of(BY_NAME[present])
    reasons = why_not_posted(parcel, home, facts, "box", date(2026, 11, 30))
    told = [one.one for one in reasons if "postal service of the US" in one.one]
    assert (told == []) is goes
