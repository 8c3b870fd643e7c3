"""What rooms share whatever their places: money, paving, seats. A limit on a sum over the choices that are taken."""

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

    def range_of(self, room: int) -> tuple[int, int]:
        """Least and most that a placed room can use."""
        return min(self.uses[room], default=0), max(self.uses[room], default=0)
