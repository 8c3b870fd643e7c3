"""What can be asked about a room of a concept, in words for a person and as words of the command; pure."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from optimizer.brief import RoomWish

Kind = Literal["left_out", "here", "choice", "sun"]
WORDS: Final[dict[Kind, str]] = {
    "left_out": "Why is it left out?",
    "here": "Why not here?",
    "choice": "Why not this size?",
    "sun": "Why not in the sun?",
}
_IN_THE_SHADE: Final = "Why not in the shade?"


@dataclass(frozen=True, slots=True)
class Question:
    """A question about a room of a concept; `at` is a lower left corner in the file's unit, `choice` a size."""

    kind: Kind
    room: str
    concept: str
    at: tuple[float, float] | None = None
    choice: str | None = None

    @property
    def words_of_command(self) -> tuple[str, ...]:
        """How the command is asked the same; names come from a file and may begin with a dash."""
        return (f"--room={self.room}", f"--option={self.concept}", self._asked)

    @property
    def _asked(self) -> str:
        match self.kind:
            case "here":
                assert self.at is not None
                return f"--at={self.at[0]:g},{self.at[1]:g}"
            case "choice":
                return f"--choice={self.choice}"
            case "sun":
                return "--sun"
            case _:
                return "--left-out"


def questions_about(room: RoomWish, *, choice: str | None, choices: Sequence[str]) -> dict[Kind, str]:
    """What can be asked about a room that stands with a choice, or with None is left out; each in words."""
    is_out = choice is None
    others = [other for other in choices if other != choice]
    has_sun = room.sun is not None and not is_out
    can_be = {"left_out": is_out, "here": True, "choice": not is_out and bool(others), "sun": has_sun}
    offered = {kind: words for kind, words in WORDS.items() if can_be[kind]}
    if "sun" in offered and room.sun is not None and room.sun.want == "shade":
        offered["sun"] = _IN_THE_SHADE
    return offered
