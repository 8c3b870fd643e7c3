"""Shares of sight between rooms as they stand, and what a finding says."""

from dataclasses import replace

import pytest

from optimizer.brief import Relation
from optimizer.catalogue import Item
from optimizer.check import check_layout, seen_shares
from optimizer.check.case import CheckCase
from optimizer.check.sight import sight_share
from optimizer.derived import Derived
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, SpotLevel, Surrounding
from tests.yards import PLAIN_SITE, on_site, plain_layout, plain_rooms, plain_yard, sized, stand

POND = sized("pond", "reserve", 9, 9)
ROOMS = plain_rooms(POND)
SIGHT = Relation(("nook", "pond"), "in_view")
LAYOUT = Layout((stand("nook", 10, 20, 8, 8), stand("pond", 40, 19.5, 9, 9)))  # middles at (14, 24) and (44.5, 24)


def share(relation=SIGHT, *, rooms=ROOMS, layout=LAYOUT, **site):
    """Share of sight on the plain yard."""
    return sight_share(on_site(plain_yard(relation), **site), placed_of(rooms, layout), relation)


def wall(y0, y1, height_ft):
    """The house and a thin wall between nook and pond from y0 to y1."""
    return {"buildings": (*PLAIN_SITE.buildings, Building("wall", ((29, y0), (30, y0), (30, y1), (29, y1)), height_ft))}


@pytest.mark.parametrize(("site", "seen"), [
    ({}, 1.0),
    (wall(10, 40, 8), 0.0),
    (wall(24.1, 40, 8), 0.5212),
    (wall(23.9, 40, 8), 0.4774),
    (wall(10, 40, 1.0), 1.0),
])  # fmt: skip
def test_part_of_it(site, seen):
    """A wall that begins 0.1 ft beside the line between the middles, 15 to 16 ft off; the pond's middle is 30.5 ft off.

    It hides what is beyond 0.1 x 30.5 / 16 ft beside the pond's middle, of 9 ft: 1 / 2 + 0.1906 / 9 is seen. Where it
    reaches 0.1 ft over the line, its near corner hides the most: 1 / 2 - 0.2033 / 9.
    """
    assert share(**site) == pytest.approx(seen, abs=1e-4)


def test_looking_down_from_a_bank():
    """Over a 3.5 ft fence seated eyes see no water; from ground 4 ft higher the far part.

    By hand: hidden to 21 x (7.75 - 1.5) / (7.75 - 3.5) = 30.88 ft from the eyes, at x = 44.88, of 40 to 49.
    """
    fence = (*PLAIN_SITE.surroundings, Surrounding("low fence", line=((35, 0), (35, 40)), height_ft=3.5))
    assert share(surroundings=fence) == 0
    levels = tuple(SpotLevel((x, y), z) for x, z in ((0, 4), (20, 4), (30, 0), (60, 0)) for y in (0, 40))
    assert share(surroundings=fence, levels=levels) == pytest.approx((49 - 44.8824) / 9, abs=1e-4)


def test_standing_sees_more():
    """Over a 2.5 ft fence, by hand: hidden to x = 51.8 for seated eyes, to 14 + 21 x 3.75 / 2.75 = 42.64 for standing."""
    fence = (*PLAIN_SITE.surroundings, Surrounding("low fence", line=((35, 0), (35, 40)), height_ft=2.5))
    assert share(surroundings=fence) == 0
    assert share(replace(SIGHT, eye="standing"), surroundings=fence) == pytest.approx((49 - 42.6364) / 9, abs=1e-4)


def test_a_counter_between():
    """The counter of a third room hides, that of the one who looks does not."""
    counter = (Item("counter", 0, 0, 2, 10),)
    bar = sized("cooker", "kitchen", 2, 10)
    bar = replace(bar, choices=(replace(bar.choices[0], furniture=counter),))
    between = Layout((*LAYOUT.placements, stand("cooker", 37, 19, 2, 10)))
    rooms = plain_rooms(POND, bar)
    assert share(rooms=rooms, layout=between) < share(layout=LAYOUT)
    cooks = Relation(("cooker", "pond"), "in_view", eye="seated")
    assert share(cooks, rooms=rooms, layout=between) == 1


def test_a_panel_keeps_a_neighbour_out():
    """A neighbour on the ground sees nothing over a 6 ft panel, one 40 ft up the far part.

    By hand: hidden to 4.5 x 40.5 / 34 = 5.36 ft behind the panel, at x = 43.64, of 40 to 49.
    """
    screened = replace(POND, choices=(replace(POND.choices[0], is_screened=True),))
    low, high = (Surrounding("eye", at=(90, 24), eye_z_ft=z) for z in (5, 40))
    relation = Relation(("pond", "eye"), "out_of_view")
    assert share(relation, surroundings=(low,)) == 1
    assert share(relation, rooms=plain_rooms(screened), surroundings=(low,)) == 0
    assert share(relation, rooms=plain_rooms(screened), surroundings=(high,)) == pytest.approx(3.64 / 9, abs=1e-4)


def test_an_end_left_out():
    """No share where a room of the relation is not placed."""
    assert share(layout=Layout(LAYOUT.placements[:1])) is None
    assert share(layout=Layout(LAYOUT.placements[1:])) is None


@pytest.mark.parametrize(("kind", "asked", "amount", "words"), [
    ("in_view", 0.5, 0.5 - 0.4774, "nook sees 48 % of pond, at least 50 % is asked"),
    ("out_of_view", 0.2, 0.2774, "nook sees 48 % of pond, at most 20 % is asked"),
])  # fmt: skip
def test_words_of_a_finding(kind, asked, amount, words):
    """A finding tells who sees how much, and how much is lacking."""
    for wanted in (None, asked):
        yard = on_site(plain_yard(Relation(("nook", "pond"), kind, share=wanted)), **wall(23.9, 40, 8))
        (finding,) = [f for f in check_layout(yard, placed_of(ROOMS, LAYOUT)) if f.rule == kind]
        assert (finding.words, finding.unit, finding.amount) == (words, "share", pytest.approx(amount, abs=1e-4))


def test_a_looser_share_is_kept():
    """A little less than a half is enough where no more is asked."""
    yard = on_site(plain_yard(replace(SIGHT, share=0.477)), **wall(23.9, 40, 8))
    assert [f for f in check_layout(yard, placed_of(ROOMS, LAYOUT)) if f.rule == "in_view"] == []


def test_every_relation_tells_who_looks_at_what():
    """A neighbour's eye looks, whichever end is named first; of two rooms the first does; a room left out tells nothing."""
    hidden = Relation(("nook", "rear eye"), "out_of_view", wish=1)
    seen = Relation(("nook", "fire"), "in_view", wish=1)
    found = seen_shares(CheckCase(Derived(plain_yard(hidden, seen), placed_of(plain_rooms(), plain_layout()))))
    assert [(looker, of, kind) for looker, of, kind, _ in found] == [
        ("rear eye", "nook", "out_of_view"),
        ("nook", "fire", "in_view"),
    ]
    assert (
        seen_shares(
            CheckCase(Derived(plain_yard(hidden, seen), placed_of(plain_rooms(), plain_layout(without=("nook",)))))
        )
        == ()
    )
