"""Random small yards: what the engine gives passes the check, and what it calls impossible really is.

Two required rooms stand on a 4 ft grid; every pair of positions is tried by brute force with the independent check.
"""

from dataclasses import replace
from decimal import Decimal
from itertools import product

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from optimizer.brief import Brief, Budget, Choice, Guests, OptionsWanted, Relation, RoomWish, Trip
from optimizer.catalogue import sized_rooms
from optimizer.check import check_layout
from optimizer.layout import Layout, Placement, placed_of
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import Scenario
from optimizer.site import Building, Door, Entrance, Place, Setbacks, Site, Tree

STEP = 4.0


def wish(name, kind, width_ft, depth_ft):
    """A required room with one size."""
    return RoomWish(name, kind, required=True, choices=(Choice("one", width_ft, depth_ft, 2, 5.0),))


def relations_between(*, near, apart, touching):
    """Hard relations of the two rooms, those that are asked for."""
    pair = ("table", "nook")
    found = [Relation(pair, "near", within_ft=near)] if near is not None else []
    found += [Relation(pair, "apart", at_least_ft=apart)] if apart is not None else []
    return tuple(found + ([Relation(pair, "touching", shared_edge_ft=4.0)] if touching else []))


@st.composite
def yards(draw):
    """A yard of up to 40 x 32 ft with a house across its foot, a gate, perhaps a tree, and two rooms."""
    width, depth = 4 * draw(st.integers(6, 10)), 4 * draw(st.integers(5, 8))
    house = 4 * draw(st.integers(3, width // 4 - 1))
    door = Door("back door", (house / 2, 8.0), 3.0, (0.0, 1.0))
    site = Site(
        place=Place(40.0, -83.0, "America/New_York"),
        boundary=((0.0, 0.0), (width, 0.0), (width, depth), (0.0, depth)),
        edge_names=("street", "east", "rear", "west"),
        setbacks=(Setbacks(paving=draw(st.sampled_from([0.0, 2.0, 4.0]))),) * 4,
        buildings=(Building("house", ((0, 0), (house, 0), (house, 8), (0, 8)), doors=(door,)),),
        entrances=(Entrance("gate", (width - 2.0, 0.0), 4.0, (0.0, 1.0)),),
        trees=(Tree("elm", (width - 6.0, depth - 6.0), 0.5, 4.0),) if draw(st.booleans()) else (),
    )
    rooms = (
        wish("table", "gathering", draw(st.sampled_from([8, 12])), draw(st.sampled_from([8, 12]))),
        wish("nook", "nook", 8, draw(st.sampled_from([8, 7]))),
    )
    touching = draw(st.booleans())
    relations = relations_between(
        near=draw(st.none() | st.sampled_from([4.0, 8.0])),
        apart=None if touching else draw(st.none() | st.sampled_from([4.0, 9.0, 14.0])),
        touching=touching,
    )
    brief = Brief(
        Guests(2, 4),
        rooms,
        relations,
        (Trip("gate", "table", 3), Trip("back door", "nook", 2)),
        budget=Budget(None, Decimal("0.1")),
        options=OptionsWanted(3, STEP, 1),
    )
    return Scenario("random yard", "ft", "USD", site, brief, "", "")


OF_THE_SET = {"required_rooms", "everyday_table", "party_seats"}
"""Rules that a room alone may break and the two together keep."""


def placements(scenario, room):
    """Every position of a room on the grid that the check has nothing against while it stands alone."""
    columns, rows = (int(max(c[axis] for c in scenario.site.boundary) // STEP) for axis in (0, 1))
    choice = room.choices[0]
    sides = [-(-length // STEP) * STEP for length in (choice.width_ft, choice.depth_ft)]
    alone = replace(scenario, brief=replace(scenario.brief, relations=()))
    for x, y, (width, depth), front in product(
        range(columns), range(rows), {tuple(sides), tuple(reversed(sides))}, ("+y",)
    ):
        placed = Placement(room.name, choice.label, x * STEP, y * STEP, width, depth, front)
        findings = check_layout(alone, placed_of(sized_rooms(scenario.brief), Layout((placed,))))
        if not {f.rule for f in findings} - OF_THE_SET:
            yield placed


@settings(max_examples=12, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(yards())
def test_engine_against_brute_force(scenario):
    """Concepts pass the check; "nothing fits" holds for every pair of positions on the grid."""
    rooms = sized_rooms(scenario.brief)
    assume(len(rooms) == 2)
    found = make_options(scenario, RunSettings(seconds=3, repeatable=True, processes=0))
    for option in found.options:
        assert check_layout(scenario, placed_of(rooms, option.layout)) == ()
    # The proof's model knows nothing of ways, and what it finds is judged too: the explorer itself keeps `reachable`, as
    # test_every_part.py shows.
    assert not [words for words in found.search.refused if not words.startswith(("near", "reachable"))]
    if found.search.status == "nothing_fits":
        for one, other in product(placements(scenario, rooms[0]), placements(scenario, rooms[1])):
            assert check_layout(scenario, placed_of(rooms, Layout((one, other)))) != ()


def test_brute_force_can_find_something():
    """The other side of the claim: in a yard with room to spare the grid holds a pair that passes."""
    scenario = _roomy()
    rooms = sized_rooms(scenario.brief)
    pairs = product(placements(scenario, rooms[0]), placements(scenario, rooms[1]))
    assert any(check_layout(scenario, placed_of(rooms, Layout(pair))) == () for pair in pairs)


def _roomy():
    site = Site(
        place=Place(40.0, -83.0, "America/New_York"),
        boundary=((0.0, 0.0), (40.0, 0.0), (40.0, 32.0), (0.0, 32.0)),
        edge_names=("street", "east", "rear", "west"),
        setbacks=(Setbacks(),) * 4,
        entrances=(Entrance("gate", (38.0, 0.0), 4.0, (0.0, 1.0)),),
    )
    brief = Brief(Guests(2, 4), (wish("table", "gathering", 12, 8), wish("nook", "nook", 8, 8)))
    return Scenario("roomy", "ft", "USD", site, replace(brief, options=OptionsWanted(3, STEP, 1)), "", "")
