"""What choices give the guests: a table, seats, ground to stand on."""

from collections.abc import Callable

from optimizer.catalogue import Holds, holds
from optimizer.engine.grid.context import Context
from optimizer.engine.rules.part import Variants


def given(context: Context, variants: Variants, of: Callable[[Holds], int]) -> tuple[tuple[int, ...], ...]:
    """What each variant of each room gives, in whole units."""
    return tuple(
        tuple(of(holds(room, room.choices[variant.choice])) for variant in of_room)
        for room, of_room in zip(context.rooms, variants, strict=True)
    )
