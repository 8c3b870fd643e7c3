"""What rooms and the site as a whole need of the price book, and what that costs before contingency."""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Final

from optimizer.brief import Brief
from optimizer.catalogue.allowances import FURNITURE
from optimizer.catalogue.existing import LIFTED, NOTHING_THERE, Existing, overlaid
from optimizer.catalogue.price_book import PriceBook
from optimizer.catalogue.rooms import SizedChoice, SizedRoom

CENT: Final = Decimal("0.01")
SITE: Final = "site"
_LUMPS: Final = (
    "electric connection",
    "drainage",
    "planting of leftovers",
    "demolition and earth",
    "design and permits",
    "mobilisation",
    "survey",
)


@dataclass(frozen=True, slots=True)
class Charge:
    """So much of a price-book item, in a phase, for a room or for the site; quantities to the hundredth."""

    phase: int
    room: str
    item: str
    quantity: Decimal


def charge(*, phase: int, room: str, item: str, amount: float) -> Charge:
    """Charge with its quantity rounded to the hundredth, half up."""
    return Charge(phase, room, item, to_cents(Decimal(repr(float(amount)))))


def to_cents(amount: Decimal) -> Decimal:
    """Amount rounded to the hundredth, half up."""
    return amount.quantize(CENT, ROUND_HALF_UP)


def room_charges(choice: SizedChoice, room: SizedRoom, *, on_slab: bool = False) -> tuple[Charge, ...]:
    """Needs of a room of this choice, on open ground or on a slab that carries it."""
    own = room.phase_of(choice)
    return tuple(
        charge(phase=quantity.phase or own, room=room.name, item=quantity.item, amount=quantity.amount)
        for quantity in (overlaid(choice.quantities) if on_slab else choice.quantities)
    )


def fixed_charges(brief: Brief, existing: Existing = NOTHING_THERE) -> tuple[Charge, ...]:
    """Work done once, whatever is placed; every wished room is designed, also one that is left out in the end."""
    design = charge(phase=1, room=SITE, item="design of a room", amount=len(brief.rooms))
    lifted = charge(phase=1, room=SITE, item=LIFTED, amount=existing.lifted_sqft)
    lumps = (charge(phase=1, room=SITE, item=item, amount=1) for item in _LUMPS)
    return (*lumps, design, *([lifted] if lifted.quantity else []))


def owners_charges(brief: Brief) -> tuple[Charge, ...]:
    """What the owner sets aside beside all that builders do; `Budget.least` has it in every floor."""
    return (charge(phase=1, room=SITE, item=FURNITURE, amount=1),) if brief.budget.allowances.furniture else ()


def room_price(
    choice: SizedChoice, room: SizedRoom, book: PriceBook, existing: Existing = NOTHING_THERE, *, phase: int = 1
) -> Decimal:
    """Least that a room of this choice costs in a phase, before contingency: runs and paths come on top.

    Where its size lets it lie on a slab that is there, this is what it costs on the slab.
    """
    price = _price(room_charges(choice, room), book, phase)
    if not existing.may_carry(choice, room.rules):
        return price
    return min(price, _price(room_charges(choice, room, on_slab=True), book, phase))


def fixed_price(brief: Brief, book: PriceBook, existing: Existing = NOTHING_THERE) -> Decimal:
    """Phase 1 of what builders do once whatever is placed, before any step."""
    return _price(fixed_charges(brief, existing), book)


def _price(charges: tuple[Charge, ...], book: PriceBook, phase: int = 1) -> Decimal:
    amounts = (to_cents(c.quantity * book.of(c.item).price) for c in charges if c.phase == phase)
    return sum(amounts, Decimal(0))
