"""Order concepts by their exact score, the first ones by idea as well."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from optimizer.layout import Layout, arrangement_of, difference
from optimizer.options.option import DiffersBy, Option
from optimizer.options.reasons import difference_words

LEAST_DIFFERENCE = 0.12
MOVED_SHARE = 0.15


def ranked(
    options: Sequence[Option], *, count: int, diagonal_ft: float, say: Callable[[Option, Option | None], str]
) -> tuple[Option, ...]:
    """At most `count` concepts, best first; copies of a better one, shifted or of the same arrangement, are dropped.

    Half of the places go to concepts with every wished room, if there are so many; no other program takes more than
    half; and concepts that differ clearly come in before closer ones.
    """
    best_first = sorted(options, key=lambda option: option.score)
    whole = [option for option in best_first if not option.left_out]
    half = (count + 1) // 2
    chosen: list[Option] = []
    for candidates, places, each in ((whole, half, half), (best_first, count, half), (best_first, count, count)):
        for least in (2 * LEAST_DIFFERENCE, LEAST_DIFFERENCE):
            _add(candidates, chosen, places=places, each=each, least=least, diagonal_ft=diagonal_ft)
    _add(whole, chosen, places=half, each=half, least=0.0, diagonal_ft=diagonal_ft)
    _add(best_first, chosen, places=count, each=count, least=0.0, diagonal_ft=diagonal_ft)
    chosen.sort(key=lambda option: option.score)
    return tuple(_numbered(option, rank, chosen[:rank], diagonal_ft, say) for rank, option in enumerate(chosen))


def _add(
    candidates: Sequence[Option], chosen: list[Option], *, places: int, each: int, least: float, diagonal_ft: float
) -> None:
    """Add candidates that are new by at least this difference, `each` of a program and `places` in all."""
    for option in candidates:
        alike = sum(option.left_out_rooms == other.left_out_rooms for other in chosen)
        if len(chosen) < places and alike < each and _is_new(option, chosen, least, diagonal_ft):
            chosen.append(option)


def is_same(one: Layout, other: Layout, *, diagonal_ft: float) -> bool:
    """Whether two layouts count as one: the same arrangement, no room moved by over 15 % of the yard's diagonal."""
    if arrangement_of(one) != arrangement_of(other):
        return False
    moved = (
        max(abs(a.centre[0] - b.centre[0]), abs(a.centre[1] - b.centre[1]))
        for a, b in zip(one.placements, other.placements, strict=True)
    )
    return max(moved, default=0.0) <= MOVED_SHARE * diagonal_ft


def _is_new(option: Option, chosen: Sequence[Option], least: float, diagonal_ft: float) -> bool:
    return option not in chosen and all(
        not is_same(option.layout, other.layout, diagonal_ft=diagonal_ft)
        and difference(option.layout, other.layout, diagonal_ft=diagonal_ft) >= least
        for other in chosen
    )


def _numbered(
    option: Option, rank: int, better: Sequence[Option], diagonal_ft: float, say: Callable[[Option, Option | None], str]
) -> Option:
    nearest = min(better, key=lambda o: difference(option.layout, o.layout, diagonal_ft=diagonal_ft), default=None)
    differs = None
    if nearest is not None:
        value = round(difference(option.layout, nearest.layout, diagonal_ft=diagonal_ft), 3)
        differs = DiffersBy(value, difference_words(option.layout, nearest.layout))
    return replace(
        option,
        id=f"concept-{rank + 1:02d}",
        rank=rank + 1,
        differs_by=differs,
        reason=say(option, better[0] if better else None),
    )
