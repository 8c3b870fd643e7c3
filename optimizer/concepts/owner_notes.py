"""What an owner is told of a concept below its plan: its money, what safety asks, and what is particular to it.

A designer reads all cautions as they are made. Here what they all say of money and of trades is said once and in short,
and what is for the builder alone is left off; no caution of safety is.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from optimizer.catalogue import allowance_words, rounded, sized_rooms
from optimizer.concepts.cautions import BY_KIND, CONCEPT, GROUND, SUPPLIES, TREES, gas_cautions
from optimizer.concepts.counted import not_included_caution
from optimizer.concepts.future_cautions import way_in_cautions
from optimizer.concepts.future_words import DIG_CAUTION
from optimizer.concepts.money_cautions import money_cautions
from optimizer.concepts.money_words import about_words, level_words
from optimizer.concepts.option import Option
from optimizer.concepts.owner_words import in_owners_words, with_signs
from optimizer.concepts.phases import phase_cautions
from optimizer.concepts.words import listed
from optimizer.layout import Placed, placed_of
from optimizer.scenario import Scenario

_FIRE: Final = (
    "Fire and grill: the local fire code and the maker's listing decide how near they may stand to anything, and how "
    "far their heat and fumes reach."
)
_WATER: Final = "Water: barriers, bonding and setbacks of a pool or tub, now or later, follow local codes."
_SLOPES: Final = (
    "Slopes, steps, retaining walls, drainage and structures: a licensed professional designs them for the real ground."
)
_DIG: Final = (
    "Before anybody digs or drives a machine in: have lines in the ground marked, in the US call 811 two to three days "
    "ahead, and ask what carries the machine."
)


@dataclass(frozen=True, slots=True)
class OwnerNotes:
    """Sentences about money, and about what to take care of."""

    money: tuple[str, ...]
    care: tuple[str, ...]


def owner_notes(scenario: Scenario, option: Option) -> OwnerNotes:
    """Notes of a concept that has its cautions."""
    placed = placed_of(sized_rooms(scenario.brief), option.layout)
    said_elsewhere = {*_standing(scenario, placed), *_for_builders(scenario, option, placed)}
    own = (caution for caution in option.cautions if caution not in said_elsewhere)
    return OwnerNotes(
        tuple(_as_read(scenario, note) for note in _money(scenario, option)),
        tuple(_as_read(scenario, note) for note in (*_safety(scenario, placed), *own)),
    )


def _as_read(scenario: Scenario, note: str) -> str:
    return in_owners_words(with_signs(note, scenario.currency))


def _money(scenario: Scenario, option: Option) -> Iterator[str]:
    """What it costs now and later, in other materials, what is not in it, and where prices come from."""
    cost, currency, budget = option.appraisal.cost, scenario.currency, scenario.brief.budget
    known, ceiling = cost.range_of(1), budget.ceiling
    passes = ceiling is not None and known is not None and known.high > ceiling
    wait = " That may pass the ceiling: agree now on what would wait." if passes else ""
    yield f"{about_words(cost, currency)}{wait}"
    later = [f"phase {phase} about {rounded(amount):,.0f} {currency}" for phase, amount in cost.phases if phase > 1]
    if later:
        yield f"Later, at today's prices: {listed(later)}."
    yield from way_in_cautions(scenario, cost, option.futures)
    if words := level_words(option, currency):
        yield words
    if left_out := option.not_included:
        low, high = (rounded(sum(getattr(one, end) for one in left_out)) for end in ("low", "high"))
        named = listed([one.item for one in left_out])
        yield f"Not in the price, {low:,.0f} to {high:,.0f} {currency} where all of it is needed: {named}."
    yield f"{allowance_words(budget.allowances, currency)} {scenario.book.said.removeprefix('Prices: ')}"


def _safety(scenario: Scenario, placed: Placed) -> Iterator[str]:
    """Cautions of safety, by what there is; slopes, structures, supplies and digging always."""
    kinds = {room.kind for room in placed}
    yield SUPPLIES
    if kinds & {"fire", "kitchen"}:
        yield _FIRE
    if kinds & {"reserve", "pool"}:
        yield _WATER
    yield _SLOPES
    yield _DIG
    if scenario.site.trees:
        yield TREES


def _standing(scenario: Scenario, placed: Placed) -> Iterator[str]:
    """Cautions that the notes on safety say in short."""
    yield from (CONCEPT, GROUND, TREES, SUPPLIES, DIG_CAUTION, *BY_KIND.values())
    yield from gas_cautions(scenario, placed)


def _for_builders(scenario: Scenario, option: Option, placed: Placed) -> Iterator[str]:
    """Cautions about money, which is said above them, and about the order in which phases are built."""
    cost, currency = option.appraisal.cost, scenario.currency
    yield from money_cautions(scenario, cost)
    yield from way_in_cautions(scenario, cost, option.futures)
    yield from phase_cautions(scenario, placed, cost, currency)
    yield from not_included_caution(option.not_included, currency)
