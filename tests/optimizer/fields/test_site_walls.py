"""Walls, fences and hedges of a yard in which nothing else matters: what each stops, and where it lets through."""

from dataclasses import replace

import numpy as np
import pytest
import shapely
from shapely import LineString

from optimizer.appraisal.enclosure import enclosure_measures
from optimizer.brief import Relation, SunWish, Trip
from optimizer.check import check_layout
from optimizer.check.sight import sight_share
from optimizer.circulation import ways
from optimizer.circulation.ground import walkable_ground
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.problem.reach import reach_grid
from optimizer.engine.terms import detours
from optimizer.fields import room_sun_hours
from optimizer.fields.site_walls import gates_of, open_edge_ft, standing_parts, wall_height_ft
from optimizer.grading import Grading, levelled
from optimizer.layout import Layout, Pose, placed_of
from optimizer.planting import planting_of
from optimizer.site import Building, SpotLevel, Wall, WallOpening
from tests.yards import PLAIN_SITE, on_site, plain_rooms, plain_yard, sized, stand

BARE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=(), surroundings=())
NOTHING = placed_of((), Layout(()))
MIRROR = Pose((-1, 0, 0, 1), (60.0, 0.0))


def across(*openings: WallOpening, kind="fence", height_ft=6.0) -> Wall:
    """A fence from the street to the rear, through the middle of a yard of 60 x 40 ft."""
    return Wall("divide", ((30, 0), (30, 40)), kind, height_ft, openings)


def walled(*openings: WallOpening, **facts):
    return replace(BARE, walls=(across(*openings, **facts),))


def gap(width_ft=4.0, gate=None, y=35.0) -> WallOpening:
    return WallOpening((30, y), width_ft, gate)


def parts(site) -> int:
    """Pieces into which the ground that one may walk on falls."""
    return len(shapely.get_parts(walkable_ground(site, NOTHING)))


@pytest.mark.parametrize(("openings", "pieces"), [
    ((), 2),
    ((gap(),), 1),
    ((gap(gate="unlocked"),), 1),
    ((gap(gate="locked"),), 2),
    ((gap(3.0),), 1),
    ((gap(2.9),), 2),
])  # fmt: skip
def test_feet_pass_at_openings_only(openings, pieces):
    """An opening of 3 ft without a lock lets people pass; in a mirror too."""
    assert parts(walled(*openings)) == parts(MIRROR.site(walled(*openings))) == pieces


def test_a_wall_on_the_boundary_stops_nobody_more():
    """A way begins at the gate though the fence has no opening there."""
    fence = Wall("front fence", ((0, 0), (0, 40)), "fence", 6)
    rooms = plain_rooms()
    placed = placed_of(rooms, Layout((stand("table", 30, 16, 14, 12),)))
    brief = replace(plain_yard().brief, trips=(Trip("gate", "table", 4),))
    plain, fenced = (ways(site, brief, placed) for site in (BARE, replace(BARE, walls=(fence,))))
    assert fenced.trips == plain.trips
    assert fenced.legs == plain.legs


def test_a_paved_way_leads_through_the_opening():
    """It goes to the opening and no leg crosses the fence elsewhere."""
    placed = placed_of(plain_rooms(), Layout((stand("table", 40, 4, 14, 12),)))
    brief = replace(plain_yard().brief, trips=(Trip("gate", "table", 4),))
    found = ways(walled(gap(6.0)), brief, placed)
    assert found.unreached == ()
    assert found.unlaid == ()
    crossings = [LineString(leg.points).intersection(LineString([(30, 0), (30, 31)])) for leg in found.legs]
    assert found.legs
    assert all(crossing.is_empty for crossing in crossings)


def test_what_is_walled_off_is_not_reached():
    """A table behind a fence with a locked gate is reached from no entrance, and the check says so."""
    layout = Layout((stand("table", 40, 4, 14, 12),))
    yard = on_site(plain_yard(), **dict.fromkeys(("buildings", "structures", "trees", "keep_outs"), ()))
    rules = {
        gate: {finding.rule for finding in check_layout(on_site(yard, walls=(across(gap(5.0, gate)),)), placed)}
        for gate in (None, "locked")
        for placed in [placed_of(plain_rooms(), layout)]
    }
    assert rules["locked"] - rules[None] == {"reachable"}


def test_rooms_on_both_sides_do_not_touch():
    """No edge is shared over a wall; over its opening there is, exactly, and a way steps over there, off the middle too."""
    one, other = stand("table", 16, 10, 14, 12), stand("nook", 30, 12, 8, 7)
    assert open_edge_ft(BARE, one, other) == 7
    assert open_edge_ft(walled(), one, other) == 0
    placed = placed_of(plain_rooms(), Layout((one, other)))
    brief = replace(plain_yard().brief, trips=(Trip("table", "nook", 9),))
    for width, y in ((4.0, 15), (4.0, 14.5), (3.0, 15), (3.0, 16.5)):
        assert open_edge_ft(walled(gap(width, y=y)), one, other) == pytest.approx(width, abs=1e-9)
        assert ways(walled(gap(width, y=y)), brief, placed).unlaid == ()


def test_a_way_between_touching_rooms_leads_round_the_wall():
    """Without the wall one steps over the edge; with it one goes to the opening at the rear."""
    placed = placed_of(plain_rooms(), Layout((stand("table", 16, 10, 14, 12), stand("nook", 30, 12, 8, 7))))
    brief = replace(plain_yard().brief, trips=(Trip("table", "nook", 9),))
    lengths = [ways(site, brief, placed).trips[0].length_ft for site in (BARE, walled(gap(6.0)))]
    assert lengths[0] < 15
    assert lengths[1] > 30


def test_a_room_leans_on_no_room_beyond_a_wall():
    """A nook that touches the table needs no path; with a wall between the two it has one of its own."""
    placed = placed_of(plain_rooms(), Layout((stand("table", 16, 10, 14, 12), stand("nook", 30, 12, 8, 7))))
    brief = replace(plain_yard().brief, trips=(Trip("gate", "table", 9),))
    paths = [ways(site, brief, placed).own_paths for site in (BARE, walled(gap(6.0)))]
    assert paths[0] == ()
    assert [path.between[0] for path in paths[1]] == ["nook"]


def test_touching_rooms_across_a_wall_break_a_relation_that_asks_for_touch():
    """The check counts no edge on which a wall stands."""
    relation = Relation(("nook", "table"), "touching", shared_edge_ft=5)
    placed = placed_of(plain_rooms(), Layout((stand("table", 16, 10, 14, 12), stand("nook", 30, 12, 8, 7))))
    for site, broken in ((BARE, False), (walled(), True)):
        found = check_layout(replace(plain_yard(relation), site=site), placed)
        assert ("touching" in {finding.rule for finding in found}) == broken


def seen(site) -> float:
    """Share of a pond that a nook beyond the fence sees."""
    rooms = plain_rooms(sized("pond", "reserve", 9, 9))
    layout = Layout((stand("nook", 10, 20, 8, 8), stand("pond", 40, 19.5, 9, 9)))
    relation = Relation(("nook", "pond"), "in_view")
    return sight_share(replace(plain_yard(relation), site=site), placed_of(rooms, layout), relation)


@pytest.mark.parametrize(("site", "share"), [
    (BARE, 1.0),
    (walled(), 0.0),
    (walled(height_ft=2.0), 1.0),
    (walled(kind="hedge", height_ft=None), 0.0),
    (walled(WallOpening((30, 24), 10)), 1.0),
    (walled(WallOpening((30, 24), 10, "unlocked")), 0.0),
    (walled(WallOpening((30, 28.9), 10)), 1 / 2 + 0.1 * 30.5 / 16 / 9),
])  # fmt: skip
def test_eyes_see_over_low_walls_and_through_openings_without_a_gate(site, share):
    """The nook looks along y = 24, 3.75 ft up; in a mirror it sees as much.

    Past an opening that begins 0.1 ft beside that line and 16 ft off, of a pond 9 ft wide with its middle 30.5 ft off.
    """
    assert seen(site) == pytest.approx(share)
    mirrored = MIRROR.site(site)
    rooms = plain_rooms(sized("pond", "reserve", 9, 9))
    layout = MIRROR.layout(Layout((stand("nook", 10, 20, 8, 8), stand("pond", 40, 19.5, 9, 9))))
    relation = Relation(("nook", "pond"), "in_view")
    scenario = replace(plain_yard(relation), site=mirrored)
    assert sight_share(scenario, placed_of(rooms, layout), relation) == pytest.approx(share)


def test_a_wall_takes_the_sun():
    """On a December noon at 40 degrees north a fence to the south of a room shades the ground behind it."""
    wish = SunWish("sun", 11, 13, (12,))
    fence = Wall("south fence", ((20, 10), (40, 10)), "fence", 6)

    def hours(*walls: Wall) -> float:
        return room_sun_hours(replace(BARE, walls=walls), wish, low=(26, 11), high=(34, 15))

    assert hours() == pytest.approx(2)
    assert hours(fence) == pytest.approx(0, abs=0.05)
    assert hours(replace(fence, openings=(WallOpening((30, 10), 20),))) == pytest.approx(2)
    assert hours(replace(fence, openings=(WallOpening((30, 10), 20, "locked"),))) == pytest.approx(0, abs=0.05)
    assert hours(replace(fence, height_ft=1.0)) > 1


def backs(*walls: Wall) -> int:
    """Backed sides of a nook in an open yard."""
    site = replace(BARE, walls=walls)
    placed = placed_of(plain_rooms(), Layout((stand("nook", 31, 15, 8, 7),)))
    flat = Grading(is_known=False, levels_ft=(), flights=(), walls=(), guards=(), earth=(), falls=())
    planting = replace(planting_of(site, (), NOTHING, shapely.Polygon()), beds=())
    return enclosure_measures(site, placed, flat, planting).rooms[0].backed


def test_a_wall_gives_a_back():
    """A fence a foot behind the nook is a back; a low edging, an opening and one far off are none."""
    assert backs() == 0
    assert backs(across()) == 1
    assert backs(across(height_ft=1.0)) == 0
    assert backs(across(gap(8.0, y=18))) == 0
    assert backs(replace(across(), line=((20, 0), (20, 40)))) == 0


def test_an_opening_is_kept_open():
    """Nothing is planted before an opening that people walk through; before a locked one there may be a bed."""
    house = Building("house", ((0, 0), (29, 0), (29, 10), (0, 10)))

    def planted(opening: WallOpening) -> float:
        site = replace(walled(opening), buildings=(house,), entrances=())
        beds = planting_of(site, (), NOTHING, shapely.Polygon()).beds
        return sum(bed.outline.intersection(shapely.box(29, 4, 31, 8)).area for bed in beds)

    assert planted(gap(4.0, y=6)) == 0
    assert planted(gap(4.0, "locked", y=6)) == pytest.approx(8)


def test_the_engine_knows_the_way_round():
    """A nook close beyond the fence costs the walk to the opening; the engine's ways do not cross the fence."""

    def loss(*walls: Wall) -> float:
        yard = replace(plain_yard(ceiling=None), site=replace(BARE, walls=walls))
        yard = replace(yard, brief=replace(yard.brief, trips=(Trip("gate", "nook", 1),)))
        context = context_of(yard, plain_rooms())
        variant = variants_of(context.rooms[3], context.lattice)[0]
        everywhere = np.ones((context.lattice.rows, context.lattice.columns), dtype=bool)
        losses = detours.TERM.place(context, context.rooms[3], variant, everywhere)
        x, y = context.pose.point((32, 4))
        return float(losses[round(y), round(x)])

    assert loss(across(gap())) > loss() + 20


def test_the_engine_bears_ways_through_openings():
    """Of the squares of 3 ft that a fence runs through, those in an opening of 6 ft and a step to each side stay."""

    def squares(site) -> int:
        return int(reach_grid(context_of(replace(plain_yard(ceiling=None), site=site), plain_rooms())).ways.sum())

    assert squares(BARE) - squares(walled()) == 2 * 38
    assert squares(walled(gap(6.0, y=20))) - squares(walled()) == 2 * 6
    assert squares(walled(gap(6.0, "locked", y=20))) == squares(walled())


def test_parts_of_a_wall():
    """A corner stays in its part, gates close their openings, and heights have a usual value by kind."""
    wall = Wall("l", ((0, 0), (10, 0), (10, 10)), "wall", None, (WallOpening((4, 0), 2, "locked"), gap_at(10, 6)))
    assert [tuple(part.coords) for part in standing_parts(wall)] == [
        ((0, 0), (3, 0)),
        ((5, 0), (10, 0), (10, 5)),
        ((10, 7), (10, 10)),
    ]
    assert [tuple(part.coords) for part in gates_of(wall)] == [((3, 0), (5, 0))]
    assert [wall_height_ft(replace(wall, kind=kind)) for kind in ("wall", "fence", "hedge")] == [6, 6, 5]
    assert wall_height_ft(replace(wall, height_ft=3.0)) == 3


def gap_at(x, y) -> WallOpening:
    return WallOpening((x, y), 2)


def test_levels_do_not_join_over_a_wall():
    """Touching rooms are one terrace; with a wall between they need no steps to each other."""
    slope = tuple(SpotLevel((x, y), -x / 20) for x in (0, 60) for y in (0, 40))
    placed = placed_of(plain_rooms(), Layout((stand("table", 16, 10, 14, 12), stand("nook", 30, 12, 8, 7))))
    free, kept = (levelled(replace(site, levels=slope), placed) for site in (BARE, walled()))
    assert free.levels_ft[0] == free.levels_ft[1]
    assert kept.levels_ft[0] != kept.levels_ft[1]
    assert kept.flights == ()
