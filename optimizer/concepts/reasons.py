"""Why a concept is worth a look, and how it differs: plain sentences for an owner, with places by name."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from optimizer.catalogue import COVERED, PREPARED, SCREENED, phase_in, rounded
from optimizer.concepts.option import Option
from optimizer.concepts.waiting import waiting_words
from optimizer.concepts.walked import walked_by_both
from optimizer.concepts.whereabouts import nearest_edge, off_house_ft, whereabouts
from optimizer.concepts.words import capital, listed
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario
from optimizer.units import metres_from_feet

LEAST_MONEY, LEAST_WALKED_FT, LEAST_MOVED_FT = 500, 50.0, 8.0
"""What is worth telling: money in the book's currency, feet walked and moved."""
ALIKE: Final = "much the same, drawn a little differently"
SAME_IDEA: Final = "the same idea as the first"
_EXTRAS: Final = {COVERED: "a roof of its own", SCREENED: "a screen"}
_NAMED: Final = 2  # so many rooms are told of in a sentence


@dataclass(frozen=True, slots=True)
class Teller:
    """Puts the concepts of one yard into words, in its own names, units and currency."""

    scenario: Scenario
    currency: str

    def reason(self, option: Option, first: Option | None) -> str:
        """Plain sentences: what the concept is like, and what speaks for it, seen from the one that comes first."""
        if first is None:
            return self._first(option)
        parts = self._seen_from(option, first)
        if option.idea is not None and option.idea_name != first.idea_name:
            return " ".join(map(_sentence, [option.idea.words, *(["; ".join(parts)] if parts else [])]))
        same = [SAME_IDEA] if option.idea else []
        changes = self._changes(option.layout.base, first.layout.base)
        return _sentence("; ".join(same + parts + changes) or ALIKE)

    def difference(self, one: Layout, other: Layout) -> str:
        """What is elsewhere, larger or smaller, missing or added, seen from the other layout."""
        parts = _presence(one, other, without="without", with_="with") + self._changes(one.base, other.base)
        return ", ".join(parts) or ALIKE

    def _first(self, option: Option) -> str:
        absent = option.left_out_rooms
        wishes = f"all that you wished for but the {listed(absent)}" if absent else "all that you wished for"
        bought = f"{wishes}, for about {rounded(option.appraisal.cost.phase(1)):,.0f} {self.currency}"
        pads = [p.room for p in option.layout.placements if p.choice == PREPARED]
        bought += f"; the {listed(pads)} can follow, on a pad with stubs that is built now" if pads else ""
        waiting = waiting_words(self.scenario, option.layout, option.appraisal.cost)
        bought = "; ".join([bought, *waiting])
        if option.idea is not None:
            return f"{_sentence(option.idea.words)} {_sentence(bought)}"
        rooms = option.layout.base.placements[:_NAMED]
        places = (f"{placement.room} {whereabouts(placement, self.scenario.site)}" for placement in rooms)
        return _sentence(f"{bought}: {', '.join(places)}")

    def _seen_from(self, option: Option, first: Option) -> list[str]:
        """Rooms that it lacks or adds, what it costs more or less, and the walking that it saves."""
        presence = _presence(option.layout, first.layout, without="does without", with_="adds")
        return presence + self._money(option, first) + self._walking(option, first)

    def _money(self, option: Option, first: Option) -> list[str]:
        more = option.appraisal.cost.phase(1) - first.appraisal.cost.phase(1)
        if abs(more) < LEAST_MONEY:
            return []
        return [f"costs about {_rounded(abs(more)):,} {self.currency} {'more' if more > 0 else 'less'}"]

    def _walking(self, option: Option, first: Option) -> list[str]:
        """What is saved on the trips that both have: a trip to a room that is left out saves nothing."""
        walked = walked_by_both(self.scenario.brief, first, option)
        saved_ft = walked.first_ft - walked.second_ft
        if saved_ft < LEAST_WALKED_FT:
            return []
        units = self.scenario.units
        saved = saved_ft if units == "ft" else metres_from_feet(saved_ft)
        return [f"saves {saved:,.0f} {units} of walking at each gathering"]

    def _changes(self, one: Layout, other: Layout) -> list[str]:
        """The two rooms that moved farthest, then two that have another size."""
        pairs = ((other.of(now.room), now) for now in one.placements)
        both = [(before, now) for before, now in pairs if before is not None and before.is_later == now.is_later]
        moved = sorted(both, key=lambda pair: -_distance_ft(*pair))[:_NAMED]
        told = [f"{now.room} {self._where(before, now)}" for before, now in moved if _has_moved(before, now)]
        resized = [resized_words(before, now) for before, now in both if before.choice != now.choice]
        return told + resized[:_NAMED]

    def _where(self, before: Placement, now: Placement) -> str:
        """Where a room stands now; where the same words fit both places, how it lies to the house or to an edge."""
        site = self.scenario.site
        words = whereabouts(now, site)
        if words != whereabouts(before, site):
            return words
        nearer_ft = off_house_ft(before, site) - off_house_ft(now, site)
        if abs(nearer_ft) >= LEAST_MOVED_FT:
            return "nearer to the house" if nearer_ft > 0 else "farther from the house"
        edge = nearest_edge(now, site)
        return f"closer to the {edge}" if edge != nearest_edge(before, site) else "a few steps away"


def resized_words(before: Placement, now: Placement) -> str:
    """Another choice in words: what is bought to it, or its own name."""
    for extra, words in _EXTRAS.items():
        if now.choice == before.choice + extra:
            return f"{now.room} with {words}"
        if before.choice == now.choice + extra:
            return f"{now.room} without {words}"
    return f"{now.room}: {now.choice}"


def _presence(one: Layout, other: Layout, *, without: str, with_: str) -> list[str]:
    """Rooms that one layout lacks, prepares for, or adds."""
    gone = sorted((p for p in other.placements if one.of(p.room) is None), key=lambda p: p.is_later)
    absent = [_gone_words(p) for p in gone]
    added = [p.room for p in one.placements if one.has(p.room) and not other.has(p.room)]
    waited = {p.room for p in other.placements if p.is_later}
    waiting = [_later_words(p) for p in one.placements if p.is_later and p.room not in waited]
    told = [f"{without} the {listed(absent)}"] if absent else []
    told += [f"{with_} the {listed(added)}"] if added else []
    return told + waiting


def _gone_words(gone: Placement) -> str:
    phase = phase_in(gone.choice)
    if phase is not None:
        return f"{gone.room} in phase {phase}"
    return f"pad for the {gone.room}" if gone.is_later else gone.room


def _later_words(later: Placement) -> str:
    phase = phase_in(later.choice)
    return f"{later.room} later, {PREPARED}" if phase is None else f"{later.room} in phase {phase}"


def _has_moved(before: Placement, now: Placement) -> bool:
    return _distance_ft(before, now) >= LEAST_MOVED_FT


def _distance_ft(before: Placement, now: Placement) -> float:
    return max(abs(a - b) for a, b in zip(before.centre, now.centre, strict=True))


def _rounded(money: Decimal) -> int:
    """Money to the hundred: more digits would promise more than an estimate knows."""
    return int(round(money, -2))


def _sentence(words: str) -> str:
    return f"{capital(words)}."
