"""Everything worked out for one giving list: what the pages, the papers and the calendar show."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.money import show_money
from stillroom.core.book import BookSettings
from stillroom.core.label.labelling import UsageCard, make_card
from stillroom.giving.batches import Making, Present
from stillroom.giving.money.costs import CostSheet
from stillroom.giving.money.shopping import Row
from stillroom.giving.offering import Offering
from stillroom.giving.plan_file import KeptPlan
from stillroom.giving.plan_model import Plan
from stillroom.giving.season import Season
from stillroom.giving.standing import Standing


@dataclass(frozen=True)
class Pack:
    """Everything worked out for one giving list."""

    offering: Offering
    plan: Plan
    making: Making
    rows: tuple[Row, ...]
    costs: CostSheet
    settings: BookSettings
    complaints: tuple[str, ...]
    standing: Standing
    kept: KeptPlan | None = None

    @property
    def season(self) -> Season:
        """What is known of the season from its log."""
        return self.standing.season

    def money(self, value: Fraction, whole: bool = True, unknown: str = "not known") -> str:
        """Show money in the list's currency; a sum that is not `whole` lacks what has no price."""
        if not whole and not value:
            return unknown
        said = show_money(value, self.offering.giving.currency, self.settings.language)
        return said if whole else f"at least {said}"

    def cost(self, value: Fraction, whole: bool, nothing: str) -> str:
        """Show what something costs; where all of it was had before, say so and no price."""
        return nothing if whole and not value else self.money(value, whole)


def card_of(pack: Pack, present: Present) -> UsageCard:
    """Make the personal card of a present; the basket's message stands on its tag, once."""
    giving, settings = pack.offering.giving, pack.settings
    household = pack.offering.households[present.basket]
    site = settings.site_url.rstrip("/")
    return make_card(
        present.recipe,
        settings,
        present.made_on,
        to=household.to or household.name,
        sender=giving.from_,
        url=f"{site}/r/{present.recipe.slug}/" if site else "",
    )
