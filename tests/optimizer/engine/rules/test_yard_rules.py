"""Parts of the model that bind one room to the yard say of each place just what the check says of it."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.catalogue import Cover, SizedChoice
from optimizer.check import CHECKS
from optimizer.check.case import CheckCase
from optimizer.derived import Derived
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.problem.build import allowed_positions, sizes_of
from optimizer.engine.rules import PARTS
from optimizer.layout import Layout, Placement, placed_of
from optimizer.site import Building, KeepOut, Paving, RootRings, Setbacks, UtilityLine, Wall
from tests.yards import PLAIN_SITE, bathing, circled, on_site, plain_rooms, plain_yard, round_at, sized

ROOMS = plain_rooms(sized("pool", "reserve", 8, 10), sized("grass", "lawn", 8, 8), bathing("bath"), circled("ring", 9))
YARD = on_site(
    plain_yard(ceiling=None),
    setbacks=(Setbacks(1, 2, 7, 3, 6, 5),) * 4,
    keep_outs=(
        *PLAIN_SITE.keep_outs,
        KeepOut("tank", ((30.3, 30.2), (34, 30.2), (34, 34), (30.3, 34)), kind="septic tank"),
        KeepOut("field", ((44, 16), (50.5, 16), (50, 20), (44, 20)), ("lawn",), kind="septic field"),
        KeepOut("wire", ((0, 38), (60, 38), (60, 39), (0, 39)), ("reserve", "pool", "nook"), kind="overhead line"),
    ),
    utility_lines=(UtilityLine("main", "water", ((0.0, 24.0), (30.25, 28.3), (30.25, 40.0))),),
    paving=(Paving("walk", ((20.3, 14), (29, 14), (29, 17.6), (20.3, 17.6)), "stone", "keep"),),
    walls=(
        Wall("askew", ((2.0, 14.5), (9.3, 30.1), (9.3, 36.0)), "wall"),
        Wall("along", ((14, 22), (26, 22)), "hedge"),
        Wall("across", ((20.4, 26), (20.4, 40)), "fence"),
    ),
    distances=(("ahead_of_door", 14.0), ("beside_window", 3.0), ("gas_fire", 6.0), ("septic_field", 4.5)),
    root_rings=RootRings(5, 16, 0.08),
)
BY_PLACE = (
    "inside_setbacks",
    "clear_of_openings",
    "root_zone",
    "root_ring",
    "off_walls",
    "keep_outs",
    "kept_paving",
    "utility_lines",
    "septic",
    "water_clear",
    "fire_clear",
)


def places(context, room, variant):
    """Every lower left corner at which the variant lies on the grid, with the room alone standing there on the plan."""
    lattice, step = context.lattice, context.lattice.step_ft
    for row in range(lattice.rows - variant.depth + 1):
        for column in range(lattice.columns - variant.width + 1):
            at, size = (lattice.x_ft(column), lattice.y_ft(row)), (variant.width * step, variant.depth * step)
            label = room.choices[variant.choice].label
            shape = room.choices[variant.choice].shape
            posed = Placement(room.name, label, *at, *size, variant.front or "+y", shape=shape)
            yield row, column, context.pose.layout_back(Layout((posed,)))


@pytest.mark.parametrize("rule", BY_PLACE)
@pytest.mark.parametrize("room", ROOMS, ids=[room.name for room in ROOMS])
def test_a_place_is_allowed_where_the_check_has_nothing_against_it(rule, room):
    """At every third place of every variant, both say the same."""
    context = context_of(YARD, ROOMS)
    variants = variants_of(room, context.lattice)
    allowed = allowed_positions(context, room, variants, {rule: PARTS[rule]})
    seen = [
        (bool(allowed[index][row, column]), not any(CHECKS[rule](CheckCase(Derived(YARD, placed_of(ROOMS, layout))))))
        for index, variant in enumerate(variants)
        for number, (row, column, layout) in enumerate(places(context, room, variant))
        if number % 3 == 0
    ]
    assert seen
    assert [pair for pair in seen if pair[0] != pair[1]] == []


@pytest.mark.parametrize(("kind", "is_at_wall"), [("gathering", True), ("nook", False)])
def test_what_is_paved_up_to_walls_has_places_before_a_wall_askew(kind, is_at_wall):
    """Before a wall that leans 8 in over 30 ft a terrace has places at the wall, all of which the check lets pass."""
    house = Building("house", ((10, 0), (50, 0), (50, 11.6), (20, 12.2), (10, 12.2)))
    yard, room = on_site(YARD, buildings=(house,), structures=()), sized("room", kind, 10, 8)
    context = context_of(yard, (room,))
    (variant, *_) = variants_of(room, context.lattice)
    (allowed, *_) = allowed_positions(
        context, room, (variant,), {rule: PARTS[rule] for rule in ("off_buildings", "no_slivers")}
    )
    layouts = [layout for row, column, layout in places(context, room, variant) if allowed[row, column]]
    cases = [CheckCase(Derived(yard, placed_of((room,), layout))) for layout in layouts]
    assert not [found for case in cases for found in CHECKS["no_slivers"](case)]
    assert (
        any(layout.placements[0].y_ft == 13 and 10 <= layout.placements[0].x_ft <= 40 for layout in layouts)
        is is_at_wall
    )


def test_a_circle_may_stand_where_the_check_lets_it():
    """A circle beside house, landings and a roof at every other place: no edge of it is flush with anything."""
    ring, rules = circled("ring", 9), ("off_buildings", "no_slivers", "door_zone", "under_structure")
    context = context_of(YARD, (ring,))
    (variant,) = variants_of(ring, context.lattice)
    (allowed,) = allowed_positions(context, ring, (variant,), {rule: PARTS[rule] for rule in rules})
    seen = []
    for row, column, layout in list(places(context, ring, variant))[::2]:
        case = CheckCase(Derived(YARD, placed_of((ring,), layout)))
        seen.append((bool(allowed[row, column]), not any(found for rule in rules for found in CHECKS[rule](case))))
    assert [pair for pair in seen if pair[0] != pair[1]] == []
    assert 0 < sum(kept for kept, _ in seen) < len(seen)


@pytest.mark.parametrize(("across_ft", "is_room"), [(7, False), (8, True)])
def test_a_circle_has_the_area_of_a_circle(across_ft, is_room):
    """7 ft across it has 38 sq ft, too little for a room, in its square 49; 8 ft across 50."""
    ring = circled("ring", across_ft)
    context, case = (
        context_of(YARD, (ring,)),
        Derived(YARD, placed_of((ring,), Layout((round_at("ring", 9, 9, across_ft),)))),
    )
    assert (
        bool(sizes_of(context, ring, {"proportion": PARTS["proportion"], "known_choice": PARTS["known_choice"]}))
        == is_room
    )
    assert any(CHECKS["proportion"](CheckCase(case))) != is_room


def test_only_a_covered_choice_keeps_the_setback_of_roofs():
    """Of a nook with and without a roof, the one with it has the fewer places."""
    plain = sized("nook", "nook", 8, 7)
    covered = replace(SizedChoice("covered", 8, 7, 4, 6.0), cover=Cover(9.0, 0.7))
    room = replace(plain, choices=(*plain.choices, covered))
    context = context_of(YARD, (room,))
    variants = variants_of(room, context.lattice)
    allowed = allowed_positions(context, room, variants, {"inside_setbacks": PARTS["inside_setbacks"]})
    free = {variant.choice: cells for variant, cells in zip(variants, allowed, strict=True)}
    assert np.all(free[0] | ~free[1])
    assert free[0].sum() > free[1].sum() > 0
