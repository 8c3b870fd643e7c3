"""What counts as touching, as apart, and as a sliver."""

import pytest

from optimizer.brief import Relation
from optimizer.check import check_layout
from optimizer.layout import Placement
from optimizer.site import Building
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard, sized, stand

L_SHAPED = Building("house", ((10, 0), (50, 0), (50, 12), (30, 12), (30, 20), (10, 20)))


def slivers(*changed: Placement, relations: tuple[Relation, ...] = (), building: Building | None = None):
    """Pairs of a sliver, with only the changed rooms placed."""
    yard = plain_yard(*relations)
    if building:
        yard = on_site(yard, buildings=(building,))
    placed = [placement.room for placement in changed]
    left_out = tuple(room.name for room in plain_rooms() if room.name not in placed)
    rooms = plain_rooms(sized("bed", "bed", 6, 7))
    layout = plain_layout(*changed, without=left_out)
    return [finding.rooms for finding in check_layout(yard, rooms, layout) if finding.rule == "no_slivers"]


@pytest.mark.parametrize(
    ("x_ft", "y_ft", "kept"),
    [
        (38.0, 22, True),  # touching along 6 ft
        (38.019, 22, True),  # what lies within 0.02 ft touches
        (38.021, 22, False),
        (40.9, 22, False),
        (41.0, 22, True),
        (38.0, 25, True),  # sharing just 3 ft
        (38.0, 25.1, False),
        (40.0, 30, False),  # corner to corner, 2 ft away both ways
        (40.0, 31, True),  # clear in one direction is enough
    ],
)
def test_two_rooms(x_ft, y_ft, kept):
    """Neighbours share 3 ft of edge or stand 3 ft apart in one direction; nothing between."""
    pairs = slivers(stand("table", 24, 16, 14, 12), stand("bed", x_ft, y_ft, 6, 7))
    assert (("table", "bed") not in pairs) is kept


def test_a_smaller_edge_that_was_asked_for():
    """A hard relation that asks for less shared edge than 3 ft is given it; a wish is not."""
    rooms = (stand("table", 24, 16, 14, 12), stand("bed", 38, 26, 6, 7))
    hard = Relation(("bed", "table"), "touching", shared_edge_ft=2)
    wish = Relation(("bed", "table"), "touching", shared_edge_ft=2, wish=1)
    assert ("table", "bed") not in slivers(*rooms, relations=(hard,))
    assert ("table", "bed") in slivers(*rooms, relations=(wish,))


@pytest.mark.parametrize(
    ("x_ft", "y_ft", "kept"),
    [
        (40, 12, True),  # along the wall
        (47, 12, True),  # 3 ft of it along the wall, the rest beyond the corner
        (48, 12, False),
        (40, 13, False),
        (40, 15, True),
        (30, 12, True),  # in the inner corner
        (32, 12, False),  # a slot of 2 ft beside the wing
        (33, 12, True),
    ],
)
def test_beside_a_building(x_ft, y_ft, kept):
    """A room stands along the wall or 3 ft off it, and leaves no slot beside a wing."""
    pairs = slivers(stand("nook", x_ft, y_ft, 8, 7), building=L_SHAPED)
    assert (("nook", "house") not in pairs) is kept


def test_a_building_with_a_slot_of_its_own():
    """A slot that the building has without the room is not the room's fault."""
    notched = Building("house", ((10, 0), (50, 0), (50, 12), (20, 12), (20, 10), (18, 10), (18, 12), (10, 12)))
    assert slivers(stand("nook", 30, 12, 8, 7), building=notched) == []


def test_under_and_beside_a_structure():
    """A room that a structure holds may stand in it at will; one outside keeps the gap."""
    assert slivers(stand("table", 40, 27, 14, 12)) == []
    assert slivers(stand("bed", 37, 30, 6, 7)) == [("bed", "old roof")]
