"""Permits and approvals: each asked for by what the concept has, and by nothing else."""

from dataclasses import replace

import pytest

from optimizer.appraisal import appraise
from optimizer.appraisal.site_measures import GroundMeasures, SiteMeasures
from optimizer.catalogue import Cover, Item, book_for
from optimizer.concepts import permits_for
from optimizer.derived import Derived
from optimizer.layout import Layout, placed_of
from optimizer.site import KeepOut, Tree
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard, sized


def asked(*changed, rooms=None, without=(), appraisal=None, **site):
    """First words of every prompt but those that always stand."""
    lines = permits_for(
        on_site(plain_yard(), **site),
        placed_of(rooms or plain_rooms(), plain_layout(*changed, without=without)),
        appraisal,
    )
    return [words.split(":")[0] for words in lines[1:-2]]


def with_choice(room, **changes):
    """The room with its one choice changed."""
    return replace(room, choices=(replace(room.choices[0], **changes),))


def test_it_says_first_that_it_is_a_prompt():
    """The first line is no permit, the last two always stand; nothing built asks for nothing."""
    lines = permits_for(plain_yard(), placed_of(plain_rooms(), plain_layout(without=("cooker", "fire"))))
    assert lines[0].startswith("Questions to ask, not advice")
    assert [words.split(":")[0] for words in lines[-2:]] == ["Utility marking", "Owners' association"]
    assert permits_for(plain_yard(), placed_of(plain_rooms(), Layout(()))) == ()


def test_trades():
    """Gas for kitchen and gas fire, electricity for the kitchen, plumbing where there is a sink."""
    assert asked(without=("cooker", "fire"), trees=()) == []
    assert asked(trees=()) == ["Gas permit", "Electrical permit"]
    sink = with_choice(sized("cooker", "kitchen", 8, 6), furniture=(Item("sink", 0, 0, 2, 2),))
    assert "Plumbing permit" in asked(rooms=plain_rooms(sink))


def test_fuel():
    """A wood fire asks the fire department and no gas line."""
    wood = plain_rooms(sized("fire", "fire", 8, 8, fuel="wood"))
    assert asked(rooms=wood, without=("cooker",), trees=()) == ["Fire department"]
    assert asked(without=("cooker",), trees=()) == ["Gas permit"]


def test_a_roof_and_later_water():
    """A covered choice asks a building permit, a reserve a pool permit and barrier."""
    roofed = with_choice(sized("nook", "nook", 8, 7), cover=Cover(9.0, 0.7))
    assert "Building permit" in asked(rooms=plain_rooms(roofed))
    assert "Building permit" not in asked()
    pool = plain_rooms(sized("nook", "reserve", 8, 7))
    assert "Pool permit and barrier, later" in asked(rooms=pool)


@pytest.mark.parametrize(("tallest_ft", "asks"), [(0.0, False), (3.0, False), (3.1, True), (5.0, True)])
def test_a_wall_above_4_ft_from_the_bottom_of_its_footing(tallest_ft, asks):
    """IRC R105.2(3), seen; a footing of 1 ft is taken, so that 3 ft above the ground are the limit."""
    appraisal = appraise(Derived(plain_yard(), placed_of(plain_rooms(), plain_layout())), book_for("USD"))
    ground = GroundMeasures(tallest_wall_ft=tallest_ft)
    found = asked(appraisal=replace(appraisal, site=SiteMeasures(ground=ground)))
    assert ("Building permit" in found) == asks


def test_ground_of_others():
    """Kept-out ground under a room is an easement; septic ground and overhead lines have their offices."""
    strip = KeepOut("strip", ((24, 35), (40, 35), (40, 40), (24, 40)), ("nook",))
    assert "Easement" in asked(keep_outs=(strip,))
    assert "Easement" not in asked()
    assert "Health department" in asked(keep_outs=(replace(strip, kind="septic tank"),))
    assert "Power company" in asked(keep_outs=(replace(strip, kind="overhead line"),))


def test_trees_by_their_outer_ring():
    """A tree of 1 ft asks where a built room comes nearer than 15 ft."""
    assert "Tree ordinance" in asked(trees=(Tree("elm", (28, 52.9), 1.0, 3.0),))
    assert "Tree ordinance" not in asked(trees=(Tree("elm", (28, 53.1), 1.0, 3.0),))


@pytest.mark.parametrize(
    ("share", "limit", "asks"), [(0.46, None, True), (0.44, None, False), (0.28, 0.3, True), (0.26, 0.3, False)]
)
def test_stormwater_by_the_paved_share(share, limit, asks):
    """Above 45 %, or from nine tenths of a local limit on."""
    appraisal = appraise(Derived(plain_yard(), placed_of(plain_rooms(), plain_layout())), book_for("USD"))
    found = asked(appraisal=replace(appraisal, paved_share=share), paved_share_limit=limit)
    assert ("Stormwater" in found) == asks
    assert "Stormwater" not in asked(paved_share_limit=limit)
