"""Fields, borders, accents and caps of a layout."""

from dataclasses import replace

import pytest
from shapely import Polygon, box, union_all

from optimizer.appraisal import FinishPlan, finish_plan, finish_take_off
from optimizer.brief import Finish, FinishWish
from optimizer.catalogue import Quantity, SizedRoom, border_width_ft
from optimizer.circulation import Leg
from optimizer.layout import Layout, Placement, placed_of
from tests.yards import PLAIN_SITE, plain_rooms, sized, stand

NO_PATHS = Polygon()
COURSE_FT = border_width_ft()
TRIP = (("a", "b"),)


def plan(
    *places: Placement,
    wish: FinishWish | None = None,
    legs: tuple[Leg, ...] = (),
    paths: Polygon = NO_PATHS,
    more: tuple[SizedRoom, ...] = (),
) -> FinishPlan:
    """Finish of placed rooms in the plain yard."""
    return finish_plan(PLAIN_SITE, wish or FinishWish(), placed_of(plain_rooms(*more), Layout(places)), legs, paths)


def leg(*points: tuple[float, float], width_ft: float = 4.0) -> Leg:
    """One leg."""
    return Leg(points, width_ft, "main", TRIP)


def test_one_room_is_a_field_in_a_course() -> None:
    """A rectangle of 14 x 12 less a course all round; the course's middle runs at half its width inside."""
    found = plan(stand("table", 24, 16, 14, 12))
    amounts = finish_take_off(found, placed_of(plain_rooms(), Layout((stand("table", 24, 16, 14, 12),))))
    assert amounts.fields[0].area_sqft == pytest.approx((14 - 2 * COURSE_FT) * (12 - 2 * COURSE_FT))
    assert amounts.border_ft == pytest.approx(2 * (14 + 12) - 4 * COURSE_FT)
    assert amounts.accent_sqft == amounts.cap_ft == amounts.ways_sqft == 0
    assert amounts.field_order_sqft == pytest.approx(amounts.field_sqft * 1.05)


def test_rooms_that_touch_share_one_field_and_no_border_between() -> None:
    """Table and cooker are one terrace, the nook 3 ft off another; field and course fill each without overlap."""
    places = (stand("table", 24, 16, 14, 12), stand("cooker", 38, 18, 6, 8, "-x"), stand("nook", 28, 31, 8, 7))
    found = plan(*places)
    assert {terrace.rooms for terrace in found.terraces} == {("table", "cooker"), ("nook",)}
    joint = box(37.5, 20, 38.5, 24)
    terrace = next(terrace for terrace in found.terraces if "table" in terrace.rooms)
    assert terrace.field.contains(joint)
    assert terrace.field.area + terrace.border.area == pytest.approx(14 * 12 + 6 * 8, abs=0.01)


def test_ground_that_is_not_paved_is_no_terrace() -> None:
    """A reserve has no field, nor has a shed, which stands on its own base."""
    more = (sized("pool", "reserve", 10, 10), sized("shed", "storage", 10, 8))
    assert not plan(stand("pool", 10, 20, 10, 10), stand("shed", 25, 20, 10, 8), more=more).terraces


def test_courses_run_along_the_nearest_wall() -> None:
    """Above the house along x, beside it along y, off a corner as the long wall; else along the terrace's long side."""
    above, beside = stand("table", 24, 16, 14, 12), stand("nook", 51, 3, 7, 8, "+x")
    assert [terrace.turn_deg for terrace in plan(above, beside).terraces] in ([0.0, 90.0], [90.0, 0.0])
    assert [terrace.turn_deg for terrace in plan(stand("nook", 51, 14, 7, 8)).terraces] == [0.0]
    bare = replace(PLAIN_SITE, buildings=())
    upright = (stand("table", 24, 16, 12, 14),)
    found = finish_plan(bare, FinishWish(), placed_of(plain_rooms(), Layout(upright)), (), NO_PATHS)
    assert found.terraces[0].turn_deg == 90.0


def test_the_largest_room_with_a_pattern_gives_it_to_its_terrace() -> None:
    """The cooker asks for herringbone and the table stacked: both lie stacked; the nook keeps the yard's."""
    wish = FinishWish(by_room=(("cooker", "herringbone"), ("table", "stacked")))
    places = (stand("table", 24, 16, 14, 12), stand("cooker", 38, 18, 6, 8, "-x"), stand("nook", 28, 31, 8, 7))
    patterns = {terrace.rooms: terrace.pattern for terrace in plan(*places, wish=wish).terraces}
    assert patterns == {("table", "cooker"): "stacked", ("nook",): "running bond"}


def test_an_arrival_room_is_a_turned_field_in_a_border() -> None:
    """All of the arrival room is accent and course; nothing of it is field."""
    arrival = sized("meeting", "arrival", 10, 10)
    place = stand("meeting", 14, 16, 10, 10)
    found = plan(place, stand("table", 24, 16, 14, 12), more=(arrival,))
    assert found.accent.area == pytest.approx((10 - 2 * COURSE_FT) ** 2)
    assert found.accent_border.area == pytest.approx(100 - found.accent.area)
    assert found.terraces[0].field.intersection(box(14, 16, 24, 26)).area == pytest.approx(0, abs=1e-6)
    amounts = finish_take_off(found, placed_of(plain_rooms(arrival), Layout((place,))))
    assert amounts.accent_cuts == 0.10


def test_where_three_legs_meet_on_paving_is_an_accent() -> None:
    """A square as wide as the widest leg; two legs are a bend and no meeting, nor is a square off the paving."""
    legs = (leg((10, 20), (20, 20)), leg((20, 20), (30, 20), width_ft=5.0), leg((20, 20), (20, 30)))
    paths = union_all([box(10, 17.5, 30, 22.5), box(18, 22.5, 22, 30)])
    found = plan(legs=legs, paths=paths)
    assert found.accent.bounds == pytest.approx(
        (17.5 + COURSE_FT, 17.5 + COURSE_FT, 22.5 - COURSE_FT, 22.5 - COURSE_FT)
    )
    assert found.ways.area == pytest.approx(paths.area - 25)
    assert plan(legs=legs[:2], paths=paths).accent.is_empty
    short = (*legs[:2], leg((20, 20), (20, 27.9)))
    assert plan(legs=short, paths=paths).accent.is_empty, "a leg under 8 ft is none that meets others"
    assert plan(legs=legs, paths=box(10, 19, 30, 21)).accent.is_empty


def test_caps_are_as_long_as_the_seat_walls() -> None:
    """The chosen size says how much seat wall there is."""
    table = sized("table", "gathering", 14, 12, required=True)
    walled = replace(table, choices=(replace(table.choices[0], quantities=(Quantity("seat wall", 11.5),)),))
    places = (stand("table", 24, 16, 14, 12),)
    assert finish_take_off(plan(*places), placed_of(plain_rooms(walled), Layout(places))).cap_ft == 11.5


def test_nothing_placed_is_nothing_laid() -> None:
    """An empty layout has no terrace, and all amounts are 0."""
    amounts = finish_take_off(plan(), placed_of(plain_rooms(), Layout(())))
    assert (amounts.fields, amounts.field_order_sqft, amounts.border_ft, amounts.accent_sqft) == ((), 0, 0, 0)


def test_a_finish_is_the_palette_of_its_wish() -> None:
    """The plan carries the palette for who draws it."""
    assert plan(wish=FinishWish(border=Finish("gravel"))).palette.border.material == "gravel"
