"""Two estimates line by line: what is dearer, where, and why."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from optimizer.appraisal import CostLine, share_of
from optimizer.catalogue import SITE, STEPS, bought_by_owners
from optimizer.concepts import Option
from optimizer.results.forms import money

Cause = Literal["new", "gone", "finish", "owner's", "price", "size", "place", "quantity", "steps"]
_Key = tuple[int, str, str]


@dataclass(frozen=True, slots=True)
class LineDifference:
    """What one line of work costs in two concepts, and why the two differ.

    A finish is another item in the same assembly of a room; size means that the room itself has another area, place
    that a supply runs farther or less far to it.
    """

    phase: int
    room: str
    assembly: str
    item: str
    before: Decimal
    after: Decimal
    cause: Cause
    words: str

    @property
    def more(self) -> Decimal:
        """How much dearer it is in the second."""
        return self.after - self.before


def line_differences(before: Option, after: Option) -> tuple[LineDifference, ...]:
    """Every line that costs something else in the second concept, the largest difference first. They add up to the
    difference of the two totals, to the cent.
    """
    ours, theirs = _work(before), _work(after)
    sizes = {room for room, area in _areas(before).items() if _areas(after).get(room, area) != area}
    swapped = dict(_swapped(ours, theirs))
    found = [_between(ours[key], theirs[key], sizes) for key in ours if key in theirs]
    found += [_swap(ours[old], theirs[new]) for old, new in swapped.items()]
    gone = (line for key, line in ours.items() if key not in theirs and key not in swapped)
    new = (line for key, line in theirs.items() if key not in ours and key not in swapped.values())
    found += [*map(_gone, gone), *map(_new, new), *_steps(before, after)]
    return tuple(sorted((one for one in found if one.more), key=lambda one: -abs(one.more)))


def _work(option: Option) -> dict[_Key, CostLine]:
    """Lines of work by phase, room and item; two of the same item in a room are one."""
    found: dict[_Key, CostLine] = {}
    for line in option.appraisal.cost.lines:
        key = (line.phase, line.room, line.item)
        if not line.is_step:
            found[key] = _together(found[key], line) if key in found else line
    return found


def _together(one: CostLine, other: CostLine) -> CostLine:
    return CostLine(
        phase=one.phase,
        room=one.room,
        item=one.item,
        quantity=one.quantity + other.quantity,
        unit=one.unit,
        unit_price=one.unit_price,
        amount=one.amount + other.amount,
        assembly=one.assembly,
    )


def _areas(option: Option) -> Mapping[str, float]:
    return {place.room: round(place.area_sqft, 1) for place in option.layout.placements}


def _swapped(ours: Mapping[_Key, CostLine], theirs: Mapping[_Key, CostLine]) -> Iterator[tuple[_Key, _Key]]:
    """Items that one concept has in place of the other's: the only ones of their assembly in a room that differ."""
    old = _alone([line for key, line in ours.items() if key not in theirs])
    new = _alone([line for key, line in theirs.items() if key not in ours])
    for place, line in old.items():
        if place in new:
            other = new[place]
            yield (line.phase, line.room, line.item), (other.phase, other.room, other.item)


def _alone(lines: Sequence[CostLine]) -> dict[tuple[int, str, str], CostLine]:
    """Lines that are the only one of their assembly in a room, by phase, room and assembly."""
    places = [(line.phase, line.room, line.assembly) for line in lines]
    return {
        place: line
        for place, line in zip(places, lines, strict=True)
        if places.count(place) == 1 and line.room != SITE and line.unit != "each"
    }


def _between(one: CostLine, other: CostLine, sizes: set[str]) -> LineDifference:
    if _is_owners(one) or _is_owners(other):
        words = "left to the owner" if _is_owners(other) else "no longer left to the owner"
        return _difference(one, one.amount, other.amount, "owner's", words)
    if one.quantity == other.quantity:
        return _difference(one, one.amount, other.amount, "price", _prices(one, other))
    words = f"{_amount(other)} instead of {_amount(one)}"
    if one.unit_price != other.unit_price and not one.is_share_of_lines:
        words += f", at {money(other.unit_price)} instead of {money(one.unit_price)}"
    is_larger: Cause = "size" if one.room in sizes else "quantity"
    return _difference(one, one.amount, other.amount, "place" if one.item.endswith(" run") else is_larger, words)


def _is_owners(line: CostLine) -> bool:
    """Whether an allowance leaves it to the owner, so that it has no price."""
    return not line.unit_price and line.item in bought_by_owners()


def _prices(one: CostLine, other: CostLine) -> str:
    if one.is_share_of_lines:
        return f"{_amount(other)} instead of {_amount(one)}"
    each = "each" if one.unit == "each" else f"a {one.unit}"
    return f"{money(other.unit_price)} instead of {money(one.unit_price)} {each}"


def _swap(one: CostLine, other: CostLine) -> LineDifference:
    words = f"{_amount(other)} of {other.item} instead of {_amount(one)} of {one.item}"
    return _difference(other, one.amount, other.amount, "finish", words)


def _gone(line: CostLine) -> LineDifference:
    return _difference(line, line.amount, Decimal(0), "gone", f"without {_amount(line)}")


def _new(line: CostLine) -> LineDifference:
    return _difference(line, Decimal(0), line.amount, "new", f"{_amount(line)} more")


def _steps(before: Option, after: Option) -> Iterator[LineDifference]:
    """Stated steps by phase and name: they follow the lines, or the budgets of the two differ."""
    sums = [
        {(line.phase, line.item): line.amount for line in option.appraisal.cost.lines if line.is_step}
        for option in (before, after)
    ]
    for phase, name in dict.fromkeys((*sums[0], *sums[1])):
        ours, theirs = (by_name.get((phase, name), Decimal(0)) for by_name in sums)
        yield LineDifference(phase, SITE, STEPS, name, ours, theirs, "steps", "a share of what comes before it")


def _difference(line: CostLine, before: Decimal, after: Decimal, cause: Cause, words: str) -> LineDifference:
    return LineDifference(line.phase, line.room, line.assembly, line.item, before, after, cause, words)


def _amount(line: CostLine) -> str:
    """Quantity with its unit; pieces are only counted, a share is of money."""
    if line.is_share_of_lines:
        return share_of(line.unit_price, line.quantity)
    quantity = f"{line.quantity.normalize():,f}"
    return quantity if line.unit in {"each", "lump"} else f"{quantity} {line.unit}"
