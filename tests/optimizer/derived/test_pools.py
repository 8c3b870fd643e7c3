"""What lies round a pool: its barrier, the doors inside it, the pad of its equipment. The yard is 60 x 40 ft, the house
lies from (10, 0) to (50, 12), its kitchen door at (20, 12) has a landing and a tread.
"""

from dataclasses import replace

import pytest
import shapely
from shapely import Polygon, box

from optimizer.appraisal import priced
from optimizer.brief import Brief, Guests, RoomWish, SunWish
from optimizer.catalogue import Item, book_for, pad_size_ft, sized_rooms
from optimizer.concepts import cautions_for, permits_for
from optimizer.derived import Derived, PoolSite, pool_sites
from optimizer.derived.pool_pads import pad_places
from optimizer.drawing import draw_plan
from optimizer.fields import room_sun_hours, site_shapes
from optimizer.layout import Layout, Placed, Pose, placed_of
from optimizer.layout.pose import SYMMETRIES
from optimizer.site import Setbacks
from tests.yards import PLAIN_SITE, bathing, on_site, plain_yard, sized, stand

PLAIN = plain_yard(ceiling=None)
YARD = replace(PLAIN, brief=replace(PLAIN.brief, trips=()))
POOL = stand("pool", 24, 20, 16, 18, "-y")
ROOMS = (bathing("pool"), sized("table", "gathering", 12, 12), sized("grass", "lawn", 12, 12))


def placed(*places) -> Placed:
    return placed_of(ROOMS, Layout(places))


def landing_top_ft() -> float:
    """Where the kitchen door's landing and steps end."""
    return site_shapes(PLAIN_SITE).door_zones[0][1].bounds[3]


def around(*places, site=PLAIN_SITE, paths: Polygon | None = None) -> PoolSite:
    """What the one pool needs."""
    (found,) = pool_sites(site, placed(*places), paths or Polygon())
    return found


def test_a_pool_alone_is_closed_in_all_round() -> None:
    """Half a foot outside the deck of 16 x 18 ft: 2 x (17 + 19) ft, a closed line, and no door inside it."""
    found = around(POOL)
    assert found.barrier.length == pytest.approx(72)
    assert found.barrier.is_closed
    assert found.doors == ()


def test_a_house_wall_closes_the_barrier() -> None:
    """Flush with the house over 16 ft, the barrier has three sides and ends at the wall."""
    found = around(stand("pool", 30, 12, 16, 18, "+y"))
    assert found.barrier.length == pytest.approx(17 + 2 * (18.5 - 0.1), abs=0.01)
    assert not found.barrier.is_closed


def test_a_terrace_that_touches_lies_inside_with_its_door() -> None:
    """A table between the pool and the kitchen door's landing puts that door inside; a lawn does not."""
    low = landing_top_ft()
    found = around(stand("pool", 12, low + 12, 16, 18, "-y"), stand("table", 14, low, 12, 12))
    assert found.doors == ("kitchen door",)
    assert not found.barrier.is_closed
    assert around(stand("pool", 12, low + 12, 16, 18, "-y"), stand("grass", 14, low, 12, 12)).doors == ()


def test_a_strip_before_the_house_is_closed_at_its_ends() -> None:
    """A pool 6 ft off the house over 16 ft: three sides, and both ends of the strip; 7 ft off it has four sides."""
    near, far = around(stand("pool", 30, 18, 16, 18, "+y")), around(stand("pool", 30, 19, 16, 18, "+y"))
    assert near.barrier.length == pytest.approx(17 + 2 * (18.5 + 6 - 0.1), abs=0.01)
    assert far.barrier.length == pytest.approx(72)


def test_two_pools_of_one_terrace_have_one_barrier() -> None:
    """What closes both in is counted once."""
    rooms = (bathing("pool"), bathing("second"))
    layout = Layout((stand("pool", 12, 20, 16, 18, "-y"), stand("second", 28, 20, 16, 18, "-y")))
    first, second = pool_sites(PLAIN_SITE, placed_of(rooms, layout), Polygon())
    assert first.barrier.length == pytest.approx(2 * (33 + 19))
    assert second.barrier.is_empty
    assert second.pad is not None


def test_the_pad_stands_at_a_wall_or_edge_and_out_of_the_way() -> None:
    """8 x 4 ft at a wall of the house or 2 ft from the boundary, 3 ft and more from the barrier, off rooms, ways and
    keep-outs; pipes run from it along the axes.
    """
    way = box(0, 12, 60, 16)
    found = around(POOL, paths=way)
    assert found.pad is not None
    left, low, right, top = found.pad.bounds
    assert sorted((right - left, top - low)) == sorted(pad_size_ft())
    edge = Polygon(PLAIN_SITE.boundary).exterior.distance(found.pad)
    assert min(abs(edge - 2.0), found.pad.distance(box(10, 0, 50, 12))) < 0.01
    assert found.pad.distance(box(24, 20, 40, 38)) >= 3 - 0.01
    assert found.pad.intersection(way).area < 0.01
    (x0, y0), (x1, y1) = (placed(POOL).rooms[0].water.bounds[i : i + 2] for i in (0, 2))
    assert found.pipe_ft == pytest.approx(max(x0 - right, left - x1, 0) + max(y0 - top, low - y1, 0), abs=0.01)


def test_the_shortest_pipes_win() -> None:
    """No other free place has shorter pipes."""
    found = around(POOL)
    taken = box(24, 20, 40, 38).buffer(3, join_style="mitre")
    free = [place for place in pad_places(PLAIN_SITE) if place.intersection(taken).area < 0.01]
    assert len(free) > 5
    assert found.pipe_ft <= min(place.distance(placed(POOL).rooms[0].water) for place in free) * 2**0.5 + 0.01
    assert found.pad in free


def test_a_pad_is_not_forced_where_there_is_no_place() -> None:
    """With ways all over the yard there is none, and the concept says so."""
    found = around(POOL, paths=box(0, 0, 60, 40))
    assert (found.pad, found.pipe_ft) == (None, 0.0)


def test_equipment_keeps_its_setback() -> None:
    """Where it must keep 6 ft, no place is nearer to the boundary; where 20 ft, none stands along it."""
    for setback, along_edge in ((6.0, True), (20.0, False)):
        site = replace(PLAIN_SITE, setbacks=(Setbacks(equipment=setback),) * 4)
        places = pad_places(site)
        distances = [Polygon(site.boundary).exterior.distance(place) for place in places]
        assert all(distance >= setback - 0.03 for distance in distances)
        assert any(abs(distance - setback) < 0.03 for distance in distances) == along_edge


@pytest.mark.parametrize("pose", [Pose(matrix, (3.7, 1.3)) for matrix in SYMMETRIES])
def test_a_turned_or_mirrored_yard_has_the_same_barrier_and_pipes(pose: Pose) -> None:
    """Lengths are the same in all eight poses, though an outline runs the other way round in a mirrored one."""
    site = replace(PLAIN_SITE, setbacks=tuple(Setbacks(equipment=far) for far in (20.0, 4.0, 6.0, 2.0)))
    posed = placed_of(ROOMS, pose.layout(Layout((POOL,))))
    here, there = around(POOL, site=site), pool_sites(pose.site(site), posed, Polygon())[0]
    assert there.pipe_ft == pytest.approx(here.pipe_ft, abs=0.011)
    assert there.barrier.length == pytest.approx(here.barrier.length)


def test_barrier_alarms_and_pipes_are_priced() -> None:
    """Their lines stand in the cost sheet with the lengths of the plan, in the pool's own phase."""
    derived = Derived(YARD, placed(POOL))
    lines = {line.item: line for line in priced(derived, book_for("USD")).lines}
    (site,) = derived.pools
    assert float(lines["pool barrier"].quantity) == pytest.approx(site.barrier.length)
    assert float(lines["pool pipe run"].quantity) == pytest.approx(site.pipe_ft)
    assert "door alarm" not in lines
    later = placed_of((replace(ROOMS[0], phase=2),), Layout((POOL,)))
    phases = {line.item: line.phase for line in priced(Derived(YARD, later), book_for("USD")).lines}
    assert phases["pool barrier"] == 2


def test_sun_is_asked_at_the_water() -> None:
    """A pool's hours are those of its water: under a fence's shade on the deck alone nothing changes."""
    wish = SunWish("sun", 9, 16, (12,))
    sunny = replace(ROOMS[0], sun=wish)
    derived = Derived(YARD, placed_of((sunny,), Layout((POOL,))))
    (room,) = derived.placed.rooms
    left, low, right, top = room.water.bounds
    over_water = room_sun_hours(YARD.site, wish, low=(left, low), high=(right, top))
    over_room = room_sun_hours(YARD.site, wish, low=(24, 20), high=(40, 38))
    assert derived.sun_h(room) == over_water
    assert over_water != pytest.approx(over_room, abs=0.05)


def test_cautions_speak_of_barrier_doors_electricity_and_suction() -> None:
    """Each once, in plain words, with the length of the barrier; nothing of it without a pool."""
    words = " ".join(cautions_for(YARD, placed(POOL)))
    for said in (
        "72 ft of closed barrier",
        "4 ft high",
        "3 ft of it",
        "bonding",
        "suction",
        "gal",
        "Local codes decide",
    ):
        assert words.count(said) == 1, said
    assert "alarm" not in words
    assert "ool" not in " ".join(cautions_for(YARD, placed(stand("table", 24, 20, 12, 12))))


def test_cautions_name_the_doors_inside() -> None:
    """The door that the terrace meets gets an alarm."""
    low = landing_top_ft()
    found = cautions_for(YARD, placed(stand("pool", 12, low + 12, 16, 18, "-y"), stand("table", 14, low, 12, 12)))
    assert [words for words in found if "kitchen door" in words and "alarm" in words]


def test_cautions_name_what_can_be_climbed_at_the_barrier() -> None:
    """A seat wall at the outer edge of a terrace that touches is named, one 4 ft within is not, nor is a table there."""
    for item, is_named in (
        (Item("seat wall", 1.0, 0.0, 10.0, 1.5), True),
        (Item("seat wall", 4.0, 4.0, 4.0, 1.5), False),
        (Item("table", 1.0, 0.0, 10.0, 1.5), False),
        (Item("bed", 1.0, 0.0, 10.0, 1.5), False),
    ):
        walled = replace(ROOMS[1], choices=(replace(ROOMS[1].choices[0], furniture=(item,)),))
        layout = Layout((POOL, stand("table", 40, 22, 12, 12, "-x")))
        found = cautions_for(YARD, placed_of((ROOMS[0], walled), layout))
        assert any("table stand within 3 ft" in words for words in found) == is_named


def test_a_pool_asks_for_its_permits() -> None:
    """A pool permit now, not later, and one for electricity."""
    found = permits_for(on_site(YARD, trees=()), placed(POOL))
    assert [words for words in found if words.startswith("Pool permit: the pool")]
    assert [words for words in found if words.startswith("Electrical permit") and "pool" in words]
    assert not [words for words in found if "later" in words]


def test_sized_pools_are_drawn_with_what_they_need() -> None:
    """The plan has water, barrier and pad, and its legend says so."""
    (room,) = sized_rooms(Brief(Guests(4, 12), (RoomWish("pool", "pool", water_ft=(8, 12)),)))
    small = room.choices[0]
    place = stand("pool", 12, 16, small.width_ft, small.depth_ft, "-y", choice=small.label)
    drawing = draw_plan(YARD, placed_of((room,), Layout((place,))), (), title="A plan")
    roles = {mark.role for mark in drawing.marks}
    assert {"room.pool", "furniture.water", "furniture.lounger", "pool_barrier", "pool_pad"} <= roles
    assert {"pool barrier, closed", "pool equipment", "water"} <= {text.text for text in drawing.texts}
    assert shapely.union_all([Polygon(m.rings[0]) for m in drawing.marks if m.role == "furniture.water"]).area > 50
