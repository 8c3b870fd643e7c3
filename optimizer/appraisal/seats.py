"""People seated, and the worth of what was chosen."""

from optimizer.layout import Placed


def people_seated(placed: Placed) -> int:
    """People whom the furniture of all placed rooms seats, counted item by item."""
    return sum(item.seats for _, choice in placed.chosen for item in choice.furniture)


def worth_placed(placed: Placed) -> float:
    """Worth of all choices placed [points]."""
    return sum(choice.worth for _, choice in placed.chosen)
