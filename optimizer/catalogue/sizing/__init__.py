"""Sizing of rooms from people and equipment, one kind a module."""

from optimizer.catalogue.sizing.sized_rooms import sized_room, sized_rooms

__all__ = ["sized_room", "sized_rooms"]
