"""Rule about water: no paved room is trapped."""

from collections.abc import Iterator

from optimizer.check.case import CheckCase
from optimizer.check.finding import Finding


def drains(case: CheckCase) -> Iterator[Finding]:
    """Paved rooms with neither a drain nor falling ground before their low edge; judged where levels are known."""
    if case.derived.levelled.is_known:
        for fall in case.derived.levelled.falls:
            if fall.outfall is None:
                words = f"water on {fall.room} finds no drain that lies low enough, and no ground that falls away"
                yield Finding("drains", (fall.room,), 1.0, "room", words)
