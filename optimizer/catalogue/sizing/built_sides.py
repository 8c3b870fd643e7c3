"""What is built along a room's sides: seat walls with or without piers, and planted beds."""

from optimizer.catalogue.rooms import Item
from optimizer.catalogue.sides import side_kind


def seat_wall(x_ft: float, y_ft: float, length_ft: float, *, with_piers: bool = False) -> tuple[Item, ...]:
    """Wall to sit on along x from (x, y) [ft], as deep as its cap; piers take the ends of its length."""
    depth, pier = side_kind("seat wall").depth_ft, side_kind("pier").depth_ft
    if not with_piers or length_ft <= 3 * pier:
        return (Item("seat wall", x_ft, y_ft, length_ft, depth),)
    return (
        Item("pier", x_ft, y_ft, pier, depth),
        Item("seat wall", x_ft + pier, y_ft, length_ft - 2 * pier, depth),
        Item("pier", x_ft + length_ft - pier, y_ft, pier, depth),
    )


def bed_at_back(width_ft: float) -> tuple[Item, ...]:
    """Planted bed along the whole back of a room so wide [ft]."""
    return (Item("bed", 0.0, 0.0, width_ft, side_kind("bed").depth_ft),)
