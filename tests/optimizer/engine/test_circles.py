"""A circle in the engine: its tables are the check's and the appraisal's, at every place that is asked."""

import itertools
from dataclasses import replace
from functools import cache
from typing import NamedTuple

import numpy as np
import pytest
from shapely import Point, box

from optimizer.brief import Hold, Sketch, SketchedRoom
from optimizer.catalogue import SizedRoom, book_for, root_rings, sized_rooms
from optimizer.check.case import TOLERANCE_SQFT
from optimizer.concepts.sketched import sketched_layout
from optimizer.derived import Derived
from optimizer.engine.explorer import Limits, Refusals, best_spot, board_of, value_of
from optimizer.engine.explorer.connected import _close
from optimizer.engine.grid.kept_off import _GRAZED_SQFT
from optimizer.engine.grid.root_rings import lens_sqft, taken_sqft
from optimizer.engine.grid.sun_hours import mean_hours
from optimizer.engine.grid.variants import Variant
from optimizer.engine.problem import Spot, build_problem, layout_of, posed_layout_of, state_of
from optimizer.layout import footprint, placed_of
from optimizer.layout.pose import Pose
from optimizer.site import RootRings
from tests.circle_yard import circle_yard
from tests.yards import holding, on_site

YARD = circle_yard()
ROOMS = sized_rooms(YARD.brief)
FIRE = 1


@cache
def built():
    """The problem of the yard, made once it is asked for."""
    return build_problem(YARD, ROOMS, book_for("USD"))


def places(count: int, problem=None):
    """Some spots of each size of the circle, with the placement on the plan."""
    problem = problem or built()
    random = np.random.default_rng(5)
    for v, allowed in enumerate(problem.rooms[FIRE].allowed):
        corners = np.argwhere(allowed)
        for y, x in corners[random.integers(0, len(corners), count)].tolist():
            state = tuple(Spot(v, x, y) if room == FIRE else None for room in range(len(problem.rooms)))
            yield v, x, y, state, layout_of(problem, state)


def test_hours_of_sun_are_the_appraisals():
    """Means over the same feet of the disc, all along the house; over its square they would differ there."""
    lattice, pose = built().context.lattice, built().context.pose
    for v, variant in enumerate(built().rooms[FIRE].variants):
        hours = mean_hours(built().context, ROOMS[FIRE], variant)
        for y, x in itertools.product(range(0, hours.shape[0], 7), range(0, hours.shape[1], 9)):
            stands = posed_layout_of(built(), tuple(Spot(v, x, y) if room == FIRE else None for room in range(3)))
            placed = placed_of(ROOMS, pose.layout_back(stands))
            assert hours[y, x] == pytest.approx(Derived(YARD, placed).sun_h(placed.rooms[0]), abs=0.02)
    assert lattice.step_ft == 1


def test_what_is_taken_of_a_root_ring_is_the_discs():
    """Never more than lies under the circle as it is drawn, and hardly less."""
    (ring,), (tree,), rings = built().rings, YARD.site.trees, root_rings(YARD.site)
    inner, outer = (
        Point(tree.at).buffer(trunks * tree.trunk_diameter_ft, quad_segs=64)
        for trunks in (rings.inner_trunks, rings.outer_trunks)
    )
    wide = build_problem(on_site(YARD, root_rings=RootRings(6, 12, 1.0)), ROOMS, book_for("USD"))
    found = []
    for v, x, y, _, layout in places(60, wide):
        variant = built().rooms[FIRE].variants[v]
        taken = taken_sqft(ring, *variant.size, variant.is_round)[y, x]
        under = footprint(layout.placements[0]).intersection(outer.difference(inner)).area
        assert under - 0.2 <= taken <= under + 1e-9
        found.append(under)
    assert sum(under > 1 for under in found) > 5


def test_lenses_by_hand():
    """Two circles of 1 through each other's middles share 2 pi / 3 - sqrt(3) / 2; one inside the other, all of it.

    Source: elementary geometry, as of the vesica piscis.
    """
    away = np.array([1.0, 0.0, 2.0, 5.0])
    assert lens_sqft(away, 1.0, 1.0) == pytest.approx([2 * np.pi / 3 - np.sqrt(3) / 2, np.pi, 0, 0], abs=1e-6)
    assert lens_sqft(np.array([0.5]), 1.0, 3.0) == pytest.approx(np.pi)
    assert lens_sqft(np.array([1.0]), 1.0, 0.0) == 0


def test_a_layout_comes_back_as_its_state():
    """In every size, so that a result with a circle can be taken up again."""
    for *_, state, layout in places(3):
        assert layout.placements[0].is_circle
        assert state_of(built(), layout) == state


@pytest.mark.parametrize("at", [(30.0, 40.0), (30.3, 40.0), (30.3, 40.6)])
def test_a_held_circle_stays_a_circle(at):
    """Held on the grid or off it: its corner is exact and it is as wide as deep, no smaller than its size."""
    problem = build_problem(holding(YARD, Hold("fire circle", at)), ROOMS, book_for("USD"))
    for *_, state, layout in places(1, problem):
        placement = layout.placements[0]
        choice = ROOMS[FIRE].choice(placement.choice)
        assert (placement.x_ft, placement.y_ft) == at
        assert placement.width_ft == placement.depth_ft
        variant = problem.rooms[FIRE].variants[state[FIRE].variant]
        assert variant.width == variant.depth
        assert choice.width_ft <= placement.width_ft < choice.width_ft + 1
        assert state_of(problem, layout) == state


@pytest.mark.parametrize("corner", [(4, 3), (0, 0), (-1, 5), (13, 8)])
def test_ways_cross_the_corners_of_the_square_on_the_grid_too(corner):
    """Of a way's squares 3 cells wide those are shut that share ground with a circle 12 across."""
    ring, ways = Variant(0, 12, 12, None, (12, 12), is_round=True), np.ones((20, 22), dtype=bool)
    _close(ways, Spot(0, *corner), ring, 3)
    disc = Point(corner[0] + 6, corner[1] + 6).buffer(6, quad_segs=256)
    by_hand = [[box(x, y, x + 3, y + 3).intersection(disc).area < 1e-3 for x in range(22)] for y in range(20)]
    assert (ways == np.array(by_hand)).all()
    square = np.ones_like(ways)
    _close(square, Spot(0, *corner), replace(ring, is_round=False), 3)
    assert (ways & ~square).any()


def test_a_mirrored_yard_has_the_same_places():
    """In its canonical pose it is the same problem, circle and all."""
    mirrored = replace(YARD, site=Pose((-1, 0, 0, 1), (3.7, 3.7)).site(YARD.site))
    rooms = tuple(replace(room, sun=None) for room in ROOMS)
    one, other = (build_problem(yard, rooms, book_for("USD")).rooms[FIRE] for yard in (YARD, mirrored))
    assert sum(int(allowed.sum()) for allowed in one.allowed) > 100
    for ours, theirs in zip((*one.allowed, *one.places), (*other.allowed, *other.places), strict=True):
        assert (ours == theirs).all()


def test_an_insertion_is_the_best_of_every_place():
    """The circle put back among rooms that stand: no place of any size is better, by the count of whole layouts."""
    board, limits = board_of(built()), Limits.of(built())
    table, chairs = (Spot(0, *np.argwhere(built().rooms[room].allowed[0])[40][::-1].tolist()) for room in (0, 2))
    state = (table, None, chairs)
    found = best_spot(board, limits, state, FIRE, refusals=Refusals())
    values = [
        value_of(board, limits, (table, Spot(v, int(x), int(y)), chairs))
        for v, allowed in enumerate(built().rooms[FIRE].allowed)
        for y, x in np.argwhere(allowed)
    ]
    assert value_of(board, limits, (table, found, chairs)) == min(values) < np.median(values)


def test_a_sketched_circle_is_laid_out_as_one():
    """In the size that it is nearest to, and where it names a choice that it does not have."""
    drawn = SketchedRoom("fire circle", (20.0, 40.0), 17.0, 17.0, "+y")
    for sketched, label in ((drawn, "comfortable"), (replace(drawn, choice="huge"), "huge")):
        (placement,) = sketched_layout(Rooms(ROOMS), Sketch("first", (sketched,))).placements
        assert (placement.choice, placement.shape, placement.width_ft) == (label, "circle", 17)


class Rooms(NamedTuple):
    """All that a sketch asks of a case."""

    rooms: tuple[SizedRoom, ...]


def test_what_a_circle_may_share_with_an_area():
    """As much as the check lets pass: written in both, since neither imports the other."""
    assert _GRAZED_SQFT == TOLERANCE_SQFT
