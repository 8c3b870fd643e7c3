"""Writing: whole or not at all."""

import json
import os
import secrets
from contextlib import suppress
from pathlib import Path
from typing import Any

from optimizer.errors import OutputError, Problem


def to_text(document: dict[str, Any]) -> str:
    """JSON text of a document, one key a line; ValueError on a number that is not finite, which JSON cannot say."""
    return json.dumps(document, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def write_whole(path: Path, text: str, *, option: str = "--out") -> None:
    """Write text as UTF-8 beside its place, sync it to disk, and rename it: readers see the old file or the new one.

    Raises OutputError where the place cannot be written, with the option that names it; what stood there before is then
    still there.
    """
    beside = path.with_name(f".{path.name}.{secrets.token_hex(4)}.part")
    try:
        _write_synced(beside, text)
        beside.replace(path)
        _sync_folder(path.parent)
    except OSError as error:
        raise _cannot_write(path, error, option) from error
    finally:
        # Gone after the rename; there only if something failed on the way.
        with suppress(OSError):
            beside.unlink(missing_ok=True)


def ready_folder(folder: Path, *, option: str = "--out", thing: str = "a folder to write results to") -> None:
    """Make a folder where it is missing, and see that a file can be written in it, before any long work is begun.

    Raises OutputError where it cannot, with the option that names the folder or a file in it; `thing` says what it is.
    """
    trial = folder / f".{secrets.token_hex(4)}.part"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        trial.touch(exist_ok=False)
        trial.unlink()
    except OSError as error:
        raise _cannot_write(folder, error, option, thing=thing) from error


def _write_synced(path: Path, text: str) -> None:
    with path.open("x", encoding="utf-8", newline="") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())


def _sync_folder(folder: Path) -> None:
    # A rename lasts through a power cut once its folder is on disk too; not every system lets a folder be opened.
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _cannot_write(
    path: Path, error: OSError, option: str, *, thing: str = "a place to write results to"
) -> OutputError:
    found = (error.strerror or type(error).__name__).lower()
    advice = f"choose another place with {option}, or free room and rights there"
    return OutputError((Problem(thing, found, advice, where=str(path)),))
