"""The database that work is kept in: a file of SQLite in a folder, or another one by its URL."""

import os
import sys
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Engine, create_engine, event, inspect, text
from sqlalchemy.exc import SQLAlchemyError

from ui.store.tables import METADATA

FILE_NAME: Final = "work.db"
_BUSY_MS: Final = 10_000
_PRAGMAS: Final = (
    "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=NORMAL",
    f"PRAGMA busy_timeout={_BUSY_MS}",
    "PRAGMA foreign_keys=ON",
)


class StoreError(Exception):
    """The database cannot be opened; the message says why, and what to do."""


def data_folder() -> Path:
    """Where this user's programs keep their data: by the XDG base directories, or what Windows and macOS name."""
    if sys.platform == "win32":
        usual = os.environ.get("LOCALAPPDATA", str(Path.home() / "AppData" / "Local"))
    elif sys.platform == "darwin":
        usual = str(Path.home() / "Library" / "Application Support")
    else:
        usual = os.environ.get("XDG_DATA_HOME") or str(Path.home() / ".local" / "share")
    return Path(usual) / "outdoor-rooms"


def database_url(work: str | None) -> str:
    """URL of the database: `work` is one already, or the folder that its file lies in; None is the user's own."""
    if work and "://" in work:
        return work
    folder = Path(work).expanduser() if work else data_folder()
    return f"sqlite:///{folder / FILE_NAME}"


def open_engine(url: str) -> Engine:
    """Open a database and make what it lacks of tables.

    Raises
    ------
    StoreError
        If it cannot be opened.
    """
    try:
        if url.startswith("sqlite:///"):
            Path(url.removeprefix("sqlite:///")).parent.mkdir(parents=True, exist_ok=True)
        engine = create_engine(url)
        if engine.dialect.name == "sqlite":
            event.listen(engine, "connect", _set_up)
        METADATA.create_all(engine)
        _add_what_is_new(engine)
    except (OSError, SQLAlchemyError, ImportError) as error:
        found = f"one that cannot be opened ({str(error).splitlines()[0]})"
        advice = "name a folder that you may write to, or the URL of a database, with --work"
        raise StoreError(f"Expected a database to keep work in, found {found}; {advice}.") from error
    return engine


def _add_what_is_new(engine: Engine) -> None:
    """Add to the tables of an older program the columns that have come since; each may be empty."""
    known = inspect(engine)
    with engine.begin() as connection:
        for table in METADATA.sorted_tables:
            there = {column["name"] for column in known.get_columns(table.name)}
            for column in table.columns:
                if column.name not in there:
                    kind = column.type.compile(engine.dialect)
                    connection.execute(text(f"ALTER TABLE {table.name} ADD COLUMN {column.name} {kind}"))


def _set_up(connection: Any, _: Any) -> None:
    cursor = connection.cursor()
    for pragma in _PRAGMAS:
        cursor.execute(pragma)
    cursor.close()
