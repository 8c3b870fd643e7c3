"""What a run tells while it goes on: one small record after another, to a bar, to JSON lines, or to nobody.

The engine tells `stage` {stage: words}, `option` {found: number of concepts so far, best: the best so far in words} and
`bound` {objective, bound: money}; whoever runs it adds `started`, `alive`, `problem` {text} and `done` {exit, ...}.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, Literal

EventKind = Literal["started", "stage", "option", "bound", "alive", "done", "problem"]


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened; `facts` are plain numbers and text."""

    kind: EventKind
    facts: dict[str, Any] = field(default_factory=dict)


Emit = Callable[[Event], None]


def to_nobody(_: Event) -> None:
    """Drop every event."""
