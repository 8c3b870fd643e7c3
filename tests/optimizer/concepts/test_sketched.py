"""Layouts of one's own: the same check, measures and prices as a concept of the same rooms in the same places has."""

from dataclasses import replace

import pytest

from optimizer.brief import Sketch, SketchedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.sketched import sketched_layout, sketched_option, sketched_options
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import load_scenario

YARD = load_scenario("scenarios/thimble-yard.yaml")


def drawn(layout):
    """A layout as somebody would draw it."""
    return tuple(
        SketchedRoom(p.room, (p.x_ft, p.y_ft), p.width_ft, p.depth_ft, p.front, p.choice) for p in layout.placements
    )


@pytest.fixture(scope="module")
def concept(shown):
    """The first concept of a short search."""
    return shown("thimble-yard").found.options[0]


def test_a_concept_drawn_by_hand(concept):
    """A sketch of a concept's rooms has its figures, and no finding; it has no rank and no proof."""
    sketch = sketched_option(Case.of(YARD), Sketch("mine", drawn(concept.layout)), 3)
    assert (sketch.id, sketch.sketch, sketch.rank, sketch.proof) == ("sketch-03", "mine", None, None)
    assert (sketch.layout, sketch.appraisal, sketch.findings) == (concept.layout, concept.appraisal, ())
    assert sketch.score == pytest.approx(concept.score)
    assert sketch.title == "Sketch: mine"


def test_broken_rules_are_named(concept):
    """One room moved onto another: both are named, with the ground that they share."""
    one, other, *rest = drawn(concept.layout)
    onto = replace(other, at_ft=one.at_ft)
    sketch = sketched_option(Case.of(YARD), Sketch("mine", (one, onto, *rest)), 1)
    overlap = next(finding for finding in sketch.findings if finding.rule == "no_overlap" and one.room in finding.rooms)
    shared = min(one.width_ft, other.width_ft) * min(one.depth_ft, other.depth_ft)
    assert set(overlap.rooms) == {one.room, other.room}
    assert overlap.amount == pytest.approx(shared)
    assert f"{len(sketch.findings)} things in it break a rule" in sketch.reason
    assert sketch.appraisal.cost.phase(1) > 0


def test_the_choice_that_is_nearest():
    """Without a choice the size decides, in the turn of the front where the room has one; rooms come in brief order."""
    case = Case.of(YARD)
    for room in case.rooms:
        for choice in room.choices:
            first = next(c for c in room.sizes if (c.width_ft, c.depth_ft) == (choice.width_ft, choice.depth_ft))
            own = SketchedRoom(room.name, (5.0, 5.0), choice.width_ft + 0.1, choice.depth_ft, "+y")
            turned = SketchedRoom(room.name, (5.0, 5.0), choice.depth_ft, choice.width_ft + 0.1, "-x")
            for one in (own, turned):
                (placement,) = sketched_layout(case, Sketch("mine", (one,))).placements
                assert placement.choice == first.label
    rooms = tuple(SketchedRoom(room.name, (5.0, 5.0), 8.0, 8.0, "+y") for room in reversed(case.rooms))
    assert [p.room for p in sketched_layout(case, Sketch("mine", rooms)).placements] == [r.name for r in case.rooms]


def test_sketches_come_after_the_concepts(concept):
    """They are not counted, and are there when nothing fits too."""
    sketches = (Sketch("mine", drawn(concept.layout)), Sketch("other", drawn(concept.layout)[:1]))
    yard = replace(YARD, sketches=sketches)
    found = make_options(yard, RunSettings(count=1, seconds=0.7, repeatable=True, processes=0))
    assert [option.id for option in found.options] == ["concept-01", "sketch-01", "sketch-02"]
    assert len(found.concepts) == 1
    assert [option.sketch for option in found.sketches] == ["mine", "other"]
    assert found.sketches == sketched_options(Case.of(yard))
