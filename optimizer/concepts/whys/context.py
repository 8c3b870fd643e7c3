"""The concepts of a result that a question is asked in and answered with, measured anew in the scenario of now."""

from collections.abc import Sequence
from dataclasses import replace

from optimizer.concepts.case import Case
from optimizer.concepts.option import Option
from optimizer.errors import InputError, Problem


def concepts_of(case: Case, options: Sequence[Option], wanted: str | None) -> tuple[Option | None, tuple[Option, ...]]:
    """The concept of that id, and all of the result whose rooms and sizes the scenario has.

    Raises InputError where there is no such concept, or it has a room or a size that the scenario has not.
    """
    if wanted is None:
        return None, tuple(option for option in options if not case.unknown(option.layout))
    option = next((option for option in options if option.id == wanted), None)
    if option is None:
        known = ", ".join(option.id for option in options) or "none; name a result with --from"
        raise InputError((Problem("a concept of the result", repr(wanted), f"it has {known}", "--option"),))
    if unknown := case.unknown(option.layout):
        first, advice = unknown[0], "ask with the scenario that the result was made from"
        found = f"{first.room} as {first.choice}"
        raise InputError((Problem("a concept of this scenario", found, advice, "--from"),))
    fresh = case.fresh(option)
    fresh = replace(fresh, left_out=case.left_out(fresh.layout))
    return fresh, tuple(other for other in options if other is not option and not case.unknown(other.layout))
