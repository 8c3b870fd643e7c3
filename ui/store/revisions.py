"""Yards and their versions: each version is a scenario's text with the version that it was made from."""

import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, Engine, RowMapping, func, select

from ui.store.tables import LONGEST_WHAT, REVISIONS, YARDS, added, shortened


@dataclass(frozen=True, slots=True)
class Revision:
    """One version of a yard: its text, what was changed in it, and the version that it was made from.

    `prices` is the price book that it is priced by, None for the demonstration prices.
    """

    id: int
    yard_id: int
    parent_id: int | None
    what: str
    text: str
    made_at: float
    prices: str | None = None


@dataclass(frozen=True, slots=True)
class Yard:
    """A yard as a list shows it: its newest version, and how many there are."""

    name: str
    newest_id: int
    versions: int
    changed_at: float


@dataclass(frozen=True, slots=True)
class Saved:
    """A version that was saved; `beside` are others made from the same one before: it stands beside them."""

    revision: Revision
    beside: tuple[Revision, ...]


class Revisions:
    """Yards and versions in a database; nothing is ever changed or removed."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine

    def open(self, name: str, text: str, prices: str | None = None) -> Revision:
        """First version of a yard; a text that was opened before with these prices is taken up again where it was."""
        with self._engine.begin() as connection:
            same = (REVISIONS.c.text == text) & REVISIONS.c.prices.is_not_distinct_from(prices)
            known = select(REVISIONS).where(REVISIONS.c.parent_id.is_(None), same)
            row = connection.execute(known.order_by(REVISIONS.c.id)).mappings().first()
            if row is not None:
                return _revision(row)
            return _added(connection, added(connection, YARDS, {"name": name}), None, "Opened", text, prices)

    def save(self, parent: Revision, text: str, what: str) -> Saved:
        """Save a new version made from `parent`, with its prices, and say which others were made from it before.

        Written first and asked afterwards: of two that save at the same moment the later one sees the other.
        """
        with self._engine.begin() as connection:
            saved = _added(connection, parent.yard_id, parent.id, what, text, parent.prices)
            before = select(REVISIONS).where(REVISIONS.c.parent_id == parent.id, REVISIONS.c.id < saved.id)
            rows = connection.execute(before.order_by(REVISIONS.c.id)).mappings()
            return Saved(saved, tuple(_revision(row) for row in rows))

    def get(self, revision_id: int) -> Revision | None:
        """Return the version of that id, or None."""
        with self._engine.connect() as connection:
            row = connection.execute(select(REVISIONS).where(REVISIONS.c.id == revision_id)).mappings().first()
        return None if row is None else _revision(row)

    def of_yard(self, yard_id: int) -> tuple[Revision, ...]:
        """All versions of a yard, oldest first."""
        with self._engine.connect() as connection:
            asked = select(REVISIONS).where(REVISIONS.c.yard_id == yard_id).order_by(REVISIONS.c.id)
            rows = connection.execute(asked).mappings().all()
        return tuple(_revision(row) for row in rows)

    def yards(self) -> tuple[Yard, ...]:
        """All yards, the one that was changed last first."""
        with self._engine.connect() as connection:
            newest = (
                select(
                    REVISIONS.c.yard_id,
                    func.max(REVISIONS.c.id).label("newest_id"),
                    func.count().label("versions"),
                    func.max(REVISIONS.c.made_at).label("changed_at"),
                )
                .group_by(REVISIONS.c.yard_id)
                .subquery()
            )
            rows = connection.execute(
                select(YARDS.c.name, newest.c.newest_id, newest.c.versions, newest.c.changed_at)
                .join(newest, newest.c.yard_id == YARDS.c.id)
                .order_by(newest.c.changed_at.desc())
            ).all()
        return tuple(Yard(*row) for row in rows)


def ends(revisions: tuple[Revision, ...]) -> tuple[Revision, ...]:
    """Versions that nothing was made from yet: more than one where work went on in two ways."""
    parents = {revision.parent_id for revision in revisions}
    return tuple(revision for revision in revisions if revision.id not in parents)


def line(revision_id: int, parents: Mapping[int, int | None]) -> Iterator[int]:
    """Ids of a version and of all that it comes from, back to the first; `parents` are those of its yard by id."""
    at: int | None = revision_id
    while at is not None:
        yield at
        at = parents.get(at)


def _added(
    connection: Connection, yard_id: int, parent_id: int | None, what: str, text: str, prices: str | None
) -> Revision:
    values: dict[str, Any] = {
        "yard_id": yard_id,
        "parent_id": parent_id,
        "what": shortened(what, LONGEST_WHAT),
        "text": text,
        "made_at": time.time(),
        "prices": prices,
    }
    return Revision(id=added(connection, REVISIONS, values), **values)


def _revision(row: RowMapping) -> Revision:
    return Revision(**{str(key): value for key, value in row.items()})
