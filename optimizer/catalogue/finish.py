"""Finishes of the ground: the palette of a yard, its patterns, what is cut away, and what that does to prices."""

from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cache
from typing import Any, Final, get_args

from optimizer.brief import Finish, FinishLevel, FinishPartName, FinishWish, Material, Pattern
from optimizer.catalogue.bill import to_cents
from optimizer.catalogue.data_files import data
from optimizer.catalogue.price_book import PriceBook, UnitPrice

PAVING_ITEMS: Final = ("unit paving", "plain paving", "path paving", "unit paving overlay", "plain paving overlay")
"""Items of the price book that are laid in the material of the field."""
PALETTE_PARTS: Final[tuple[FinishPartName, ...]] = get_args(FinishPartName)
_FILE: Final = "finishes.yaml"


@dataclass(frozen=True, slots=True)
class MaterialFacts:
    """What is known of a material: invented price ratio to unit paving, tones by color, patterns, the usual first."""

    price_ratio: Decimal
    colors: tuple[tuple[str, str], ...]
    patterns: tuple[Pattern, ...]


@dataclass(frozen=True, slots=True)
class ChosenFinish:
    """A part of the palette with its color chosen."""

    material: Material
    color: str

    @property
    def words(self) -> str:
        """As a sheet names it."""
        return f"{self.material}, {self.color}"


@dataclass(frozen=True, slots=True)
class Palette:
    """Field, border course, accent and cap of seat walls, and the pattern that fields are laid in by room."""

    field: ChosenFinish
    border: ChosenFinish
    accent: ChosenFinish
    cap: ChosenFinish
    pattern: Pattern
    by_room: tuple[tuple[str, Pattern], ...] = ()


@cache
def material_facts(material: Material) -> MaterialFacts:
    """Facts of a material, from the file of finishes."""
    entry: dict[str, Any] = data(_FILE)["materials"][material]
    return MaterialFacts(
        price_ratio=Decimal(str(entry["price_ratio"])),
        colors=tuple(entry["colors"].items()),
        patterns=tuple(entry["patterns"]),
    )


@cache
def palette_of(wish: FinishWish) -> Palette:
    """The scenario's own parts, else the usual ones."""
    field = _part("field", wish.field)
    return Palette(
        field=field,
        border=_part("border", wish.border),
        accent=_part("accent", wish.accent),
        cap=_part("cap", wish.cap),
        pattern=wish.pattern or material_facts(field.material).patterns[0],
        by_room=wish.by_room,
    )


def _part(name: FinishPartName, wished: Finish | None) -> ChosenFinish:
    usual = data(_FILE)["palette"][name]
    finish = wished or Finish(usual["material"], usual["color"])
    return ChosenFinish(finish.material, finish.color or material_facts(finish.material).colors[0][0])


def usual_levels() -> tuple[str, ...]:
    """Names of the levels that a yard may offer without saying more, from the least to the most."""
    return tuple(data(_FILE)["levels"])


@cache
def usual_level(name: str) -> FinishLevel | None:
    """The usual level of that name, with what differs from the usual palette; None where there is none."""
    entry: dict[str, Any] | None = data(_FILE)["levels"].get(name)
    if entry is None:
        return None
    parts: dict[str, Any] = {part: Finish(**entry[part]) for part in PALETTE_PARTS if part in entry}
    return FinishLevel(name, FinishWish(**parts), float(entry["worth_factor"]))


def price_ratio(wish: FinishWish) -> Decimal:
    """What paving costs in a finish against unit paving: that of its field."""
    return material_facts(palette_of(wish).field.material).price_ratio


def cuts_share(pattern: Pattern, *, turned: bool = False) -> float:
    """Share of an area that is cut away and ordered on top of it; common practice, no source."""
    share = float(data(_FILE)["cuts"][pattern])
    return max(share, float(data(_FILE)["cuts_turned"])) if turned else share


def border_width_ft() -> float:
    """Width of a border course [ft]."""
    return float(data(_FILE)["border_ft"])


def finished_book(book: PriceBook, wish: FinishWish) -> PriceBook:
    """The same book with all paving at the price of the field's material; the book itself at a ratio of 1.

    Engine and take-off read one book, so that the least a room costs stays a bound of what it costs. Border, accent and
    cap are counted at the field's price.
    """
    ratio = price_ratio(wish)
    if ratio == 1:
        return book
    return replace(book, prices=tuple(_finished(price, ratio) for price in book.prices))


def _finished(price: UnitPrice, ratio: Decimal) -> UnitPrice:
    if price.item not in PAVING_ITEMS:
        return price
    of, low, high = (to_cents(amount * ratio) for amount in (price.price, price.low, price.high))
    return replace(price, price=of, low=low, high=high)
