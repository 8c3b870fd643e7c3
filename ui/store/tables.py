"""The tables of the database; times are seconds since 1970, contents are compressed."""

from collections.abc import Mapping
from typing import Any, Final

from sqlalchemy import Column, Connection, Float, ForeignKey, Integer, LargeBinary, MetaData, String, Table, Text

METADATA = MetaData()
LONGEST_WHAT: Final = 200
"""Characters of what is said of a version, or was decided."""

YARDS = Table(
    "yards",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("name", String(200), nullable=False),
)

REVISIONS = Table(
    "revisions",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("yard_id", ForeignKey("yards.id"), nullable=False, index=True),
    Column("parent_id", ForeignKey("revisions.id"), nullable=True, index=True),
    Column("what", String(LONGEST_WHAT), nullable=False),
    Column("text", Text, nullable=False),
    Column("made_at", Float, nullable=False),
    Column("prices", Text, nullable=True),
)

SEARCHES = Table(
    "searches",
    METADATA,
    Column("id", String(24), primary_key=True),
    Column("revision_id", ForeignKey("revisions.id"), nullable=False, index=True),
    Column("kind", String(12), nullable=False),
    Column("seconds", Float, nullable=False),
    Column("start_from", String(24), nullable=True),
    Column("process", Integer, nullable=True),
    Column("folder", Text, nullable=True),
    Column("said", Text, nullable=False, default=""),
    Column("was_cut_off", Integer, nullable=False, default=0),
    Column("began_at", Float, nullable=False),
    Column("ended_at", Float, nullable=True),
)

FILES = Table(
    "files",
    METADATA,
    Column("search_id", ForeignKey("searches.id"), primary_key=True),
    Column("name", String(120), primary_key=True),
    Column("content", LargeBinary, nullable=False),
)

FINALISTS = Table(
    "finalists",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("yard_id", ForeignKey("yards.id"), nullable=False, index=True),
    Column("parent_id", ForeignKey("finalists.id"), nullable=True, index=True),
    Column("search_id", ForeignKey("searches.id"), nullable=False),
    Column("concept", String(60), nullable=False),
    Column("name", String(200), nullable=False),
    Column("note", Text, nullable=False),
    Column("is_advised", Integer, nullable=False, default=0),
    Column("is_kept", Integer, nullable=False, default=1),
    Column("made_at", Float, nullable=False),
)

DECISIONS = Table(
    "decisions",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("yard_id", ForeignKey("yards.id"), nullable=False, index=True),
    Column("revision_id", ForeignKey("revisions.id"), nullable=False),
    Column("what", String(LONGEST_WHAT), nullable=False),
    Column("reason", Text, nullable=False),
    Column("made_at", Float, nullable=False),
)

ANSWERS = Table(
    "answers",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("revision_id", ForeignKey("revisions.id"), nullable=False, index=True),
    Column("one", Text, nullable=False),
    Column("other", Text, nullable=False),
    Column("how", String(12), nullable=True),
    Column("made_at", Float, nullable=False),
)


def shortened(text: str, longest: int) -> str:
    """Text of so many characters at the most, cut between two words, with a mark where it was cut."""
    if len(text) <= longest:
        return text
    kept, _, _ = text[: longest - 1].rpartition(" ")
    return f"{kept or text[: longest - 2]} \N{HORIZONTAL ELLIPSIS}"


def added(connection: Connection, table: Table, values: Mapping[str, Any]) -> int:
    """Add a row to a table that numbers its rows, and return its number."""
    key = connection.execute(table.insert().values(values)).inserted_primary_key
    assert key is not None
    return int(key[0])
