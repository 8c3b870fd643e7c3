"""Reserves: room for any one of several things that may be built later."""

from typing import Any, Final

from optimizer.brief import Interim, RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.rooms import Item, Quantity
from optimizer.catalogue.sizing.frame import Fitting, Level, Size, Sizer, sides
from optimizer.errors import Problem, ScenarioError

SLEEVES: Final = "reserve kept clear"
"""Price-book item of sleeves under paving for what comes later."""
_FUTURES: Final = "futures.yaml"
_GROUND: Final[dict[Interim, str]] = {"lawn": "reserve ground", "gravel court": "gravel court", "nook": "plain paving"}
"""What the ground is paid by until something is built on it."""


def _sizes(wish: RoomWish) -> tuple[Size, Size, Size]:
    """Greatest need of all futures in each direction, long sides laid along the width: more ground holds no more."""
    needs = [sorted(future["needs"], reverse=True) for future in _futures(wish)]
    width, depth = (float(max(need[axis] for need in needs)) for axis in (0, 1))
    need = Size(width, depth)
    return need, need, need


def _futures(wish: RoomWish) -> tuple[dict[str, Any], ...]:
    """Entries of the wish's futures; ScenarioError for one that the catalogue does not know, or for none."""
    known, names = data(_FUTURES), [name.strip().lower() for name in wish.futures]
    unknown = [name for name in names if name not in known] or ([] if names else ["none"])
    if unknown:
        advice = f"list what may be built in {wish.name!r} by these names, or give the room choices with a size"
        problems = (Problem(f"futures among {', '.join(known)}", name, advice, wish.name) for name in unknown)
        raise ScenarioError(tuple(problems))
    return tuple(known[name] for name in names)


def _fit(wish: RoomWish, size: Size, _level: Level) -> Fitting:
    futures = _futures(wish) if wish.futures else ()
    bodies = [sorted(future["body"], reverse=True) for future in futures]
    outline = max(bodies, key=lambda body: body[0] * body[1], default=[size.width_ft * 0.6, size.depth_ft * 0.6])
    # Of what may come later the take-off counts the dearest that fits where the ground is held.
    built = (Quantity(_dearest(futures), 1),) if wish.phase == 1 or not futures else ()
    held = (Quantity(SLEEVES, 1, phase=1), Quantity(_GROUND[wish.interim], size.area_sqft, phase=1))
    kept_clear = held if wish.phase > 1 else ()
    return Fitting((_outline(size, outline[0], outline[1]),), (*built, *kept_clear), sides())


def _dearest(futures: tuple[dict[str, Any], ...]) -> str:
    """Price-book item of the future that takes most room, which costs most."""
    largest = max(futures, key=lambda future: future["needs"][0] * future["needs"][1], default=data(_FUTURES)["pool"])
    return str(largest["item"])


def _outline(size: Size, length_ft: float, width_ft: float) -> Item:
    """Water of the largest future in the middle, along the longer side, no larger than the room."""
    across = size.width_ft >= size.depth_ft
    along_x, along_y = (length_ft, width_ft) if across else (width_ft, length_ft)
    width, depth = min(along_x, size.width_ft), min(along_y, size.depth_ft)
    return Item("future", (size.width_ft - width) / 2, (size.depth_ft - depth) / 2, width, depth)


RESERVE: Final = Sizer(_sizes, _fit)
