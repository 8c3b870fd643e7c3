"""What rooms have at their backs."""

from dataclasses import replace

import pytest
from shapely import Polygon, box

from optimizer.appraisal.enclosure import EnclosureMeasures, RoomBacks, enclosure_measures
from optimizer.brief import RoomWish
from optimizer.catalogue import Cover, Item, SizedRoom, sized_room
from optimizer.catalogue.data_files import data
from optimizer.grading import Grading, Wall
from optimizer.layout import Layout, Placement, placed_of
from optimizer.planting import Bed, planting_of
from optimizer.site import Structure, Surrounding
from tests.yards import PLAIN_SITE, plain_rooms, sized, stand

OPEN_LAND = replace(PLAIN_SITE, structures=(), surroundings=(), trees=(), keep_outs=())
"""A house at (10, 0) to (50, 12) and nothing else."""
FLAT = Grading(is_known=False, levels_ft=(), flights=(), walls=(), guards=(), earth=(), falls=())
PLANTED = planting_of(OPEN_LAND, (), placed_of((), Layout(())), Polygon())
FAR = stand("nook", 22, 25, 8, 7)


def measured(*places: Placement, site=OPEN_LAND, rooms=(), grading=FLAT, beds=()) -> EnclosureMeasures:
    """Backs of the plain rooms, or of those that stand in for them, at these places."""
    planting = replace(PLANTED, beds=tuple(Bed(bed, "between rooms") for bed in beds))
    return enclosure_measures(site, placed_of(plain_rooms(*rooms), Layout(places)), grading, planting)


def backed(*places: Placement, **facts) -> int:
    """Backed sides of the nook."""
    return next(room.backed for room in measured(*places, **facts).rooms if room.room == "nook")


def nook(*items: Item, **facts) -> SizedRoom:
    """The plain nook with this furniture."""
    room = sized("nook", "nook", 8, 7)
    return replace(room, choices=(replace(room.choices[0], furniture=items, **facts),))


def wall(height_ft: float) -> Grading:
    """A wall along the nook's upper edge."""
    ends = ((22, 32.0), (30, 32.0))
    return replace(FLAT, walls=(Wall("nook", ends, 8, height_ft, 8 * height_ft, needs_permit=False),))


def test_rule_9_is_in_the_data_file() -> None:
    """Gathering on one side at least, nook on two, within 4 ft (layout rules, rule 9)."""
    assert data("enclosure.yaml")["sides"] == {"gathering": 1, "nook": 2}
    assert data("enclosure.yaml")["within_ft"] == 4


@pytest.mark.parametrize(("y_ft", "sides"), [(12, 1), (16, 1), (16.1, 0)])
def test_a_house_gives_a_back_within_4_ft(y_ft: float, sides: int) -> None:
    """The wall of the house lies at 12 ft."""
    assert backed(stand("nook", 22, y_ft, 8, 7)) == sides


@pytest.mark.parametrize(("x_ft", "sides"), [(46, 1), (46.1, 0), (48, 0)])
def test_a_back_takes_half_of_the_side(x_ft: float, sides: int) -> None:
    """The house ends at 50 ft: at 46 half of a side of 8 ft leans on it."""
    assert backed(stand("nook", x_ft, 14, 8, 7)) == sides


def test_two_pieces_that_overlap_count_once() -> None:
    """Beds over the same quarter of a side do not make half of it."""
    same = (box(22, 32, 24, 35), box(22, 33, 24, 36))
    beside = (box(22, 32, 24, 35), box(27, 33, 30, 36))
    assert backed(FAR, beds=same) == 0
    assert backed(FAR, beds=beside) == 1


def test_slivers_of_bed_are_no_back() -> None:
    """A piece of less than 6 sq ft is none."""
    assert backed(FAR, beds=(box(22, 32, 30, 32.5),)) == 0


@pytest.mark.parametrize(("height_ft", "sides"), [(2.0, 1), (1.0, 0)])
def test_walls(height_ft: float, sides: int) -> None:
    """A wall of a foot is a kerb."""
    assert backed(FAR, grading=wall(height_ft)) == sides


def test_structures_fences_and_beds() -> None:
    """An existing structure, a fence at the boundary and a placed bed beside three sides."""
    site = replace(
        OPEN_LAND,
        structures=(Structure("old roof", ((31, 24), (40, 24), (40, 34), (31, 34))),),
        surroundings=(Surrounding("fence", line=((0, 34), (60, 34))), Surrounding("eye", at=(26, 33))),
    )
    bed = stand("bed", 16, 24, 4, 9)
    assert backed(FAR, bed, site=site, rooms=(sized("bed", "bed", 4, 9),)) == 3


def test_own_sides_count_and_free_furniture_does_not() -> None:
    """A bench along its own back and a bed along its left give two sides; a table gives none."""
    items = (Item("bench", 1, 0.5, 6, 1.5, seats=2), Item("bed", 0, 0, 2, 7), Item("table", 3, 3, 3, 3))
    assert backed(FAR, rooms=(nook(*items),)) == 2
    assert backed(FAR, rooms=(nook(items[2]),)) == 0


def test_a_bench_in_the_middle_is_no_side() -> None:
    """What stands more than 2 ft within gives no back."""
    assert backed(FAR, rooms=(nook(Item("bench", 1, 2.5, 6, 1.5, seats=2)),)) == 0


def test_a_screen_gives_two_backs_and_a_roof_all() -> None:
    """A bought screen stands round two sides that meet; a shade structure has posts on all."""
    assert backed(FAR, rooms=(nook(is_screened=True),)) == 2
    assert backed(FAR, rooms=(nook(cover=Cover(9.0, 0.7)),)) == 4


def test_a_neighbours_seat_wall_counts() -> None:
    """The nook leans on the seat wall of the room beside it."""
    beside = sized("table", "gathering", 14, 12, required=True)
    walled = replace(beside, choices=(replace(beside.choices[0], furniture=(Item("seat wall", 0, 0, 14, 1.5),)),))
    table = stand("table", 20, 32, 14, 12)
    assert backed(FAR, table, rooms=(walled,)) == 1
    assert backed(FAR, table) == 0


@pytest.mark.parametrize(("front", "shown"), [("-y", ()), ("+x", ()), ("-x", ()), ("+y", ("fire",))])
def test_the_fires_back_and_the_main_door(front, shown) -> None:
    """A fire before the kitchen door shows it its back only when it opens away from the house."""
    fire = sized_room(RoomWish("fire", "fire", seats=8, fuel="gas"))
    choice = fire.choices[-1]
    place = stand("fire", 20 - choice.width_ft / 2, 20, choice.width_ft, choice.depth_ft, front, choice=choice.label)
    assert measured(place, rooms=(fire,)).backs_in_view == shown


def test_a_fire_beside_the_view_is_not_in_it() -> None:
    """Far to the side of what an opening looks at, a fire may turn its back to it."""
    fire = sized_room(RoomWish("fire", "fire", seats=8, fuel="gas"))
    choice = fire.choices[-1]
    assert measured(stand("fire", 60, 16, 18, 18, "+x", choice=choice.label), rooms=(fire,)).backs_in_view == ()


def test_an_open_fire_has_no_back_to_show() -> None:
    """The plain fire is open on all sides."""
    assert measured(stand("fire", 16, 20, 8, 8, "+y")).backs_in_view == ()


def test_missing_counts_what_is_wanted() -> None:
    """More backs than wanted do not make up for another room's."""
    rooms = (RoomBacks("table", 1, 3), RoomBacks("nook", 2, 0))
    assert EnclosureMeasures(rooms, ("fire",)).missing == 3
    assert measured(stand("table", 22, 20, 14, 12), FAR).missing == 3
