"""Futures fitted into held ground: distances of the water's edge (layout rules, rule 31: nothing permanent within 4 ft of
a later pool's edge, no dig inside a tree's published radius), and by how little they are missed.
"""

from dataclasses import replace

import pytest
from shapely import LineString, Point, Polygon

from optimizer.catalogue import pad_size_ft
from optimizer.layout import Placement
from optimizer.scenario import Scenario
from tests.optimizer.derived.futures.yard import HELD, derived, futures, yard

FENCE = "  utilities: ["


def misses(found, name: str) -> list[tuple[str, str, float, float]]:
    return [(m.rule, m.name, m.asked_ft, m.found_ft) for m in found[name].fit.misses]


def moved(x_ft: float, y_ft: float) -> Placement:
    return replace(HELD, x_ft=x_ft, y_ft=y_ft)


def test_all_fit_in_the_open() -> None:
    """Nothing is missed; water and ground lie in the held ground, the pool's deck is 4 ft all round."""
    found = futures(yard())
    held = Polygon([(20, 70), (56, 70), (56, 92), (20, 92)])
    assert all(site.fit.is_kept for site in found.values())
    for site in found.values():
        assert held.buffer(0.01).covers(Polygon(site.fit.ground))
        assert Polygon(site.fit.ground).covers(Polygon(site.fit.water))
    pool = found["pool"].fit
    assert Polygon(pool.water).bounds == pytest.approx((24, 74, 52, 88))
    assert sum(map(len, pool.barrier)) > 4
    assert pool.pad is not None
    assert Polygon(pool.pad).area == pytest.approx(pad_size_ft()[0] * pad_size_ft()[1])
    assert found["hot tub"].fit.pad is None


def test_a_waters_edge_one_foot_too_near_the_boundary() -> None:
    """Its edge lies 4 ft inside the held ground, which lies 3 ft off the west side: 7 of 8 ft."""
    found = futures(yard(), held=moved(3, 70))
    assert misses(found, "pool") == [("setback", "west", 8.0, 7.0)]
    assert found["pool"].fit.misses[0].short_ft == pytest.approx(1.0)
    assert not misses(found, "hot tub")


def test_a_small_future_moves_within_the_held_ground() -> None:
    """The tub keeps 8 ft off the west side by lying farther in."""
    found = futures(yard(), held=moved(0.5, 70))
    assert Polygon(found["hot tub"].fit.water).bounds[0] >= 8 - 0.02
    assert misses(found, "pool") == [("setback", "west", 8.0, 4.5)]


def test_room_to_dig_beside_what_stays() -> None:
    """A kitchen flush with the held ground stands 4 ft off the water: enough. Held ground 1 ft smaller each way is told
    as too small, and its water then has 3.5 ft.
    """
    kitchen = Placement("cooker", "plain", 20.0, 60.0, 20.0, 10.0, "+y")
    assert not misses(futures(yard(), kitchen), "pool")
    tight = replace(HELD, width_ft=35.0, depth_ft=21.0)
    found = futures(yard(), kitchen, held=tight)
    assert misses(found, "pool") == [
        ("held ground", "water later", 36.0, 35.0),
        ("held ground", "water later", 22.0, 21.0),
        ("over-dig", "cooker", 4.0, 3.5),
    ]
    assert not misses(found, "swim spa")


def test_roots_are_kept_from_a_dig() -> None:
    """A trunk of 1 ft at (20, 92), the held ground's corner: nobody digs within 15 ft of it (NC State Extension, 1.25 ft
    for each inch of trunk); the pool's nearest corner is sqrt(4^2 + 4^2) = 5.66 ft away. The tub lies elsewhere.
    """
    tree = f"  trees: [{{name: oak, at: [20, 92], trunk_diameter: 1, canopy_radius: 8}}]\n{FENCE}"
    found = futures(yard((FENCE, tree)))
    ((rule, name, asked_ft, found_ft),) = misses(found, "pool")
    assert (rule, name) == ("roots", "oak")
    assert asked_ft == pytest.approx(12 * 1.25)
    assert found_ft == pytest.approx(5.6569, abs=1e-3)
    assert not misses(found, "hot tub")


def test_lines_in_the_ground_and_overhead() -> None:
    """A buried line 3 ft from the pool's edge lacks 1 ft of the over-dig; an overhead line 9 ft away lacks 1 of 10 ft
    (NEC 680.9).
    """
    line = f"{FENCE}{{kind: water, name: main, line: [[0, 91], [90, 91]]}}, "
    assert misses(futures(yard((FENCE, line))), "pool") == [("line in the ground", "main", 4.0, 3.0)]
    wires = (
        f"  keep_outs: [{{name: wires, outline: [[0, 97], [90, 97], [90, 99], [0, 99]], kind: overhead line}}]\n{FENCE}"
    )
    assert misses(futures(yard((FENCE, wires))), "pool") == [("overhead line", "wires", 10.0, 9.0)]


def test_ahead_of_a_door_and_beside_a_window() -> None:
    """Held ground that begins 5 ft before the wall: the pool's edge is 9 ft straight ahead of the door, of 10."""
    door = "doors: [{name: door, at: [20, 50], width: 3}]"
    window = door.replace("doors", "windows").replace("door,", "pane,")
    near = moved(2, 55)
    assert ("ahead of a door", "door", 10.0, 9.0) in misses(futures(yard(), held=near), "pool")
    pane = futures(yard((door, window)), held=moved(2, 50))
    assert ("beside a window", "pane", 5.0, 4.0) in misses(pane, "pool")


def crowded() -> Scenario:
    """Equipment must keep 9 ft off the boundary, and every side of the house is taken by roots."""
    trees = ", ".join(
        f"{{name: t{n}, at: [{x}, {y}], trunk_diameter: 4, canopy_radius: 9}}"
        for n, (x, y) in enumerate(
            [(8, 24), (26, 24), (48, 24), (66, 24), (76, 40), (8, 56), (26, 56), (46, 56), (66, 56)]
        )
    )
    far = ("setbacks: {everywhere: {water: 8, equipment: 2}}", "setbacks: {everywhere: {water: 8, equipment: 9}}")
    return yard(far, (FENCE, f"  trees: [{trees}]\n{FENCE}"))


def test_no_place_for_the_equipment() -> None:
    """So it stands at no edge, and at no wall either."""
    found = futures(crowded(), held=moved(20, 86))
    assert ("equipment pad", "wall or boundary", 8.0, 0.0) in misses(found, "pool")
    assert all(rule != "equipment pad" for rule, *_ in misses(found, "hot tub"))


def no_pad() -> Scenario:
    """Equipment keeps 9 ft off the boundary, and nothing is built beside the house: the pool lacks its pad alone."""
    far = ("setbacks: {everywhere: {water: 8, equipment: 2}}", "setbacks: {everywhere: {water: 8, equipment: 9}}")
    ring = "{name: beside the house, outline: [[0, 20], [80, 20], [80, 60], [0, 60]], allow: [path, access]}"
    return yard(far, (FENCE, f"  keep_outs: [{ring}]\n{FENCE}"))


@pytest.mark.parametrize(
    ("scenario", "held", "unfit"),
    [
        (yard(), HELD, set()),
        (yard(), moved(3, 70), {"pool"}),
        (yard(), replace(HELD, width_ft=30.0), {"pool"}),
        (no_pad(), HELD, {"pool"}),
    ],
    ids=["all fit", "a setback", "too small", "no place for the equipment"],
)
def test_whether_one_fits_is_asked_by_itself(scenario: Scenario, held: Placement, unfit: set[str]) -> None:
    """The short question has the answer of the long one, whatever is missing."""
    there = derived(scenario, held=held)
    kept = {site.future: site.fit.is_kept for site in there.futures}
    assert {future.name: there.fits(room, future) for room, future in there.later_futures} == kept
    assert {name for name, is_kept in kept.items() if not is_kept} == unfit


def test_the_nearest_of_each_rule_is_measured() -> None:
    """Of four sides that ask for 8 ft the nearest: the pool's water lies 22 ft off the rear, 24 and more off the others. The line
    of each distance is as long as it says, from the water's edge.
    """
    fit = futures(yard())["pool"].fit
    (setback,) = (one for one in fit.distances if one.rule == "setback")
    assert (setback.name, setback.asked_ft, setback.found_ft) == ("rear", 8.0, 22.0)
    assert all(one.is_kept for one in fit.distances)
    for one in fit.distances:
        assert LineString(one.line).length == pytest.approx(one.found_ft, abs=0.01)
        assert Polygon(fit.water).exterior.distance(Point(one.line[0])) < 0.01
    near = futures(yard(), held=moved(3, 70))["pool"].fit
    assert [(one.name, one.found_ft, one.is_kept) for one in near.distances if one.rule == "setback"] == [
        ("west", 7.0, False)
    ]
