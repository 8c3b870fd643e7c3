"""What made a result: versions of the program, of its libraries, of prices and of catalogue figures."""

import hashlib
import platform
from importlib import metadata, resources
from typing import Any, Final

from optimizer import __version__
from optimizer.catalogue import PriceBook

_LIBRARIES: Final = ("ortools", "shapely", "numpy", "pvlib")


def versions(book: PriceBook) -> dict[str, Any]:
    """Make the `versions` block of a result. Libraries are asked by their metadata and not imported."""
    return {
        "optimizer": __version__,
        **{library: _version(library) for library in _LIBRARIES},
        "python": platform.python_version(),
        "price_book": {"name": book.name, "date": book.date, "digest": book.digest},
        "catalogue": {"digest": catalogue_digest()},
    }


def catalogue_digest() -> str:
    """SHA-256 over the names and bytes of the catalogue's data files, in the order of their names."""
    digest = hashlib.sha256()
    for file in sorted(resources.files("optimizer.catalogue").joinpath("data").iterdir(), key=lambda file: file.name):
        if file.is_file():
            digest.update(file.name.encode() + b"\0" + file.read_bytes() + b"\0")
    return digest.hexdigest()


def _version(library: str) -> str | None:
    try:
        return metadata.version(library)
    except metadata.PackageNotFoundError:
        return None
