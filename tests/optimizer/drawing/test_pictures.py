"""Pictures of one question each: ground, sun, sight, section."""

from dataclasses import replace
from datetime import datetime
from itertools import combinations

import numpy as np
import pytest
import shapely
from shapely import LineString, Point, Polygon, box

from optimizer.brief import Relation, SunWish
from optimizer.drawing import Area, Circle, Line
from optimizer.drawing.contours import contours_of, cut, draw_ground, interval_ft, triangles_of
from optimizer.drawing.section import draw_section, line_through, section_angle_deg
from optimizer.drawing.sight_fan import Viewer, draw_sight, seen_area, viewers
from optimizer.drawing.sun_map import class_edges_h, draw_sun_map, summer_day, sun_windows, window_text
from optimizer.drawing.words import level_text
from optimizer.export import plan_svg
from optimizer.fields import open_yard, room_sun_hours
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, SpotLevel, Surrounding, Tree

CORNERS = ((0, 0), (100, 0), (100, 120), (0, 120))
NOON = datetime(2026, 6, 21, 12)  # noqa: DTZ001 - the yard's own clock


def on_plane(scenario, *, rise_x=0.0, rise_y=0.0, **changes):
    """The scenario on a plane through the origin, with parts of its site replaced."""
    levels = tuple(SpotLevel(at, rise_x * at[0] + rise_y * at[1]) for at in CORNERS)
    return replace(scenario, site=replace(scenario.site, boundary=CORNERS, levels=levels, **changes))


def bare(scenario, **changes):
    """The scenario with nothing on its site that throws a shadow or hides anything."""
    empty = {"buildings": (), "structures": (), "trees": (), "surroundings": (), "keep_outs": (), **changes}
    return on_plane(scenario, **empty)


def all_pictures(scenario, rooms, layout):
    """One of each drawing."""
    viewer = viewers(scenario.site, placed_of(rooms, layout), {})[-1]
    line = line_through(scenario.site, layout, None)
    return (
        draw_ground(scenario, layout, {}, title="Ground"),
        draw_sun_map(scenario, placed_of(rooms, layout), SunWish("sun", 8, 20, (6,)), title="Sun"),
        draw_sight(scenario, placed_of(rooms, layout), viewer, title="Sight"),
        draw_section(scenario, placed_of(rooms, layout), {}, line, when=NOON, title="Section"),
    )


def test_a_contour_of_a_plane_is_the_straight_line_at_its_height():
    """On z = x / 10 the contour at 1 ft runs along x = 10 over the whole grid, in one piece."""
    xs, ys = np.arange(0.0, 21.0, 2.0), np.arange(0.0, 9.0, 2.0)
    line = cut(triangles_of(xs, ys, np.tile(xs / 10, (len(ys), 1))), 1.0)
    assert line.geom_type == "LineString"
    assert line.length == pytest.approx(8.0)
    assert set(shapely.get_coordinates(line)[:, 0]) == {10.0}


def test_a_contour_cuts_one_triangle_where_its_sides_reach_the_height():
    """Corners at 0, 0 and 4: the contour at 1 joins the points a quarter up both rising sides."""
    line = cut(np.array([[[0, 0, 0], [8, 0, 0], [0, 8, 4]]], dtype=float), 1.0)
    assert line.equals(LineString([(0, 2), (6, 2)]))


def test_contours_stay_out_of_the_house_and_rise_in_steps(yard):
    """Contours of a sloping yard are a step apart, lie where their height is, and none runs under the house."""
    scenario = on_plane(yard, rise_y=0.025)
    step, contours = contours_of(scenario.site, "ft")
    assert step == pytest.approx(0.25)
    assert [contour.z_ft for contour in contours] == pytest.approx([0.25 * k for k in range(1, 12)])
    for contour in contours:
        assert shapely.get_coordinates(contour.lines)[:, 1] == pytest.approx(contour.z_ft / 0.025)
        assert contour.lines.intersection(
            Polygon(scenario.site.buildings[0].outline).buffer(-0.1)
        ).length == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("units", ["ft", "m"])
@pytest.mark.parametrize("rise_ft", [2.0, 3.1, 5.0, 8.0, 13.0, 25.0, 40.0])
def test_six_to_fourteen_contours(units, rise_ft):
    """A yard that rises by 2 ft and more gets at least 6 contours where the coarsest step allows, and at most 14."""
    step = interval_ft(-0.03, rise_ft - 0.03, units)
    assert 6 <= rise_ft / step <= 14.5 or (units == "ft" and 5 <= rise_ft / step <= 14.5)


def test_levels_are_those_given_else_the_mean_ground(yard, layout):
    """The kitchen shows the level that it is given, the nook the mean of the plane under it; 0 bears no sign."""
    drawing = draw_ground(on_plane(yard, rise_x=0.1), layout, {"outdoor kitchen": 0.04}, title="Ground")
    figures = [text.text for text in drawing.texts if text.role == "room_size"]
    assert figures[layout.placements.index(layout.of("outdoor kitchen"))] == "±0.0"
    assert figures[layout.placements.index(layout.of("quiet nook"))] == "+2.6"
    assert level_text(-1.0, "m") == "−0.30"


def test_level_ground_is_told(yard, layout):
    """Without levels there is no contour, and the sheet says why."""
    site = replace(yard.site, levels=())
    drawing = draw_ground(replace(yard, site=site), layout, {}, title="Ground")
    assert not [mark for mark in drawing.marks if mark.role.startswith("contour")]
    assert any("taken as level" in text.text for text in drawing.texts)


def test_no_figure_of_the_ground_lies_on_another(yard, layout):
    """Names, levels and heights of contours keep clear of each other."""
    drawing = draw_ground(on_plane(yard, rise_x=0.02, rise_y=0.02), layout, {}, title="Ground")
    heights = [text for text in drawing.texts if text.role == "contour_level"]
    assert len(heights) >= 6
    others = [text for text in drawing.texts if text.role in {"room_name", "room_size", "spot_level"}]
    assert not [1 for one, two in combinations(heights, 2) if box(*one.box).intersects(box(*two.box))]
    assert not [1 for one in heights for two in others if box(*one.box).intersects(box(*two.box))]


@pytest.mark.parametrize("units", ["ft", "m"])
def test_every_picture_can_be_written_and_says_what_it_shows(yard, rooms, layout, units):
    """Every role has a look, every sheet its caution, and the words for who cannot see name the rooms."""
    for drawing in all_pictures(replace(yard, units=units), rooms, layout):
        assert "Concept sketch" in plan_svg(drawing)
        assert "gathering area" in drawing.description
        edge = box(*drawing.sheet_box).buffer(0.01)
        assert all(edge.contains(box(*text.box)) for text in drawing.texts), drawing.title


def test_sun_classes_part_the_open_yard(yard, rooms, layout):
    """Cells of the five classes cover the open yard once, and hours by the house lie in a lower class."""
    drawing = draw_sun_map(yard, placed_of(rooms, layout), SunWish("sun", 8, 20, (6,)), title="Sun")
    cells = {}
    for mark in drawing.marks:
        if isinstance(mark, Area) and mark.role.startswith("sun."):
            cells.setdefault(mark.role, []).append(Polygon(mark.rings[0], mark.rings[1:]))
    areas = {role: shapely.union_all(polygons) for role, polygons in cells.items()}
    assert sum(area.area for area in areas.values()) == pytest.approx(open_yard(yard.site).area)
    assert len(areas) >= 3
    assert areas["sun.5"].contains(Point(50, 10))
    assert not areas["sun.5"].contains(Point(44, 58))


def test_an_open_yard_is_all_sun(yard, rooms, layout):
    """Where nothing throws a shadow, every cell has the whole window and every room its hours."""
    drawing = draw_sun_map(bare(yard), placed_of(rooms, layout), SunWish("sun", 10, 14, (6,)), title="Sun")
    assert {mark.role for mark in drawing.marks if mark.role.startswith("sun.")} == {"sun.5"}
    assert {text.text for text in drawing.texts if text.role == "room_size"} == {"4.0 of 4 h"}


def test_a_rooms_hours_are_those_of_the_measure(yard, rooms, layout):
    """The figure under a room is the measure's own."""
    wish, place = SunWish("shade", 16, 19, (6, 7, 8)), layout.of("gathering area")
    hours = room_sun_hours(yard.site, wish, low=(place.x_ft, place.y_ft), high=(place.right_ft, place.top_ft))
    drawing = draw_sun_map(yard, placed_of(rooms, Layout((place,))), wish, title="Sun")
    assert [text.text for text in drawing.texts if text.role == "room_size"] == [f"{hours:.1f} of 3 h"]


def test_windows_and_classes(rooms):
    """A room's wish is offered under its name beside two days; a short window is parted in fifths."""
    wish = SunWish("sun", 8, 10.5, (4, 5, 6))
    windows = sun_windows((*rooms[:1], replace(rooms[1], sun=wish)))
    assert [*windows] == ["outdoor kitchen", "a June day", "a September day", "a December day"]
    assert class_edges_h(wish) == pytest.approx((0.5, 1.0, 1.5, 2.0))
    assert class_edges_h(windows["a June day"]) == (2.0, 4.0, 6.0, 8.0)
    assert window_text(wish) == "April to June, 8:00 to 10:30"
    assert window_text(SunWish("sun", 8, 9, (12, 6))) == "June, December, 8:00 to 9:00"


@pytest.mark.parametrize(("latitude", "name"), [(51.0, "a June day"), (-37.0, "a December day")])
def test_a_summers_day_is_half_a_year_apart_in_the_south(yard, latitude, name):
    """The map that nobody chose shows summer, in either hemisphere."""
    site = replace(yard.site, place=replace(yard.site.place, latitude=latitude))
    assert summer_day(site) == name
    assert name in sun_windows(())


def test_a_low_fence_hides_a_strip_by_similar_triangles(yard):
    """Eyes at 14 ft, a 6 ft fence 4 ft away, seen 3 ft up: hidden to 4 x (14 - 3) / (14 - 6) = 5.5 ft, by hand."""
    fence = Surrounding("fence", line=((-500, 10), (600, 10)), height_ft=6)
    site = bare(yard, surroundings=(fence,)).site
    seen = seen_area(site, Viewer("window", (50, 6), 14.0))
    assert seen.contains(Point(50, 9.9))
    assert not seen.intersects(Point(50, 10.1).buffer(0.05))
    assert not seen.contains(Point(50, 11.4))
    assert seen.contains(Point(50, 11.6))


def test_a_fence_as_high_as_the_eyes_hides_all_behind_it(yard):
    """Who sits behind a 6 ft fence sees nothing beyond it."""
    fence = Surrounding("fence", line=((-500, 60), (600, 60)), height_ft=6)
    seen = seen_area(bare(yard, surroundings=(fence,)).site, Viewer("chair", (50, 30), 3.75))
    assert seen.area == pytest.approx(100 * 60, rel=1e-3)


def test_a_house_hides_what_lies_behind_it(yard):
    """A wall of 20 ft seen from 20 ft hides a strip that is twice as wide at twice the distance."""
    house = Building("house", ((40, 40), (60, 40), (60, 50), (40, 50)), height_ft=20)
    seen = seen_area(bare(yard, buildings=(house,)).site, Viewer("chair", (50, 20), 3.75))
    assert not seen.contains(Point(31.0, 60))
    assert seen.contains(Point(29.0, 60))
    assert seen.contains(Point(50, 39))


@pytest.mark.parametrize(("evergreen", "hides"), [(True, True), (False, False)])
def test_an_evergreen_crown_hides_what_the_line_under_it_does_not_reach(yard, evergreen, hides):
    """Eyes 14 ft up, a crown from 6 to 20 ft that begins 19 ft away: seen under it to 19 x 11 / 8 = 26.1 ft, by hand."""
    tree = Tree("fir", (50, 30), trunk_diameter_ft=1, canopy_radius_ft=5, height_ft=20, evergreen=evergreen)
    seen = seen_area(bare(yard, trees=(tree,)).site, Viewer("window", (50, 6), 14.0))
    assert seen.contains(Point(50, 6 + 26.0))
    assert seen.contains(Point(50, 6 + 26.3)) != hides
    assert seen.contains(Point(50, 110)) != hides


def test_under_a_crown_one_sees_as_if_it_were_not_there(yard):
    """Who sits below where the crown begins sees all of the yard."""
    tree = Tree("fir", (50, 30), trunk_diameter_ft=1, canopy_radius_ft=5, height_ft=20, evergreen=True)
    scenario = bare(yard, trees=(tree,))
    assert seen_area(scenario.site, Viewer("chair", (50, 30), 3.75)).area == pytest.approx(100 * 120)


def test_a_bought_panel_hides_and_is_drawn(yard, rooms, layout):
    """The nook, kept from the neighbour by a panel, is seen less from there than without, and the panel has its line."""
    private = Relation(("quiet nook", "neighbour window"), "out_of_view")
    scenario = bare(yard, surroundings=(Surrounding("neighbour window", at=(112, 60), eye_z_ft=6),))
    scenario = replace(scenario, brief=replace(scenario.brief, relations=(private,)))
    viewer = next(v for v in viewers(scenario.site, placed_of(rooms, layout), {}) if v.name == "neighbour window")
    screened = tuple(
        replace(room, choices=tuple(replace(choice, is_screened=True) for choice in room.choices)) for room in rooms
    )
    open_view, closed = (draw_sight(scenario, placed_of(of, layout), viewer, title="Sight") for of in (rooms, screened))
    lines = [[mark for mark in drawing.marks if mark.role == "screen"] for drawing in (open_view, closed)]
    figures = [
        [text.text for text in drawing.texts if text.role == "room_size"][
            layout.placements.index(layout.of("quiet nook"))
        ]
        for drawing in (open_view, closed)
    ]
    assert any(isinstance(mark, Line) for mark in lines[1])
    assert len(lines[1]) == len(lines[0]) + 1
    assert figures == ["100% seen", "0% seen"]


def test_eyes_are_where_they_look_from(yard, rooms, layout):
    """Cooks stand, others sit; a door's eyes stand on its floor before the wall; a neighbour's are as high as given."""
    eyes = {viewer.name: viewer for viewer in viewers(yard.site, placed_of(rooms, layout), {"quiet nook": 2.0})}
    assert eyes["quiet nook"].z_ft == pytest.approx(5.75)
    assert eyes["outdoor kitchen"].z_ft == pytest.approx(-1.2 + 5.25)
    assert eyes["family door"].z_ft == pytest.approx(1.0 + 5.25)
    assert eyes["family door"].at == pytest.approx((31, 64.5))
    assert eyes["neighbour window"].z_ft == 14


def test_a_section_shows_true_heights(yard, rooms, layout):
    """Along x = 50 the house stands from 34 to 60 ft of the line and is as high as the file says."""
    site = replace(yard.site, buildings=(replace(yard.site.buildings[0], height_ft=21),))
    scenario = replace(yard, site=site)
    drawing = draw_section(
        scenario, placed_of(rooms, layout), {"gathering area": -0.5}, ((50, -4), (50, 124)), when=None, title="S"
    )
    house = bounds(drawing, "section_building")
    assert house == pytest.approx((34, -1.2, 60, 19.8))
    slabs = [bounds_of(mark) for mark in drawing.marks if mark.role == "section_room"]
    assert slabs[0] == pytest.approx((72, -1.0, 84, -0.5))
    fence = next(mark for mark in drawing.marks if mark.role == "section_fence")
    assert isinstance(fence, Line)
    assert [end[1] for end in fence.points] == pytest.approx([-1.2, 4.8])
    eyes = [mark for mark in drawing.marks if isinstance(mark, Circle)]
    assert eyes[0].centre == pytest.approx((78, -0.5 + 3.75))


def bounds_of(mark):
    """Bounds of an area."""
    return Polygon(mark.rings[0]).bounds


def bounds(drawing, role):
    """Bounds of the one area of a role."""
    (area,) = [mark for mark in drawing.marks if mark.role == role]
    return bounds_of(area)


def test_a_section_needs_a_length(yard, rooms, layout):
    """Two points at one place are no line."""
    with pytest.raises(ValueError, match="a foot apart"):
        draw_section(yard, placed_of(rooms, layout), {}, ((5, 5), (5, 5)), when=None, title="S")


@pytest.mark.parametrize(
    ("plan_deg", "angle_deg"),
    [(90.0, 30.0), (270.0, 150.0), (0.0, 90.0), (45.0, 39.2315)],
    ids=["ahead", "behind", "across", "aslant"],
)
def test_the_sun_stands_steeper_in_a_section_across_it(plan_deg, angle_deg):
    """At 30 degrees altitude a section along +x shows 30 where it runs to the sun, 90 across, atan(tan 30 / cos 45) aslant."""
    assert section_angle_deg(30.0, plan_deg, (0, 0), (10, 0)) == pytest.approx(angle_deg, abs=1e-3)


def test_night_is_told(yard, rooms, layout):
    """With the sun down there is no ray."""
    midnight = NOON.replace(hour=0)
    line = line_through(yard.site, layout, "quiet nook")
    drawing = draw_section(yard, placed_of(rooms, layout), {}, line, when=midnight, title="S")
    assert not [mark for mark in drawing.marks if mark.role == "sun_ray"]
    assert any("the sun is down" in text.text for text in drawing.texts)
