"""What blows budgets in practice beside rooms and ways: each is in by a stated rule, or out and said to be out."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil
from typing import Final

from optimizer.catalogue import LIFTED, PAVING_ITEMS, SITE, Charge, charge
from optimizer.catalogue.steps import wall_needs_permit
from optimizer.derived import Derived
from optimizer.fields import site_shapes
from optimizer.grading import bank_cuyd, loose_cuyd
from optimizer.quantities.figures import value
from optimizer.quantities.grounds import trees_near_work
from optimizer.quantities.lights import LIGHT, site_lights
from optimizer.quantities.machine_way import hard_to_reach, worn_lawn_sqft
from optimizer.quantities.outlines import dug_sqft
from optimizer.quantities.part import Counted
from optimizer.quantities.paving import layer_cuyd
from optimizer.quantities.services import gas_demand_mbh

POOR_ACCESS: Final = "poor access"
RETURN: Final = "return to the site"
EARTH_AND_PAVING: Final = frozenset(
    {*PAVING_ITEMS, LIFTED, "earth cut", "earth fill", "spoil carted away", "pool shell"}
)
"""Items that are dearer where machines do not come: 15 to 25 %, layout rules."""


@dataclass(frozen=True, slots=True)
class Extra:
    """Something that a concept may need: how much of it, 0 where the rule leaves it out, and the rule with its figures.

    `usual` is how much it would be where it came in after all.
    """

    item: str
    amount: float
    rule: str
    usual: float = 1.0

    @property
    def is_in(self) -> bool:
        """Whether it is priced."""
        return self.amount > 0


def extras_of(derived: Derived, charges: Sequence[Charge]) -> tuple[Extra, ...]:
    """Everything of this kind, in or out, whatever a price book says of it."""
    of = Counted(derived, charges)
    return tuple(ask(of) for ask in _ASKED)


def extra_charges(stages: Mapping[int, Derived], charges: Sequence[Charge]) -> Iterator[Charge]:
    """Charges of what is in: of what stands after each phase, whatever it asks for beyond what was built before."""
    paid: dict[str, float] = {}
    for phase, stage in stages.items():
        for extra in extras_of(stage, [c for c in charges if c.phase <= phase]):
            if (more := extra.amount - paid.get(extra.item, 0.0)) > 0:
                paid[extra.item] = extra.amount
                yield charge(phase=phase, room=SITE, item=extra.item, amount=more)


def _lights(of: Counted) -> Extra:
    lights = site_lights(of.derived)
    counts = f"{lights.along_ways} and {lights.at_steps}"
    apart_ft, risers = value("way_light_ft"), value("risers_per_light")
    told = f"one for {apart_ft:g} ft of ways that guests and many trips take, one for {risers:g} risers: {counts}"
    return Extra(LIGHT, lights.along_ways + lights.at_steps, told)


def _spoil(of: Counted) -> Extra:
    """Earth out of the beds of paving; what levels ask to be cut is spread on the site, as its line says."""
    dug = layer_cuyd(dug_sqft(of.derived, of.build_up), of.build_up.dug_in)
    over = loose_cuyd(max(0.0, dug - bank_cuyd(of.derived.grading.fill_ccy)))
    told = f"{dug:,.0f} cu yd dug under paving, less what fill takes of it, as loose earth"
    return Extra("spoil carted away", over, told, usual=1.0)


def _lawn(of: Counted) -> Extra:
    worn = worn_lawn_sqft(of.derived)
    wide = f"open ground {value('track_ft'):g} ft wide"
    told = f"{wide} along the machines' shortest ways from their entrance to each paved room"
    missing = "" if of.derived.site.machine_entrances else "; the scenario names no entrance for machines"
    return Extra("lawn repair", worn, told + missing, usual=500.0)


def _downspouts(of: Counted) -> Extra:
    near_ft, each_ft = value("at_wall_ft"), value("downspout_wall_ft")
    houses = [house.exterior for house in site_shapes(of.derived.site).buildings]
    paved = [room.shape.buffer(near_ft) for room in of.derived.placed.once if "paving" in room.rules.built_as]
    along = sum(float(wall.intersection(ground).length) for wall in houses for ground in paved)
    count = ceil(along / each_ft - 1e-9)
    told = f"paving within {near_ft:g} ft of {along:,.0f} ft of house wall, one downspout for {each_ft:g} ft of it"
    return Extra("downspout led away", count, told, usual=2.0)


def _sub_panel(of: Counted) -> Extra:
    circuits = of.amount("electric branch") + (1 if of.amount(LIGHT) else 0)
    told = f"{circuits:g} new circuits, lights counted as one; a panel usually takes {value('circuits_at_panel'):g}"
    return Extra("sub-panel", float(circuits > value("circuits_at_panel")), told)


def _meter(of: Counted) -> Extra:
    demand = sum(gas_demand_mbh(room) for room in of.derived.placed.once)
    told = f"{demand:g} thousand Btu/h outdoors; a usual meter spares {value('gas_spare_mbh'):g} beside the house"
    return Extra("larger gas meter", float(demand > value("gas_spare_mbh")), told)


def _trees(of: Counted) -> Extra:
    near = trees_near_work(of.derived)
    told = f"work inside the root radius of {len(near)} kept tree{'s' * (len(near) != 1)}"
    return Extra("tree fence and arborist", float(bool(near)), told)


def _engineering(of: Counted) -> Extra:
    tallest = max((wall.height_ft for wall in of.derived.grading.walls), default=0.0)
    told = (
        f"tallest retaining wall {tallest:.1f} ft above the lower ground; above 4 ft from its footing one is designed"
    )
    return Extra("wall engineering", float(wall_needs_permit(tallest) and tallest > 0), told)


def _never(item: str, rule: str, usual: float = 1.0) -> Callable[[Counted], Extra]:
    return lambda _: Extra(item, 0.0, rule, usual)


_ASKED: Final[tuple[Callable[[Counted], Extra], ...]] = (
    _lights,
    _spoil,
    _lawn,
    _downspouts,
    _sub_panel,
    _meter,
    _trees,
    _engineering,
    _never("irrigation", "never in the price: ask whether beds and lawn should have automatic watering"),
    _never("service upgrade", "never in the price: an electrician must first see what the house already uses"),
    _never("accent light", "never in the price: lights at trees and walls are chosen at night, on the site", usual=6.0),
    _never("rock or poor ground", "never in the price: nobody has dug yet", usual=10.0),
)


def poor_access(derived: Derived, charges: Sequence[Charge]) -> tuple[Charge, ...]:
    """Charges that cost more because no machine comes to their room; those of the site where none comes to any."""
    hard = set(hard_to_reach(derived))
    if not hard:
        return ()
    paved = {room.name for room in derived.placed.once if "paving" in room.rules.built_as}
    rooms = {*hard, SITE} if hard >= paved else hard
    return tuple(c for c in charges if c.room in rooms and c.item in EARTH_AND_PAVING)


def later_phases(charges: Sequence[Charge]) -> Iterator[int]:
    """Phases after the first in which anything is built: builders come back for each."""
    yield from sorted({c.phase for c in charges if c.phase > 1 and c.quantity})
