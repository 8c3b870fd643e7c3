"""Parts under the priced lines."""

from dataclasses import replace

import pytest

from optimizer.brief import Brief, Finish, FinishWish, Guests, RoomWish
from optimizer.quantities import services
from optimizer.quantities.figures import build_up
from optimizer.quantities.outlines import dug_sqft, paved_pieces
from optimizer.site import SpotLevel, Utility
from tests.optimizer.quantities.conftest import BRIEF, SITE, WISHES, without_ways

UP = build_up("concrete unit paver")
FREE = ("table", 0, 40, 50)
"""10 x 20 ft, and nothing near it."""


def only(parts):
    """The one part there is."""
    (part,) = parts
    return part


def test_base_of_a_free_room_reaches_beyond_all_edges(stand):
    """10 x 20 ft on 4 in of base: 11 x 21 ft (ICPI tolerances card), and 60 ft of free edge."""
    derived = without_ways(stand(FREE))
    piece = paved_pieces(derived, UP)[0]
    assert (piece.net_sqft, piece.base_sqft) == (pytest.approx(200), pytest.approx(231))
    assert (piece.free_ft, piece.outline_ft) == (pytest.approx(60), pytest.approx(60))


def test_edges_that_meet_are_neither_free_nor_outline(stand):
    """Two rooms that share 12 ft: each loses them, and the base under both is that of their outline."""
    derived = without_ways(stand(("table", 1, 40, 50), ("fire", 0, 52, 50)))
    table, fire = paved_pieces(derived, UP)
    side = fire.net_sqft**0.5
    assert table.outline_ft == pytest.approx(36, abs=0.2)
    assert fire.outline_ft == pytest.approx(4 * side - 12, abs=0.2)
    # The outline of the two together, half a foot wider; the step between them has one corner that turns in.
    assert table.base_sqft + fire.base_sqft == pytest.approx(
        table.net_sqft + fire.net_sqft + 0.5 * (48 + 4 * side - 24) + 4 * 0.25, abs=0.5
    )


def test_a_house_holds_an_edge(stand):
    """Against the house no base reaches out and no restraint is needed, and the border still runs there."""
    piece = paved_pieces(without_ways(stand(("table", 0, 22, 20))), UP)[0]
    assert piece.free_ft == pytest.approx(40, abs=0.2)
    assert piece.outline_ft == pytest.approx(60)
    assert piece.base_sqft == pytest.approx(21 * 10.5)


def test_what_is_dug_is_the_base_of_all_pieces(stand):
    """The sum that the bill takes for spoil is that of the pieces under the lines, ways among them."""
    derived = stand(FREE, ("cooker", 0, 60, 50), ("fire", 0, 40, 62))
    pieces = paved_pieces(derived, UP)
    assert dug_sqft(derived, UP) == pytest.approx(sum(piece.base_sqft for piece in pieces), abs=0.5)
    assert pieces[-1].room == "site"


def test_paving_to_the_last_cubic_yard(stand, counted):
    """200 sq ft: 0.62 cu yd of sand (BIA), 231 x 4 / 324 of stone, 231 x 7.375 / 324 dug, 5 % more to order."""
    parts = {p.item: p.quantity for p in counted(stand(FREE), room="table", line="unit paving")}
    assert parts["paving, net"] == 200
    assert parts["concrete unit paver, warm grey, to order"] == 210
    assert parts["bedding sand"] == pytest.approx(0.62)
    assert parts["base stone, compacted"] == pytest.approx(231 * 4 / 324, abs=0.3)
    assert parts["dug out, in the bank"] == pytest.approx(parts["base, ground"] * 7.375 / 324, abs=0.01)
    assert parts["dug out, loose"] == pytest.approx(1.25 * parts["dug out, in the bank"], abs=0.01)
    assert parts["joint sand"] == pytest.approx(200 / 75, abs=0.01)


@pytest.mark.parametrize(
    ("material", "has", "has_not"),
    [
        ("exposed aggregate concrete", ["concrete", "base stone, compacted"], ["bedding sand", "joint sand"]),
        ("gravel", ["base stone, compacted"], ["bedding sand", "edge restraint", "concrete"]),
        ("timber deck", ["paving, net"], ["bedding sand", "base stone, compacted", "dug out, in the bank"]),
        ("clay brick", ["bricks, 4 x 8 in", "bedding sand"], ["concrete"]),
    ],
)
def test_each_material_has_its_own_build_up(stand, counted, material, has, has_not):
    """No sand under concrete, no base under a deck, bricks are counted."""
    brief = replace(BRIEF, finish=FinishWish(field=Finish(material, None)))
    items = {part.item for part in counted(stand(FREE, brief=brief), room="table", line="unit paving")}
    assert items >= set(has)
    assert not items & set(has_not)


def test_turned_courses_waste_more(stand, counted):
    """Herringbone: 10 % on top, and the sum says so."""
    brief = replace(BRIEF, finish=FinishWish(pattern="herringbone"))
    part = only(p for p in counted(stand(FREE, brief=brief), room="table") if p.item.endswith("to order"))
    assert part.quantity == 220
    assert "200.0 sq ft x (1 + 10% cut away, herringbone)" in part.how


def test_gas_pipe_goes_by_the_longest_run(stand, counted):
    """A near kitchen of 60 cfh alone takes 1/2 in; with a far fire of 90 both go by the length of the far run."""
    assert only(counted(stand(("cooker", 0, 60, 24)), line="gas run", item="gas pipe")).item == "gas pipe, 1/2 in"
    derived = stand(("cooker", 0, 60, 24), ("fire", 0, 20, 60))
    near, far = counted(derived, line="gas run", item="gas pipe")
    run_ft = (80 - 20 - derived.placed.of("fire").placement.width_ft) + 50
    assert far.quantity == pytest.approx(1.1 * run_ft)
    assert f"longest length of {1.1 * run_ft:,.0f} ft" in near.how
    assert (near.item, far.item) == ("gas pipe, 3/4 in", "gas pipe, 3/4 in")
    shared = only(counted(derived, line="gas run", item="demand where"))
    assert shared.quantity == 150
    assert "60 + 90 cfh" in shared.how


def test_pipes_of_another_supply_do_not_count(stand, counted):
    """A stub of its own beside the fire: neither run goes by the other's length, and nothing begins as one."""
    rooms = ("cooker", 0, 60, 24), ("fire", 0, 20, 60)
    stubs = (*SITE.utilities, Utility("gas", (20, 58)))
    derived = stand(*rooms, utilities=stubs)
    near, far = counted(derived, line="gas run", item="gas pipe")
    alone = only(counted(stand(rooms[0]), line="gas run", item="gas pipe"))
    assert (near.item, near.how) == (alone.item, alone.how)
    assert "longest length of 2 ft" in far.how
    assert not counted(derived, line="gas run", item="demand where")


def test_four_outlets_of_a_published_example(stand, counted, monkeypatch):
    """Outlets of 35, 75, 35 and 100 cfh, longest length 60 ft, take 1/2, 3/4, 1/2 and 3/4 in, and what feeds all 1 in
    (IFGC 2018 appendix A, example 1, longest-length method: each as if it were as long as the longest, however near).
    """
    burns = {"A": 35, "B": 75, "C": 35, "D": 100}
    fires = tuple(RoomWish(name, "fire", seats=6, fuel="gas", worth=5) for name in burns)
    monkeypatch.setattr(services, "gas_demand_mbh", lambda room: burns[room.name])
    places = [("A", 0, 80, 64), ("B", 0, 82, 22), ("C", 0, 82, 30), ("D", 0, 82, 40)]
    derived = stand(*places, brief=Brief(Guests(4, 12), fires))
    pipes = {part.room: part for part in counted(derived, line="gas run", item="gas pipe")}
    assert pipes["A"].quantity == pytest.approx(1.1 * (64 - 10))
    sizes = {name: part.item.removeprefix("gas pipe, ") for name, part in pipes.items()}
    assert sizes == {"A": "1/2 in", "B": "3/4 in", "C": "1/2 in", "D": "3/4 in"}
    shared = only(counted(derived, line="gas run", item="demand where"))
    assert (shared.quantity, shared.how) == (245, "35 + 75 + 35 + 100 cfh over 59 ft: 1 in")


def test_without_gas_on_the_site_a_cylinder_is_counted(stand, counted):
    """90,000 Btu/h: 420,900 / 90,000 = 4.7 h of a 20 lb cylinder."""
    derived = stand(("fire", 0, 20, 60), utilities=(Utility("electric", (80, 10)),))
    assert only(counted(derived, line="gas branch", item="hours")).quantity == pytest.approx(4.68)
    assert only(counted(derived, line="gas branch", item="clear of a tank")).quantity == 10
    assert not counted(stand(("fire", 0, 20, 60)), line="gas branch", item="hours")


def test_a_trench_goes_deeper_to_its_drain(stand, counted):
    """55 ft at 1 %: from 1 ft deep to 1.55 ft, 1 ft wide: 70.1 cu ft, by the mean of its ends."""
    spots = tuple(SpotLevel((x, y), z) for x, z in ((0, 2.0), (100, -1.0)) for y in (0, 80))
    derived = stand(("table", 0, 40, 50), utilities=(Utility("drain", (100, 55)),), levels=spots)
    (fall,) = derived.grading.falls
    assert (fall.towards, fall.outfall) == ("+y", "drain")
    assert only(counted(derived, line="drainage", item="drain pipe")).quantity == 55
    assert only(counted(derived, line="drainage", item="trench")).quantity == pytest.approx(70.125 / 27, abs=0.01)


def test_wire_grows_with_the_length_of_its_run(stand, counted):
    """16 A at 120 V: 12 AWG up to 57 ft at 3 %, then 10 AWG."""
    near = only(counted(stand(("cooker", 0, 60, 24)), line="electric run", item="cable"))
    far = only(counted(stand(("cooker", 0, 30, 30)), line="electric run", item="cable"))
    assert (near.item, far.item) == ("cable, 12 AWG", "cable, 10 AWG")


def test_lights_have_one_transformer_and_a_zone_each(stand, counted):
    """Lights of table, kitchen and ways on one transformer; its rating is the next above 125 % of their load."""
    parts = counted(stand(FREE, ("cooker", 1, 61, 50)), line="light")
    assert [part.item for part in parts].count("transformer") == 1
    zones = [part for part in parts if part.item.startswith("fixtures")]
    assert {zone.room for zone in zones} == {"table", "cooker", "site"}


def test_every_part_lies_under_a_line(stand, counted, charged):
    """No part without its line, no line of paving without parts, and each says how it was worked out."""
    derived = stand(FREE, ("cooker", 2, 61, 50), ("fire", 2, 38, 61), ("tub", 0, 4, 60))
    lines = {(charge.room, charge.item) for charge in charged(derived)}
    parts = counted(derived)
    assert {(part.room, part.line) for part in parts} <= lines
    assert {line for line in lines if "paving" in line[1]} <= {(part.room, part.line) for part in parts}
    assert all(part.how and part.source and part.quantity > 0 for part in parts)


def test_nothing_stands_nothing_is_counted(stand, counted):
    """An empty layout has no parts."""
    assert counted(stand()) == []


def test_a_filled_tub_is_weighed(stand, counted):
    """695 lb + 325 gal + five people on 7 x 7 ft."""
    part = only(counted(stand(("tub", 0, 4, 60)), line="future hot tub"))
    assert part.quantity == pytest.approx(4280.5)
    assert "87 lb on a square foot" in part.how


def test_twice_the_yard(stand, counted):
    """At twice every length areas and what lies under them are four times as much, free edges twice."""
    small = Brief(Guests(4, 12), WISHES[:1])
    (wish,) = small.rooms
    choices = tuple(
        replace(c, label="double", width_ft=2 * c.width_ft, depth_ft=2 * c.depth_ft) for c in wish.choices[:1]
    )
    large = replace(small, rooms=(replace(wish, choices=choices),))
    one = {
        p.item: p.quantity for p in counted(without_ways(stand(("table", 0, 10, 30), brief=small)), line="unit paving")
    }
    two = {
        p.item: p.quantity for p in counted(without_ways(stand(("table", 0, 10, 30), brief=large)), line="unit paving")
    }
    for item in ("paving, net", "bedding sand", "joint sand"):
        assert two[item] == pytest.approx(4 * one[item], rel=0.01)
    assert two["edge restraint"] == pytest.approx(2 * one["edge restraint"])
    # 20 x 10 ft and half a foot round it, and 40 x 20 and as much: the extension does not grow.
    assert (one["base, ground"], two["base, ground"]) == (pytest.approx(231), pytest.approx(41 * 21))
