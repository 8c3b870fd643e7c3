"""Paving that is there already, in yards in which nothing else matters: walked on, joined, built on or lifted."""

from dataclasses import replace
from decimal import Decimal

import pytest
from shapely import Polygon, box

from optimizer.appraisal import paved_share
from optimizer.appraisal.appraise import priced
from optimizer.brief import Trip
from optimizer.catalogue import Quantity, affordable, book_for, existing_of, fixed_price
from optimizer.check import check_layout
from optimizer.circulation import Leg, way_polygon, ways
from optimizer.concepts import cautions_for
from optimizer.concepts.whereabouts import whereabouts
from optimizer.derived import Derived
from optimizer.fields.existing_paving import carrying_slabs, fall_of, slab_under, standing_paving
from optimizer.grading import levelled
from optimizer.layout import Layout, Pose, placed_of
from optimizer.pipeline import site_facts
from optimizer.planting import planting_of
from optimizer.scenario import load_scenario
from optimizer.site import Building, Door, Paving, SpotLevel
from tests.yards import PLAIN_SITE, plain_rooms, plain_yard, sized, stand

BOOK = book_for("USD")
BARE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=(), surroundings=())
MIRROR = Pose((1, 0, 0, -1), (0.0, 40.0))
TABLE = stand("table", 40, 14, 14, 12)
UNIT, OVERLAY, LIFTED = (BOOK.of(item).price for item in ("unit paving", "unit paving overlay", "paving lifted"))


def piece(x0, y0, x1, y1, then="keep", surface="concrete", **facts) -> Paving:
    return Paving("old paving", ((x0, y0), (x1, y0), (x1, y1), (x0, y1)), surface, then, **facts)


def with_paving(*pieces: Paving, **changes):
    return replace(BARE, paving=pieces, **changes)


def laid_table():
    """A table whose terrace is 168 sq ft of unit paving, and the other rooms."""
    table = sized("table", "gathering", 14, 12)
    paved = replace(table.choices[0], quantities=(Quantity("unit paving", 168.0),))
    return plain_rooms(replace(table, choices=(paved,)))


def walked(site, *places):
    """Ways from the gate to the table."""
    placed = placed_of(laid_table(), Layout(places or (TABLE,)))
    found = ways(site, replace(plain_yard().brief, trips=(Trip("gate", "table", 9),)), placed)
    return found, way_polygon(site, placed, found.legs).area


def untravelled(site):
    """A scenario without trips."""
    plain = plain_yard(ceiling=None)
    return replace(plain, site=site, brief=replace(plain.brief, trips=()))


def cost(site, *places) -> Decimal:
    """Phase 1 before contingency, without trips."""
    scenario = untravelled(site)
    derived = Derived(scenario, placed_of(laid_table(), Layout(places)))
    return sum(
        line.amount for line in priced(derived, BOOK).lines if line.room == "table" or line.item == "paving lifted"
    )


@pytest.mark.parametrize("then", ["keep", "reuse"])
def test_no_paving_is_bought_where_paving_is(then):
    """A strip from the gate to the table is walked on as it is; half of one spares half; in a mirror too."""
    whole, half = piece(0, 17, 40, 23, then), piece(0, 17, 20, 23, then)
    areas = [walked(with_paving(*pieces))[1] for pieces in ((), (half,), (whole,))]
    assert areas[0] == pytest.approx(40 * 5, rel=0.02)
    assert areas[1] == pytest.approx(20 * 5, rel=0.02)
    assert areas[2] == 0
    mirrored = [
        walked(MIRROR.site(with_paving(*pieces)), *MIRROR.layout(Layout((TABLE,))).placements)[1]
        for pieces in ((), (half,), (whole,))
    ]
    assert mirrored == pytest.approx(areas, abs=0.01)
    assert walked(with_paving(whole))[0].unlaid == ()


def test_a_way_beside_old_paving_is_paved_up_to_its_edge():
    """Of a leg 4 ft wide whose middle runs along the edge, half is new."""
    leg = Leg(((0.0, 20.0), (40.0, 20.0)), 4.0, "main", (("gate", "table"),))
    nothing = placed_of((), Layout(()))
    assert way_polygon(BARE, nothing, (leg,)).area == pytest.approx(160)
    assert way_polygon(with_paving(piece(0, 20, 40, 30)), nothing, (leg,)).area == pytest.approx(80)


def test_what_is_lifted_is_paved_anew():
    """A strip that goes is no way."""
    assert walked(with_paving(piece(0, 17, 40, 23, "lift")))[1] == walked(BARE)[1]


def test_ways_run_along_old_paving():
    """An L of old paving leads a little round: the way takes it, and only the last feet are new."""
    along = Paving("drive", ((0, 17), (6, 17), (6, 4), (50, 4), (50, 9), (12, 9), (12, 23), (0, 23)), "asphalt", "keep")
    found, area = walked(with_paving(along), stand("table", 38, 12, 14, 12))
    assert area < 40
    assert found.unlaid == ()
    assert found.trips[0].length_ft > 45


def test_paving_that_stays_is_without_the_rooms():
    """Of a slab, the part under a room is the room's; kept and lifted paving are what they are."""
    slab = piece(30, 10, 50, 30, "reuse")
    assert standing_paving(with_paving(slab), [box(30, 10, 40, 20)]).area == pytest.approx(300)
    assert standing_paving(with_paving(replace(slab, then="keep")), []).area == pytest.approx(400)
    assert standing_paving(with_paving(replace(slab, then="lift")), []).area == 0


def test_paving_that_stays_counts_as_paved():
    """In the measure and in the rule, once, whether a room lies on it or not; no lawn and no bed grows there."""
    site, nothing = with_paving(piece(0, 0, 30, 20)), placed_of((), Layout(()))
    assert paved_share(site, nothing, Polygon()) == pytest.approx(0.25)
    slab = with_paving(piece(40, 14, 54, 26, "reuse"))
    assert paved_share(slab, placed_of(laid_table(), Layout((TABLE,))), Polygon()) == pytest.approx(168 / 2400)
    planting = planting_of(site, (), nothing, Polygon())
    kept = box(0, 0, 30, 20)
    assert sum(area.intersection(kept).area for area in (*planting.lawns, planting.unused)) == pytest.approx(0)
    for limit, broken in ((0.24, True), (0.26, False)):
        scenario = untravelled(replace(site, paved_share_limit=limit))
        rules = {finding.rule for finding in check_layout(scenario, nothing)}
        assert ("paved_share" in rules) == broken


def test_a_slab_that_carries_the_room_spares_its_base():
    """Wholly on it the terrace is an overlay; a foot beside it all is new, and what lies under it is lifted."""
    slab = with_paving(piece(40, 14, 54, 26, "reuse"))
    assert cost(BARE, TABLE) == 168 * UNIT
    assert cost(slab, TABLE) == 168 * OVERLAY
    assert cost(slab, replace(TABLE, x_ft=41.0)) == 168 * UNIT + 13 * 12 * LIFTED
    assert cost(slab, replace(TABLE, x_ft=20.0)) == 168 * UNIT
    assert cost(MIRROR.site(slab), *MIRROR.layout(Layout((TABLE,))).placements) == 168 * OVERLAY


def test_lifting_is_priced_whatever_is_placed():
    """All of it once; what stays costs nothing; nothing is lifted where a house stands."""
    lifted = with_paving(piece(0, 0, 10, 10, "lift"))
    assert cost(lifted, TABLE) == 168 * UNIT + 100 * LIFTED
    assert cost(with_paving(piece(0, 0, 10, 10, "keep")), TABLE) == 168 * UNIT
    brief = plain_yard().brief
    assert fixed_price(brief, BOOK, existing_of(lifted)) - fixed_price(brief, BOOK) == 100 * LIFTED
    house = Building("house", ((0, 0), (5, 0), (5, 10), (0, 10)))
    assert existing_of(replace(lifted, buildings=(house,))).lifted_sqft == pytest.approx(50)


def test_least_prices_count_on_a_slab_where_a_room_may_fit():
    """A table of 14 x 12 ft fits on a slab of 12 x 14, and on none of 11 x 30."""
    brief, rooms = plain_yard(ceiling=None).brief, laid_table()
    least = {
        size: affordable(brief, rooms, BOOK, existing_of(with_paving(piece(0, 0, *size, "reuse")))).least
        for size in ((12, 14), (11, 30))
    }
    assert least[11, 30] == affordable(brief, rooms, BOOK).least
    more = 1 + brief.budget.contingency
    assert least[11, 30] - least[12, 14] == 168 * (UNIT - OVERLAY) * more


def falling(share: float, **changes):
    """A slab under the table, on ground that falls so much to the rear."""
    levels = tuple(SpotLevel((x, y), -share * y) for x in (0, 60) for y in (0, 40))
    return with_paving(piece(40, 14, 54, 26, "reuse", **changes), levels=levels)


@pytest.mark.parametrize(("share", "carries"), [(0.009, False), (0.01, True), (0.03, True)])
def test_a_slab_that_falls_too_little_carries_nothing(share, carries):
    """By the plane of the ground under it, 1 % at least; without levels it is taken as it is said."""
    site = falling(share)
    assert fall_of(site, site.paving[0]) == pytest.approx(share)
    assert bool(carrying_slabs(site)) == bool(carrying_slabs(MIRROR.site(site))) == carries
    assert (slab_under(site, box(40, 14, 54, 26)) is not None) == carries
    assert fall_of(with_paving(*site.paving), site.paving[0]) is None
    lifted = 168 * UNIT + 168 * LIFTED
    assert cost(site, TABLE) - _earth(site) == (168 * OVERLAY if carries else lifted)


def _earth(site) -> Decimal:
    """What the table's earth costs, if any."""
    lines = priced(Derived(untravelled(site), placed_of(laid_table(), Layout((TABLE,)))), BOOK).lines
    return sum((line.amount for line in lines if line.room == "table" and line.item.startswith("earth")), Decimal(0))


@pytest.mark.parametrize("z_ft", [None, 0.5])
def test_an_overlay_lies_on_its_slab(z_ft):
    """3 1/4 in over the slab, without any earth: on the ground in the mean, or at the level that the site gives."""
    site = falling(0.02, z_ft=z_ft)
    found = levelled(site, placed_of(laid_table(), Layout((TABLE,))))
    top = -0.02 * 20 if z_ft is None else z_ft
    assert found.levels_ft[0] == pytest.approx(top + 3.25 / 12, abs=0.006)
    assert found.overlaid == ("table",)
    assert (found.earth[0].cut_bcy, found.earth[0].fill_ccy) == (0, 0)
    beside = levelled(site, placed_of(laid_table(), Layout((replace(TABLE, x_ft=20.0),))))
    assert beside.overlaid == ()


@pytest.mark.parametrize(("floor_ft", "is_overlaid"), [(0.38, True), (0.41, True), (0.43, False), (0.6, False)])
def test_a_sill_that_is_too_high_asks_for_more_than_an_overlay(floor_ft, is_overlaid):
    """A terrace at a landing lies 1 1/2 in below the floor: 3 to 3 1/2 in over the slab, else the slab is lifted."""
    levels = tuple(SpotLevel((x, y), -0.02 * (y - 20)) for x in (0, 60) for y in (0, 40))
    door = Door("back door", (47, 10), 3, (0, 1))
    house = Building("house", ((40, 0), (54, 0), (54, 10), (40, 10)), floor_z_ft=floor_ft, doors=(door,))
    site = with_paving(piece(40, 14, 54, 26, "reuse"), levels=levels, buildings=(house,))
    found = levelled(site, placed_of(laid_table(), Layout((TABLE,))))
    assert found.levels_ft[0] == pytest.approx(floor_ft - 0.125, abs=0.011)
    assert found.overlaid == (("table",) if is_overlaid else ())


def test_a_lawn_on_a_slab_is_lifted_for():
    """Only paved rooms are carried."""
    site, grass = with_paving(piece(20, 10, 40, 30, "reuse")), sized("grass", "lawn", 10, 10)
    scenario = untravelled(site)
    layout = Layout((stand("grass", 22, 12, 10, 10),))
    lines = priced(Derived(scenario, placed_of(plain_rooms(grass), layout)), BOOK).lines
    assert [(line.room, line.quantity) for line in lines if line.item == "paving lifted"] == [("grass", Decimal(100))]


def test_it_is_said_in_words():
    """Where a room lies on a slab, in the reason and in a caution; and what becomes of each piece, in `check`."""
    site = with_paving(piece(40, 14, 54, 26, "reuse"))
    scenario = replace(plain_yard(), site=site)
    assert whereabouts(TABLE, site) == "on the old paving"
    told = [w for w in cautions_for(scenario, placed_of(laid_table(), Layout((TABLE,)))) if w.startswith("Old paving")]
    assert len(told) == 1
    assert "before the table is laid on it" in told[0]
    moved = Layout((replace(TABLE, x_ft=41.0),))
    assert not [w for w in cautions_for(scenario, placed_of(laid_table(), moved)) if w.startswith("Old paving")]


@pytest.mark.parametrize(("then", "words"), [
    ("keep", "concrete, 64 sq ft, falls 0.0%; stays as it is"),
    ("lift", "concrete, 64 sq ft, falls 0.0%; is lifted"),
    ("reuse", "concrete, 64 sq ft, falls 0.0%; is lifted where a room stands on it, since it falls too little"),
])  # fmt: skip
def test_check_says_what_becomes_of_it(then, words):
    """On level ground a slab carries nothing."""
    yard = load_scenario("scenarios/thimble-yard.yaml")
    x, y = min(yard.site.boundary)
    levels = tuple(SpotLevel((x + a, y + b), 0.0) for a in (0, 60) for b in (0, 60))
    site = replace(yard.site, paving=(piece(x, y, x + 8, y + 8, then),), levels=levels, buildings=())
    facts = dict(site_facts(replace(yard, site=site)))
    assert facts["old paving"].startswith(words)
