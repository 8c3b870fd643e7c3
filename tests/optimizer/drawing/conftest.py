"""A layout made by hand on an invented yard, once in feet and once in metres."""

from dataclasses import replace

import pytest
from shapely import LineString, union_all

from optimizer.brief import Brief, Guests
from optimizer.catalogue import Item, KindRules, SizedChoice, SizedRoom
from optimizer.circulation import Way
from optimizer.drawing import Drawing, Paths, draw_plan
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import Scenario
from optimizer.site import (
    Building,
    Door,
    Entrance,
    KeepOut,
    Place,
    Setbacks,
    Site,
    SpotLevel,
    Structure,
    Surrounding,
    Tree,
    Utility,
    Window,
)

HOUSE = Building(
    name="house",
    outline=((20, 30), (80, 30), (80, 56), (42, 56), (42, 64), (20, 64)),
    floor_z_ft=1.0,
    doors=(
        Door("front door", (50, 30), 3, (0, -1)),
        Door("kitchen door", (62, 56), 8, (0, 1), sliding=True),
        Door("family door", (31, 64), 3, (0, 1)),
    ),
    windows=(Window("dining window", (74, 56), 5, (0, 1)),),
)
SITE = Site(
    place=Place(39.96, -82.99, "America/New_York", 25.0),
    boundary=((0, 0), (100, 0), (100, 96), (76, 120), (0, 120)),
    edge_names=("street", "east side", "corner cut", "rear", "west side"),
    setbacks=(Setbacks(28, 28, 28, 28, 28, 28), *[Setbacks(2, 2, 5, 10, 10, 5)] * 4),
    buildings=(HOUSE,),
    entrances=(Entrance("drive", (88, 0), 12, (0, 1)),),
    structures=(Structure("old shade structure", ((46, 66), (64, 66), (64, 82), (46, 82)), 9.5, 0.7),),
    trees=(Tree("red oak", (12, 100), 16 / 12, 14, 38),),
    keep_outs=(
        KeepOut("sewer easement", ((92, 0), (100, 0), (100, 96), (92, 104)), ("path", "lawn")),
        KeepOut("street yard", ((0, 0), (92, 0), (92, 28), (0, 28)), ("path", "lawn", "bed")),
    ),
    utilities=(Utility("gas", (80, 38)), Utility("electric", (80, 42)), Utility("water", (20, 50))),
    surroundings=(
        Surrounding("neighbour house", outline=((112, 40), (140, 40), (140, 80), (112, 80)), height_ft=24),
        Surrounding("neighbour window", at=(112, 60), eye_z_ft=14),
        Surrounding("rear fence", line=((76, 120), (0, 120)), height_ft=6),
    ),
    levels=(SpotLevel((0, 0), -1.2),),
)


def chair(x_ft: float, y_ft: float) -> Item:
    """A chair for one."""
    return Item("chair", x_ft, y_ft, 1.6, 1.6, seats=1)


TABLE = (
    Item("table", 4.0, 4.2, 6.0, 3.4),
    *(chair(4.2 + 2.0 * i, 2.4) for i in range(3)),
    *(chair(4.2 + 2.0 * i, 7.8) for i in range(3)),
)
COUNTERS = (
    Item("counter", 0.3, 0.3, 13.0, 2.0),
    Item("grill", 4.0, 0.4, 3.0, 1.8),
    Item("sink", 9.0, 0.5, 1.6, 1.5),
    Item("refrigerator", 11.0, 0.4, 2.0, 1.8),
    Item("bar", 2.0, 6.2, 10.5, 2.0),
    *(Item("stool", 2.6 + 2.5 * i, 8.6, 1.3, 1.3, "circle", 1) for i in range(4)),
)
RING = (
    Item("fire pit", 6.0, 6.0, 4.0, 4.0, "circle"),
    Item("fire seat", 3.2, 1.8, 3.0, 2.2, seats=1, turn_deg=25),
    Item("fire seat", 9.8, 1.8, 3.0, 2.2, seats=1, turn_deg=-25),
    Item("fire seat", 3.2, 12.0, 3.0, 2.2, seats=1, turn_deg=-25),
    Item("fire seat", 9.8, 12.0, 3.0, 2.2, seats=1, turn_deg=25),
)
LOUNGES = (Item("lounge chair", 1.0, 1.5, 2.4, 3.0, seats=1), Item("lounge chair", 4.6, 1.5, 2.4, 3.0, seats=1))
FUTURE = (Item("future", 2.0, 2.0, 12.0, 8.0),)


def room(
    name: str, kind: str, size: tuple[float, float], items: tuple[Item, ...], *sides: tuple[str, str]
) -> SizedRoom:
    """A room of one choice."""
    rules = KindRules(
        kind, ("paving",), walkable=True, paved=True, has_front=False, longest_ratio=3, keeps_from_openings=False
    )
    seats = sum(item.seats for item in items)
    return SizedRoom(
        name, rules, required=True, phase=1, choices=(SizedChoice("one", *size, seats, 5, tuple(sides), items),)
    )


ROOMS = (
    room("gathering area", "gathering", (14, 12), TABLE),
    room("outdoor kitchen", "kitchen", (14, 12), COUNTERS, ("front", "bar"), ("back", "counter")),
    room("fire feature", "fire", (16, 16), RING, ("back", "seat")),
    room("quiet nook", "nook", (8, 7), LOUNGES, ("back", "back"), ("left", "back")),
    room("water reserve", "reserve", (16, 12), FUTURE),
)
LAYOUT = Layout(
    (
        Placement("gathering area", "one", 48, 68, 14, 12, "+y"),
        Placement("outdoor kitchen", "one", 62, 68, 12, 14, "-x"),
        Placement("fire feature", "one", 50, 98, 16, 16, "-y"),
        Placement("quiet nook", "one", 22, 84, 8, 7, "+x"),
        Placement("water reserve", "one", 24, 98, 16, 12, "-y"),
    )
)
WAYS = (
    Way(("family door", "gathering area"), 3.0, ((31, 66), (47, 74), (55, 74)), 26.0),
    Way(("gathering area", "fire feature"), 3.0, ((55, 74), (58, 98), (58, 106)), 32.0),
    Way(("drive", "gathering area"), 3.0, ((88, 2), (84, 58), (76, 66), (62, 66), (55, 74)), 90.0),
    Way(("family door", "quiet nook"), 3.0, ((31, 66), (31, 87)), 21.0),
)


@pytest.fixture(scope="session")
def yard() -> Scenario:
    """The invented yard, in feet, with an empty brief."""
    return Scenario("Fernhollow Court", "ft", "USD", SITE, Brief(Guests(4, 24), ()), "", "")


@pytest.fixture(scope="session")
def rooms() -> tuple[SizedRoom, ...]:
    """Five rooms of one choice each."""
    return ROOMS


@pytest.fixture(scope="session")
def layout() -> Layout:
    """The rooms, one or more for each front."""
    return LAYOUT


@pytest.fixture(scope="session")
def plan(yard: Scenario) -> Drawing:
    """The layout drawn in feet."""
    return drawn(yard)


@pytest.fixture(scope="session")
def metric_plan(yard: Scenario) -> Drawing:
    """The same layout drawn in metres."""
    return drawn(replace(yard, units="m"))


def drawn(scenario: Scenario) -> Drawing:
    """The layout with its ways as paved strips outside the rooms."""
    floors = [LineString([(p.x_ft, p.y_ft), (p.right_ft, p.top_ft)]).envelope for p in LAYOUT.placements]
    strips = union_all([LineString(way.points).buffer(way.width_ft / 2) for way in WAYS])
    path_area = strips.difference(union_all(floors))
    return draw_plan(
        scenario, placed_of(ROOMS, LAYOUT), WAYS, title="Concept A: table by the house", paths=Paths(path_area)
    )
