"""The main job on ten real plots: slanted boundaries, L-shaped houses, and ground that no way reaches.

Where the plots come from stands in their files. Reachable ground is found here from the outlines alone, in another way
than the program's: what a disc 3 ft across sweeps when it is rolled about, starting at the gate.
"""

from pathlib import Path

import pytest
from shapely import MultiPolygon, Point, Polygon, union_all

from optimizer.catalogue import sized_rooms
from optimizer.check import check_layout
from optimizer.layout import Layout, Placement, placed_of
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import Scenario, load_scenario
from tests.shown import PLOTS as SEARCHED
from tests.shown import Runs

PLOTS = sorted(Path("tests/plots").glob("plot-*.yaml"))
CUT_OFF_SQFT = 250
TOLERANCE_FT = 0.05


def pieces(shape: Polygon | MultiPolygon) -> list[Polygon]:
    """The connected pieces of a shape."""
    return list(getattr(shape, "geoms", (shape,)))


def grounds(scenario: Scenario) -> list[Polygon]:
    """Pieces of open yard that a disc 3 ft across can roll about in; the one at the gate first."""
    site = scenario.site
    yard = Polygon(site.boundary).difference(union_all([Polygon(building.outline) for building in site.buildings]))
    rolled = [piece.buffer(1.5, join_style="mitre") for piece in pieces(yard.buffer(-1.5, join_style="mitre"))]
    gate = Point(site.entrances[0].at)
    return sorted((piece.intersection(yard) for piece in rolled), key=gate.distance)


def standing(placement: Placement) -> Polygon:
    """The ground that a room takes, less what touching walls may take from it."""
    x, y = placement.x_ft, placement.y_ft
    corners = [(x, y), (placement.right_ft, y), (placement.right_ft, placement.top_ft), (x, placement.top_ft)]
    return Polygon(corners).buffer(-TOLERANCE_FT)


def test_there_are_ten_plots_and_some_have_ground_that_is_cut_off():
    """Ten plots load, and at least three have a yard's worth of ground on the far side of the house."""
    cut_off = [path.stem for path in PLOTS if any(g.area > CUT_OFF_SQFT for g in grounds(load_scenario(path))[1:])]
    assert len(PLOTS) == 10
    assert len(cut_off) >= 3


@pytest.mark.parametrize("name", [path.stem for path in SEARCHED])
def test_concepts_of_a_real_plot(name: str, shown: Runs):
    """There are concepts, each keeps every rule, and each room stands whole on ground that is reached from the gate. Every
    other plot, for the time it takes: `tests.benchmarks.composition` searches all of them.
    """
    scenario, found = shown(name).scenario, shown(name).found
    rooms = sized_rooms(scenario.brief)
    reached = grounds(scenario)[0]
    assert len(found.options) == 3
    assert found.search.refused == ()
    for option in found.options:
        assert (
            check_layout(scenario, placed_of(rooms, option.layout), phase_1_cost=option.appraisal.cost.phase(1)) == ()
        )
        assert all(reached.covers(standing(placement)) for placement in option.layout.placements)


def test_a_room_on_ground_that_is_cut_off_is_found():
    """A nook moved to the strip behind the house of plot 6, which no way reaches, is found unreachable, and only that."""
    scenario = load_scenario("tests/plots/plot-06.yaml")
    rooms = sized_rooms(scenario.brief)
    kept = make_options(scenario, RunSettings(count=1, seconds=0.7, repeatable=True, processes=0)).options[0].layout
    strip = max(grounds(scenario)[1:], key=lambda piece: piece.area)
    at = strip.centroid
    moved = Placement("quiet nook", "two chairs", at.x - 4, at.y - 4.5, 8, 7, "+y")
    layout = Layout(tuple(moved if p.room == "quiet nook" else p for p in kept.placements))
    assert not grounds(scenario)[0].intersects(standing(moved))
    assert {finding.rule for finding in check_layout(scenario, placed_of(rooms, layout))} == {"reachable"}
