"""Of many steps of a rising stair the few that tell most."""

from collections.abc import Sequence


def thinned(money: Sequence[float], worth: Sequence[float], most: int) -> list[int]:
    """Numbers of at most so many steps, the first and the last among them where there is room for both.

    Steps are left out one by one: each time the one without which least is lost, little worth for a short way.
    """
    kept = list(range(len(money)))
    while len(kept) > max(most, 2):
        middle = range(1, len(kept) - 1)
        del kept[min(middle, key=lambda at: _lost(money, worth, kept[at - 1 : at + 2]))]
    return kept[-most:]


def _lost(money: Sequence[float], worth: Sequence[float], three: Sequence[int]) -> float:
    before, step, after = three
    return (worth[step] - worth[before]) * (money[after] - money[step])
