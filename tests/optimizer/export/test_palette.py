"""Every role that a drawing can have has a look."""

from typing import get_args

import pytest

from optimizer.brief import RoomKind
from optimizer.export.palette import HATCHES, LOOKS, look_of


@pytest.mark.parametrize("kind", get_args(RoomKind))
def test_every_kind_of_room_has_its_own_look(kind: str) -> None:
    """No two kinds share a fill, so that a plan can be read by its legend."""
    others = {look_of(f"room.{other}").fill for other in get_args(RoomKind) if other != kind}
    assert f"room.{kind}" in LOOKS
    assert look_of(f"room.{kind}").fill not in others


def test_every_hatch_that_is_named_exists() -> None:
    """A look names no hatch that is not there."""
    assert {look.hatch for look in LOOKS.values() if look.hatch} <= set(HATCHES)


def test_an_unknown_piece_of_furniture_takes_the_look_of_furniture() -> None:
    """The catalogue may add roles without the palette knowing them."""
    assert look_of("furniture.swing seat") == LOOKS["furniture"]
