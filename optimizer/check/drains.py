"""Rule about water: no paved room is trapped."""

from collections.abc import Iterator

from optimizer.check.blame import blamed
from optimizer.check.case import CheckCase
from optimizer.check.finding import Finding
from optimizer.grading import levelled
from optimizer.layout import Placed, shared_edge_ft


def drains(case: CheckCase) -> Iterator[Finding]:
    """Paved rooms with neither a drain nor falling ground before their low edge; judged where levels are known."""
    if case.derived.levelled.is_known:
        for fall in case.derived.levelled.falls:
            if fall.outfall is None:
                words = f"water on {fall.room} finds no drain that lies low enough, and no ground that falls away"
                yield Finding("drains", (fall.room, *_in_the_way(case, fall.room)), 1.0, "room", words)


def _in_the_way(case: CheckCase, name: str) -> tuple[str, ...]:
    """Rooms that meet a trapped room, without any one of which its water would get away."""
    trapped = case.placed.of(name)
    assert trapped is not None
    others = (room for room in case.placed.paved if room.name != name)
    meeting = (room for room in others if shared_edge_ft(room.placement, trapped.placement) > 0)

    def gets_away(left: Placed) -> bool:
        return all(fall.outfall is not None for fall in levelled(case.site, left).falls if fall.room == name)

    return blamed(case.placed, meeting, gets_away)
