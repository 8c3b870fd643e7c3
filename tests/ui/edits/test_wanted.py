"""Answers of the page as changes of the file: they are read back by the program's own reader."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.scenario import load_scenario, read_scenario
from tests.sample_run import sample_option, sample_scenario
from ui.edits import (
    WEIGHT_NAMES,
    changed,
    hold_as_it_stands,
    hold_words,
    keep_out,
    of_area,
    wanted_of,
    with_hold,
    without_hold,
)
from ui.view_models import words_of


def edited(wanted, scenario=None):
    """Scenario after answers, and what is said of it."""
    text, what = changed(scenario or sample_scenario(), wanted)
    return read_scenario(text, "edited"), what


def test_without_a_change_the_text_is_the_same():
    scenario = sample_scenario()
    assert changed(scenario, wanted_of(scenario.brief)) == (scenario.text, "")


def test_every_answer_is_read_back():
    """Limit, guests, what each room is and what counts: as answered, and everything else as before."""
    scenario = sample_scenario()
    before = wanted_of(scenario.brief)
    assert before.standings == ("must", "like", "like", "like", "later")
    wanted = replace(
        before,
        ceiling=Decimal(140_000),
        party=20,
        standings=("like", "must", "later", "like", "like"),
        weights=tuple((name, 2.0 if name == "sun" else weight) for name, weight in before.weights),
    )
    after, what = edited(wanted)
    assert wanted_of(after.brief) == wanted
    assert what.startswith("All-in limit 140,000; 20 guests at a party; gathering area: would like; ")
    assert what.endswith("; sun and shade as wished: double")
    assert after.site == scenario.site
    assert after.brief.relations == scenario.brief.relations
    assert wanted_of(edited(before, after)[0].brief) == before


def test_what_comes_later_no_longer_may_wait():
    """A room whose phase is open and that is put into a later one; liked or needed, its phase stays open."""
    text = sample_scenario().text.replace("      kind: fire\n", "      kind: fire\n      may_wait: true\n", 1)
    scenario = read_scenario(text, "open")
    before = wanted_of(scenario.brief)
    number = next(n for n, room in enumerate(scenario.brief.rooms) if room.may_wait)
    for standing, is_open in (("later", False), ("must", True)):
        standings = (*before.standings[:number], standing, *before.standings[number + 1 :])
        after, _ = edited(replace(before, standings=standings), scenario)
        room = after.brief.rooms[number]
        assert (room.may_wait, room.phase) == (is_open, 1 if is_open else 2)


def test_what_counts_is_said_as_the_form_says_it():
    """Every weight has words; an amount that lies between the steps of the form too."""
    before = wanted_of(sample_scenario().brief)
    assert [*WEIGHT_NAMES] == [name for name, _ in before.weights]
    _, what = edited(replace(before, weights=(("worth", 0.5), ("sight", 1.25))))
    assert what == "What you would miss: half; views: 1.25 times"


def test_no_limit_is_an_answer_too():
    after, what = edited(replace(wanted_of(sample_scenario().brief), ceiling=None))
    assert after.brief.budget.ceiling is None
    assert what == "No all-in limit"


def test_materials_are_read_back():
    """Levels taken away, added and chosen; what the file says of its own levels stays."""
    text = sample_scenario().text.replace(
        "[plain, good, fine]", "[plain, {name: brick, field: clay brick, worth_factor: 1.05}]"
    )
    scenario = read_scenario(text.replace("level: good", "level: brick"), "own")
    before = wanted_of(scenario.brief)
    assert (before.levels, before.level) == (("plain", "brick"), "brick")
    after, what = edited(replace(before, levels=("brick", "fine"), level="fine"), scenario)
    assert what == "Materials to compare: brick, fine; concepts in fine materials"
    assert after.brief.finish_levels[0] == scenario.brief.level("brick")
    assert after.brief.finish == after.brief.level("fine").finish
    none, what = edited(replace(before, levels=(), level=None), scenario)
    assert what == "Materials to compare: none; concepts in the usual materials"
    assert wanted_of(none.brief) == replace(before, levels=(), level=None)
    again, _ = edited(replace(before, levels=("plain", "good"), level="good"), none)
    assert (again.brief.finish_level, [level.name for level in again.brief.finish_levels]) == (
        "good",
        ["plain", "good"],
    )


@pytest.mark.parametrize("yard", ["fernhollow-court", "alder-nook", "wattle-rise"])
def test_every_yard_can_be_edited(project, yard):
    """Demonstration yards in feet and in metres, whatever style they are written in."""
    paths = [path for path in (project / "scenarios").glob("*.yaml") if path.stem == yard]
    for path in paths or sorted((project / "scenarios").glob("*.yaml"))[:1]:
        scenario = load_scenario(path)
        wanted = replace(
            wanted_of(scenario.brief),
            ceiling=Decimal(77_777),
            standings=("later",) * len(scenario.brief.rooms),
            levels=("plain", "fine"),
            level="fine",
        )
        assert wanted_of(edited(wanted, scenario)[0].brief) == wanted


def held(scenario, record):
    """Scenario with a further hold."""
    return read_scenario(with_hold(scenario, record)[0], "held")


def test_a_room_held_as_it_stands_is_read_back():
    scenario = sample_scenario()
    place = sample_option().layout.of("quiet nook")
    after = held(scenario, hold_as_it_stands(place, scenario, front=True, choice=True))
    (hold,) = after.brief.holds
    assert hold.room == "quiet nook"
    assert hold.at_ft == pytest.approx((place.x_ft, place.y_ft), abs=1e-6)
    assert (hold.front, hold.choice) == (place.front, place.choice)


def test_what_is_decided_anew_takes_the_place_of_what_was_held():
    """A place undoes areas and forbidden spots of the room; a spot that is forbidden undoes its place."""
    scenario = sample_scenario()
    place = sample_option().layout.of("quiet nook")
    area = of_area("quiet nook", (60, 60, 92, 100), scenario, inside=True)
    here = hold_as_it_stands(place, scenario, front=False, choice=False)
    after = held(held(scenario, area), keep_out(place, scenario))
    assert [bool(hold.within) for hold in after.brief.holds] == [True, False]
    (hold,) = held(after, here).brief.holds
    assert hold.at_ft is not None
    (hold,) = held(held(scenario, here), keep_out(place, scenario)).brief.holds
    assert (hold.at_ft, bool(hold.not_in)) == (None, True)
    (hold,) = held(held(scenario, here), area).brief.holds
    assert hold.within is not None


def test_a_hold_can_be_taken_away():
    scenario = sample_scenario()
    after = held(scenario, of_area("quiet nook", (60, 60, 92, 100), scenario, inside=True))
    assert hold_words(after) == ("quiet nook within 60 to 92 across, 60 to 100 up",)
    text, what = without_hold(after, 0)
    assert what == "No longer held: quiet nook within 60 to 92 across, 60 to 100 up"
    assert read_scenario(text, "freed").brief.holds == ()


def test_holds_of_a_metric_yard_are_in_metres(project):
    """A file in metres holds metres: the area comes back in feet as it was given."""
    metric = next(
        scenario
        for path in sorted((project / "scenarios").glob("*.yaml"))
        if (scenario := load_scenario(path)).units == "m"
    )
    room = metric.brief.rooms[0].name
    xs, ys = zip(*metric.site.boundary, strict=True)
    area = (min(xs), min(ys), max(xs), max(ys))
    (hold,) = held(metric, of_area(room, area, metric, inside=True)).brief.holds
    assert hold.within[0] == pytest.approx(area[:2], abs=1e-4)
    assert words_of(metric).units == "m"
