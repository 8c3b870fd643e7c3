"""What a concept must be careful about."""

from dataclasses import replace

import pytest

from optimizer.options import cautions_for
from optimizer.site import RootRings, UtilityLine
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard


def told(units="ft", **site):
    """Cautions that the plain yard does not have, with parts of its site replaced."""
    usual = cautions_for(plain_yard(), plain_rooms(), plain_layout())
    yard = replace(on_site(plain_yard(), **site), units=units)
    return [words for words in cautions_for(yard, plain_rooms(), plain_layout()) if words not in usual]


def test_a_shorter_distance_is_told_with_both_figures_and_the_source():
    """6 ft for gas fire where 10 ft is usual, in the file's own unit."""
    (words,) = told(distances=(("gas_fire", 6.0),))
    assert words.startswith("Gas fire: the scenario keeps 6 ft where 10 ft is usual (common practice")
    assert words.endswith("confirm with the local code.")
    (metric,) = told("m", distances=(("gas_fire", 6.0),))
    assert "keeps 1.83 m where 3.05 m is usual" in metric


@pytest.mark.parametrize(
    "site",
    [
        {"distances": (("gas_fire", 10.0), ("wood_fire", 50.0))},
        {"utility_lines": (UtilityLine("main", "gas", ((0, 0), (9, 9)), 1.5),)},
        {"root_rings": RootRings(6, 15, 0.15)},
        {"root_rings": RootRings(8, 20, 0.1)},
        {"root_rings": RootRings(2, 9, 0.5), "trees": ()},
    ],
)
def test_as_usual_or_stricter_is_not_told(site):
    """Nothing is said where the scenario asks no less than usual, or where there is no tree."""
    assert [words for words in told(**site) if "usual" in words] == []


def test_lines_and_rings():
    """A line's own width, and each figure of the rings, by itself."""
    (line,) = told(utility_lines=(UtilityLine("main", "gas", ((0, 0), (9, 9)), 0.5),))
    assert line.startswith("Main: the scenario keeps 0.5 ft where 1.5 ft is usual")
    rings = told(root_rings=RootRings(4, 12, 0.3))
    assert [("4 trunk" in w, "12 trunk" in w, "30%" in w) for w in rings] == [
        (True, False, False),
        (False, True, False),
        (False, False, True),
    ]
