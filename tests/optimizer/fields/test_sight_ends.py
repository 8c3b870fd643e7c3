"""Who looks at what, from how high, and what counts as in the way."""

from dataclasses import replace

import pytest

from optimizer.brief import Relation
from optimizer.fields.sight_ends import fixed_eye, look_of, screens_for, seen_thing
from optimizer.site import Surrounding, Tree
from tests.yards import PLAIN_SITE

KINDS = {"nook": "nook", "cooker": "kitchen", "pond": "reserve"}
SHED = Surrounding("shed next door", ((20, 42), (40, 42), (40, 54), (20, 54)), height_ft=9)


def look(first, second, kind="in_view", **facts):
    """Look of a relation on the plain site."""
    return look_of(PLAIN_SITE, Relation((first, second), kind, **facts), KINDS)


@pytest.mark.parametrize(("between", "looker"), [
    (("nook", "pond"), "nook"),
    (("pond", "nook"), "pond"),
    (("nook", "street eye"), "street eye"),
    (("bath window", "nook"), "bath window"),
    (("nook", "kitchen door"), "kitchen door"),
    (("nook", "gate"), "gate"),
    (("oak", "nook"), "nook"),
    (("nook", "house"), "nook"),
])  # fmt: skip
def test_who_looks(between, looker):
    """Neighbours, windows, doors and entrances look; else the first, and never a thing without eyes."""
    found = look(*between)
    assert (found.looker, {found.looker, found.seen}) == (looker, set(between))


def test_heights_by_use():
    """Cooks stand and others sit, unless the brief says how; heads are seen where people sit, else the ground."""
    assert (look("nook", "pond").eye_ft, look("cooker", "pond").eye_ft) == (3.75, 5.25)
    assert look("cooker", "pond", eye="seated").eye_ft == 3.75
    assert (look("nook", "pond").seen_ft, look("pond", "nook").seen_ft) == (1.5, 4)


def test_shares_asked():
    """Half in view and a fifth out of view, or what the brief says; just so is kept."""
    assert (look("nook", "pond").share, look("nook", "pond", "out_of_view").share) == (0.5, 0.2)
    asked = [look("nook", "pond", kind, share=0.3) for kind in ("in_view", "out_of_view")]
    assert [[bool(one.keeps(share)) for share in (0.29, 0.3, 0.31)] for one in asked] == [
        [False, True, True],
        [True, True, False],
    ]


def test_eyes_of_the_site():
    """A door's and a window's eye over the floor or the sill, a neighbour's where it is said, each before its wall."""
    house = PLAIN_SITE.buildings[0]
    sill = replace(house, windows=(replace(house.windows[0], sill_z_ft=7.0),))
    eyes = (Surrounding("far", at=(30, 60), eye_z_ft=14),)
    site = replace(PLAIN_SITE, buildings=(sill,), surroundings=eyes)
    assert fixed_eye(PLAIN_SITE, "kitchen door").z_ft == 6.25
    assert fixed_eye(PLAIN_SITE, "bath window").z_ft == 5.5
    assert fixed_eye(site, "bath window").z_ft == 8.5
    assert fixed_eye(site, "bath window").at == (40, 12.5)
    assert fixed_eye(site, "far").at == pytest.approx((30, 59.5))
    assert (fixed_eye(site, "far").z_ft, fixed_eye(PLAIN_SITE, "rear eye").z_ft) == (14, 5.25)
    assert fixed_eye(site, "house") is None


def test_what_hides():
    """Buildings, neighbours, fences part by part and evergreen crowns; no end of the look, nor what the eye is in."""
    fence = Surrounding("fence", line=((0, 40), (30, 40), (60, 40)), height_ft=6)
    inside = Surrounding("upstairs", at=(30, 50), eye_z_ft=8)
    trees = (*PLAIN_SITE.trees, Tree("yew", (50, 25), 1, 4, 20, evergreen=True))
    site = replace(PLAIN_SITE, surroundings=(SHED, fence, inside), trees=trees)

    def tops(first, second):
        found = screens_for(site, look_of(site, Relation((first, second), "in_view"), KINDS))
        return [(screen.bottom_z_ft, screen.top_z_ft) for screen in found]

    ground = float("-inf")
    assert tops("nook", "pond") == [(ground, 20), (ground, 9), (ground, 6), (ground, 6), (6, 20)]
    assert tops("nook", "house") == tops("nook", "pond")[1:]
    assert tops("nook", "upstairs") == [(ground, 20), (ground, 6), (ground, 6), (6, 20)]


def test_what_is_seen_of_things():
    """A building at half its height, a tree's crown, a fence, a keep-out low over the ground; nothing of no thing."""
    site = replace(PLAIN_SITE, surroundings=(SHED, Surrounding("fence", line=((0, 40), (60, 40)))))
    heights = {name: seen_thing(site, name).z_ft for name in ("house", "shed next door", "oak", "fence", "drain strip")}
    assert heights == {"house": 10, "shed next door": 4.5, "oak": 12.5, "fence": 3, "drain strip": 1.5}
    assert seen_thing(site, "old roof").z_ft == 4.5
    assert seen_thing(site, "nobody") is None
