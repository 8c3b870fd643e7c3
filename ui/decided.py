"""Decisions on a yard as rows of a list: each with the number of the version that it was made at."""

from collections.abc import Sequence
from datetime import datetime

from optimizer.results.decisions import DecisionRow
from ui.shown import Shown
from ui.state import store
from ui.store import Decision, Revision, line


def decided_on(yard_id: int) -> tuple[DecisionRow, ...]:
    """All decisions on a yard, oldest first, by the clock of this computer."""
    return _rows(store().decisions.of_yard(yard_id), store().revisions.of_yard(yard_id))


def decided_between(first: Shown, second: Shown) -> tuple[DecisionRow, ...]:
    """Decisions on the way from the version of one concept, which is left out, to that of the other one.

    What was decided on versions that stand beside this way is none of it.
    """
    early, late = sorted(shown.search.record.revision_id for shown in (first, second))
    revision = store().revisions.get(late)
    if revision is None:
        return ()
    revisions = store().revisions.of_yard(revision.yard_id)
    parents = {each.id: each.parent_id for each in revisions}
    way = frozenset(each for each in line(late, parents) if each > early)
    decisions = store().decisions.of_yard(revision.yard_id)
    return _rows([decision for decision in decisions if decision.revision_id in way], revisions)


def _rows(decisions: Sequence[Decision], revisions: Sequence[Revision]) -> tuple[DecisionRow, ...]:
    """Decisions as rows; the first version of the yard has the number 1."""
    numbers = {revision.id: number for number, revision in enumerate(revisions, start=1)}
    return tuple(
        DecisionRow(
            when=datetime.fromtimestamp(decision.made_at).strftime("%Y-%m-%d %H:%M"),  # noqa: DTZ006
            version=numbers[decision.revision_id],
            what=decision.what,
            reason=decision.reason,
        )
        for decision in decisions
    )
