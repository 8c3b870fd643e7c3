"""The yard in three dimensions is as high as the file says, and its page stands alone."""

from dataclasses import replace
from datetime import datetime

import numpy as np
import pytest
import shapely
from shapely import Polygon, box

from optimizer.catalogue import sized_rooms
from optimizer.drawing.heights import ground_along
from optimizer.fields import ground_z_ft, shadows_at
from optimizer.figures import figure_html, yard_3d
from optimizer.figures.solids import draped, flat, prism
from optimizer.layout import placed_of
from tests.sample_run import sample_option, sample_scenario

AFTERNOON = datetime(2026, 6, 21, 17)  # noqa: DTZ001 - the yard's own clock


@pytest.fixture(scope="module")
def scenario():
    """The demonstration yard."""
    return sample_scenario()


@pytest.fixture(scope="module")
def figure(scenario):
    """Two rooms in the yard on an afternoon; the nook at 2 ft."""
    return built(scenario, AFTERNOON)


def built(scenario, when):
    """The figure of the made-up concept."""
    return yard_3d(scenario, placed_of(sized_rooms(scenario.brief), sample_option().layout), {"quiet nook": 2.0}, when)


def span(figure, name):
    """Least and greatest height of a thing."""
    heights = [z for trace in figure.data if trace.name == name for z in trace.z]
    return min(heights), max(heights)


def ground(scenario, outline):
    """Ground at the corners."""
    return ground_z_ft(scenario.site, outline)


def area(trace):
    """Area of a trace on the plan."""
    corners = np.stack([trace.x, trace.y], axis=1)
    triangles = corners[np.stack([trace.i, trace.j, trace.k], axis=1)]
    (a, b, c) = (triangles[:, n] for n in range(3))
    return float(np.abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0]).sum() / 2)


def test_houses_stand_as_high_as_the_file_says(scenario, figure):
    """House and neighbour rise from the lowest ground at their walls to their heights above its mean."""
    for thing in (*scenario.site.buildings, *[s for s in scenario.site.surroundings if s.outline]):
        low, high = span(figure, thing.name)
        walls = ground_along(scenario.site, thing.outline)
        assert low == pytest.approx(walls.min(), abs=2e-3)
        assert high == pytest.approx(walls.mean() + thing.height_ft, abs=2e-3)


def test_roof_tree_and_fence_stand_as_high_as_the_file_says(scenario, figure):
    """A roof lies its height over the mean ground along it, a tree's top and a fence's theirs over their feet."""
    site = scenario.site
    for structure in site.structures:
        top = ground_along(site, structure.outline).mean() + structure.height_ft
        assert span(figure, structure.name)[1] == pytest.approx(top, abs=2e-3)
    for tree in site.trees:
        low, high = span(figure, tree.name)
        foot = ground(scenario, [tree.at])[0]
        assert high == pytest.approx(foot + tree.height_ft, abs=2e-3)
        assert low == pytest.approx(foot + 0.3 * tree.height_ft, abs=2e-3)
        assert span(figure, f"{tree.name}, trunk")[0] == pytest.approx(foot, abs=2e-3)
    (fence,) = [thing for thing in site.surroundings if thing.line]
    trace = next(trace for trace in figure.data if trace.name == fence.name)
    assert max(trace.z) - max(z for z in trace.z if z < max(trace.z) - 3) == pytest.approx(fence.height_ft, abs=0.05)


def test_rooms_lie_at_their_levels(scenario, figure):
    """A room given a level lies at it, another at the mean ground under it; both say so."""
    assert span(figure, "quiet nook") == pytest.approx((2.0, 2.0))
    assert "level +2.0 ft" in next(trace for trace in figure.data if trace.name == "quiet nook").hovertext
    low, high = span(figure, "gathering area")
    assert low == high
    place = sample_option().layout.of("gathering area")
    corners = [(place.x_ft, place.y_ft), (place.right_ft, place.top_ft)]
    assert min(ground(scenario, corners)) <= low <= max(ground(scenario, corners))


def test_the_ground_is_covered_once(scenario, figure):
    """Ground in sun and in shadow, and the floors, are together as large as the yard."""
    names = {"ground", "ground, shadow", "quiet nook", "quiet nook, shadow", "gathering area", "gathering area, shadow"}
    covered = sum(area(trace) for trace in figure.data if trace.name in names)
    assert covered == pytest.approx(Polygon(scenario.site.boundary).area, rel=1e-3)


def test_shadows_are_those_of_the_moment(scenario, figure):
    """Dark ground and dark floors are as large as the shadows in the yard; at night and without a moment none is."""
    shadows = shapely.union_all([shape for shape, _ in shadows_at(scenario.site, AFTERNOON)])
    dark = sum(area(trace) for trace in figure.data if trace.name.endswith(", shadow"))
    assert dark == pytest.approx(shadows.intersection(Polygon(scenario.site.boundary)).area, rel=1e-3)
    assert dark > 500
    for when in (None, AFTERNOON.replace(hour=1)):
        assert not [trace for trace in built(scenario, when).data if trace.name.endswith(", shadow")]


def test_the_page_stands_alone(scenario):
    """No script is fetched, the button that would send the figure away is off, and a name cannot end the script."""
    html = figure_html(built(replace(scenario, name="<b>yard</b></script><script>alert(1)"), None))
    assert "<script src" not in html
    assert "sendChartToCloud" in html.rsplit("modeBarButtonsToRemove", 1)[1][:40]
    assert "alert(1)" in html
    assert "<script>alert(1)" not in html


def test_a_prism_is_closed():
    """Every edge of a prism on an L belongs to two triangles, walls and covers together."""
    mesh = prism(Polygon([(0, 0), (4, 0), (4, 2), (2, 2), (2, 4), (0, 4)]), 1.0, 3.0)
    triangles = np.round(mesh.corners[mesh.triangles], 6)
    edges: dict[frozenset, int] = {}
    for triangle in triangles:
        for start, end in zip(triangle, np.roll(triangle, -1, axis=0), strict=True):
            edge = frozenset((tuple(start), tuple(end)))
            edges[edge] = edges.get(edge, 0) + 1
    assert set(edges.values()) == {2}


def test_a_cover_keeps_holes_and_follows_the_ground():
    """A cover leaves its hole open, and each corner lies on the ground."""
    shape = box(0, 0, 10, 10).difference(box(4, 4, 6, 6))
    mesh = draped(shape, lambda points: points[:, 0] * 0.5)
    assert mesh.corners[:, 2] == pytest.approx(mesh.corners[:, 0] * 0.5)
    parts = [Polygon(mesh.corners[triangle, :2]) for triangle in mesh.triangles]
    assert sum(part.area for part in parts) == pytest.approx(96.0)
    assert len(flat(Polygon()).corners) == 0


def test_covers_face_up():
    """Every triangle of a cover turns left, so that light falls on all of them alike."""
    mesh = draped(Polygon([(0, 0), (9, 1), (7, 8), (3, 4)]), lambda points: 0.1 * points[:, 0])
    a, b, c = (mesh.corners[mesh.triangles[:, n], :2] for n in range(3))
    assert np.all((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0] > 0)
