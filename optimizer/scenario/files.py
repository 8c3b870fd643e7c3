"""A text file that somebody else wrote: read with limits, refused with advice."""

from pathlib import Path
from typing import Final

from optimizer.errors import Problem, ScenarioError

LARGEST_BYTES: Final = 1_000_000


def text_of(path: Path, name: str, thing: str = "a scenario file") -> str:
    """Text of a file; `name` stands for it in messages.

    Raises
    ------
    ScenarioError
        If it cannot be read, is too large, or is no text in UTF-8.
    """
    return _text(bytes_of(path, name, thing), name)


def bytes_of(path: Path, name: str, thing: str = "a scenario file") -> bytes:
    """Content of a file as it is; `name` stands for it in messages.

    Raises
    ------
    ScenarioError
        If it cannot be read, or is too large.
    """
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_BYTES + 1)
    except IsADirectoryError:
        raise ScenarioError((Problem(thing, "a folder", "name a file in it", name),)) from None
    except FileNotFoundError:
        raise ScenarioError((Problem(thing, "nothing of that name", "check the path", name),)) from None
    except (OSError, ValueError) as error:
        found = f"one that cannot be opened ({getattr(error, 'strerror', None) or error})"
        raise ScenarioError((Problem(thing, found, "check its permissions and its name", name),)) from None
    if len(content) > LARGEST_BYTES:
        raise ScenarioError((too_large(name),))
    return content


def _text(content: bytes, name: str) -> str:
    """Content as text."""
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        column = error.start - content.rfind(b"\n", 0, error.start)
        found = f"the byte 0x{content[error.start]:02X}"
        problem = Problem("text in UTF-8", found, "save the file as UTF-8", f"{name}:{line}:{column}")
        raise ScenarioError((problem,)) from None


def encoded(text: str, name: str) -> bytes:
    """Text in UTF-8; half a character, which JSON can bring in by way of a result, has no place in it."""
    try:
        return text.encode()
    except UnicodeEncodeError as error:
        found = f"half of a character, U+{ord(text[error.start]):04X}"
        raise ScenarioError((Problem("text in UTF-8", found, "save the text as UTF-8", name),)) from None


def too_large(name: str) -> Problem:
    """Say that a file is too large."""
    return Problem("a file of at most 1 MB", "a larger one", "take out what does not belong in it", name)
