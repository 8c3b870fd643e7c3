"""Who a plan is for: an owner sees what will be there, a designer also how it is measured and what to look at again."""

from collections.abc import Iterable, Iterator
from typing import Final, Literal, get_args

from optimizer.drawing.marks import Mark
from optimizer.drawing.notable_marks import FOCAL_ROLE, PINCH_ROLE

Audience = Literal["owner", "designer"]
AUDIENCES: Final[tuple[Audience, ...]] = get_args(Audience)
DESIGNERS_MARKS: Final = frozenset({"setback", "root_zone", "utility", "level_mark", FOCAL_ROLE, PINCH_ROLE})
"""Marks that mean something to a designer alone; dimension lines with their ticks are left off with them."""


def shown_to(audience: Audience, marks: Iterable[Mark]) -> Iterator[Mark]:
    """The marks that a plan for this reader has."""
    return (mark for mark in marks if audience == "designer" or mark.role not in DESIGNERS_MARKS)
