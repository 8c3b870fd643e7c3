"""Figures in words: money in the scenario's currency, lengths in its units, lists as a person writes them."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from optimizer.catalogue import SHARE
from optimizer.concepts.owner_words import SIGNS, in_owners_words, with_signs
from optimizer.concepts.words import capital
from optimizer.scenario import Scenario
from optimizer.units import metres_from_feet

CAUTION: Final = (
    "Decision support at concept stage, not for construction. Gas, electricity, structure, slopes, drainage and water "
    "barriers follow local codes and the work of licensed practitioners."
)

_METRIC: Final = {
    "ft": ("m", Decimal("0.3048")),
    "sq ft": ("m²", Decimal("0.09290304")),
    "cu yd": ("m³", Decimal("0.764554857984")),
}
"""Units of a price book in metric ones, exact by the international foot."""
OWNERS_WORDS: Final = {
    "worth": "how much you would miss it",
    "ceiling": "all-in limit",
    "contingency": "for surprises",
    "reserve": "kept for later",
    "futures": "what could go there",
    "take-off": "quantities",
}
"""Words of the trade, and what an owner says for them."""
_CENTS_UNDER: Final = 100


@dataclass(frozen=True, slots=True)
class Words:
    """How one scenario's figures are said: its currency, its units (`ft` or `m`), and whether to a designer."""

    currency: str
    units: str
    for_designer: bool = False

    def term(self, trade: str) -> str:
        """Say a word of the trade as it is to a designer, and in an owner's words to everybody else."""
        return trade if self.for_designer else OWNERS_WORDS[trade]

    def money(self, amount: Decimal | float, *, cents: bool = False) -> str:
        """Say an amount as `$121,400`, or with the currency's code where it has no sign here."""
        figure = f"{abs(amount):,.{2 if cents else 0}f}"
        sign = SIGNS.get(self.currency, f"{self.currency} ")
        return f"{'−' if amount < 0 else ''}{sign}{figure}"

    def unit_price(self, price: Decimal) -> str:
        """Say the price of one unit: with cents only where a whole figure would be far off."""
        return self.money(price, cents=price < _CENTS_UNDER)

    def signed(self, text: str) -> str:
        """Write `1,523 USD` in a sentence of the program as `$1,523`, and its terms as this reader knows them."""
        text = with_signs(text, self.currency)
        return text if self.for_designer else in_owners_words(text)

    def length(self, length_ft: float) -> str:
        """Say a length given in feet as whole feet or as metres to a tenth (whole from 100 m)."""
        if self.units != "m":
            return f"{length_ft:,.0f} ft"
        metres = metres_from_feet(length_ft)
        return f"{metres:,.0f} m" if metres >= 100 else f"{metres:,.1f} m"

    def area(self, area_sqft: float) -> str:
        """Say an area given in square feet as whole square feet or as square metres."""
        if self.units != "m":
            return f"{area_sqft:,.0f} sq ft"
        return f"{metres_from_feet(metres_from_feet(area_sqft)):,.0f} m²"

    def earth(self, volume_cuyd: float) -> str:
        """Say a volume given in cubic yards as whole cubic yards or cubic metres."""
        if self.units != "m":
            return f"{volume_cuyd:,.0f} cu yd"
        return f"{volume_cuyd * float(_METRIC['cu yd'][1]):,.0f} m³"

    def counted(self, quantity: float, unit: str) -> str:
        """Say so many units of a take-off; feet as metres in a metric scenario, a share in per cent."""
        if unit == SHARE:
            return f"{number_words(quantity * 100)} %"
        name, size = _METRIC.get(unit, (unit, Decimal(1))) if self.units == "m" else (unit, Decimal(1))
        return f"{number_words(quantity * float(size))} {name}"

    def priced(self, quantity: Decimal, unit: str, price: Decimal) -> str:
        """Say so many units at what price; a metric scenario has a line that its book counts in feet by the metre."""
        name, size = _METRIC.get(unit, (unit, Decimal(1))) if self.units == "m" else (unit, Decimal(1))
        return f"{number_words(quantity * size)} {name} at {self.unit_price(price / size)}"


def words_of(scenario: Scenario, *, for_designer: bool = False) -> Words:
    """How this scenario's figures are said, to an owner unless to a designer."""
    return Words(scenario.currency, scenario.units, for_designer)


def number_words(value: Decimal | float) -> str:
    """Say a number with at most two decimals, and none that say nothing."""
    return f"{value:,.2f}".rstrip("0").rstrip(".")


def share_words(share: float) -> str:
    """Say a share of one in whole per cent."""
    return f"{share:.0%}"


def sentence(text: str) -> str:
    """Text with a capital at its start and one full stop at its end."""
    plain = text.strip().rstrip(".")
    return f"{capital(plain)}." if plain else ""
