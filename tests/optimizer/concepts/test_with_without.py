"""With and without: the best of each by the exact score, and what it costs more."""

from dataclasses import replace

import pytest

from optimizer.brief import Trip
from optimizer.concepts.with_without import with_and_without
from optimizer.pipeline import RunSettings, make_options
from tests.optimizer.concepts.whys.tiny_yard import TEXT, tiny
from tests.small_yard import changed

SCREENED = changed("kind: nook\n", "kind: nook\n      screen: true\n", TEXT)
CASE = tiny(SCREENED)


@pytest.fixture(scope="module")
def found():
    """A short run."""
    return make_options(CASE.scenario, RunSettings(seconds=1, repeatable=True, processes=0))


def made(option, score, *rooms, nook=None, off_ft=0.0, name=""):
    """An option with these rooms of another one, the nook in a size, and a score."""
    placed = tuple(replace(p, x_ft=p.x_ft + off_ft) for p in option.layout.placements if p.room in rooms)
    if nook:
        placed = tuple(replace(p, choice=nook) if p.room == "nook" else p for p in placed)
    return replace(option, id=name, score=score, layout=replace(option.layout, placements=placed))


def scores(pair):
    """Score with and without; None where nothing was found."""
    return tuple(None if side is None else side.score for side in (pair.with_it, pair.without_it))


def test_the_best_of_each(found):
    """The table is required and has one size: of the nook itself and of its larger size one each."""
    option = next(option for option in found.options if option.layout.of("nook"))
    judged = [
        made(option, 50.0, "table", "nook", nook="small"),
        made(option, 40.0, "table", "nook", nook="small, screened", name="concept-02"),
        made(option, 30.0, "table", "nook", nook="large", name="concept-01"),
        made(option, 60.0, "table", off_ft=4.0),
        made(option, 70.0, "table", name="concept-03"),
    ]
    shown = [option for option in judged if option.id]
    nook, large = with_and_without(CASE, shown, judged)
    assert (nook.room, nook.size, scores(nook)) == ("nook", None, (30.0, 60.0))
    assert (large.room, large.size, scores(large)) == ("nook", "large", (30.0, 40.0))
    assert (nook.with_it.concept, nook.without_it.concept) == ("concept-01", None)
    assert nook.changes.startswith("with the nook")
    assert large.changes == "nook: large"


def test_walking_is_of_the_trips_that_both_have(found):
    """Nobody walks to the nook where it is left out: the other trip alone is compared."""
    option = next(option for option in found.options if option.layout.of("nook"))
    trips = (Trip("door", "table", 5), Trip("table", "nook", 3))
    case = replace(CASE, scenario=replace(CASE.scenario, brief=replace(CASE.scenario.brief, trips=trips)))
    having = made(option, 10.0, "table", "nook", nook="small", name="concept-01")
    without = made(option, 20.0, "table", name="concept-02")
    having = walked(having, (("door", "table", 12.0), ("table", "nook", 30.0)))
    without = walked(without, (("door", "table", 20.0),))
    nook, _ = with_and_without(case, [having, without], [])
    assert nook.more_walking_ft == pytest.approx(5 * (12 - 20))
    assert (nook.trips_only_with, nook.trips_only_without) == (("table to nook",), ())


def walked(option, trips):
    """The option with ways of these lengths."""
    return replace(option, appraisal=replace(option.appraisal, trips_ft=trips))


def test_what_was_not_found(found):
    """A side is empty where no layout was found."""
    option = next(option for option in found.options if option.layout.of("nook"))
    nook, large = with_and_without(CASE, [made(option, 10.0, "table", "nook", nook="small")], [])
    assert (scores(nook), scores(large)) == ((10.0, None), (None, 10.0))
    assert nook.changes == large.changes == ""


def test_an_owners_own_labels(found):
    """A label of one's own that ends like what is bought to a size is a size like any other."""
    text = changed("label: small", "label: 'small, covered'", SCREENED)
    text = changed("label: large", "label: 'large, screened'", text)
    case = tiny(text)
    assert len(case.rooms[1].choices) == 4
    option = next(option for option in found.options if option.layout.of("nook"))
    judged = [
        made(option, score, "table", "nook", nook=nook, name=f"concept-0{score:g}")
        for score, nook in ((1.0, "small, covered, screened"), (2.0, "small, covered"), (3.0, "large, screened"))
    ]
    nook, large = with_and_without(case, judged, judged)
    assert (nook.size, large.size) == (None, "large, screened")
    assert (scores(nook), scores(large)) == ((1.0, None), (3.0, 1.0))


def test_in_a_run(found):
    """Figures are those of the concept that is named."""
    options = {option.id: option for option in found.options}
    sides = [side for pair in found.with_without for side in (pair.with_it, pair.without_it) if side and side.concept]
    assert sides
    for side in sides:
        option = options[side.concept]
        assert (side.cost, side.score) == (option.appraisal.cost.phase(1), option.score)
        assert (side.worth, side.walking_ft) == (option.appraisal.worth, option.appraisal.walking_ft)
