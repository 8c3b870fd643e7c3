"""Ways in of what comes later: what bars which vehicle, by name, and what is put back. Widths and radii of the vehicles:
layout rules, sizes by common practice (`catalogue/data/access.yaml`).
"""

from dataclasses import replace
from types import SimpleNamespace

import pytest
from shapely import LineString, Polygon, box
from shapely import Point as ShapelyPoint

from optimizer.derived.futures.obstacles import surfaces
from optimizer.layout import Layout, Placement, Pose, placed_of
from optimizer.layout.pose import SYMMETRIES
from optimizer.site import Paving
from tests.optimizer.derived.futures.yard import HELD, derived, futures, yard
from tests.yards import PLAIN_SITE

ENTRANCE = "{name: drive, at: [80, 0], width: 12}"
FENCE = "  utilities: ["


def fence(width: float, gate: str = "locked") -> tuple[str, str]:
    """A fence across the passage with a gate so wide."""
    opening = f"openings: [{{at: [80, 40], width: {width}, gate: {gate}}}]"
    return (
        FENCE,
        f"  walls: [{{name: side fence, line: [[70, 40], [90, 40]], height: 6, kind: fence, {opening}}}]\n{FENCE}",
    )


def test_every_future_comes_in_by_a_way_of_its_own() -> None:
    """Each with its vehicle's width; all that is swept lies in the yard, off the house, and ends in the held ground."""
    found = futures(yard())
    widths = {name: site.access.width_ft for name, site in found.items()}
    assert widths == {"hot tub": 4.5, "swim spa": 9.5, "pool": 8.0}
    assert all(site.is_possible and site.access.gate == "drive" for site in found.values())
    for site in found.values():
        (ring,) = site.access.swept
        ground, house = Polygon(ring), Polygon([(0, 30), (70, 30), (70, 50), (0, 50)])
        held = Polygon([(20, 70), (56, 70), (56, 92), (20, 92)])
        assert ground.intersection(house).area < 0.2
        assert ground.intersects(held)
        assert LineString(site.access.line).length == pytest.approx(site.access.length_ft, abs=0.1)
        assert site.access.line[0][1] == pytest.approx(0)


@pytest.mark.parametrize(
    ("width", "barred"), [(4.4, ["hot tub", "pool", "swim spa"]), (6.0, ["swim spa"]), (8.0, ["swim spa"]), (12.0, [])]
)
def test_an_entrance_too_narrow_bars_by_name(width: float, barred: list[str]) -> None:
    """Of 4.5, 6 or 8 and 9.5 ft: the entrance and its width are said of each vehicle that does not come through."""
    found = futures(yard((ENTRANCE, ENTRANCE.replace("12", str(width)))))
    assert sorted(name for name, site in found.items() if not site.access.is_found) == barred
    for name in barred:
        for one in found[name].access.barred:
            assert (one.because, one.by, one.found_ft) == ("gate", ("drive",), width)
    digger = found["pool"].access
    assert digger.vehicle == ("digger" if width >= 8 else "small digger" if width >= 6 else "digger")


@pytest.mark.parametrize(("middle", "off"), [(80, 0), (82, 0), (78, 0.3)])
def test_an_entrance_behind_a_narrow_opening_bars_by_name(middle: float, off: float) -> None:
    """A drive of 12 ft leads through an opening of 5 ft in a street fence, on the line or a little inside, in the middle or
    beside it: no digger (6 ft and more) comes in, and the drive is named with its 5 ft; a tub of 4.5 ft does.
    """
    opening = f"openings: [{{at: [{middle}, {off}], width: 5}}]"
    wall = f"  walls: [{{name: street fence, line: [[0, {off}], [90, {off}]], height: 4, kind: fence, {opening}}}]\n{FENCE}"
    found = futures(yard((FENCE, wall)))
    for barred in found["pool"].access.barred:
        assert (barred.because, barred.by, barred.found_ft) == ("gate", ("drive",), 5)
    assert not found["pool"].access.is_found
    assert found["hot tub"].access.is_found


def test_the_builders_own_machine_takes_the_place_of_a_small_one() -> None:
    """An entrance of 6 ft: not for a machine of 7 ft, but for one of 5."""
    narrow = (ENTRANCE, ENTRANCE.replace("12", "6"))
    for width, comes in ((7, False), (5, True)):
        own = f"  machine_access: {{width: {width}, height: 9, turning_radius: 8, steepest: 0.2}}\n{FENCE}"
        access = futures(yard(narrow, (FENCE, own)))["pool"].access
        assert access.is_found == comes
        assert access.barred[-1].width_ft == (8 if comes else 7)


def test_no_entrance_for_machines() -> None:
    """Guests alone come in: every future is barred, and no entrance is to blame."""
    found = futures(yard((ENTRANCE, ENTRANCE.replace("12", "12, used_by: [guests]"))))
    assert all(site.access.barred[0].because == "gate" and site.access.barred[0].by == () for site in found.values())


@pytest.mark.parametrize(("width", "comes"), [(9.5, True), (9.4, False)])
def test_the_gate_of_a_fence(width: float, comes: bool) -> None:
    """A locked gate is opened for a machine: 9.5 ft lets the swim spa through, 9.4 do not, and the fence is named."""
    access = futures(yard(fence(width)))["swim spa"].access
    assert access.is_found == comes
    if not comes:
        (barred,) = access.barred
        assert (barred.because, barred.by) == ("width", ("side fence",))
        assert barred.found_ft == pytest.approx(width, abs=0.2)


def test_a_fence_on_the_boundary_leaves_entrances_open() -> None:
    """As it does to people; `check` says that it has no opening there."""
    wall = f"  walls: [{{name: street fence, line: [[0, 0], [90, 0]], height: 4, kind: fence}}]\n{FENCE}"
    assert futures(yard((FENCE, wall)))["pool"].access.is_found


def test_a_roof_too_low() -> None:
    """A roof over the passage, 11 ft up: under 12 for the digger and 14 for the swim spa; 10 for the tub pass below."""
    roof = f"  structures: [{{name: porch, outline: [[70, 36], [90, 36], [90, 44], [70, 44]], height: 11}}]\n{FENCE}"
    found = futures(yard((FENCE, roof)))
    assert found["hot tub"].access.is_found
    assert found["pool"].access.vehicle == "small digger"
    assert [one.by for one in found["swim spa"].access.barred] == [("porch",)]


def test_a_slope_too_steep() -> None:
    """A passage too narrow to drive it aslant falls 18 %: too much for tub and swim spa (15), not for a digger (20)."""
    levels = "\n".join(
        f"    - {{at: [{x}, {y}], z: {z}}}" for x in (0, 90) for y, z in ((0, 0), (30, 0), (50, -3.6), (110, -3.6))
    )
    narrow = ("[70, 30], [70, 50]", "[78, 30], [78, 50]")
    found = futures(yard(narrow, (FENCE, f"  levels:\n{levels}\n{FENCE}")))
    assert found["pool"].access.is_found
    assert found["pool"].access.steepest == pytest.approx(0.18, abs=0.005)
    barred = [site.access.barred[0] for name, site in found.items() if name != "pool"]
    assert [one.because for one in barred] == ["slope", "slope"]
    for one in barred:  # they come no farther than where the ground begins to fall
        assert one.at is not None
        assert 20 < one.at[1] < 50


def test_what_phase_1_builds_stands_in_the_way() -> None:
    """A kitchen across the passage bars all; lawn there bars none; a later phase is not there yet."""
    at = {"x_ft": 70.0, "y_ft": 35.0, "width_ft": 20.0, "depth_ft": 10.0, "front": "+y"}
    kitchen, grass = (Placement(name, "plain", **at) for name in ("cooker", "grass"))  # type: ignore[arg-type]
    barred = futures(yard(), kitchen)
    assert [site.access.barred[0].by for site in barred.values()] == [("cooker",)] * 3
    assert all(site.access.is_found for site in futures(yard(), grass).values())
    later = ("{name: cooker, kind: kitchen,", "{name: cooker, kind: kitchen, phase: 3,")
    assert all(site.access.is_found for site in futures(yard(later), kitchen).values())


def test_what_bars_has_its_ground() -> None:
    """Of each thing named its outline, in the order of the names, and where the vehicle comes no farther: before it."""
    at = {"x_ft": 70.0, "y_ft": 35.0, "width_ft": 20.0, "depth_ft": 10.0, "front": "+y"}
    (barred, _) = futures(yard(), Placement("cooker", "plain", **at))["pool"].access.barred  # type: ignore[arg-type]
    ((ring,),) = barred.grounds
    assert Polygon(ring).equals(Polygon([(70, 35), (90, 35), (90, 45), (70, 45)]))
    assert barred.at is not None
    assert LineString([(70, 40), (90, 40)]).distance(ShapelyPoint(barred.at)) < 12
    found = futures(yard((ENTRANCE, ENTRANCE.replace("12", "6"))))["swim spa"].access.barred[0]
    assert Polygon(found.grounds[0][0]).bounds == pytest.approx((77, -0.1, 83, 0.1))


def test_what_is_crossed_is_told() -> None:
    """Lawn and beds add up to the swept ground outside the held ground; a terrace in the passage is lifted pavers."""
    table = Placement("table", "plain", 72.0, 60.0, 16.0, 20.0, "+y")
    access = futures(yard(), table)["pool"].access
    crossed = dict(access.crosses)
    held = Polygon([(20, 70), (56, 70), (56, 92), (20, 92)])
    assert sum(crossed.values()) == pytest.approx(Polygon(access.swept[0]).difference(held).area, abs=2)
    assert set(crossed) <= {"lawn", "bed", "pavers"}
    across = Placement("table", "plain", 71.0, 52.0, 19.0, 20.0, "+y")
    assert dict(futures(yard(), across)["pool"].access.crosses)["pavers"] > 100


@pytest.mark.parametrize("matrix", [SYMMETRIES[1], SYMMETRIES[4]])
def test_a_turned_or_mirrored_yard_has_the_same_ways(matrix) -> None:
    """By a quarter turn, and by a mirror, shifted too: the same vehicle, as long a way, as much to put back."""
    scenario, pose = yard(), Pose(matrix, (200.0, -30.0))
    table = Placement("table", "plain", 72.0, 60.0, 16.0, 20.0, "+y")
    copy = replace(scenario, site=pose.site(scenario.site))
    moved = pose.layout(Layout((HELD, table))).placements
    for name, site in futures(scenario, table).items():
        other = futures(copy, moved[1], held=moved[0])[name]
        assert other.access.vehicle == site.access.vehicle
        assert other.access.length_ft == pytest.approx(site.access.length_ft, abs=0.05)
        assert dict(other.access.crosses) == pytest.approx(dict(site.access.crosses), abs=0.5)
        assert other.fit.misses == site.fit.misses
        if name == "pool":  # of the others more than one place is as good
            kept = [[(one.rule, one.found_ft) for one in fit.distances] for fit in (site.fit, other.fit)]
            assert kept[0] == kept[1]


def test_a_reserve_of_phase_1_has_no_futures() -> None:
    """It is built at once."""
    assert not derived(yard(("kind: reserve, phase: 2,", "kind: reserve,")), held=HELD).futures


def test_paving_that_only_touches_what_stays_is_no_line_of_it() -> None:
    """A lifted gravel path that ends at a kept terrace leaves no line beside the gravel that stays elsewhere."""
    terrace = Paving("terrace", ((0, 0), (10, 0), (10, 10), (0, 10)), "concrete", "keep")
    path = Paving("path", ((10, 0), (20, 0), (20, 4), (10, 4)), "gravel", "lift")
    court = Paving("court", ((30, 20), (40, 20), (40, 30), (30, 30)), "gravel", "keep")
    site = replace(PLAIN_SITE, buildings=(), keep_outs=(), paving=(terrace, path, court))
    built = SimpleNamespace(
        site=site, placed=placed_of((), Layout(())), paths=Polygon(), planting=SimpleNamespace(beds=())
    )
    assert surfaces(built)["gravel"].geom_type in {"Polygon", "MultiPolygon"}
    assert surfaces(built)["gravel"].equals(box(30, 20, 40, 30))
