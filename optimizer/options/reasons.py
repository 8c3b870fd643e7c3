"""Why a concept is worth a look, how it differs, and what to be careful about: plain sentences."""

from collections.abc import Sequence

from optimizer.catalogue import SizedRoom
from optimizer.layout import Layout, Placement
from optimizer.options.option import Option
from optimizer.scenario import Scenario

_CONCEPT = "Concept stage only: sizes and prices are estimates, to be confirmed on site and by whoever builds."
_BY_KIND = {
    "fire": "Fire: distances are model-code defaults; local fire code and the maker's listing decide.",
    "kitchen": "Gas and electricity: run and connected by licensed trades under local codes.",
    "reserve": "Water: barriers, bonding and setbacks of a later pool or tub follow local codes.",
}
_GROUND = "Drainage, retaining and structure: to be designed by licensed practice for the real ground."


def reason_for(option: Option, best: Option | None) -> str:
    """One plain sentence: what speaks for the concept, seen from the best one."""
    absent = [room.room for room in option.left_out]
    if best is None:
        tail = f", without the {_listed(absent)}" if absent else ", with every wished room"
        return f"The least loss by the exact figures{tail}."
    parts = []
    new = [name for name in absent if best.layout.of(name) is not None]
    back = [room.room for room in best.left_out if option.layout.of(room.room) is not None]
    if new:
        parts.append(f"does without the {_listed(new)}")
    if back:
        parts.append(f"brings in the {_listed(back)}")
    saved = best.appraisal.cost.phase(1) - option.appraisal.cost.phase(1)
    if saved >= 500:
        parts.append(f"costs {saved:,.0f} less to begin with")
    walked = best.appraisal.walking_ft - option.appraisal.walking_ft
    if walked >= 50:
        parts.append(f"saves {walked:,.0f} ft of walking a gathering")
    parts.append(difference_words(option.layout, best.layout))
    return _sentence("; ".join(parts))


def difference_words(one: Layout, other: Layout) -> str:
    """What is elsewhere, larger or smaller than in the other layout."""
    moved, resized = [], []
    for placement in one.placements:
        before = other.of(placement.room)
        if before is None:
            continue
        if before.choice != placement.choice:
            resized.append(f"{placement.room} as {placement.choice}")
        distance = max(abs(a - b) for a, b in zip(before.centre, placement.centre, strict=True))
        if distance >= 8:
            moved.append((distance, placement))
    moved.sort(key=lambda entry: -entry[0])
    words = [f"{placement.room} {_where(placement, other)}" for _, placement in moved[:2]] + resized[:2]
    return ", ".join(words) or "the same idea, drawn a little differently"


def cautions_for(scenario: Scenario, rooms: Sequence[SizedRoom], layout: Layout) -> tuple[str, ...]:
    """What this concept must be careful about."""
    kinds = {room.rules.kind for room in rooms if layout.of(room.name) is not None}
    found = [_CONCEPT, *(words for kind, words in _BY_KIND.items() if kind in kinds)]
    if scenario.site.trees:
        found.append("Trees: work near a kept tree's roots needs an arborist's word.")
    return (*found, _GROUND)


def _where(placement: Placement, other: Layout) -> str:
    before = other.of(placement.room)
    assert before is not None
    dx, dy = placement.centre[0] - before.centre[0], placement.centre[1] - before.centre[1]
    side = (
        ("to the right" if dx > 0 else "to the left")
        if abs(dx) >= abs(dy)
        else ("further up" if dy > 0 else "further down")
    )
    return f"{max(abs(dx), abs(dy)):.0f} ft {side} on the plan"


def _listed(names: Sequence[str]) -> str:
    return " and ".join(names) if len(names) < 3 else ", ".join(names[:-1]) + " and " + names[-1]


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + "."
