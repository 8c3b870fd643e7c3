"""What cannot be kept together: money is named where money binds, and rooms that nothing keeps apart fit."""

import threading
import time

from optimizer.concepts.whys.bindings import bindings_of
from optimizer.concepts.whys.cores import Cores
from tests.optimizer.concepts.whys.tiny_yard import TEXT, tiny
from tests.small_yard import changed

BOTH = changed("kind: nook\n", "kind: nook\n      required: true\n", TEXT)


def cores(case):
    """Asks of a case for ten seconds at most."""
    return Cores(case, until=time.monotonic() + 10, stop=threading.Event())


def test_rooms_alone_always_fit():
    """Two rooms that must be there, with every rule let go, may lie on each other: that they cannot be is not claimed."""
    case = tiny(BOTH)
    required = [one for one in bindings_of(case) if one.required]
    assert len(required) == 2
    assert not cores(case).fits_nothing(required)


def test_too_little_money_is_named():
    """Under a ceiling for one of two rooms the core has the ceiling and both rooms, not the rooms alone."""
    core = cores(tiny(changed("ceiling: 90000", "ceiling: 20000", BOTH))).core()
    assert core is not None
    assert core.is_least
    assert {one.rule for one in core.bindings} >= {"budget"}
