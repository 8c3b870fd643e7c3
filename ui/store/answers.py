"""Answers about pairs of rooms: each answer, and each that is taken back, is an entry of its own."""

import time

from sqlalchemy import Engine, select

from optimizer.worths import Answer
from ui.store.revisions import Revision, line
from ui.store.tables import ANSWERS, REVISIONS, added


class Answers:
    """Answers in a database. A version has those that were given of it and of the versions that it comes from."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine

    def give(self, revision: Revision, answer: Answer) -> None:
        """Answer about a pair; what was said of it before no longer counts."""
        self._add(revision, answer, answer.how)

    def take_back(self, revision: Revision, answer: Answer) -> None:
        """Leave a pair unanswered."""
        self._add(revision, answer, None)

    def of_revision(self, revision: Revision) -> tuple[Answer, ...]:
        """What counts for a version: the last word on each pair, in the order in which it was said."""
        with self._engine.connect() as connection:
            asked = select(REVISIONS.c.id, REVISIONS.c.parent_id).where(REVISIONS.c.yard_id == revision.yard_id)
            parents: dict[int, int | None] = {row.id: row.parent_id for row in connection.execute(asked)}
            known = ANSWERS.c.revision_id.in_([*line(revision.id, parents)])
            entries = select(ANSWERS).where(known).order_by(ANSWERS.c.id)
            rows = connection.execute(entries).all()
        last: dict[frozenset[str], Answer | None] = {}
        for row in rows:
            pair = frozenset((row.one, row.other))
            last.pop(pair, None)
            last[pair] = Answer(row.one, row.other, row.how) if row.how else None
        return tuple(answer for answer in last.values() if answer is not None)

    def _add(self, revision: Revision, answer: Answer, how: str | None) -> None:
        values = {"revision_id": revision.id, "one": answer.one, "other": answer.other, "how": how}
        with self._engine.begin() as connection:
            added(connection, ANSWERS, {**values, "made_at": time.time()})
