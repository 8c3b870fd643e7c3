"""What a point of worth stands for in money."""

from collections.abc import Sequence
from decimal import Decimal

from optimizer.catalogue.loss_rates import rates
from optimizer.catalogue.rooms import SizedRoom


def worth_rate(ceiling: Decimal | None, rooms: Sequence[SizedRoom]) -> float:
    """Money for each point of worth: the ceiling shared out over all that is wished for."""
    total = sum(max(choice.worth for choice in room.choices) for room in rooms)
    return float(ceiling) / total if ceiling and total else rates().worth_without_ceiling
