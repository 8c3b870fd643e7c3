"""Figures of the catalogue, kept in data files with their sources."""

from functools import cache
from importlib import resources
from typing import Any

import yaml


def data_text(name: str) -> str:
    """Text of a data file."""
    return resources.files("optimizer.catalogue").joinpath("data", name).read_text(encoding="utf-8")


@cache
def data(name: str) -> Any:
    """Content of a data file. It is shared: callers only read it."""
    return yaml.safe_load(data_text(name))
