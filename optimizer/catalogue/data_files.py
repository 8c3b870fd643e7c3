"""Figures of the catalogue, kept in data files with their sources."""

from functools import cache
from importlib import resources
from typing import Any, Final

import yaml

# The parser in C, where there is one, is ten times as fast, and these files are read before anything else is done.
_LOADER: Final = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def data_text(name: str) -> str:
    """Text of a data file."""
    return resources.files("optimizer.catalogue").joinpath("data", name).read_text(encoding="utf-8")


@cache
def data(name: str) -> Any:
    """Content of a data file. It is shared: callers only read it."""
    return yaml.load(data_text(name), Loader=_LOADER)  # noqa: S506 - both are the safe ones
