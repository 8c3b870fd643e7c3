"""A level yard of 100 x 80 ft with a house, and rooms of known sizes on it."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from shapely import Polygon

from optimizer.appraisal.take_off import all_charges
from optimizer.brief import Brief, Choice, Guests, RoomWish, Trip
from optimizer.catalogue import Charge, PriceBook, demo_price_book, sized_rooms
from optimizer.derived import Derived
from optimizer.layout import Front, Layout, Placement, placed_of
from optimizer.quantities import Part, parts_of
from optimizer.scenario import Scenario
from optimizer.site import Building, Door, Entrance, Place, Setbacks, Site, Utility

Stand = Callable[..., Derived]

SITE = Site(
    place=Place(40.0, -83.0, "America/New_York"),
    boundary=((0, 0), (100, 0), (100, 80), (0, 80)),
    edge_names=("street", "east", "rear", "west"),
    setbacks=(Setbacks(),) * 4,
    buildings=(Building("house", ((20, 0), (80, 0), (80, 20), (20, 20)), doors=(Door("door", (50, 20), 3, (0, 1)),)),),
    entrances=(Entrance("drive", (90, 0), 12, (0, 1)),),
    utilities=(Utility("gas", (80, 10)), Utility("electric", (80, 10)), Utility("water", (80, 10))),
)
WISHES = (
    RoomWish("table", "gathering", choices=(Choice("ten by twenty", 20, 10, 6, 4), Choice("twelve", 12, 12, 4, 5))),
    RoomWish("cooker", "kitchen", worth=5),
    RoomWish("fire", "fire", seats=6, fuel="gas", worth=5),
    RoomWish("tub", "reserve", phase=2, futures=("hot tub",), worth=3),
)
BRIEF = Brief(Guests(4, 12), WISHES, trips=(Trip("door", "table", 10),))


@pytest.fixture
def scenario() -> Scenario:
    """The level yard with its wishes."""
    return Scenario("yard", "ft", "USD", SITE, BRIEF, "", "")


@pytest.fixture
def book() -> PriceBook:
    """The invented prices."""
    return demo_price_book()


@pytest.fixture
def stand(scenario: Scenario) -> Stand:
    """Layouts on it: each room by its name, choice and lower left corner; `site` replaces things of the site."""

    def standing(*rooms: tuple[str, int, float, float], brief: Brief = BRIEF, **site: object) -> Derived:
        sized = {room.name: room for room in sized_rooms(brief)}
        places = [_placement(sized[name], choice, x, y) for name, choice, x, y in rooms]
        here = replace(scenario, site=replace(SITE, **site), brief=brief)
        return Derived(here, placed_of(tuple(sized.values()), Layout(tuple(places))))

    return standing


def without_ways(derived: Derived) -> Derived:
    """The same layout before any way is paved to it: its edges are then free."""
    vars(derived)["paths"] = Polygon()
    return derived


def _placement(room, choice: int, x_ft: float, y_ft: float, front: Front = "+y") -> Placement:
    size = room.choices[choice]
    return Placement(room.name, size.label, x_ft, y_ft, size.width_ft, size.depth_ft, front)


@pytest.fixture
def charged(book: PriceBook) -> Callable[[Derived], tuple[Charge, ...]]:
    """All charges of a layout by the invented prices."""
    return lambda derived: all_charges(derived, book)


@pytest.fixture
def counted(charged: Callable[[Derived], tuple[Charge, ...]]) -> Callable[..., list[Part]]:
    """Parts of a layout, of one line or item where that is asked for."""

    def parts(derived: Derived, *, room: str | None = None, line: str | None = None, item: str = "") -> list[Part]:
        found = parts_of(derived, charged(derived))
        return [p for p in found if room in (None, p.room) and line in (None, p.line) and p.item.startswith(item)]

    return parts
