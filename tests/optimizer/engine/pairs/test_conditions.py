"""What is asked of two rooms by offset: the table, the model and plane geometry say the same at every offset."""

import itertools
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from ortools.sat.python import cp_model
from shapely import Point, box

from optimizer.catalogue import book_for
from optimizer.engine.grid.variants import Variant
from optimizer.engine.model import Scope
from optimizer.engine.model.pair_model import PairModel
from optimizer.engine.model.separation import separate
from optimizer.engine.model.variables import room_variables
from optimizer.engine.pairs import FORBIDDEN, Contact, Gaps, Penalty
from optimizer.engine.problem import ProblemRoom, RoomPair, build_problem
from optimizer.engine.rules.apart import Apart
from optimizer.engine.rules.cook_looks_at_table import Ahead
from optimizer.engine.rules.faces import Faces
from optimizer.engine.rules.near import Near
from optimizer.engine.rules.touching import Touching
from tests.yards import plain_rooms, plain_yard

SMALL = Variant(0, 3, 2, None, (3, 2))
WIDE = Variant(0, 4, 3, "+y", (4, 6), counter_ahead=2)
TALL = Variant(0, 3, 4, "-x", (0, 4), covered=True)
ROUND = Variant(0, 5, 5, None, (5, 5), is_round=True)
SMALL_ROUND = Variant(0, 2, 2, None, (2, 2), is_round=True)
PAIRS = [
    (SMALL, WIDE),
    (WIDE, SMALL),
    (TALL, SMALL),
    (ROUND, TALL),
    (SMALL_ROUND, ROUND),
    (SMALL, TALL),
    (TALL, WIDE),
    (WIDE, ROUND),
]
STEP_FT = 1.5
OFFSETS = np.arange(-9, 10)
_EVEN_FT = 1e-9

CONDITIONS = {
    "near 4": Near(4.0, STEP_FT),
    "near 4.5, three steps": Near(4.5, STEP_FT),
    "near 0": Near(0.0, STEP_FT),
    "apart 0": Apart(0.0, STEP_FT),
    "apart 4": Apart(4.0, STEP_FT),
    "apart 4.5, three steps": Apart(4.5, STEP_FT),
    "apart of a covered first": Apart(4.0, STEP_FT, covered_end=0),
    "apart of a covered second": Apart(4.0, STEP_FT, covered_end=1),
    "touching 2": Touching(2),
    "the first faces": Faces(0),
    "the second faces": Faces(1),
    "the first has it ahead": Ahead(0),
    "the second has it ahead": Ahead(1),
}
CONTACTS = {
    "no overlap": Contact(may_overlap=False),
    "three steps or two of edge": Contact(may_overlap=False, gap=3, share=2),
    "the same, open sides shut": Contact(may_overlap=False, gap=3, share=2, shut=(0, 1)),
    "must touch": Contact(may_overlap=False, gap=3, share=2, must_touch=True, touch_share=2),
    "must touch, the second's open side shut": Contact(may_overlap=False, must_touch=True, touch_share=1, shut=(1,)),
    "a gap, or one over the other": Contact(gap=2, share=1),
    "a gap and never touching": Contact(may_overlap=False, gap=3, share=2, may_touch=False),
}


def gaps_of(first: Variant, second: Variant) -> Gaps:
    return Gaps(first, second, OFFSETS, OFFSETS, STEP_FT)


def by_hand(name: str, first: Variant, second: Variant, right: int, up: int) -> bool:
    """The condition said once more, corner by corner."""
    low, high = (right, up), (right + first.width, up + first.depth)
    other = (second.width, second.depth)
    gap = [max(0 - high[axis], low[axis] - other[axis]) for axis in (0, 1)]
    (one, radius), (another, its_radius) = ground(first, right, up), ground(second, 0, 0)
    distance_ft = max(0.0, one.distance(another) - radius - its_radius)
    overlap = [min(high[axis], other[axis]) - max(low[axis], 0) for axis in (0, 1)]
    touches = [gap[axis] == 0 and overlap[1 - axis] >= 2 for axis in (0, 1)]
    match name.split(" ", maxsplit=1)[0]:
        case "near":
            return distance_ft <= float(name.split(" ")[1].rstrip(",")) + _EVEN_FT
        case "apart":
            bare = (first, second)[name.endswith("second")].covered is False
            asked = 4.0 if "covered" in name else float(name.split(" ")[1].rstrip(","))
            return distance_ft >= asked - _EVEN_FT or ("covered" in name and bare)
        case "touching":
            return any(touches)
    one, end = (first, 0) if name.startswith("the first") else (second, 1)
    return opens_to(one, end, low, high, other, ahead="ahead" in name)


def ground(variant: Variant, x: int, y: int):
    """Ground of a variant with its corner there [ft]: a rectangle and 0, or the middle of a circle and its radius."""
    if variant.is_round:
        return Point(STEP_FT * (x + variant.width / 2), STEP_FT * (y + variant.width / 2)), STEP_FT * variant.width / 2
    return box(STEP_FT * x, STEP_FT * y, STEP_FT * (x + variant.width), STEP_FT * (y + variant.depth)), 0.0


def opens_to(one, end, low, high, other, *, ahead) -> bool:
    """Whether the room at an end opens towards the other, or has its middle before its counter."""
    if one.front is None:
        return True
    axis, sense = (0 if one.front[1] == "x" else 1), (1 if one.front[0] == "+" else -1)
    own, its = ((low, high), ((0, 0), other)) if end == 0 else (((0, 0), other), (low, high))
    if ahead:
        middles = [(box[0][axis] + box[1][axis]) for box in (own, its)]
        return sense * (middles[1] - middles[0]) >= one.counter_ahead
    beyond = its[0][axis] >= own[1][axis] if sense > 0 else its[1][axis] <= own[0][axis]
    across = 1 - axis
    return beyond and its[0][across] < own[1][across] and own[0][across] < its[1][across]


@pytest.mark.parametrize("pair", PAIRS, ids=str)
@pytest.mark.parametrize("name", CONDITIONS)
def test_the_table_says_what_geometry_says(name, pair):
    """At every offset of a window that reaches well beyond touching."""
    kept = CONDITIONS[name].kept(gaps_of(*pair))
    for (row, up), (column, right) in itertools.product(enumerate(OFFSETS), enumerate(OFFSETS)):
        assert kept[row, column] == by_hand(name, *pair, int(right), int(up)), (right, up)


@pytest.mark.parametrize("name", [name for name in CONDITIONS if CONDITIONS[name].reach is not None])
def test_nothing_changes_beyond_its_reach(name):
    """Where the rooms are farther apart than its reach along either axis, the answer is one and the same."""
    condition = CONDITIONS[name]
    for pair in PAIRS:
        gaps = gaps_of(*pair)
        far = (gaps.y > condition.reach)[:, None] | (gaps.x > condition.reach)[None, :]
        assert len(set(condition.kept(gaps)[far].tolist())) == 1


def in_model(contact: Contact, pair: tuple[Variant, Variant], right: int, up: int, *, condition=None) -> bool:
    """Whether the solver finds two rooms, held at an offset, within what is asked."""
    model, problem = cp_model.CpModel(), standing(pair)
    rooms = room_variables(model, problem, Scope(((0,), (0,)), (False, False), (None,)))
    view = PairModel(model, problem, RoomPair(0, 1, contact, (), ()), rooms, None)
    if condition is None:
        separate(view)
    else:
        condition.hold(view, unless=())
    for variable, value in ((rooms[0].x, 15 + right), (rooms[0].y, 15 + up), (rooms[1].x, 15), (rooms[1].y, 15)):
        model.add(variable == value)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers, solver.parameters.cp_model_presolve = 1, False
    return solver.solve(model) in (cp_model.OPTIMAL, cp_model.FEASIBLE)


def standing(pair: tuple[Variant, Variant]):
    """A problem of two rooms of one variant each."""
    return standing_as(*((variant,) for variant in pair))


@cache
def standing_as(*variants: tuple[Variant, ...]):
    """A problem of two rooms that may stand anywhere on open land of 30 x 30 steps."""
    problem = plain_problem()
    lattice = replace(problem.context.lattice, columns=30, rows=30, step_ft=STEP_FT)
    open_land = np.ones((30, 30), dtype=bool)
    losses = np.zeros((30, 30), dtype=np.int64)
    rooms = tuple(
        ProblemRoom(
            name,
            required=True,
            walkable=False,
            is_built=True,
            variants=own,
            losses=(0,) * len(own),
            allowed=(open_land,) * len(own),
            places=(losses,) * len(own),
            floors=(losses,) * len(own),
            absent_loss=0,
        )
        for name, own in zip("ab", variants, strict=True)
    )
    return replace(problem, context=replace(problem.context, lattice=lattice), rooms=rooms)


@pytest.mark.parametrize("pair", PAIRS[:5], ids=str)
@pytest.mark.parametrize("name", CONDITIONS)
def test_the_model_holds_what_the_table_keeps(name, pair):
    """At every third offset, and at every one where the answer changes from its left neighbour's."""
    kept = CONDITIONS[name].kept(gaps_of(*pair))
    for row, column in worth_trying(kept):
        right, up = int(OFFSETS[column]), int(OFFSETS[row])
        assert in_model(Contact(), pair, right, up, condition=CONDITIONS[name]) == kept[row, column], (right, up)


@pytest.mark.parametrize("pair", PAIRS[:5], ids=str)
@pytest.mark.parametrize("name", CONTACTS)
def test_the_model_separates_as_the_table_does(name, pair):
    """Apart, touching or over each other: feasible in the model exactly where the table has it."""
    kept = CONTACTS[name].kept(gaps_of(*pair))
    assert 0 < kept.mean() < 1
    for row, column in worth_trying(kept):
        right, up = int(OFFSETS[column]), int(OFFSETS[row])
        assert in_model(CONTACTS[name], pair, right, up) == kept[row, column], (right, up)


@cache
def plain_problem():
    return build_problem(plain_yard(ceiling=None), plain_rooms(), book_for("USD"))


def worth_trying(kept: np.ndarray) -> list[tuple[int, int]]:
    changes = np.zeros_like(kept)
    changes[:, 1:] |= kept[:, 1:] != kept[:, :-1]
    changes[:, :-1] |= kept[:, 1:] != kept[:, :-1]
    changes[1:] |= kept[1:] != kept[:-1]
    changes[:-1] |= kept[1:] != kept[:-1]
    changes[::4, ::4] = True
    found = [(int(row), int(column)) for row, column in np.argwhere(changes)]
    return found[:: max(1, len(found) // 40)]


def test_contact_by_hand():
    """A room of 3 x 2 steps and one of 4 x 3, three steps apart or two of edge shared: offsets counted by hand."""
    kept = CONTACTS["three steps or two of edge"].kept(gaps_of(SMALL, WIDE))
    at = {(int(r), int(u)): bool(kept[j, i]) for j, u in enumerate(OFFSETS) for i, r in enumerate(OFFSETS)}
    assert at[-6, 0]  # three steps free on the left
    assert not at[-5, 0]  # two steps free: a sliver
    assert at[-3, 0]  # flush on the left, two steps of edge
    assert not at[-3, 2]  # flush, one step of edge
    assert not at[0, 0]  # one over the other
    assert at[4, 1]  # flush on the right
    assert at[1, -2]  # flush below, three steps of edge
    assert not at[-5, -4]  # two steps off along both axes


def test_distances_of_circles_by_hand():
    """Circles of radius 3 and 1.5 ft with their middles 3-4-5 apart; a circle and the corner of a rectangle."""
    one, other = Variant(0, 4, 4, None, (4, 4), is_round=True), Variant(0, 2, 2, None, (2, 2), is_round=True)
    # Middles 6 steps of 1.5 ft to the right and 8 up: 15 ft, less both radii.
    assert Gaps(one, other, np.array([5]), np.array([7]), STEP_FT).distance_ft == pytest.approx(15 - 4.5)
    # The middle lies 3 and 4 steps off the corner: 7.5 ft, less the radius.
    square = Variant(0, 3, 3, None, (3, 3))
    assert Gaps(one, square, np.array([4]), np.array([5]), STEP_FT).distance_ft == pytest.approx(7.5 - 3)
    # Beside it the circle is as far as its square is.
    assert Gaps(one, square, np.array([5]), np.array([0]), STEP_FT).distance_ft == pytest.approx(2 * STEP_FT)
    assert Gaps(one, square, np.array([1]), np.array([0]), STEP_FT).distance_ft == 0


@pytest.mark.parametrize("name", ["near 4", "apart 4", "apart of a covered second"])
def test_each_size_is_measured_by_its_own_radius(name):
    """Of a room that may be a large circle, a small one or a rectangle: the model asks of each what its table says."""
    sizes = (ROUND, replace(SMALL_ROUND, choice=1, covered=True), replace(TALL, choice=2, front=None))
    other, condition = (SMALL, ROUND), CONDITIONS[name]
    for v, u in itertools.product(range(3), range(2)):
        kept = condition.kept(gaps_of(other[u], sizes[v]))
        for row, column in worth_trying(kept)[::4]:
            problem, model = standing_as(other, sizes), cp_model.CpModel()
            rooms = room_variables(model, problem, Scope(((0, 1), (0, 1, 2)), (False, False), (None,)))
            condition.hold(PairModel(model, problem, RoomPair(0, 1, Contact(), (), ()), rooms, None), unless=())
            model.add_bool_and([rooms[0].literals[u], rooms[1].literals[v]])
            at = (15 + int(OFFSETS[column]), 15 + int(OFFSETS[row]), 15, 15)
            for variable, value in zip((rooms[0].x, rooms[0].y, rooms[1].x, rooms[1].y), at, strict=True):
                model.add(variable == value)
            solver = cp_model.CpSolver()
            solver.parameters.num_workers, solver.parameters.cp_model_presolve = 1, False
            found = solver.solve(model) in (cp_model.OPTIMAL, cp_model.FEASIBLE)
            assert found == kept[row, column], (u, v, row, column)


def test_asked_together():
    """What two rules ask is the stricter of both."""
    both = Contact(may_overlap=False, gap=3, share=2).and_also(Contact(must_touch=True, touch_share=4, shut=(1,)))
    assert both == Contact(may_overlap=False, gap=3, share=2, must_touch=True, touch_share=4, shut=(1,))
    assert both.shared == 4
    assert Contact().and_also(Contact()) == Contact()
    assert not Contact().binds


def test_a_wish_costs_its_loss_where_a_rule_forbids():
    """The same condition as a rule and as a wish."""
    gaps, near = gaps_of(SMALL, WIDE), Near(4.0, STEP_FT)
    rule, wish = Penalty("near", near).cents(gaps), Penalty("wishes", near, 700).cents(gaps)
    assert set(np.unique(rule).tolist()) == {0, FORBIDDEN}
    assert set(np.unique(wish).tolist()) == {0, 700}
    assert ((rule == 0) == (wish == 0)).all()
