"""What counts as touching, as apart, and as a sliver."""

from dataclasses import replace

import pytest

from optimizer.brief import Relation
from optimizer.check import CHECKS, CheckCase, check_layout
from optimizer.derived import Derived
from optimizer.layout import Layout, Placement, placed_of
from optimizer.site import Building, Door
from tests.yards import circled, on_site, plain_layout, plain_rooms, plain_yard, round_at, sized, stand

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
    return [finding.rooms for finding in check_layout(yard, placed_of(rooms, layout)) if finding.rule == "no_slivers"]


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


@pytest.mark.parametrize(
    ("x_ft", "y_ft", "kept"),
    [
        # The landing of the kitchen door and its one tread take x 17.5 to 22.5, y 12 to 17.17.
        (17, 17 + 1 / 6, True),  # flush with the lowest tread
        (17, 18 + 1 / 6, True),  # a foot off: the tread is built up to it
        (17, 18.2, False),
        (17, 20.1, False),
        (17, 20 + 1 / 6, True),
        (22.5, 12, True),  # along the wall, flush with the landing's side
        (23.5, 12, True),
        (23.6, 12, False),
        (25.4, 12, False),
        (25.5, 12, True),
        (23, 18.5, True),  # off its corner
        (21.3, 18.5, False),  # a foot and a quarter of it before the steps
        (21.4, 18.5, True),  # no more than a tread of it
        (9.5, 19, True),
    ],
)
def test_before_and_beside_a_landing(x_ft, y_ft, kept):
    """A room before a landing or beside it stands 3 ft off, or so near that the landing is built up to it."""
    pairs = slivers(stand("nook", x_ft, y_ft, 8, 7))
    assert (("nook", "kitchen door") not in pairs) is kept


@pytest.mark.parametrize(
    ("room", "y_ft", "kept"),
    [
        ("table", 20.5, True),
        ("table", 21.0, True),
        ("table", 21.1, False),
        ("table", 22.9, False),
        ("table", 23.0, True),
        ("nook", 20.5, False),  # a nook is no terrace: at a wall it is flush or clear
    ],
)
def test_a_terrace_is_paved_up_to_a_wall(room, y_ft, kept):
    """A terrace within a foot of a wall is built up to it as a landing is (layout rules 4 and 24)."""
    pairs = slivers(
        stand(room, 11, y_ft, 14, 12) if room == "table" else stand(room, 11, y_ft, 8, 7), building=L_SHAPED
    )
    assert ((room, "house") not in pairs) is kept


@pytest.mark.parametrize(("lean_ft", "kept"), [(0.1, True), (0.9, True), (1.6, False)])
def test_a_terrace_is_paved_up_to_a_wall_askew(lean_ft, kept):
    """A surveyed wall leans a little: what the widest end of the gap does not pass is paved."""
    leaning = Building("house", ((10, 0), (50, 0), (50, 12 - lean_ft), (36, 12 - lean_ft), (20, 12), (10, 12)))
    pairs = slivers(stand("table", 20, 12, 14, 12), building=leaning)
    assert (("table", "house") not in pairs) is kept


def test_a_layout_that_leaves_a_strip_beside_a_landing_only():
    """A nook along the house, a foot and a half from the landing, breaks this rule and no other."""
    findings = check_layout(plain_yard(), placed_of(plain_rooms(), plain_layout(stand("nook", 8, 12, 8, 7))))
    assert [(finding.rule, finding.rooms) for finding in findings] == [("no_slivers", ("nook", "kitchen door"))]
    assert findings[0].amount == pytest.approx(1.5)
    assert "1.50 ft" in findings[0].words


def test_a_landing_in_a_slanted_wall():
    """Before a door that looks to the upper right the gap is measured straight out: to a corner here."""
    gable = Building(
        "house", ((10, 0), (24, 0), (12, 16), (10, 16)), doors=(Door("gable door", (18, 8), 3, (0.8, 0.6)),)
    )
    far = (18 + 0.8 * 4, 8 + 0.6 * 4)  # the middle of the landing's front edge

    def found(gap_ft: float):
        return slivers(stand("nook", far[0] + 0.8 * gap_ft, far[1] + 0.6 * gap_ft, 8, 7), building=gable)

    assert [("nook", "gable door") in found(gap) for gap in (0.9, 1.1, 2.6, 3.0)] == [False, True, True, False]


@pytest.mark.parametrize(
    ("x_ft", "y_ft", "kept"),
    [
        (36, 22, True),  # 3 ft beside the circle
        (35.9, 22, False),
        (33, 22, False),  # where a square would be flush
        (35, 34, False),  # 5 ft from the disc, but in the corner of its square's surroundings
        (36, 34, True),
    ],
)
def test_a_circle_stands_clear_of_its_neighbours(x_ft, y_ft, kept):
    """It touches nothing, and keeps 3 ft along x or along y, told by its square: a corner between is of no use."""
    yard, rooms = plain_yard(), plain_rooms(sized("bed", "bed", 6, 7), circled("fire", 16))
    layout = Layout((round_at("fire", 17, 16, 16), stand("bed", x_ft, y_ft, 6, 7)))
    pairs = [finding.rooms for finding in check_layout(yard, placed_of(rooms, layout)) if finding.rule == "no_slivers"]
    assert (("fire", "bed") not in pairs) is kept


def test_a_circle_that_is_none_is_told():
    """Wider than deep, grown, or a rectangle in its place."""
    rooms, ring = (circled("fire", 16),), round_at("fire", 17, 16, 16)
    grown = replace(ring, base_width_ft=16.0, base_depth_ft=16.0)
    for place, fits in (
        (ring, True),
        (replace(ring, depth_ft=16.5), False),
        (grown, False),
        (replace(ring, shape="rectangle"), False),
    ):
        case = CheckCase(Derived(plain_yard(), placed_of(rooms, Layout((place,)))))
        assert (list(CHECKS["known_choice"](case)) == []) is fits
