"""All parts of a concept: under each priced line what it consists of."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Final

from optimizer.catalogue import LIFTED, PAVING_ITEMS, Charge
from optimizer.derived import Derived
from optimizer.quantities import built, grounds, lights, services
from optimizer.quantities.part import Counted, Line, Part
from optimizer.quantities.paved import paving_parts

Trade = Callable[[Line, Counted], Iterator[Part]]

_TRADES: Final[Mapping[str, Trade]] = {
    **dict.fromkeys(PAVING_ITEMS, paving_parts),
    **dict.fromkeys(
        ("kitchen counter, plain", "kitchen counter, veneer", "kitchen counter, stone"), built.counter_parts
    ),
    "seat wall": built.seat_wall_parts,
    "retaining wall": built.retaining_parts,
    "steps": built.step_parts,
    "shade structure": built.shade_parts,
    "screen panel": built.screen_parts,
    "storage shed": built.shed_parts,
    "gas branch": services.gas_branch_parts,
    "gas run": services.gas_run_parts,
    "electric branch": services.electric_branch_parts,
    "electric run": services.electric_run_parts,
    "water branch": services.water_branch_parts,
    "water run": services.water_run_parts,
    lights.LIGHT: lights.light_parts,
    "earth cut": grounds.cut_parts,
    "earth fill": grounds.fill_parts,
    "spoil carted away": grounds.spoil_parts,
    "drainage": grounds.drain_parts,
    "planting of leftovers": grounds.planting_parts,
    "planting bed": grounds.bed_parts,
    "lawn": grounds.lawn_parts,
    "reserve ground": grounds.lawn_parts,
    LIFTED: grounds.lifted_parts,
    "tree fence and arborist": grounds.tree_parts,
    "pool shell": grounds.pool_parts,
    "future hot tub": grounds.tub_parts,
}
"""Who counts the parts of which item of the price book; other items are bought as they are."""


def parts_of(derived: Derived, charges: Sequence[Charge]) -> tuple[Part, ...]:
    """Parts of every line of a cost sheet, in the sheet's order; those of nothing are left out."""
    of = Counted(derived, charges)
    found = (part for line in of.lines if line.item in _TRADES for part in _TRADES[line.item](line, of))
    return tuple(part for part in found if part.quantity)
