"""Seat walls, piers, benches and beds along the sides of rooms."""

from typing import get_args

import pytest

from optimizer.brief import Choice, RoomKind, RoomWish
from optimizer.catalogue import LocalSide, SizedChoice, clearance_ft
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sizing.built_sides import seat_wall
from optimizer.catalogue.sizing.sized_rooms import sized_room

SIDES = get_args(LocalSide)


def level(kind: RoomKind, label: str, seats: int) -> SizedChoice:
    """A level of a kind for so many."""
    choice = sized_room(RoomWish("room", kind, seats=seats)).choice(label)
    assert choice is not None
    return choice


def roles(choice: SizedChoice) -> set[str]:
    """What stands in a choice."""
    return {item.role for item in choice.furniture}


def test_piers_end_a_wall() -> None:
    """Wall and piers take the length that the wall takes alone; a short wall has none."""
    whole, parts = seat_wall(2, 0, 14), seat_wall(2, 0, 14, with_piers=True)
    assert sum(item.width_ft for item in parts) == whole[0].width_ft == 14
    assert [item.role for item in parts] == ["pier", "seat wall", "pier"]
    assert [item.role for item in seat_wall(0, 0, 4, with_piers=True)] == ["seat wall"]


@pytest.mark.parametrize(("kind", "seats", "backs"), [
    ("fire", 8, ["open", "seat wall", "seat wall"]),
    ("nook", 2, ["open", "bed", "bed"]),
    ("nook", 4, ["bench", "bench", "bench"]),
    ("gathering", 6, ["open", "open", "open"]),
])  # fmt: skip
def test_backs_by_level(kind: RoomKind, seats: int, backs: list[str]) -> None:
    """What each level has at its back."""
    room = sized_room(RoomWish("room", kind, seats=seats))
    assert [dict(choice.sides)["back"] for choice in room.choices] == backs


def test_every_side_is_of_a_kind_and_is_drawn() -> None:
    """Sides name kinds of the data file, and what is built along a side stands in the room."""
    for kind in get_args(RoomKind):
        for choice in sized_room(RoomWish("room", kind, futures=("pool",))).choices:
            uses = dict(choice.sides)
            assert tuple(uses) == SIDES
            assert set(uses.values()) <= set(data("sides.yaml"))
            assert (set(uses.values()) & {"seat wall", "bench", "bed"}) <= roles(choice)


def test_a_turned_nook_has_its_bench_at_its_left() -> None:
    """In a nook deeper than wide the plan is turned, and so is the side that is closed."""
    room = sized_room(RoomWish("n", "nook", choices=(Choice("c", 9, 11, 4, 1.0),)))
    (choice,) = room.choices
    bench = next(item for item in choice.furniture if item.role == "bench")
    assert bench.x_ft < 1 < bench.depth_ft
    assert dict(choice.sides) == {"front": "open", "back": "open", "left": "bench", "right": "open"}


def test_a_generous_gathering_has_half_a_wall_before_it() -> None:
    """It leaves a quarter open on either side and 44 in to walk past the seated (NKBA Guideline 8); others have none."""
    choice = level("gathering", "generous", 6)
    (wall,) = (item for item in choice.furniture if item.role == "seat wall")
    table = next(item for item in choice.furniture if item.role == "table")
    assert (wall.x_ft, wall.width_ft) == (choice.width_ft / 4, choice.width_ft / 2)
    assert wall.y_ft + wall.depth_ft == pytest.approx(choice.depth_ft)
    assert wall.y_ft - table.y_ft - table.depth_ft >= clearance_ft("walk_past_seated")
    assert "seat wall" not in roles(level("gathering", "comfortable", 6))


def test_no_seat_on_a_wall_is_promised() -> None:
    """Seats are those of chairs, sofas and benches."""
    walls = [i for kind in ("fire", "gathering") for i in level(kind, "generous", 6).furniture if i.role == "seat wall"]
    assert len(walls) == 2
    assert {item.seats for item in walls} == {0}
