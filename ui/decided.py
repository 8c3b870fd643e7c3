"""Decisions on a yard as rows of a list: each with the number of the version that it was made at."""

from datetime import datetime

from optimizer.results.decisions import DecisionRow
from ui.shown import Shown
from ui.state import store


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
    """Decisions that were made after the version of one concept, up to that of the other one."""
    ids = sorted(shown.search.record.revision_id for shown in (first, second))
    later = store().revisions.get(ids[1])
    if later is None:
        return ()
    numbers = _numbers(later.yard_id)
    low, high = numbers.get(ids[0], 0), numbers[later.id]
    return tuple(row for row in decided_on(later.yard_id) if low < row.version <= high)


def _numbers(yard_id: int) -> dict[int, int]:
    """Number of each version of a yard by its id, the first is 1."""
    return {revision.id: number for number, revision in enumerate(store().revisions.of_yard(yard_id), start=1)}
