"""Garden doors without a terrace: which doors count, what lies at a landing, and what it loses."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.appraisal import bare_doors, bare_doors_loss
from optimizer.brief import Trip
from optimizer.catalogue import book_for, rates
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.problem import build_problem
from optimizer.engine.terms import terraces
from optimizer.fields import site_shapes
from optimizer.fields.terraces import garden_doors
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, Door
from tests.yards import on_site, plain_rooms, plain_yard, sized, stand

HOUSE = Building(
    "house",
    ((0, 0), (60, 0), (60, 12), (0, 12)),
    doors=(Door("side door", (10, 12), 3, (0, 1)), Door("garden door", (40, 12), 6, (0, 1))),
)
YARD = on_site(plain_yard(ceiling=None), buildings=(HOUSE,), structures=())
TRIPS = (Trip("garden door", "table", 20), Trip("side door", "table", 5), Trip("table", "nook", 50))
BRIEF = replace(YARD.brief, trips=TRIPS)
# Without a known floor there are no steps: the landing is x 36 to 44, y 12 to 16.


def bare(*placements, brief=BRIEF):
    """Doors without a terrace."""
    rooms = plain_rooms(sized("forecourt", "arrival", 8, 8))
    return bare_doors(YARD.site, brief, placed_of(rooms, Layout(placements)))


def test_the_landing_is_where_it_is_thought_to_be():
    zone = {door.name: shape.bounds for door, shape in site_shapes(YARD.site).door_zones}["garden door"]
    assert zone == (36, 12, 44, 16)


def test_doors_by_the_trips_through_them():
    """The door of most trips first; one that nobody goes through is none."""
    assert [door.name for door in garden_doors(YARD.site, BRIEF)] == ["garden door", "side door"]
    assert [door.name for door in garden_doors(YARD.site, replace(BRIEF, trips=TRIPS[1:]))] == ["side door"]
    assert bare(brief=replace(BRIEF, trips=())) == ()


@pytest.mark.parametrize(
    ("x", "y", "lies_there"),
    [
        (33, 16, True),  # before it
        (33, 17, True),  # a foot off
        (33, 17.1, False),
        (25, 16, True),  # 3 ft of edge
        (24.9, 16, False),
        (22, 10, True),  # beside it, flush with its left edge
        (44, 13, True),
        (44, 13.1, False),
        (47, 12, False),
    ],
)
def test_a_table_of_14_by_12_at_the_landing(x, y, lies_there):
    """Within 1 ft of the landing, on 3 ft of edge; rule 24."""
    assert ("garden door" not in bare(stand("table", x, y, 14, 12))) == lies_there


def test_only_what_one_steps_onto_is_a_terrace():
    """An arrival is, a nook is not; each door wants one of its own."""
    assert bare(stand("nook", 36, 16, 8, 7)) == ("garden door", "side door")
    assert bare(stand("forecourt", 36, 16, 8, 8)) == ("side door",)
    assert bare(stand("forecourt", 36, 16, 8, 8), stand("table", 4, 16, 14, 12)) == ()


def test_the_main_door_loses_most():
    """4,000 for the door of most trips, 1,000 for the second."""
    assert rates().bare_doors == (4000, 1000)
    names = [(), ("side door",), ("garden door",), ("garden door", "side door")]
    assert [bare_doors_loss(YARD.site, BRIEF, some) for some in names] == [0, 1000, 4000, 5000]


def test_the_engine_counts_the_same_of_every_place():
    """Where the table alone can be a terrace, its places lose what the score says of them there; else nothing."""
    yard = replace(YARD, brief=replace(YARD.brief, trips=TRIPS[:2]))
    problem = build_problem(yard, plain_rooms(), book_for("USD"))
    context, lattice, table = problem.context, problem.context.lattice, problem.rooms[0]
    seen = set()
    for variant, allowed in zip(table.variants, table.allowed, strict=True):
        cents = terraces.TERM.cents(context, context.rooms[0], variant, allowed)
        size = variant.width * lattice.step_ft, variant.depth * lattice.step_ft
        for row, column in zip(*allowed.nonzero(), strict=True):
            posed = Layout((stand("table", lattice.x_ft(column), lattice.y_ft(row), *size),))
            names = bare_doors(yard.site, yard.brief, placed_of(plain_rooms(), context.pose.layout_back(posed)))
            assert cents[row, column] == 100 * bare_doors_loss(yard.site, yard.brief, names)
            seen.add(names)
    assert len(seen) > 2


def test_where_several_could_be_it_the_engine_says_nothing():
    """An arrival could serve too, so no place of the table alone is sure to lose anything."""
    rooms = plain_rooms(sized("forecourt", "arrival", 8, 8))
    context = build_problem(replace(YARD, brief=BRIEF), rooms, book_for("USD")).context
    (variant, *_), allowed = variants_of(rooms[0], context.lattice), np.ones((1, 1), dtype=bool)
    assert terraces.TERM.cents(context, rooms[0], variant, allowed) is None
