"""Decisions on a yard as rows of a list: each with the number of the version that it was made at."""

from datetime import datetime

from optimizer.results.decisions import DecisionRow
from ui.shown import Shown
from ui.state import store


def decided_on(yard_id: int) -> tuple[DecisionRow, ...]:
    """All decisions on a yard, oldest first, by the clock of this computer."""
    numbers = {revision.id: number for number, revision in enumerate(store().revisions.of_yard(yard_id), start=1)}
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
    revisions = store().revisions
    found = [revisions.get(shown.search.record.revision_id) for shown in (first, second)]
    if found[0] is None or found[1] is None:
        return ()
    ids = sorted(revision.id for revision in found if revision is not None)
    numbers = {each.id: number for number, each in enumerate(revisions.of_yard(found[0].yard_id), start=1)}
    low, high = (numbers.get(each, 0) for each in ids)
    return tuple(row for row in decided_on(found[0].yard_id) if low < row.version <= high)
