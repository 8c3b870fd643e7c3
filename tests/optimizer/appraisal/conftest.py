"""An invented yard of 60 x 40 ft with a house, and the demonstration yard with its rooms."""

from collections.abc import Callable
from pathlib import Path

import pytest

from optimizer.brief import Brief, Guests
from optimizer.catalogue import SizedRoom, sized_rooms
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario, load_scenario
from optimizer.site import Building, Place, Setbacks, Site, Structure, Surrounding, Utility

PlaceRooms = Callable[..., Layout]


@pytest.fixture
def site() -> Site:
    """A yard of 60 x 40 ft, 2,400 sq ft, of which a house along its lower edge takes 400."""
    return Site(
        place=Place(40.0, -83.0, "America/New_York"),
        boundary=((0, 0), (60, 0), (60, 40), (0, 40)),
        edge_names=("street", "east", "rear", "west"),
        setbacks=(Setbacks(),) * 4,
        buildings=(Building("house", ((10, 0), (50, 0), (50, 10), (10, 10))),),
        structures=(Structure("roof", ((40, 20), (55, 20), (55, 32), (40, 32)), shade=0.5),),
        utilities=(Utility("gas", (10, 0)), Utility("gas", (50, 10)), Utility("electric", (50, 10))),
        surroundings=(
            Surrounding("neighbour house", ((70, 0), (90, 0), (90, 40), (70, 40))),
            Surrounding("east window", at=(95, 30), eye_z_ft=14),
            Surrounding("west window", at=(-10, 30), eye_z_ft=14),
        ),
    )


@pytest.fixture
def scenario(site: Site) -> Scenario:
    """The invented yard with a brief that wishes for nothing yet."""
    return Scenario("yard", "ft", "USD", site, Brief(Guests(4, 12), ()), "", "")


@pytest.fixture(scope="session")
def fernhollow(project: Path) -> Scenario:
    """The demonstration yard."""
    return load_scenario(project / "scenarios" / "fernhollow-court.yaml")


@pytest.fixture(scope="session")
def fernhollow_rooms(fernhollow: Scenario) -> tuple[SizedRoom, ...]:
    """Its rooms with their choices."""
    return sized_rooms(fernhollow.brief)


@pytest.fixture(scope="session")
def place(fernhollow_rooms: tuple[SizedRoom, ...]) -> PlaceRooms:
    """Places the demonstration yard's rooms, each whole, at its first (0) or last (-1) choice."""
    corners = {
        "gathering area": (48.0, 67.0),
        "outdoor kitchen": (72.0, 67.0),
        "fire feature": (58.0, 96.0),
        "quiet nook": (20.0, 80.0),
        "water reserve": (24.0, 94.0),
    }

    def placed(choice: int, *names: str) -> Layout:
        return Layout(tuple(_placed(room, choice) for room in fernhollow_rooms if room.name in (names or corners)))

    def _placed(room: SizedRoom, choice: int) -> Placement:
        size = [size for size in room.choices if not size.is_later][choice]
        return Placement(room.name, size.label, *corners[room.name], size.width_ft, size.depth_ft, "+y")

    return placed
