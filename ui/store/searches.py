"""Searches and the files that they wrote: kept, so that they are there after a restart and on another computer."""

import json
import time
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Engine, RowMapping, select

from ui.search_kind import SearchKind
from ui.store.tables import FILES, SEARCHES


@dataclass(frozen=True, slots=True)
class SearchRecord:
    """One search: of which version, for how long, and how it ended.

    `start_from` is the search that it went on from. `process` and `folder` say where it runs, for who finds it running
    after a restart. `was_cut_off`: it was ended from outside, and the best so far is what is kept of it.
    """

    id: str
    revision_id: int
    kind: SearchKind
    seconds: float
    start_from: str | None
    process: int | None
    folder: str | None
    said: tuple[str, ...]
    was_cut_off: bool
    began_at: float
    ended_at: float | None


class Searches:
    """Searches in a database."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine

    def begin(self, record: SearchRecord) -> None:
        """Note that a search has begun."""
        values = {**{name: getattr(record, name) for name in record.__slots__}, "said": json.dumps(record.said)}
        with self._engine.begin() as connection:
            connection.execute(SEARCHES.insert().values(values))

    def keep(self, search_id: str, files: Mapping[str, bytes]) -> None:
        """Keep files of a search; one of the same name is replaced."""
        with self._engine.begin() as connection:
            for name, content in files.items():
                same = (FILES.c.search_id == search_id) & (FILES.c.name == name)
                connection.execute(FILES.delete().where(same))
                packed = zlib.compress(content)
                connection.execute(FILES.insert().values(search_id=search_id, name=name, content=packed))

    def end(self, search_id: str, *, said: tuple[str, ...], was_cut_off: bool) -> None:
        """Note that a search has ended; one that was noted before stays as it was."""
        values = {"said": json.dumps(said), "was_cut_off": was_cut_off, "ended_at": time.time()}
        still = (SEARCHES.c.id == search_id) & SEARCHES.c.ended_at.is_(None)
        with self._engine.begin() as connection:
            connection.execute(SEARCHES.update().where(still).values(values))

    def get(self, search_id: str) -> SearchRecord | None:
        """Return the search of that id, or None."""
        with self._engine.connect() as connection:
            row = connection.execute(select(SEARCHES).where(SEARCHES.c.id == search_id)).mappings().first()
        return None if row is None else _record(row)

    def of_revision(self, revision_id: int, kind: SearchKind) -> tuple[SearchRecord, ...]:
        """All searches of a version, oldest first."""
        asked = select(SEARCHES).where(SEARCHES.c.revision_id == revision_id, SEARCHES.c.kind == kind)
        with self._engine.connect() as connection:
            rows = connection.execute(asked.order_by(SEARCHES.c.began_at)).mappings().all()
        return tuple(_record(row) for row in rows)

    def file(self, search_id: str, name: str) -> bytes | None:
        """Return a file of a search, or None."""
        asked = select(FILES.c.content).where(FILES.c.search_id == search_id, FILES.c.name == name)
        with self._engine.connect() as connection:
            packed = connection.execute(asked).scalar()
        return None if packed is None else zlib.decompress(packed)

    def file_names(self, search_id: str) -> tuple[str, ...]:
        """Names of all files of a search."""
        asked = select(FILES.c.name).where(FILES.c.search_id == search_id).order_by(FILES.c.name)
        with self._engine.connect() as connection:
            return tuple(connection.execute(asked).scalars())


def _record(row: RowMapping) -> SearchRecord:
    values: dict[str, Any] = {str(key): value for key, value in row.items()}
    values["said"] = tuple(json.loads(values["said"] or "[]"))
    return SearchRecord(**{**values, "was_cut_off": bool(values["was_cut_off"])})
