"""The runs of counter of a kitchen as it is drawn, and where the middle of the front one lies."""

from typing import Final

from optimizer.catalogue.rooms import Item, SizedChoice

_EVEN_FT: Final = 1e-6


def front_run(choice: SizedChoice) -> tuple[Item, ...]:
    """Pieces of the counter along the front, left to right; the corner is the first."""
    pieces = _pieces(choice)
    front_ft = max((item.y_ft + item.depth_ft for item in pieces), default=0.0)
    along = (item for item in pieces if item.y_ft + item.depth_ft > front_ft - _EVEN_FT)
    return tuple(sorted(along, key=lambda item: item.x_ft))


def side_run(choice: SizedChoice) -> tuple[Item, ...]:
    """Pieces of the counter along its left, back to front; the corner is the last. None of a counter in one line."""
    left_ft = min((item.x_ft for item in _pieces(choice)), default=0.0)
    aside = [item for item in _pieces(choice) if item.x_ft < left_ft + _EVEN_FT]
    in_one_line = set(aside) <= set(front_run(choice))
    return () if in_one_line else tuple(sorted(aside, key=lambda item: item.y_ft))


def counter_middle_ft(choice: SizedChoice) -> tuple[float, float]:
    """Middle of the front counter from the room's centre [ft]: right and ahead; (0, 0) without a counter."""
    run = front_run(choice)
    if not run:
        return (0.0, 0.0)
    left, right = run[0].x_ft, max(item.x_ft + item.width_ft for item in run)
    back, front = min(item.y_ft for item in run), max(item.y_ft + item.depth_ft for item in run)
    return ((left + right - choice.width_ft) / 2, (back + front - choice.depth_ft) / 2)


def _pieces(choice: SizedChoice) -> list[Item]:
    return [item for item in choice.furniture if item.role not in {"ledge", "stool"}]
