"""Decisions on a yard as rows of a list: each with the number of the version that it was made at."""

from collections.abc import Iterator
from datetime import datetime

from optimizer.results.decisions import DecisionRow
from ui.shown import Shown
from ui.state import store
from ui.store import Revision


def decided_on(yard_id: int) -> tuple[DecisionRow, ...]:
    """All decisions on a yard, oldest first, by the clock of this computer."""
    numbers = _numbers(yard_id)
    return tuple(
        DecisionRow(
            when=datetime.fromtimestamp(decision.made_at).strftime("%Y-%m-%d %H:%M"),  # noqa: DTZ006
            version=numbers[decision.revision_id],
            what=decision.what,
            reason=decision.reason,
        )
        for decision in store().decisions.of_yard(yard_id)
    )


def decided_between(first: Shown, second: Shown) -> tuple[DecisionRow, ...]:
    """Decisions on the way from the version of one concept, which is left out, to that of the other one."""
    early, late = sorted(shown.search.record.revision_id for shown in (first, second))
    revision = store().revisions.get(late)
    if revision is None:
        return ()
    versions = frozenset(_back_to(early, revision))
    return tuple(row for row in decided_on(revision.yard_id) if row.version in versions)


def _back_to(early: int, late: Revision) -> Iterator[int]:
    """Numbers of a version and of those that it comes from, after an earlier one: not of what stands beside them."""
    numbers = _numbers(late.yard_id)
    parents = {revision.id: revision.parent_id for revision in store().revisions.of_yard(late.yard_id)}
    at: int | None = late.id
    while at is not None and at > early:
        yield numbers[at]
        at = parents[at]


def _numbers(yard_id: int) -> dict[int, int]:
    """Number of each version of a yard by its id, the first is 1."""
    return {revision.id: number for number, revision in enumerate(store().revisions.of_yard(yard_id), start=1)}
