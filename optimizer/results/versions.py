"""What made a result: versions of the program, of its libraries, of prices and of catalogue figures."""

import hashlib
import platform
from collections.abc import Mapping
from importlib import metadata, resources
from typing import Any, Final

from optimizer import __version__
from optimizer.catalogue import PriceBook
from optimizer.results.untrusted import refuse

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


def refuse_other_version(document: Mapping[str, Any], name: str) -> None:
    """Raise a ResultError for a result of another version of the program or of its catalogue.

    It would give other figures without being false. Other libraries are let be: what they count is counted again.
    """
    stored = document.get("versions")
    said = stored if isinstance(stored, dict) else {}
    advice = "check it with the version that wrote it, or make it again"
    if said.get("optimizer") != __version__:
        refuse(f"a result of version {__version__}", said.get("optimizer"), f"{name}.versions.optimizer", advice=advice)
    catalogue = said.get("catalogue")
    digest = catalogue.get("digest") if isinstance(catalogue, dict) else None
    if digest != catalogue_digest():
        here = f"a result made with this catalogue, {catalogue_digest()[:12]}"
        refuse(here, digest, f"{name}.versions.catalogue.digest", advice=advice)


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
