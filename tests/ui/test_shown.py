"""A concept that is open while its search goes on is found again under its new name."""

from dataclasses import replace

from optimizer.layout import Layout
from tests.ui.sample_concepts import sample_concepts
from ui.shown import MOVED_FT, Shown, follow

CONCEPTS = tuple(Shown(None, None, option) for option in sample_concepts().options)


def moved(layout, by_ft, **changes):
    """The layout with its first room moved, and changed."""
    first, *rest = layout.placements
    return Layout((replace(first, x_ft=first.x_ft + by_ft, **changes), *rest))


def test_it_is_found_under_its_new_name():
    """The order of the others does not matter, nor that it moved a little while it was polished."""
    third = CONCEPTS[2]
    assert follow(third.option.layout, CONCEPTS[::-1]) is third
    assert follow(moved(third.option.layout, MOVED_FT - 0.5), CONCEPTS) is third


def test_what_moved_far_or_has_other_choices_is_another():
    layout = CONCEPTS[0].option.layout
    assert follow(moved(layout, MOVED_FT + 0.5), CONCEPTS[:1]) is None
    assert follow(moved(layout, 0.0, choice="table for eight"), CONCEPTS[:1]) is None
    assert follow(layout, ()) is None
