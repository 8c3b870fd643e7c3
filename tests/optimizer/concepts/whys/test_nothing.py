"""When nothing fits: the reason, and ways out that were really tried."""

import threading
from dataclasses import replace

from optimizer.concepts.case import Case
from optimizer.concepts.run import ConceptRun
from optimizer.concepts.whys.bindings import bindings_of
from optimizer.concepts.whys.nothing import conflict_again, told, why_nothing
from optimizer.engine.problem import build_problem
from optimizer.events import to_nobody
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import load_scenario
from optimizer.scenario.patch import patched

FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")
THIMBLE = load_scenario("scenarios/thimble-yard.yaml")
SMALL_SITE = ("add", "/site/limits", {"paved_share": 0.001})


def answer(*patch, yard=FERNHOLLOW):
    """A changed yard, and why nothing fits in it: so much time is needed by a slow machine only."""
    case = Case.of(patched(yard, patch))
    problem = build_problem(case.scenario, case.rooms, case.book, rules_only=True)  # all that is asked of it
    return case.scenario, why_nothing(case, problem, seconds=60, stop=threading.Event())


def works(scenario, way_out):
    """Whether a way out gives concepts when it is applied to the text and solved anew."""
    changed = patched(scenario, way_out.patch)
    return bool(make_options(changed, RunSettings(count=1, seconds=2, repeatable=True, processes=0)).options)


def test_a_room_that_fits_nowhere():
    """A required terrace larger than the yard: named, with the way out of leaving it to choice.

    The other rooms have 16 seats, 70 % of 22 people.
    """
    _, found = answer(
        ("replace", "/brief/rooms/0/choices", [{"label": "huge", "width": 90, "depth": 70, "seats": 6, "worth": 6}]),
        ("remove", "/budget/ceiling", None),
    )
    assert "gathering area fits nowhere" in found.words
    (way,) = found.ways_out
    assert way.text.startswith("leave the gathering area to choice, and plan for a party of 22; a plan found with it")
    assert way.patch == (("add", "/brief/rooms/0/required", False), ("replace", "/brief/guests/party", 22))


def test_a_ceiling_below_the_floor():
    """The floor and the ceiling are named, and the raised ceiling of the way out gives concepts when it is applied."""
    scenario, found = answer(("replace", "/budget/ceiling", 9000), yard=THIMBLE)
    assert "9,000" in found.words
    assert "budget" in [rule for rule, _, _ in found.rules]
    ceiling = next(way for way in found.ways_out if "ceiling" in way.text)
    ((operation, path, value),) = ceiling.patch
    assert (operation, path) == ("replace", "/budget/ceiling")
    assert value > 9000
    assert works(scenario, ceiling)


def test_relations_that_clash_on_the_ground():
    """A shed within 10 ft of the alley gate cannot be 4 ft from the house: both are named, and either may be loosened."""
    house, gate = (
        {"between": ["bicycle shed", name], "kind": "near", "within": within, "by": "straight"}
        for name, within in (("house", 4), ("alley gate", 10))
    )
    required = ("add", "/brief/rooms/4/required", True)
    _, found = answer(("add", "/brief/relations/-", house), ("add", "/brief/relations/-", gate), required, yard=THIMBLE)
    assert [(rule, sentence) for rule, sentence, _ in found.rules] == [
        ("required_rooms", "The bicycle shed must be there."),
        ("near", "Bicycle shed within 4 ft of house."),
        ("near", "Bicycle shed within 10 ft of alley gate."),
    ]
    assert [way.text.split(";")[0] for way in found.ways_out if "bicycle shed within" in way.text]


def test_stopped_at_once():
    """Stopped before it began, a run says so and claims no proof."""
    stop = threading.Event()
    stop.set()
    run = ConceptRun(Case.of(FERNHOLLOW), count=3, seconds=20, seed=1, repeatable=False, processes=0)
    found = run.run(emit=to_nobody, stop=stop)
    assert found.search.stopped
    assert found.search.status == ("bounded" if found.options else "undecided")
    assert found.search.bound is None


def test_a_paved_share_below_what_is_required():
    """Where the required rooms alone pave more than the site allows, the main job says that this rule is in the way."""
    result = make_options(patched(FERNHOLLOW, [SMALL_SITE]), RunSettings(seconds=40, processes=0))
    assert result.search.status == "nothing_fits"
    found = result.conflict
    assert [rule for rule, _, _ in found.rules] == ["required_rooms", "paved_share"]


def test_a_room_held_where_it_cannot_stand():
    """A fire held 4 ft from the rear: the rule and the amount are said, and the way out of letting go was tried."""
    _, found = answer(("add", "/brief/holds", [{"room": "fire feature", "at": [48, 100]}]))
    assert "fire feature cannot stand where it is held: fire feature is 4.00 ft from rear" in found.words
    assert "the setback is 10.00 ft" in found.words
    (way,) = [way for way in found.ways_out if "hold" in way.text]
    assert way.text.startswith("let go of the hold: fire feature at 48, 100 ft")
    assert way.patch == (("remove", "/brief/holds/0", None),)


def test_an_area_that_is_too_small_for_what_is_held_in_it():
    """A terrace that must be there, held in 6 x 6 ft."""
    area = [[10, 40], [16, 40], [16, 46], [10, 46]]
    _, found = answer(("add", "/brief/holds", [{"room": "dining terrace", "within": area}]), yard=THIMBLE)
    assert "The dining terrace fits nowhere as it is held, whatever the other rooms do." in found.words


def test_what_is_said_is_counted_again():
    """Words and rules as they are told; others are named. Nothing is solved for it."""
    case = Case.of(patched(THIMBLE, (("replace", "/budget/ceiling", 20_000),)))
    problem = build_problem(case.scenario, case.rooms, case.book)
    conflict = why_nothing(case, problem, seconds=0.0, stop=threading.Event())
    conflict = replace(conflict, rules=told(bindings_of(case)[:3]))
    assert "the ceiling is 20,000" in conflict.words
    assert list(conflict_again(case, problem, conflict)) == []
    (words,) = conflict_again(case, problem, replace(conflict, words=conflict.words.replace("20,000", "30,000")))
    assert words.startswith("why nothing fits is not so: ")
    for rule in (
        ("near", *conflict.rules[0][1:]),
        (conflict.rules[0][0], "It rains.", ()),
        (*conflict.rules[0][:2], ("x",)),
    ):
        (words,) = conflict_again(case, problem, replace(conflict, rules=(rule,)))
        assert words == f"{rule[1]!r} is not what binds in this yard"
