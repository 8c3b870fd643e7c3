"""Rules of kinds."""

from typing import get_args

import pytest

from optimizer.brief import RoomKind
from optimizer.catalogue import kind_rules
from optimizer.site import BUILT_CLASSES


@pytest.mark.parametrize("kind", get_args(RoomKind))
def test_every_kind_has_rules(kind: RoomKind) -> None:
    """Every kind has rules, and is built of known classes."""
    rules = kind_rules(kind)
    assert rules.kind == kind
    assert set(rules.built_as) <= set(BUILT_CLASSES)
    assert rules.longest_ratio > 1


@pytest.mark.parametrize(("kind", "ratio"), [("gathering", 1.6), ("fire", 1.3), ("nook", 1.45), ("kitchen", 2.2)])
def test_proportions(kind: RoomKind, ratio: float) -> None:
    """Long to short side (common practice, no source)."""
    assert kind_rules(kind).longest_ratio == ratio


def test_kitchen_fire_and_water_keep_from_openings() -> None:
    """Kitchen, fire and water keep away from doors and windows, and nothing else does."""
    kinds = {kind for kind in get_args(RoomKind) if kind_rules(kind).keeps_from_openings}
    assert kinds == {"kitchen", "fire", "pool", "reserve"}


def test_kitchen_and_pool_have_a_front() -> None:
    """A kitchen serves to one side, a pool has its wide deck on one."""
    assert [kind for kind in get_args(RoomKind) if kind_rules(kind).has_front] == ["kitchen", "pool"]


def test_only_a_pool_has_a_deck() -> None:
    """Of a pool alone the water's distances run from the water; its deck is built up to the room's edge."""
    assert [kind for kind in get_args(RoomKind) if kind_rules(kind).has_deck] == ["pool"]
    assert kind_rules("pool").built_to_edge == ("paving",)
    assert kind_rules("reserve").built_to_edge == ("water",)
