"""What keeps a room from its sun: the things that throw the shade, and the places with sun."""

import re

import pytest

from optimizer.concepts.whys.sunny import places_words, shade_words
from optimizer.derived import Derived
from optimizer.layout import Layout, Placement
from tests.optimizer.concepts.whys.tiny_yard import TEXT, tiny
from tests.small_yard import changed

# The elm out of the way, and nothing else but the house, which lies to the south: the plan's +y is north.
SUNNY = changed(
    "worth: 4}\n",
    'worth: 4}\n      sun: {want: sun, from: "10:00", to: "14:00", months: [3, 9]}\n',
    changed("  trees: [{name: elm, at: [33, 25], trunk_diameter: 6 in, canopy_radius: 4}]\n", "", TEXT),
)


def words_at(text, x, y):
    """What is said of the nook at a corner."""
    layout = Layout((Placement("nook", "small", x, y, 8.0, 8.0, "+y"),))
    return shade_words(tiny(text), layout, "nook")


def test_nothing_in_the_sun():
    """Far from the house at noon: all of the window, and nothing to name."""
    assert words_at(SUNNY, 28.0, 20.0) == "Where it stands it gets 4.0 of the 4.0 hours of sun."


def test_the_house_takes_the_rest():
    """Close behind it, with nothing else about: what it takes and what is left make up the window of four hours."""
    words = words_at(SUNNY, 4.0, 12.0)
    given, taken = (float(re.search(pattern, words)[1]) for pattern in (r"gets (\S+) of", r"The house takes (\S+) h"))
    assert given < 4.0
    assert given + taken == pytest.approx(4.0, abs=0.11)


def told_h(text, room, layout):
    """Hours that are told of a room, and those that the check measures."""
    case = tiny(text)
    derived = Derived(case.scenario, case.placed(layout))
    told = float(re.search(r"gets (\S+) of", shade_words(case, layout, room))[1])
    return told, derived.sun_h(derived.placed.of(room))


def test_under_a_new_roof():
    """The hours of the check, and the roof by its name: nothing else stands in the sun's way there."""
    text = changed("kind: nook\n", "kind: nook\n      cover: true\n", SUNNY)
    layout = Layout((Placement("nook", "small, covered", 28.0, 20.0, 8.0, 8.0, "+y"),))
    told, checked = told_h(text, "nook", layout)
    assert told == pytest.approx(checked, abs=0.051)
    assert told < 4.0
    assert "The roof over the nook takes" in shade_words(tiny(text), layout, "nook")


@pytest.mark.parametrize(("part", "choice", "x"), [
    ("kind: pool\n      water: [8, 8]\n      deck: 4\n", "pool", 0.0),
    ("kind: fire\n      fuel: gas\n      shape: circle\n", "ring", 12.0),
])  # fmt: skip
def test_measured_as_the_check_does(part, choice, x):
    """A pool by its water, a circle by its disc: close to a house, where its square has other hours."""
    sun = 'sun: {want: sun, from: "10:00", to: "14:00", months: [3, 9]}'
    room = f"    - name: spot\n      {part}      {sun}\n"
    if choice == "ring":
        room += "      choices: [{label: ring, width: 16, depth: 16, seats: 4, worth: 3}]\n"
    text = changed("    - name: nook\n", f"{room}    - name: nook\n", SUNNY)
    size = next(room for room in tiny(text).rooms if room.name == "spot").choices[0]
    width, depth, shape = size.width_ft, size.depth_ft, size.shape
    layout = Layout((Placement("spot", size.label, x, 8.0, width, depth, "+y", shape=shape),))
    told, checked = told_h(text, "spot", layout)
    assert told == pytest.approx(checked, abs=0.051)


def test_shade_is_not_taken():
    """Of a room that wants shade only the hours are told."""
    words = words_at(changed("want: sun", "want: shade", SUNNY), 28.0, 20.0)
    assert words == "Where it stands it gets 0.0 of the 4.0 hours of shade."


def test_places_and_what_bars_them():
    """Shares of the sunny ground, no counts of the grid; rules by their names."""
    words = places_words(tiny(SUNNY), "nook")
    start = "Part of the yard gets the 4 hours of sun that are wished for; the room may stand by itself on "
    assert re.match(start + "(hardly|about|most|nearly)", words)
    assert re.search(r"What bars the rest, .*: Rooms share at least 3 ft of edge .* \(\D+ of it\)", words)
    assert not re.search(r"\d+ places|\(\d", words)


def test_no_place_has_so_much():
    """A window before sunrise."""
    dark = changed('from: "10:00", to: "14:00", months: [3, 9]', 'from: "03:00", to: "04:00", months: [12]', SUNNY)
    assert places_words(tiny(dark), "nook").startswith("No place in or round the yard gets the 1 hours of sun")
