"""Why a concept is worth a look, and how it differs: plain sentences."""

from optimizer.concepts.option import Option
from optimizer.concepts.words import listed
from optimizer.layout import Layout, Placement
from optimizer.units import metres_from_feet

LEAST_SAVED, LEAST_WALKED_FT, LEAST_MOVED_FT = 500, 50.0, 8.0
"""What is worth telling: money in the book's currency, feet walked and moved."""
ALIKE = "the same idea, drawn a little differently"


def reason_for(option: Option, best: Option | None, *, currency: str, units: str) -> str:
    """One plain sentence: what speaks for the concept, seen from the best one."""
    if best is None:
        absent = option.left_out_rooms
        tail = f", without the {listed(absent)}" if absent else ", with every wished room"
        return f"The least loss by the exact figures{tail}."
    parts = _presence(option.layout, best.layout, without="does without", with_="brings in")
    saved = best.appraisal.cost.phase(1) - option.appraisal.cost.phase(1)
    if saved >= LEAST_SAVED:
        parts.append(f"costs {saved:,.0f} {currency} less to begin with")
    walked_ft = best.appraisal.walking_ft - option.appraisal.walking_ft
    if walked_ft >= LEAST_WALKED_FT:
        walked = walked_ft if units == "ft" else metres_from_feet(walked_ft)
        parts.append(f"saves {walked:,.0f} {units} of walking a gathering")
    parts += _changes(option.layout, best.layout)
    return _sentence("; ".join(parts) or ALIKE)


def difference_words(one: Layout, other: Layout) -> str:
    """What is elsewhere, larger or smaller, missing or added, seen from the other layout."""
    parts = _presence(one, other, without="without", with_="with") + _changes(one, other)
    return ", ".join(parts) or ALIKE


def _presence(one: Layout, other: Layout, *, without: str, with_: str) -> list[str]:
    absent = [p.room for p in other.placements if one.of(p.room) is None]
    added = [p.room for p in one.placements if other.of(p.room) is None]
    told = [f"{without} the {listed(absent)}"] if absent else []
    return told + ([f"{with_} the {listed(added)}"] if added else [])


def _changes(one: Layout, other: Layout) -> list[str]:
    """The two rooms that moved farthest, then two that have another size."""
    both = [(before, placement) for placement in one.placements if (before := other.of(placement.room)) is not None]
    moved = sorted(both, key=lambda pair: -_distance_ft(*pair))[:2]
    resized = [f"{now.room}: {now.choice}" for before, now in both if before.choice != now.choice]
    told = [f"{now.room} {_where(before, now)}" for before, now in moved if _distance_ft(before, now) >= LEAST_MOVED_FT]
    return told + resized[:2]


def _distance_ft(before: Placement, now: Placement) -> float:
    return max(abs(a - b) for a, b in zip(before.centre, now.centre, strict=True))


def _where(before: Placement, now: Placement) -> str:
    dx, dy = now.centre[0] - before.centre[0], now.centre[1] - before.centre[1]
    if abs(dx) >= abs(dy):
        return "farther right" if dx > 0 else "farther left"
    return "farther up the plan" if dy > 0 else "farther down the plan"


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + "."
