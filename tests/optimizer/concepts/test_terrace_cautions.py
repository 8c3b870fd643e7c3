"""Why no terrace lies at the main garden door."""

from dataclasses import replace

import pytest

from optimizer.brief import Trip
from optimizer.concepts import cautions_for
from optimizer.concepts.terrace_cautions import has_place, terrace_cautions
from optimizer.fields.terraces import TERRACE_KINDS
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import Scenario
from optimizer.site import Building, Door
from tests.yards import on_site, plain_rooms, plain_yard, sized, stand

DOOR = Door("garden door", (40, 12), 3, (0, 1))
FLAT = Building("house", ((0, 0), (60, 0), (60, 12), (0, 12)), doors=(DOOR,))


def yard_of(house: Building) -> Scenario:
    """A yard with this house, whose garden door is the one that people go through."""
    yard = on_site(plain_yard(ceiling=None), buildings=(house,), structures=())
    return replace(yard, brief=replace(yard.brief, trips=(Trip("garden door", "table", 9),)))


def recessed(depth_ft: float) -> Scenario:
    """A yard whose garden door lies so far back between two wings that no table of 14 x 12 ft has place between."""
    front = 12 + depth_ft
    wings = ((0, 0), (60, 0), (60, front), (45, front), (45, 12), (35, 12), (35, front), (0, front))
    return yard_of(replace(FLAT, outline=wings))


def told(*placements: Placement, yard: Scenario | None = None) -> list[str]:
    """What is said of a layout."""
    return list(terrace_cautions(yard or yard_of(FLAT), placed_of(plain_rooms(), Layout(placements))))


@pytest.mark.parametrize(("y_ft", "said"), [(16, 0), (17, 0), (20, 1)])
def test_nothing_is_said_of_a_door_with_its_terrace(y_ft: float, said: int) -> None:
    """The landing ends at y = 16; a terrace within a foot of it is one."""
    assert len(told(stand("table", 33, y_ft, 14, 12))) == said


def test_where_it_lies_instead() -> None:
    """There is place at the door; the plan has the table elsewhere."""
    (words,) = told(stand("table", 4, 26, 14, 12))
    assert words.startswith("No terrace lies at the garden door: the table lies ")
    assert words.endswith("and no better plan with it at the door was found.")


def test_a_plan_without_the_room() -> None:
    """What is left out cannot lie there."""
    assert told() == ["No terrace lies at the garden door: this concept does without the table."]


def test_a_wish_list_without_a_terrace() -> None:
    """A nook and a fire are none."""
    rooms = tuple(room for room in plain_rooms() if room.rules.kind not in TERRACE_KINDS)
    (words,) = terrace_cautions(yard_of(FLAT), placed_of(rooms, Layout(())))
    assert words == "No terrace lies at the garden door: no room of the wish list is a terrace."


@pytest.mark.parametrize(("depth_ft", "is_place"), [(4.0, True), (4.9, True), (5.5, False), (6.5, False)])
def test_a_door_in_a_recess(depth_ft: float, is_place: bool) -> None:
    """A landing of 4 ft is built up to a terrace before the wings while they end no more than 1 ft farther out."""
    yard = recessed(depth_ft)
    door, table = yard.site.buildings[0].doors[0], sized("table", "gathering", 14, 12)
    assert has_place(yard, door, table) is is_place
    (words,) = told(stand("table", 4, 26, 14, 12), yard=yard)
    assert ("there is no place for the table along its landing" in words) is not is_place


@pytest.mark.parametrize(("rear_ft", "is_place"), [(30.3, True), (30.2, False)])
def test_a_place_keeps_the_setback(rear_ft: float, is_place: bool) -> None:
    """The landing ends at y = 16, and 12.3 ft of table and 2 ft of setback lie behind it just so."""
    yard = on_site(recessed(4.0), boundary=((0, 0), (60, 0), (60, rear_ft), (0, rear_ft)))
    assert has_place(yard, yard.site.buildings[0].doors[0], sized("table", "gathering", 14, 12.3)) is is_place


def test_it_is_among_the_cautions_of_a_concept() -> None:
    """An owner reads it beside the plan."""
    yard, placed = yard_of(FLAT), placed_of(plain_rooms(), Layout(()))
    assert any(words.startswith("No terrace lies") for words in cautions_for(yard, placed))
