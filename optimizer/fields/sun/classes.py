"""Hours of sun in a gardener's words."""

from optimizer.catalogue.data_files import data


def sun_class(hours_a_day: float) -> str:
    """Full sun, part sun, part shade or shade: the first class of the table whose least hours are reached.

    Source: Nebraska Extension; the classes stand in `catalogue/data/sun_classes.yaml`.
    """
    table = data("sun_classes.yaml")["classes"]
    return next(str(entry["name"]) for entry in table if hours_a_day >= entry["least_h"])
