"""Ground without a use, and paved ground."""

import pytest
from shapely import Polygon, box

from optimizer.appraisal import leftover_share, paved_share
from optimizer.brief import RoomWish
from optimizer.catalogue import sized_room
from optimizer.layout import Layout, Placement
from optimizer.site import Site

NOTHING = Polygon()
OPEN_SQFT = 2400 - 400


def room(x: float, y: float, width: float, depth: float, name: str = "table") -> Placement:
    """A placed room."""
    return Placement(name, "c", x, y, width, depth, "+y")


def test_wide_ground_has_a_use(site: Site) -> None:
    """An empty yard is lawn."""
    assert leftover_share(site, Layout(()), NOTHING) == pytest.approx(0)


def test_a_strip_narrower_than_4_ft_has_none(site: Site) -> None:
    """A room 3 ft off the west boundary, across the whole depth, leaves a strip of 3 x 40 ft; at 5 ft it leaves none."""
    assert leftover_share(site, Layout((room(3, 0, 7, 40),)), NOTHING) == pytest.approx(120 / OPEN_SQFT)
    assert leftover_share(site, Layout((room(5, 0, 5, 40),)), NOTHING) == pytest.approx(0)


def test_a_path_is_a_use(site: Site) -> None:
    """The same strip paved as a path is not left over."""
    assert leftover_share(site, Layout((room(3, 0, 7, 40),)), box(0, 0, 3, 40)) == pytest.approx(0)


def test_paved_is_paved_rooms_and_paths_once(site: Site) -> None:
    """A terrace and a path that runs 2 x 5 ft into it count once; a lawn does not count."""
    rooms = (sized_room(RoomWish("table", "gathering", seats=6)), sized_room(RoomWish("green", "lawn")))
    layout = Layout((room(5, 20, 14, 12), room(25, 20, 15, 12, "green")))
    path = box(17, 20, 29, 25)
    assert paved_share(site, rooms, layout, path) == pytest.approx((14 * 12 + 12 * 5 - 2 * 5) / OPEN_SQFT)
