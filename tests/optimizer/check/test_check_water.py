"""Water within its deck: its distances run from the water's edge, the deck's own from the deck's."""

from dataclasses import replace

import pytest

from optimizer.catalogue import Item
from optimizer.check import check_layout
from optimizer.layout import Layout, Placement, placed_of
from optimizer.site import KeepOut, RootRings, Setbacks, Tree
from tests.yards import PLAIN_SITE, bathing, on_site, plain_yard, sized, stand

ROOM = bathing("pool")


def broken(place: Placement, room=ROOM, **site: object) -> set[str]:
    """Rules that a pool alone in the yard breaks at a place."""
    yard = on_site(plain_yard(ceiling=None), **{"structures": (), **site})
    yard = replace(yard, brief=replace(yard.brief, trips=()))
    rooms = (sized("table", "gathering", 14, 12), room)
    return {finding.rule for finding in check_layout(yard, placed_of(rooms, Layout((place,))))}


@pytest.mark.parametrize(("water_ft", "breaks"), [(5.9, set()), (6.2, {"inside_setbacks"})])
def test_the_setback_of_water_runs_to_the_water(water_ft: float, breaks: set[str]) -> None:
    """2 ft from the rear the deck keeps paving's setback, and the water behind it lies 6 ft off."""
    setbacks = (Setbacks(paving=2, water=water_ft),) * 4
    assert broken(stand("pool", 24, 20, 16, 18, "-y"), setbacks=setbacks) == breaks


def test_the_deck_keeps_its_own_setback() -> None:
    """A foot from the rear is too near for paving, however far off the water is."""
    assert broken(stand("pool", 24, 21, 16, 18, "-y"), setbacks=(Setbacks(paving=2),) * 4) == {"inside_setbacks"}


def test_a_deck_may_lie_ahead_of_a_door_and_below_a_window() -> None:
    """6 ft off the house the water lies 14 ft off behind the wide deck, which is enough; turned round, 10 ft off."""
    ahead = {"distances": (("ahead_of_door", 12.5), ("beside_window", 12.5))}
    assert broken(stand("pool", 14, 18, 16, 18, "-y"), **ahead) == set()
    assert broken(stand("pool", 14, 18, 16, 18, "+y"), **ahead) == {"clear_of_openings"}
    assert broken(stand("pool", 32, 18, 16, 18, "-y"), **ahead) == set()
    assert broken(stand("pool", 32, 18, 16, 18, "+y"), **ahead) == {"clear_of_openings"}


@pytest.mark.parametrize(("front", "breaks"), [("-x", set()), ("+x", {"septic"})])
def test_an_overhead_line_is_kept_by_the_water(front: str, breaks: set[str]) -> None:
    """Of a deck 3 ft from the line the wide side keeps the water 11 ft off, the narrow one 7 ft: 10 are asked."""
    wire = KeepOut("wire", ((0, 0), (5, 0), (5, 40), (0, 40)), kind="overhead line")
    place = stand("pool", 8, 21, 18, 16, front)  # type: ignore[arg-type]
    found = broken(place, keep_outs=(wire,), trees=(), entrances=())
    assert found == breaks


def test_nobody_digs_in_a_root_ring() -> None:
    """Water 12 ft from the oak, whose ring ends there, is far enough; a foot nearer is not. The deck may lie in it."""
    rings = {"root_rings": RootRings(paved_share=1.0), "trees": (Tree("oak", (6, 30), 0.8, 5),)}
    assert broken(stand("pool", 14, 22, 18, 16, "+x"), **rings) == set()
    assert broken(stand("pool", 13, 22, 18, 16, "+x"), **rings) == {"water_clear"}


def test_a_narrow_deck_is_found() -> None:
    """3 ft of deck on one side are too few; of a pool that is not drawn nothing is said."""
    (choice,) = ROOM.choices
    narrow = replace(ROOM, choices=(replace(choice, furniture=(Item("water", 3.0, 4.0, 9.0, 6.0),)),))
    assert broken(stand("pool", 24, 20, 16, 18, "-y"), narrow) == {"water_clear"}
    assert broken(stand("pool", 24, 20, 16, 17, "-y"), sized("pool", "pool", 16, 17)) <= {"inside_setbacks"}


def test_the_plain_site_has_what_is_tested() -> None:
    """Its house ends 12 ft up, with its kitchen door at 20 ft and a window from 38 to 42 ft."""
    assert max(y for _, y in PLAIN_SITE.buildings[0].outline) == 12
    assert PLAIN_SITE.doors[0].at == (20, 12)
    assert PLAIN_SITE.windows[0].at == (40, 12)
