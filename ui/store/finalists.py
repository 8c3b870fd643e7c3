"""Finalists: concepts that somebody keeps, with a name and a note; each change is an entry of its own."""

import time
from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import Engine, RowMapping, select

from ui.store.tables import FINALISTS, added


@dataclass(frozen=True, slots=True)
class Finalist:
    """A kept concept of a search. `id` is that of the entry, None before it is saved; `parent_id` what it changes."""

    yard_id: int
    search_id: str
    concept: str
    name: str
    note: str = ""
    is_advised: bool = False
    """Whether it is the one that the designer would build."""
    is_kept: bool = True
    id: int | None = None
    parent_id: int | None = None
    made_at: float = 0.0


class Finalists:
    """Finalists in a database; entries are added, and those that were changed stay below."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine

    def save(self, finalist: Finalist) -> tuple[Finalist, bool]:
        """Save a new finalist, or a change of the one that it comes from; and whether somebody changed that one too.

        In that case both entries are there from now on, side by side.
        """
        values = {name: getattr(finalist, name) for name in finalist.__slots__ if name not in {"id", "parent_id"}}
        values |= {"parent_id": finalist.id, "made_at": time.time()}
        with self._engine.begin() as connection:
            entry_id = added(connection, FINALISTS, values)
            others = select(FINALISTS.c.id).where(FINALISTS.c.parent_id == finalist.id, FINALISTS.c.id < entry_id)
            is_beside = finalist.id is not None and connection.execute(others).first() is not None
        return replace(finalist, id=entry_id, parent_id=finalist.id, made_at=values["made_at"]), is_beside

    def of_yard(self, yard_id: int) -> tuple[Finalist, ...]:
        """What is kept now, in the order in which it was first kept."""
        with self._engine.connect() as connection:
            rows = connection.execute(select(FINALISTS).where(FINALISTS.c.yard_id == yard_id)).mappings().all()
        entries = {row["id"]: _finalist(row) for row in rows}
        changed = {entry.parent_id for entry in entries.values()}
        now = [entry for entry in entries.values() if entry.id not in changed and entry.is_kept]
        return tuple(sorted(now, key=lambda entry: (_first(entry, entries), entry.id)))


def _first(entry: Finalist, entries: dict[int, Finalist]) -> int:
    """Id of the first entry that an entry goes back to."""
    while entry.parent_id is not None:
        entry = entries[entry.parent_id]
    return entry.id or 0


def _finalist(row: RowMapping) -> Finalist:
    values: dict[str, Any] = {str(key): value for key, value in row.items()}
    return Finalist(**{**values, "is_advised": bool(values["is_advised"]), "is_kept": bool(values["is_kept"])})
