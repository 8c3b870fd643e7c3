"""Rooms grow where the exact score is better for it and every rule still holds; nothing else of a concept changes."""

import threading
from dataclasses import replace
from functools import cache

import pytest
from shapely import Polygon

from optimizer.appraisal import aligned_share
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.growth import Grown, _Growth, grow
from optimizer.concepts.moves import Move, Moves
from optimizer.engine.problem import layout_of, state_of
from optimizer.layout import Layout
from optimizer.layout.pose import SYMMETRIES, Pose
from optimizer.scenario import load_scenario
from tests.explored import NEVER, explored, states
from tests.yards import PLAIN_SITE, round_at, sized, stand

YARD = load_scenario("tests/plots/plot-04.yaml")


@cache
def settled():
    """Layouts of one of the ten plots that hold, found by a short tour."""
    case = Case.of(YARD)
    explorer = explored(YARD, case.rooms, rebuilds=80)
    problem = explorer.board.problem
    found = [Grown(layout, case.judged(layout)) for layout in (layout_of(problem, s) for s in states(explorer)[:40])]
    return case, problem, [one for one in found if one.verdict.holds]


@cache
def grown():
    """Each of them with its rooms grown, where that is better."""
    case, _, found = settled()
    pairs = [(one, grow(case, one, stop=NEVER)) for one in found]
    return [(before, after) for before, after in pairs if after.layout != before.layout]


def test_what_grows_is_better_and_holds():
    """By the judge's word on the grown layout, which is kept with it."""
    case, *_ = settled()
    assert len(grown()) >= 2
    for before, after in grown():
        assert after.verdict == case.in_full(after.layout)
        assert after.verdict.holds
        assert after.verdict.score < before.verdict.score


def test_more_edges_lie_on_a_line():
    """That is what rooms grow for (layout rules 5 and 29)."""
    shares = [[aligned_share(YARD.site, one.layout) for one in pair] for pair in grown()]
    assert sum(after - before for before, after in shares) > 0


def test_the_grown_ground_is_paid_for():
    """The rooms' floors are larger on the bill, by what they are larger on the plan."""
    for before, after in grown():
        more = _ground_sqft(after.layout) - _ground_sqft(before.layout)
        floors = [
            sum(float(line.quantity) for line in one.verdict.measured.cost.lines if line.item in FLOORS)
            for one in (before, after)
        ]
        assert floors[1] - floors[0] == pytest.approx(more, abs=0.05)
        assert more > 0


def _ground_sqft(layout):
    """Ground of all rooms as they are built, which is paid for: what rounding to the grid adds is not."""
    return sum(choice.width_ft * choice.depth_ft for _, choice in settled()[0].placed(layout).chosen)


FLOORS = ("unit paving", "plain paving", "lawn", "planting bed", "play surface")


def test_seats_worth_and_the_layout_before_stay():
    """Growth buys no worth, and what is proven is still the same layout's."""
    _, problem, _ = settled()
    for before, after in grown():
        assert after.layout.base == before.layout
        assert state_of(problem, after.layout) == state_of(problem, before.layout) is not None
        assert after.verdict.measured.seats == before.verdict.measured.seats
        assert after.verdict.measured.worth == before.verdict.measured.worth


def test_the_judge_is_asked_of_what_fits():
    """A room that would stand in the house or on another one is no question."""
    case, _, found = settled()
    for one in found:
        growth = _Growth(case, Moves.of(case, ()), NEVER)
        assert case.fits(growth._after(growth.wanted(one.layout), one.layout))


def test_ground_that_costs_more_than_its_line_is_worth_is_no_question():
    """Where money weighs a thousand times as much, the judge is asked about nothing."""
    brief = replace(YARD.brief, weights=replace(YARD.brief.weights, cost=1000.0))
    dear = Case.of(replace(YARD, brief=brief))
    for before, _ in grown():
        assert _Growth(dear, Moves.of(dear, ()), NEVER).wanted(before.layout) == ()


def test_none_for_none():
    """With `grow: 0` for every room all stays as it was."""
    rooms = tuple(replace(room, grow=0.0) for room in YARD.brief.rooms)
    case = Case.of(replace(YARD, brief=replace(YARD.brief, rooms=rooms)))
    for before, _ in grown():
        assert grow(case, before, stop=NEVER) == before


def test_ends_when_stopped():
    """A person who stops a run does not wait for rooms to grow."""
    case, *_ = settled()
    stopped = threading.Event()
    stopped.set()
    assert [grow(case, before, stop=stopped) for before, _ in grown()] == [before for before, _ in grown()]
    assert {_Growth(case, Moves.of(case, ()), stopped).wanted(before.layout) for before, _ in grown()} == {()}


@pytest.mark.parametrize("matrix", SYMMETRIES[1:])
def test_a_turned_or_mirrored_yard_grows_alike(matrix):
    """The same rooms on the same sides, in a yard without wishes for sun, which a turn would change."""
    plain = replace(YARD, brief=replace(YARD.brief, rooms=tuple(replace(room, sun=None) for room in YARD.brief.rooms)))
    plain = replace(plain, site=replace(plain.site, wind_from_deg=None))
    pose = Pose(matrix, (3.7, -11.3))
    here, there = Case.of(plain), Case.of(replace(plain, site=pose.site(plain.site)))
    before = grown()[0][0].layout
    after = [_wanted(case, layout) for case, layout in ((here, before), (there, pose.layout(before)))]
    assert pose.layout(after[0]) == after[1] != pose.layout(before)


def _wanted(case, layout):
    """What is grown by the estimate of order and price, before the judge looks at ways on which furniture's hand tells."""
    growth = _Growth(case, Moves.of(case, ()), NEVER)
    return growth._after(growth.wanted(layout), layout)


class Judge:
    """A judge who likes ground in rooms but for what is told, and refuses what is told."""

    def __init__(self, *, worse=(), refused=()):
        self.worse, self.refused, self.asked = worse, refused, 0

    def judged(self, layout):
        """Findings where a refused room has grown, else a loss that falls with every room that grew well."""
        self.asked += 1
        larger = [place.room for place in layout.placements if place.has_grown]
        if set(larger) & set(self.refused):
            return Verdict(("refused",))
        return Verdict((), FIGURES, (("ground", sum(100.0 if room in self.worse else -1.0 for room in larger)),))


FIGURES = object()
ROOMS = tuple(replace(sized(f"room {i}", "nook", 8, 7), grow=1.0) for i in range(4))
ROW = Layout(tuple(stand(room.name, 20 * i, 0, 8, 7) for i, room in enumerate(ROOMS)))
MOVES = tuple(Move((room.name,), "+x", 20 * i + 9) for i, room in enumerate(ROOMS))


@pytest.mark.parametrize(("facts", "larger", "asked"), [
    ({}, (0, 1, 2, 3), 1),
    ({"worse": ("room 1",)}, (0, 2, 3), 5),
    ({"refused": ("room 3",)}, (0, 1, 2), 5),
    ({"worse": ("room 0", "room 1", "room 2", "room 3")}, (), 7),
])  # fmt: skip
def test_all_at_once_or_what_is_good_of_each_half(facts, larger, asked):
    """Mostly the judge is asked once; a move that it refuses, or finds worse, is left out and the others are taken."""
    judge = Judge(**facts)
    moves = Moves(PLAIN_SITE, {room.name: room for room in ROOMS}, Polygon())
    after = _Growth(judge, moves, NEVER).taken(MOVES, Grown(ROW, Verdict((), FIGURES, (("ground", 0.0),))))
    assert tuple(i for i, place in enumerate(after.layout.placements) if place.has_grown) == larger
    assert judge.asked == asked


def test_the_judge_is_asked_nothing_once_stopped():
    """What is taken by then is kept."""
    judge, stopped = Judge(), threading.Event()
    stopped.set()
    before = Grown(ROW, Verdict((), FIGURES, (("ground", 0.0),)))
    moves = Moves(PLAIN_SITE, {room.name: room for room in ROOMS}, Polygon())
    assert _Growth(judge, moves, stopped).taken(MOVES, before) == before
    assert judge.asked == 0


def test_circles_neither_grow_nor_are_grown_to():
    """A nook beside a circle has no line of it to grow to, and the circle none of its own; beside a square it has."""
    rooms = {
        "fire": replace(sized("fire", "fire", 10, 10), grow=0.2),
        "nook": replace(sized("nook", "nook", 8, 7), grow=0.2),
    }
    moves = Moves(PLAIN_SITE, rooms, Polygon())
    nook = stand("nook", 31, 21, 8, 7)
    square = moves.all(Layout((stand("fire", 16, 19.5, 10, 10), nook)))
    ring = moves.all(Layout((round_at("fire", 16, 19.5, 10), nook)))
    assert {move.rooms for move in square} == {("fire",), ("nook",)}
    assert set(ring) < set(square)
    assert all("fire" not in move.rooms and move.at_ft not in {19.5, 26, 29.5} for move in ring)
