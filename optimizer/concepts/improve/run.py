"""One sketch of a scenario improved, with both measured."""

import threading

from optimizer.concepts.case import Case
from optimizer.concepts.improve.answer import Improvement, known_words, sketch_added, sketch_named
from optimizer.concepts.improve.improved import improved
from optimizer.concepts.option import Option
from optimizer.concepts.sketched import sketched_layout, sketched_options
from optimizer.errors import InputError, Problem
from optimizer.events import Emit
from optimizer.scenario.patch import patched


def improve_sketch(case: Case, name: str, *, seconds: float, stop: threading.Event, emit: Emit) -> Improvement:
    """Find the nearest layout to a sketch that keeps the rules. Raises InputError where there is no such sketch."""
    sketch = sketch_named(case.scenario, name)
    if sketch is None:
        found = f"there is {known_words(case.scenario)}"
        raise InputError((Problem("the name of a sketch", repr(name), found, "--sketch"),))
    found_one = improved(case, sketched_layout(case, sketch), seconds=seconds, stop=stop, emit=emit)
    if found_one.layout is None or found_one.status == "kept":
        options = sketched_options(case)
        return Improvement(case.scenario, options, found_one, _named(options, name), None, None)
    change = sketch_added(case, name, found_one.layout)
    after = Case.of(patched(case.scenario, change.patch))
    options = sketched_options(after)
    return Improvement(after.scenario, options, found_one, _named(options, name), options[-1], change)


def _named(options: tuple[Option, ...], name: str) -> Option:
    return next(option for option in options if option.sketch == name)
