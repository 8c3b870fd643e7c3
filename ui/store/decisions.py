"""Decisions on a yard with the reason that a person gave: what was decided, at which version, and when."""

import time
from dataclasses import dataclass, replace
from typing import Any, Final

from sqlalchemy import Engine, select

from ui.store.tables import DECISIONS, LONGEST_WHAT, added, shortened

LONGEST_REASON: Final = 500
"""Characters of a reason."""


@dataclass(frozen=True, slots=True)
class Decision:
    """One decision at a version of a yard; its reason may be empty. `id` is None before it is kept."""

    yard_id: int
    revision_id: int
    what: str
    reason: str = ""
    id: int | None = None
    made_at: float = 0.0


class Decisions:
    """Decisions in a database; they are added, and never changed or removed."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine

    def add(self, decision: Decision) -> Decision:
        """Keep a decision."""
        values: dict[str, Any] = {
            "yard_id": decision.yard_id,
            "revision_id": decision.revision_id,
            "what": shortened(decision.what, LONGEST_WHAT),
            "reason": decision.reason.strip()[:LONGEST_REASON],
            "made_at": time.time(),
        }
        with self._engine.begin() as connection:
            entry_id = added(connection, DECISIONS, values)
        return replace(decision, **values, id=entry_id)

    def of_yard(self, yard_id: int) -> tuple[Decision, ...]:
        """All decisions on a yard, oldest first."""
        with self._engine.connect() as connection:
            asked = select(DECISIONS).where(DECISIONS.c.yard_id == yard_id).order_by(DECISIONS.c.id)
            rows = connection.execute(asked).mappings().all()
        return tuple(Decision(**{str(key): value for key, value in row.items()}) for row in rows)
