"""Holds in a scenario: what they read as, and every report on one that cannot be."""

import pytest

from optimizer.brief import Hold
from optimizer.scenario import read_scenario
from tests.small_yard import SMALL, changed, problems

AREA = "[[20, 22], [40, 22], [40, 40], [20, 40]]"


def held(*holds, text=SMALL):
    """The small yard with these holds, each as written."""
    return changed("  trips:", "  holds:\n" + "".join(f"    - {{{hold}}}\n" for hold in holds) + "  trips:", text)


def test_what_is_read():
    """Every key, with lengths in any unit; areas come out counter-clockwise."""
    text = held(
        "room: table, at: [22, 8 m], front: '-y', choice: six",
        "room: chairs, within: [[20, 22], [20, 40], [40, 40], [40, 22]]",
        "room: table, not_in: [[40, 22], [60, 22], [60, 40], [40, 40]]",
    )
    at, within, not_in = read_scenario(text, "yard.yaml").brief.holds
    assert at == Hold("table", at_ft=(22, pytest.approx(26.2467, abs=1e-4)), front="-y", choice="six")
    assert within.within == ((20, 22), (40, 22), (40, 40), (20, 40))
    assert not_in.not_in == ((40, 22), (60, 22), (60, 40), (40, 40))


FAULTS = [
    (["room: tabel, at: [22, 22]"], "expected the name of a room, found 'tabel'; did you mean table?"),
    (["room: elm, at: [22, 22]"], "expected the name of a room, found 'elm'; "),
    (
        ["room: table"],
        "expected one of the keys at, within, not_in, front, choice, found the room alone; say what is held",
    ),
    (["room: table, at: [22, 22], within: " + AREA], "expected `at` or an area, not both, found `at` and `within`; "),
    (["room: table, at: [22, 22], not_in: " + AREA], "expected `at` or an area, not both, found `at` and `not_in`; "),
    (
        ["room: table, at: [220, 22]"],
        "expected a corner inside the boundary, found [220, 22] ft, outside; check the digits",
    ),
    (["room: table, at: [22]"], "expected two values, as in [a, b], found nothing; "),
    (
        ["room: table, within: " + AREA + ", not_in: " + AREA],
        "expected holds of table that can be kept together, found ",
    ),
    (["room: table, front: north"], "expected +x, -x, +y or -y, found 'north'; "),
    (["room: table, choice: sixx"], "expected a choice of table, found 'sixx'; did you mean six?"),
    (["room: chairs, choice: huge"], "expected a choice of chairs, found 'huge'; write one of "),
    (
        ["room: table, within: [[20, 22], [40, 40], [40, 22], [20, 40]]"],
        "expected an outline that goes round some ground once",
    ),
    (["room: table, not_in: [[20, 22], [40, 22], [30, 22]]"], "found an outline without area; "),
    (
        ["room: table, within: [[120, 22], [140, 22], [140, 40]]"],
        "expected an area inside the boundary, found one wholly outside",
    ),
    (
        ["room: table, at: [22, 22], hold: yes"],
        "expected one of the keys room, at, within, not_in, front, choice, found 'hold'",
    ),
    (
        ["room: table, at: [22, 22]", "room: table, at: [23, 22]"],
        "expected one `at` for table, found [23, 22] ft after [22, 22] ft; drop one",
    ),
    (["room: table, front: +x", "room: table, front: -x"], "expected one `front` for table, found '-x' after '+x'; "),
    (
        ["room: table, at: [50, 22]", "room: table, within: " + AREA],
        "expected holds of table that can be kept together, found the place [50, 22] ft outside the area of `within`; ",
    ),
    (
        ["room: table, not_in: " + AREA, "room: table, at: [22, 24]"],
        "found the place [22, 24] ft inside the area of `not_in`; ",
    ),
    (
        ["room: table, within: [[0, 22], [9, 22], [9, 40]]", "room: table, within: " + AREA],
        "found two areas of `within` that share no ground; ",
    ),
    (
        ["room: table, within: [[21, 23], [39, 23], [39, 39]]", "room: table, not_in: " + AREA],
        "found an area of `within` that lies in one of `not_in`; ",
    ),
]


@pytest.mark.parametrize(("holds", "expected"), FAULTS)
def test_one_report(holds, expected):
    """Each fault is one problem with its line, in words that say what to do."""
    (problem,) = problems(held(*holds))
    assert problem.startswith(f"yard.yaml:{21 + len(holds)}:")
    assert expected in problem


def test_holds_of_two_rooms_do_not_contradict():
    """Nor does the same said twice, nor a corner on the edge of an area."""
    text = held(
        "room: table, at: [20, 22]",
        f"room: table, within: {AREA}",
        "room: chairs, at: [2, 22]",
        "room: table, at: [20, 22]",
    )
    assert len(read_scenario(text, "yard.yaml").brief.holds) == 4
