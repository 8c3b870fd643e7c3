"""Values made up from the types alone: what is added to a type later is in them by itself."""

from decimal import Decimal
from itertools import count
from typing import Literal, get_args, get_origin, get_type_hints

NUMBERS = count(1)
MADE_OF = {
    bool: lambda n: True,
    int: lambda n: n % 900,
    float: lambda n: n + 0.25,
    str: lambda n: f"text-{n}",
    Decimal: lambda n: Decimal(n) + Decimal("0.25"),
    object: lambda n: {"value": [n]},
}


def filled(hint):
    """Make up a value of a type, two entries in every list, nothing as it is by default, no two values alike."""
    if hint in MADE_OF:
        return MADE_OF[hint](next(NUMBERS))
    inside = get_args(hint)
    if get_origin(hint) is Literal:
        return inside[-1]
    if get_origin(hint) is tuple:
        return tuple(filled(one) for one in (inside if inside[-1] is not ... else inside[:1] * 2))
    if inside:
        return filled(next(one for one in inside if one is not type(None)))
    return hint(**{name: filled(inner) for name, inner in get_type_hints(hint).items()})


def places_of(record, at=()):
    """Way to every value of a record that nothing is inside of."""
    inside = record.items() if isinstance(record, dict) else enumerate(record) if isinstance(record, list) else None
    if inside is None:
        yield at
    for key, value in inside or ():
        yield from places_of(value, (*at, key))
