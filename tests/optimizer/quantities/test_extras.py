"""What is in by a stated rule, and what is out."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import priced
from optimizer.catalogue import fixed_price
from optimizer.concepts.counted import not_included_caution, take_off_of
from optimizer.quantities import extras_of
from optimizer.quantities.machine_way import hard_to_reach, is_closed_to_machines, way_ft, worn_lawn_sqft
from optimizer.site import Entrance, Machine, Structure, Tree, Wall, WallOpening, clear_width_ft
from tests.optimizer.quantities.conftest import BRIEF, SITE, without_ways

TABLE = ("table", 0, 40, 50)
WIDE, NARROW = Entrance("drive", (90, 0), 12, (0, 1)), Entrance("gate", (90, 0), 5.9, (0, 1))


def fence(*openings):
    """A fence from the house to the east edge, across the way from the street."""
    return (Wall("fence", ((80, 10), (100, 10)), "fence", openings=tuple(openings)),)


def amount(derived, charged, item):
    """How much of an item is in."""
    needs = [charge for charge in charged(derived) if not (charge.room == "site" and charge.item == "light")]
    return next(extra.amount for extra in extras_of(derived, needs) if extra.item == item)


@pytest.mark.parametrize(
    ("entrance", "openings", "is_hard"),
    [
        (WIDE, None, False),
        (NARROW, None, True),
        (WIDE, [], True),
        (WIDE, [WallOpening((90, 10), 6)], False),
        (WIDE, [WallOpening((90, 10), 5.5, "locked")], True),
        (WIDE, [WallOpening((90, 10), 8, "locked")], False),
    ],
    ids=["wide", "narrow gate", "closed fence", "opening of 6 ft", "locked gate of 5.5 ft", "locked gate of 8 ft"],
)
def test_machines_need_six_feet_all_the_way(stand, entrance, openings, is_hard):
    """From the street through every fence; the owner opens locked gates. East of the house is the only way left."""
    walls = (Wall("west fence", ((0, 10), (20, 10)), "fence"),) + (() if openings is None else fence(*openings))
    derived = stand(TABLE, entrances=(entrance,), walls=walls)
    assert hard_to_reach(derived) == (("table",) if is_hard else ())


@pytest.mark.parametrize(("width_ft", "is_hard"), [(5.0, False), (6.5, True)])
def test_the_builders_own_machine_counts_where_it_is_given(stand, width_ft, is_hard):
    """A gate of 6 ft lets in one of 5 ft with room to spare, and one of 6.5 ft not."""
    gate = Entrance("gate", (90, 0), 6, (0, 1))
    derived = stand(TABLE, entrances=(gate,), machine=Machine(width_ft, 8, 10, 0.2))
    assert hard_to_reach(derived) == (("table",) if is_hard else ())
    assert is_closed_to_machines(derived.site) == is_hard
    assert way_ft(derived.site) == width_ft


@pytest.mark.parametrize(("height_ft", "is_hard"), [(None, False), (8.5, False), (9.5, True)])
def test_a_machine_that_is_told_to_be_higher_than_a_roof_does_not_pass_under_it(stand, height_ft, is_hard):
    """A carport of 9 ft fills the only way, between the house and the edge of the yard; posts leave 19 ft."""
    carport = Structure("carport", ((80, 8), (100, 8), (100, 18), (80, 18)), height_ft=9)
    walls = (Wall("west fence", ((0, 10), (20, 10)), "fence"),)
    machine = None if height_ft is None else Machine(6, height_ft, 10, 0.2)
    derived = stand(TABLE, structures=(carport,), walls=walls, machine=machine)
    assert hard_to_reach(derived) == (("table",) if is_hard else ())


def test_an_opening_in_a_wall_narrows_its_entrance():
    """An entrance of 12 ft that leads through a gate of 5 ft is 5 ft wide."""
    wall = Wall("street fence", ((80, 0), (100, 0)), "fence", openings=(WallOpening((90, 0), 5, "unlocked"),))
    assert clear_width_ft(replace(SITE, walls=(wall,)), WIDE) == 5
    assert clear_width_ft(SITE, WIDE) == 12


def test_work_by_hand_costs_a_fifth_of_earth_and_paving(stand, book):
    """Where no machine comes, 20 % of paving, spoil and the like is added, and of nothing else."""
    easy, hard = (priced(stand(TABLE, entrances=(entrance,)), book) for entrance in (WIDE, NARROW))
    line = next(line for line in hard.lines if line.item == "poor access")
    by_hand = {"unit paving", "path paving", "spoil carted away"}
    assert line.quantity == sum(each.amount for each in hard.lines if each.item in by_hand)
    assert line.amount == (line.quantity * Decimal("0.20")).quantize(Decimal("0.01"))
    assert not [each for each in easy.lines if each.item == "poor access"]


def test_worn_lawn_lies_on_the_way_of_the_machines(stand):
    """A band of 8 ft at most, as wide as the entrance, which ends at the room; none without an entrance."""
    one, narrow = (worn_lawn_sqft(stand(TABLE, entrances=(e,), brief=replace(BRIEF, trips=()))) for e in (WIDE, NARROW))
    assert narrow == pytest.approx(one * 5.9 / 8, rel=0.1)
    assert worn_lawn_sqft(stand(TABLE, entrances=())) == 0
    far = worn_lawn_sqft(stand(("table", 0, 4, 66), brief=replace(BRIEF, trips=())))
    assert far > one


@pytest.mark.parametrize(("x_ft", "y_ft", "count"), [(30, 22, 1), (30, 24, 0)])
def test_downspouts_are_led_under_paving_at_the_wall(stand, charged, x_ft, y_ft, count):
    """20 ft of terrace 2 ft off the wall meets one downspout, 4 ft off it none."""
    assert amount(stand(("table", 0, x_ft, y_ft)), charged, "downspout led away") == count


def test_a_larger_meter_by_demand(stand, charged):
    """90 thousand Btu/h are spared by a usual meter, 150 are not."""
    assert amount(stand(("fire", 0, 40, 50)), charged, "larger gas meter") == 0
    assert amount(stand(("fire", 0, 40, 50), ("cooker", 0, 66, 50)), charged, "larger gas meter") == 1


def test_a_sub_panel_by_circuits(stand, charged):
    """Kitchen, fire and lights are three circuits, which a panel takes; a fourth is one too many."""
    rooms = (("fire", 0, 40, 50), ("cooker", 0, 66, 50))
    assert amount(stand(*rooms), charged, "sub-panel") == 0
    more = replace(BRIEF, rooms=(*BRIEF.rooms, replace(BRIEF.rooms[1], name="second cooker")))
    assert amount(stand(*rooms, ("second cooker", 0, 84, 60), brief=more), charged, "sub-panel") == 1


@pytest.mark.parametrize(("away_ft", "is_in"), [(14.9, 1), (15.1, 0)])
def test_trees_are_fenced_where_work_comes_near(stand, charged, away_ft, is_in):
    """A trunk of 12 in: 15 trunk diameters are 15 ft (1.25 ft an inch, NC State Extension)."""
    tree = Tree("oak", (60 + away_ft, 55), 1.0, 10)
    brief = replace(BRIEF, trips=())
    assert amount(stand(TABLE, brief=brief, trees=(tree,)), charged, "tree fence and arborist") == is_in


def test_spoil_is_what_is_dug_and_not_filled(stand, charged):
    """231 sq ft x 7.375 in, swollen by a quarter."""
    derived = without_ways(stand(TABLE))
    assert amount(derived, charged, "spoil carted away") == pytest.approx(231 * 7.375 / 324 * 1.25, rel=0.01)


def test_what_is_done_once_is_in_the_floor(scenario, book):
    """Mobilisation and survey are charged whatever is placed, so every floor has them."""
    least = book.of("mobilisation").price + book.of("survey").price
    without = [p for p in book.prices if p.item not in {"mobilisation", "survey"}]
    free = replace(
        book, prices=(*without, *(replace(book.of(i), price=Decimal(0)) for i in ("mobilisation", "survey")))
    )
    assert fixed_price(scenario.brief, book) - fixed_price(scenario.brief, free) == least


def test_each_is_in_or_named_as_left_out(stand, book, scenario):
    """Every extra is a line of the cost sheet with the rule under it, or left out with range and rule, never both."""
    derived = stand(TABLE, ("cooker", 0, 66, 50))
    cost = priced(derived, book)
    counted = take_off_of(derived, cost, book)
    lines, left_out = {line.item for line in cost.lines}, {one.item for one in counted.not_included}
    ruled = {part.line for part in counted.parts if part.item == "by rule"}
    assert {"irrigation", "wall engineering", "sub-panel"} <= left_out
    assert {"lawn repair", "spoil carted away", "light"} <= ruled <= lines
    assert not left_out & (lines - {"light"})
    assert all(0 < one.low < one.high and one.rule for one in counted.not_included)
    (words,) = not_included_caution(counted.not_included, "USD")
    assert "irrigation (3,000 to 7,000 USD)" in words


def test_an_added_room_never_makes_phase_1_cheaper(stand, book):
    """At fixed places and without ways, each further room adds at least its own paving."""
    rooms = [TABLE, ("cooker", 0, 66, 50), ("fire", 0, 38, 61), ("tub", 0, 4, 60)]
    brief = replace(BRIEF, trips=())
    for entrance in (WIDE, NARROW):
        costs = [
            priced(stand(*rooms[:count], brief=brief, entrances=(entrance,)), book).phase(1) for count in range(1, 5)
        ]
        assert costs == sorted(costs)


def test_builders_come_back_for_later_phases(stand, book):
    """12 % of what phase 2 builds, which 8 to 15 % hold; phase 1 pays for its own coming."""
    cost = priced(stand(TABLE, ("tub", 0, 4, 60)), book)
    later = {line.item: line for line in cost.lines if line.phase == 2}
    assert later["return to the site"].amount == later["future hot tub"].amount * Decimal("0.12")
    assert not [line for line in cost.lines if line.phase == 1 and line.item == "return to the site"]
