"""How much of the problem one model looks at: everything, or one arrangement."""

from dataclasses import dataclass

from optimizer.instance import Instance


@dataclass(frozen=True, slots=True)
class Scope:
    """For each room the variants that it may take (none: it is left out), and whether it may be absent; for each pair
    of rooms its canonical side (0 left, 1 right, 2 below, 3 above), or None where any will do.
    """

    variants: tuple[tuple[int, ...], ...]
    optional: tuple[bool, ...]
    sides: tuple[int | None, ...]
    with_order: bool


def whole_scope(instance: Instance) -> Scope:
    """Every choice and side; the order loss, never below zero, is left out of it, so that its bound stays a bound."""
    return Scope(
        variants=tuple(tuple(range(len(room.variants))) for room in instance.rooms),
        optional=tuple(not room.required for room in instance.rooms),
        sides=tuple(None for _ in instance.pairs),
        with_order=False,
    )


def arrangement_scope(instance: Instance, choices: tuple[int, ...], sides: tuple[int, ...]) -> Scope:
    """One arrangement: rooms with these choices (below 0: left out) in any turn, on these sides of each other."""
    return Scope(
        variants=tuple(
            tuple(index for index, variant in enumerate(room.variants) if variant.choice == choice)
            for room, choice in zip(instance.rooms, choices, strict=True)
        ),
        optional=tuple(False for _ in instance.rooms),
        sides=tuple(None if side < 0 else side for side in sides),
        with_order=True,
    )
