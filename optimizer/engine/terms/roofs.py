"""A roof that stands already and stays empty.

Where no two rooms can lie under one roof at once, the loss is exact: one room carries it, wherever it stands and where
it is left out, and every room gives it back where it lies under the roof. Where two rooms could share a roof, giving
back would pay twice: then the explorer counts the first of the rooms alone, and the model nothing.
"""

from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations, product

import numpy as np

from optimizer.catalogue import SizedRoom, cover_price, rates
from optimizer.engine.grid.anchors import corners_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant, variants_of
from optimizer.engine.terms.term import Money, Term, nowhere
from optimizer.fields.roofs import lies_under, may_use, roof_sqft
from optimizer.site import Structure


def _exclusive(context: Context, room: SizedRoom, variant: Variant, _allowed: Cells) -> Money | None:
    """What a place loses or gives back, of roofs for one room at a time."""
    own = [(structure, users) for structure, users in _used(context, shared=False) if room in users]
    result = nowhere(context)
    for structure, users in own:
        result += _loss(context, structure) * (float(room == users[0]) - _under(context, structure, room, variant))
    return result if own else None


def _left_out(context: Context, room: SizedRoom) -> float:
    """What doing without the room that carries the loss of a roof loses."""
    own = [structure for structure, users in _used(context, shared=False) if users[0] == room]
    return sum(_loss(context, structure) for structure in own)


def _shared(context: Context, room: SizedRoom, variant: Variant, _allowed: Cells) -> Money | None:
    """What a place loses, of roofs that two rooms could share and of whose rooms this is the first."""
    own = [structure for structure, users in _used(context, shared=True) if users[0] == room]
    result = nowhere(context)
    for structure in own:
        result += _loss(context, structure) * ~_under(context, structure, room, variant)
    return result if own else None


def _used(context: Context, *, shared: bool) -> Iterator[tuple[Structure, list[SizedRoom]]]:
    """Structures of the kind that is asked, with the rooms that may use them: those that must be built first."""
    for structure in context.site.structures:
        users = sorted((r for r in context.rooms if may_use(structure, r)), key=lambda room: not room.required)
        if users and _can_share(context, structure) == shared:
            yield structure, users


@lru_cache(maxsize=16)
def _can_share(context: Context, structure: Structure) -> bool:
    """Whether two rooms that may use the roof have places under it that do not overlap."""
    reaches = [_reaches(context, structure, room) for room in context.rooms if may_use(structure, room)]
    return any(
        one[0] <= other[1] or other[0] <= one[1]
        for first, second in combinations(reaches, 2)
        for axes in product(first, second)
        for one, other in zip(*axes, strict=True)
    )


def _reaches(context: Context, structure: Structure, room: SizedRoom) -> list[tuple[tuple[int, int], tuple[int, int]]]:
    """For each variant, along x and along y, the least end and the largest start of its places under the roof."""
    found = []
    for variant in variants_of(room, context.lattice):
        rows, columns = _under(context, structure, room, variant).nonzero()
        if len(rows):
            ends = int(columns.min()) + variant.width, int(rows.min()) + variant.depth
            found.append(((ends[0], int(columns.max())), (ends[1], int(rows.max()))))
    return found


def _loss(context: Context, structure: Structure) -> float:
    money = rates().empty_roof * cover_price(context.scenario.book) * roof_sqft(structure)
    return context.scenario.brief.weights.order * money


def _under(context: Context, structure: Structure, room: SizedRoom, variant: Variant) -> Cells:
    if not room.choices[variant.choice].seats:
        return np.zeros((context.lattice.rows, context.lattice.columns), dtype=np.bool_)
    return _of_size(context, structure, variant.width, variant.depth)


@lru_cache(maxsize=128)
def _of_size(context: Context, structure: Structure, width: int, depth: int) -> Cells:
    lattice = context.lattice
    x, y = corners_ft(lattice, (lattice.rows, lattice.columns))
    return lies_under(structure, x, y, width_ft=width * lattice.step_ft, depth_ft=depth * lattice.step_ft)


TERM = Term("roofs", place=_exclusive, left_out=_left_out, in_model="whole")
SHARED = Term("shared roofs", place=_shared, in_model="no")
