"""Quantities of a layout."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import take_off
from optimizer.brief import Brief, Guests, RoomWish
from optimizer.catalogue import fixed_charges, sized_rooms
from optimizer.grading import Grading
from optimizer.layout import Layout, Placement, placed_of
from optimizer.quantities import run_ft
from optimizer.scenario import Scenario

WISHES = (RoomWish("fire", "fire", seats=8, fuel="gas"), RoomWish("later", "reserve", phase=2, futures=("hot tub",)))
FIRE = Placement("fire", "modest", 4, 20, 16, 16, "+y")
LATER = Placement("later", "one size", 30, 20, 11, 11, "+y")


LEVEL = Grading(is_known=False, levels_ft=(), flights=(), walls=(), guards=(), earth=(), falls=())


def wished(scenario: Scenario) -> Scenario:
    """The yard with a fire and a reserve wished for."""
    return replace(scenario, brief=Brief(Guests(4, 12), WISHES))


def quantities(
    scenario: Scenario, *placements: Placement, path_area_sqft: float = 0.0
) -> dict[tuple[int, str], Decimal]:
    """Quantities by phase and item."""
    rooms = sized_rooms(scenario.brief)
    charges = take_off(scenario, placed_of(rooms, Layout(placements)), paths_sqft={1: path_area_sqft}, grading=LEVEL)
    return {(charge.phase, charge.item): charge.quantity for charge in charges}


@pytest.mark.parametrize(
    ("start", "length"), [((0, 0), 24), ((10, 0), 20), ((50, 10), 40), ((10, 25), 0), ((24, 40), 8)]
)
def test_runs_follow_the_axes(start: tuple[float, float], length: float) -> None:
    """A run to a room at [4, 20] x [20, 36]: the distances along both axes together, none from within."""
    assert run_ft(start, FIRE) == length


def test_run_comes_from_the_nearest_start(scenario: Scenario) -> None:
    """Of two gas points, 20 and 40 ft away, the nearer one serves; electricity has but the one 40 ft away."""
    found = quantities(wished(scenario), FIRE)
    assert found[1, "gas run"] == 20
    assert found[1, "electric run"] == 40


def test_without_a_start_there_is_no_run(scenario: Scenario) -> None:
    """Where the site names no gas point, the branch is counted and the run is not."""
    scenario = wished(scenario)
    found = quantities(replace(scenario, site=replace(scenario.site, utilities=())), FIRE)
    assert found[1, "gas branch"] == 1
    assert (1, "gas run") not in found


def test_held_ground_is_kept_free_in_phase_1(scenario: Scenario) -> None:
    """With what it is until then; what comes on it later is counted where it fits, so not here."""
    found = quantities(wished(scenario), LATER)
    assert found[1, "reserve kept clear"] == 1
    assert found[1, "reserve ground"] == 11 * 11
    assert not [item for phase, item in found if phase == 2]


def test_paths_and_what_is_done_once(scenario: Scenario) -> None:
    """Paths count by their area; drainage and the like once, whatever is placed."""
    scenario = wished(scenario)
    found = quantities(scenario, LATER, path_area_sqft=123.456)
    assert found[1, "path paving"] == Decimal("123.46")
    assert all(found[1, charge.item] == charge.quantity for charge in fixed_charges(scenario.brief))


def test_an_empty_layout_needs_nothing(scenario: Scenario) -> None:
    """Nothing placed, nothing done."""
    assert quantities(wished(scenario)) == {}


@pytest.mark.parametrize(
    ("start", "length"),
    [((12, 0), 20), ((50, 28), 30), ((32, 48), 40 - 8 * 2**0.5), ((9, 27), 0), ((17, 0), 28 - 39**0.5)],
)
def test_a_run_to_a_circle(start: tuple[float, float], length: float) -> None:
    """By hand, to a circle of 8 ft round (12, 28): straight on, from within, slanting off, and 5 ft beside its middle."""
    assert run_ft(start, replace(FIRE, shape="circle")) == pytest.approx(length)
