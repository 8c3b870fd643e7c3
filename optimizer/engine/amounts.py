"""What rooms share whatever their places: money, paving, seats. A limit on a sum over the choices that are taken."""

from collections.abc import Sequence
from dataclasses import dataclass

from optimizer.brief import RuleId


@dataclass(frozen=True, slots=True)
class Amount:
    """`uses[room][variant]` are whole units; over the placed rooms they add up to `least` or more, and `most` or less.

    Uses are rounded so that what the check allows is allowed: a floor, which proofs may rest on.
    """

    rule: RuleId
    uses: tuple[tuple[int, ...], ...]
    least: int = 0
    most: int | None = None

    def range_of(self, room: int, variants: Sequence[int] | None = None) -> tuple[int, int]:
        """Least and most that a placed room can use, in any of its variants or of these."""
        uses = self.uses[room] if variants is None else [self.uses[room][v] for v in variants]
        return min(uses, default=0), max(uses, default=0)
