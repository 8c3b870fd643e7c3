"""Answers of `why` against every placement on tiny yards, each put to the check in real geometry."""

import threading
import time

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.whys.ask import Asking, answer
from optimizer.concepts.whys.bindings import Asked, bindings_of
from optimizer.concepts.whys.cores import Cores
from optimizer.concepts.whys.here import ALONE
from optimizer.concepts.whys.question import Question
from optimizer.concepts.whys.stands import in_the_way, stands_at
from optimizer.layout import Layout
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario.patch import patched
from tests.optimizer.concepts.whys.tiny_yard import TEXT, broken, corners, layouts, tiny
from tests.small_yard import changed

NEVER = threading.Event()
FIRE = changed(
    """kind: nook
      choices:
        - {label: small, width: 8, depth: 8, seats: 2, worth: 3}
        - {label: large, width: 12, depth: 12, seats: 2, worth: 4}""",
    "kind: fire\n      fuel: gas\n      choices: [{label: one, width: 8, depth: 8, seats: 2, worth: 3}]",
    changed("apart, at_least: 12", "near, within: 4, by: straight", TEXT),
)
NARROW = changed("[36, 28], [0, 28]", "[36, 24], [0, 24]", changed("at_least: 12", "at_least: 8", TEXT))


def held_at(case, corner):
    """The case with the nook held at a corner."""
    return Case.of(patched(case.scenario, Question("here", "nook", at_ft=corner).asked(case).patch))


def core_of(case):
    """What cannot be kept, with what was asked for, and all that binds."""
    asked = Asked(case.scenario.brief.holds, ("nook",))
    cores = Cores(case, until=time.monotonic() + 60, stop=NEVER)
    return cores.core(asked), bindings_of(case, asked=asked)


@pytest.mark.parametrize(
    ("text", "offset", "most"), [(TEXT, 0, 2), (FIRE, 1, 1), (NARROW, 2, 3)], ids=["nook", "fire", "narrow"]
)
def test_what_is_in_the_way(text, offset, most):
    """Of what is named every placement breaks something, and without any one of it some placement breaks nothing of the
    rest. Where nothing is named some placement breaks nothing at all of what the solver knows.
    """
    case, seen = tiny(text), set()
    for corner in list(corners())[offset::5]:
        held = held_at(case, corner)
        core, bindings = core_of(held)
        named = bindings if core is None else core.bindings
        every = {broken(held, layout, named) for layout in layouts(held)}
        if core is None:
            assert frozenset() in every, corner
            continue
        assert core.is_least
        assert frozenset() not in every, corner
        if not every:
            assert [one.rule for one in named] == ["inside_setbacks"]
            continue
        assert {frozenset({one}) for one in named} <= every, corner
        seen.add(len(named))
    assert max(seen) >= most


def test_the_room_alone():
    """At a place where a room breaks something by itself, whatever it is: none of the rules named can be dropped."""
    case, counts = tiny(FIRE), set()
    for corner in list(corners())[::4]:
        stands = stands_at(case, Layout(()), "nook", corner, rules=ALONE)
        every = [{(f.rule, f.rooms) for f in stand.findings} for stand in stands]
        named = set(in_the_way(stands))
        assert bool(named) == all(every)
        if named:
            assert all(named & one for one in every)
            assert all(any(named & one == {name} for one in every) for name in named)
            counts.add(len(named))
    assert counts


@pytest.mark.parametrize("corner", [(16.0, 12.0), (0.0, 12.0)])
def test_ways_out_work(corner):
    """Each is applied to the text and solved anew, and the nook is there; of those that move it nearest, not far off."""
    case = tiny()
    said = answer(Asking(case, Question("here", "nook", at_ft=corner), 3.0), stop=NEVER)
    assert said.is_answered
    assert said.ways_out or corner == (0.0, 12.0)
    for way in said.ways_out:
        found = make_options(patched(case.scenario, way.patch), RunSettings(seconds=1, repeatable=True, processes=0))
        assert found.options, way
        assert all(option.layout.of("nook") is not None for option in found.options)


def test_that_it_fits_is_so():
    """A plan that is said to be found is there: the way out alone gives it."""
    case = tiny()
    said = answer(Asking(case, Question("larger", "nook", choice="large"), 3.0), stop=NEVER)
    assert said.answer.startswith("It fits: a plan with it was found and checked, for ")
    (way,) = said.ways_out
    found = make_options(patched(case.scenario, way.patch), RunSettings(seconds=1, repeatable=True, processes=0))
    assert {option.layout.of("nook").choice for option in found.options} == {"large"}
