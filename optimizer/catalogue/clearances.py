"""Clearances and sizes of people and furniture."""

from optimizer.catalogue.data_files import data

INCHES_PER_FT = 12.0


def clearance_ft(name: str) -> float:
    """Clearance or size by its name in the file of clearances [ft]; KeyError for a name that is not there."""
    return float(data("clearances.yaml")[name]["inches"]) / INCHES_PER_FT


def table_length_ft(diners: int) -> float:
    """Recommended length [ft] of a rectangular table for an even number of diners, one at each end, up to ten.

    Source: Time-Saver Standards for Building Types.
    """
    return float(data("tables.yaml")[diners]) / INCHES_PER_FT


def least_table_length_ft(diners: int) -> float:
    """Least length [ft] of the same table: 25 in for each pair beyond the ends, and 29 in."""
    return clearance_ft("place_setting") * (diners - 2) / 2 + clearance_ft("table_ends")
