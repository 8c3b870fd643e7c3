"""The model of what is nearest has every layout, mirror images too, and forbids what it is told to and no more."""

import threading
from dataclasses import replace
from itertools import product

import pytest

from optimizer.engine.amounts import Amount
from optimizer.engine.model.nearest import FINE, Wanted, forbid, nearest_model
from optimizer.engine.prover.nearest import Nearest
from optimizer.engine.prover.solve import Effort, solve
from tests.containers import DENSE
from tests.tiny import is_kept, spots

BOX = DENSE["a box"]
KEPT = [state for state in product(*(spots(data) for data in BOX.rooms)) if is_kept(BOX, state)]


def wanted(state):
    """Every room where it stands in a state; another variant counts as much as a step."""
    sizes = [data.variants[spot.variant].size for data, spot in zip(BOX.rooms, state, strict=True)]
    middles = [
        (FINE * (2 * spot.x + size[0]), FINE * (2 * spot.y + size[1])) for spot, size in zip(state, sizes, strict=True)
    ]
    return [
        Wanted(middle, tuple(2 * FINE * (v != spot.variant) for v in range(len(data.variants))), 50 * FINE)
        for data, spot, middle in zip(BOX.rooms, state, middles, strict=True)
    ]


def is_near(state, other, within):
    """Whether all rooms stand with the same variants within so many steps."""
    return all(
        a.variant == b.variant and max(abs(a.x - b.x), abs(a.y - b.y)) <= within
        for a, b in zip(state, other, strict=True)
    )


@pytest.mark.parametrize("state", KEPT[:: len(KEPT) // 12])
def test_every_layout_is_the_nearest_to_itself(state):
    """Though a container mirrors itself, no image of a layout is left out."""
    answer = solve(nearest_model(BOX, wanted(state)), Effort())
    assert (answer.verdict, answer.objective, answer.state) == ("optimal", 0, state)


@pytest.mark.parametrize("within", [0, 1])
def test_what_is_forbidden_is_no_more(within):
    """The nearest of what is left, by hand."""
    state = KEPT[len(KEPT) // 3]
    built = nearest_model(BOX, wanted(state))
    forbid(built, [*enumerate(state)], within=within)
    answer = solve(built, Effort())
    left = [other for other in KEPT if not is_near(state, other, within)]
    assert answer.state in left
    assert answer.objective == min(counted(state, other) for other in left)


def test_what_is_refused_alone_may_come_again_with_a_room_more():
    """With it the judge may let it pass, and without it "nearest" would be said of one that lies farther."""
    last, state = replace(BOX.rooms[2], required=False), KEPT[0]
    unwanted = Wanted(None, (1,) * len(last.variants), 0)
    nearest = Nearest(replace(BOX, rooms=(*BOX.rooms[:2], last)), [*wanted(state)[:2], unwanted])
    alone = nearest.next(seconds=10, stop=threading.Event())
    assert (alone.objective, alone.state) == (0, (*state[:2], None))
    nearest.refuse(alone.state)
    again = nearest.next(seconds=10, stop=threading.Event())
    assert (again.verdict, again.objective, again.state[:2]) == ("optimal", 1, state[:2])
    assert nearest.is_sound


@pytest.mark.parametrize("cents", [0, 5])
def test_what_passes_the_ceiling_is_answered_by_what_costs_less(cents):
    """By so much at the least, if only by a cent: the rest of what it costs is the ways', so nothing is proven then."""
    state = next(state for state in KEPT if state[0].variant == 1)
    priced = replace(BOX, amounts=(Amount("budget", ((4, 9), (5,), (3,)), most=17),))
    nearest = Nearest(priced, wanted(state))
    assert nearest.next(seconds=10, stop=threading.Event()).state == state
    nearest.save(state, cents)
    assert nearest.next(seconds=10, stop=threading.Event()).state[0].variant == 0
    assert not nearest.is_sound
    nearest.save(state, 6)
    assert nearest.next(seconds=10, stop=threading.Event()).verdict == "infeasible"


def counted(state, other):
    """What a layout counts where another one is wanted."""
    total = 0
    for want, data, spot in zip(wanted(state), BOX.rooms, other, strict=True):
        width, depth = data.variants[spot.variant].size
        middle = (FINE * (2 * spot.x + width), FINE * (2 * spot.y + depth))
        total += sum(abs(a - b) for a, b in zip(middle, want.middle, strict=True)) + want.changes[spot.variant]
    return total
