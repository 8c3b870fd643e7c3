"""Who is to blame for what the whole layout brings about: the rooms but for which it would not be so."""

from collections.abc import Callable, Iterable

from optimizer.layout import Placed, PlacedRoom


def blamed(placed: Placed, among: Iterable[PlacedRoom], holds: Callable[[Placed], bool]) -> tuple[str, ...]:
    """Names of those rooms without any one of which a rule holds; where there is none such, of all of them if it holds
    without them all, and of none if not even then.
    """
    names = tuple(room.name for room in among)
    alone = tuple(name for name in names if holds(placed.without(name)))
    if alone or len(names) < 2:
        return alone
    return names if holds(placed.without(*names)) else ()
