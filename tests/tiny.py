"""A grid so small that every layout on it can be tried, with all that a problem may have: for exhaustive comparison."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from itertools import combinations, product

import numpy as np

from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Lattice
from optimizer.engine.grid.root_rings import RootRing
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import FORBIDDEN, Contact, Penalty, Stamp
from optimizer.engine.problem import Guide, Problem, ProblemRoom, RoomPair, Spot, State, modelled_value
from optimizer.engine.problem.count import gaps_between
from optimizer.engine.rules.apart import Apart
from optimizer.engine.rules.cook_looks_at_table import Ahead
from optimizer.engine.rules.near import Near
from optimizer.engine.terms import Order, Pull
from optimizer.engine.terms.near_misses import NearMiss
from optimizer.engine.terms.walking import Walking

COLUMNS, ROWS = 6, 5
LATTICE = Lattice(1.0, 0.0, 0.0, COLUMNS, ROWS)
CONTACT = Contact(may_overlap=False, gap=2, share=1)

TABLE = (Variant(0, 3, 2, None, (3, 2)), Variant(0, 2, 3, None, (2, 3)))
COOKER = (
    Variant(0, 2, 1, "+y", (2, 2), counter_ahead=1),
    Variant(0, 1, 2, "-x", (0, 2), counter_ahead=1),
    Variant(1, 2, 2, "-y", (2, 0), counter_ahead=1),
)
NOOK = (Variant(0, 2, 2, None, (2, 2)), Variant(1, 1, 1, None, (1, 1)))
"""Table, cooker and nook: the table must be there; the cooker has two choices, the first of them with two fronts."""


def room(name: str, variants: Sequence[Variant], losses: Sequence[int], absent: int, **facts: bool) -> ProblemRoom:
    """A room that may stand wherever it lies on the grid. Places cost more to the right: 3 a column exactly, of which
    the model counts tens.
    """
    shape = (ROWS, COLUMNS)
    places = np.zeros(shape, dtype=np.int64) + 3 * np.arange(COLUMNS)[None, :] * (1 + len(name) % 3)
    count = len(variants)
    return ProblemRoom(
        **{"name": name, "required": False, "walkable": True, "is_built": True, **facts},  # type: ignore[arg-type]
        variants=tuple(variants),
        losses=tuple(losses),
        allowed=tuple(fits(variant) for variant in variants),
        places=(places,) * count,
        floors=(places // 10 * 10,) * count,
        absent_loss=absent,
    )


def fits(variant: Variant) -> np.ndarray:
    """Corners at which a variant lies on the grid."""
    allowed = np.zeros((ROWS, COLUMNS), dtype=bool)
    allowed[: ROWS - variant.depth + 1, : COLUMNS - variant.width + 1] = True
    return allowed


def only_at(data: ProblemRoom, *corners: tuple[int, int]) -> ProblemRoom:
    """The room with no other corners (x, y) than these."""
    mask = np.zeros((ROWS, COLUMNS), dtype=bool)
    for x, y in corners:
        mask[y, x] = True
    return replace(data, allowed=tuple(allowed & mask for allowed in data.allowed))


ROOMS = (
    room("table", TABLE, (20, 20), 900, required=True),
    room("cooker", COOKER, (40, 40, 15), 160),
    room("nook", NOOK, (30, 90), 130),
)
PULLS = (Pull(0, (0, 0), 4), Pull(1, (11, 3), 3), Pull(2, (5, 9), 2))
ORDER = Order.over(((3,), (1,)), (COLUMNS + 1, ROWS + 1), rate=5, disorder_rate=2)
BUDGET = Amount("budget", uses=((4, 4), (5, 5, 3), (4, 2)), most=10)
STAMPS: dict[str, dict[tuple[int, int], tuple[Stamp, ...]]] = {
    "trips": {(0, 1): (Walking(6),), (0, 2): (Walking(3),), (1, 2): (Walking(2),)},
    "wishes": {
        (0, 1): (Walking(6), Penalty("wishes", Near(1.0, 1.0), 60), NearMiss(20, 12)),
        (0, 2): (Penalty("wishes", Apart(2.0, 1.0), 45),),
        (1, 2): (Penalty("apart", Apart(1.0, 1.0)), Penalty("wishes", Near(2.0, 1.0), 35)),
    },
    "rules": {
        (0, 1): (Penalty("cook looks at table", Ahead(1)), Walking(4)),
        (0, 2): (Penalty("near", Near(1.0, 1.0)), Penalty("wishes", Apart(1.0, 1.0), 25)),
        (1, 2): (Penalty("apart", Apart(2.0, 1.0)), Walking(5)),
    },
}
CONTACTS = {"rules": {(0, 1): Contact(may_overlap=False, gap=2, share=1, must_touch=True, touch_share=2, shut=(1,))}}
NAMES = tuple(STAMPS)


_LEFT = np.arange(COLUMNS)[None, :] + np.zeros((ROWS, 1)) < 3
DOUBTFUL = Guide(((0, 0), (0, 0, 0), (0, 0)), 0, ((_LEFT, None), (None, _LEFT, ~_LEFT), (_LEFT, _LEFT)))
"""Places that the judge will likely refuse: they guide, and are in no bound."""


def tiny(name: str, **changes: object) -> Problem:
    """The problem with these stamps; nothing on it is asked of the plan."""
    pairs = tuple(
        RoomPair(a, b, CONTACTS.get(name, {}).get((a, b), CONTACT), STAMPS[name].get((a, b), ()), ())
        for a, b in combinations(range(len(ROOMS)), 2)
    )
    problem = Problem(
        context=Context(scenario=None, rooms=(), pose=None, site=None, lattice=LATTICE),  # type: ignore[arg-type]
        rooms=ROOMS,
        pairs=pairs,
        pulls=PULLS,
        order=ORDER,
        amounts=(BUDGET,),
        rings=(),
        reach=None,
        guide=Guide(tuple((0,) * len(data.variants) for data in ROOMS), 0),
    )
    return replace(problem, **changes)  # type: ignore[arg-type]


def ring(most_sqft: float) -> RootRing:
    """A ring over the two middle columns, a square foot in each cell."""
    cells = np.zeros((ROWS, COLUMNS))
    cells[:, 2:4] = 1.0
    return RootRing(cells, most_sqft)


def spots(data: ProblemRoom) -> list[Spot | None]:
    """Every place of a room, and none where it may be left out."""
    found: list[Spot | None] = [
        Spot(v, int(x), int(y)) for v, allowed in enumerate(data.allowed) for y, x in np.argwhere(allowed)
    ]
    return found if data.required else [*found, None]


def is_kept(problem: Problem, state: State) -> bool:
    """Whether a state keeps contacts, rules between rooms and amounts."""
    for amount in problem.amounts:
        used = sum(amount.uses[index][spot.variant] for index, spot in enumerate(state) if spot is not None)
        if used < amount.least or (amount.most is not None and used > amount.most):
            return False
    return all(_pair_is_kept(problem, pair, state[pair.first], state[pair.second]) for pair in problem.pairs)


def _pair_is_kept(problem: Problem, pair: RoomPair, one: Spot | None, other: Spot | None) -> bool:
    if one is None or other is None:
        return True
    gaps = gaps_between(problem, pair, one, other)
    return bool(pair.contact.kept(gaps)[0, 0]) and all(s.cents(gaps)[0, 0] < FORBIDDEN for s in pair.stamps)


def every_state(problem: Problem) -> Iterator[State]:
    """Every layout that keeps all, the pairs of the first room tried first."""
    first, *others = (spots(data) for data in problem.rooms)
    for one in first:
        fitting = [
            [spot for spot in own if _pair_is_kept(problem, problem.pair(0, index), one, spot)]
            for index, own in enumerate(others, 1)
        ]
        yield from (state for rest in product(*fitting) if is_kept(problem, state := (one, *rest)))


@cache
def every_value(name: str) -> dict[State, int]:
    """What the model counts of every layout of a tiny problem that keeps all."""
    problem = tiny(name)
    return {state: modelled_value(problem, state) for state in every_state(problem)}
