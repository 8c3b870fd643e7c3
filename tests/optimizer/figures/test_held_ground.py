"""Held ground in the yard in three dimensions: the ground as it lies, outlined and hatched, and nothing built on it."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.catalogue import sized_rooms
from optimizer.fields import ground_z_ft
from optimizer.figures import yard_3d
from optimizer.figures.held_ground import ABOVE_FT
from optimizer.layout import Layout, Placement, placed_of
from tests.sample_run import sample_scenario
from tests.yards import bathing, plain_yard, stand


@pytest.fixture(scope="module")
def scenario():
    return sample_scenario()


@pytest.fixture(scope="module")
def figure(scenario):
    """The demonstration yard with its reserve alone, said to lie at 5 ft."""
    rooms = sized_rooms(scenario.brief)
    room = next(room for room in rooms if room.name == "water reserve")
    choice = next(choice for choice in room.choices if not choice.is_screened)
    place = Placement(room.name, choice.label, 30.0, 90.0, choice.width_ft, choice.depth_ft, "+y")
    return yard_3d(scenario, placed_of(rooms, Layout((place,))), {"water reserve": 5.0}, None)


def named(figure, name):
    return [trace for trace in figure.data if trace.name == name]


def test_the_ground_is_as_it_lies(scenario, figure):
    """No slab at a level of its own, and no edge dug for it."""
    (cover,) = named(figure, "water reserve")
    ground = ground_z_ft(scenario.site, np.stack([cover.x, cover.y], axis=1))
    assert cover.z == pytest.approx(ground, abs=2e-3)
    assert "kept free for later" in cover.hovertext
    assert not named(figure, "water reserve, edge")
    assert not [trace for trace in figure.data if "water reserve, water" in trace.name]


def test_it_is_outlined_in_dashes_and_hatched(scenario, figure):
    """Both lie just above the ground; the outline goes round all of it."""
    outline, hatching = named(figure, "water reserve, kept free")
    assert outline.line.dash == "dash"
    (cover,) = named(figure, "water reserve")
    for axis in ("x", "y"):
        assert np.nanmin(outline[axis]) == pytest.approx(min(cover[axis]))
        assert np.nanmax(outline[axis]) == pytest.approx(max(cover[axis]))
        assert np.nanmin(hatching[axis]) >= min(cover[axis]) - 1e-3
        assert np.nanmax(hatching[axis]) <= max(cover[axis]) + 1e-3
    for lines in (outline, hatching):
        points = np.stack([lines.x, lines.y, lines.z], axis=1)
        points = points[~np.isnan(points[:, 0])]
        assert points[:, 2] - ground_z_ft(scenario.site, points[:, :2]) == pytest.approx(ABOVE_FT, abs=2e-3)


def test_a_pool_of_a_later_phase_is_no_water_yet():
    """Neither water nor barrier nor equipment stands there now; in phase 1 all of it does."""

    def names(phase):
        room = replace(bathing("pool"), phase=phase)
        placed = placed_of((room,), Layout((stand("pool", 24, 20, 16, 18, "-y"),)))
        return {trace.name for trace in yard_3d(plain_yard(), placed, {"pool": 0.5}, None).data if "pool" in trace.name}

    assert names(2) == {"pool", "pool, kept free"}
    assert {"pool, water", "pool, barrier", "pool, equipment"} <= names(1)
