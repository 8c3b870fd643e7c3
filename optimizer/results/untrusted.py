"""Values out of a file that may hold anything: each is asked for by name and type, and refused with its place."""

import math
import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Final, NoReturn

from optimizer.errors import Problem, ResultError

FARTHEST_FT: Final = 100_000.0
"""No yard reaches farther; geometry on greater numbers loses its exactness."""
_MONEY: Final = re.compile(r"-?[0-9]{1,12}\.[0-9]{2}")
_LARGEST: Final = 1e12
_ADVICE: Final = "make the result again with the options command"


def refuse(expected: str, found: object, where: str, *, advice: str = _ADVICE) -> NoReturn:
    """Raise the ResultError of one problem."""
    raise ResultError((Problem(expected, shown(found), advice, where=where),))


def shown(value: object) -> str:
    """Word a value for a message: short, on one line."""
    match value:
        case None:
            return "nothing"
        case dict():
            return "an object"
        case list():
            return f"a list of {len(value)}"
        case _:
            text = repr(value)
            return text if len(text) <= 60 else f"{text[:57]}..."


@dataclass(frozen=True, slots=True)
class Record:
    """An object of the file and where it stands; every method raises ResultError unless the value is as asked."""

    values: dict[str, Any]
    where: str

    def text(self, key: str, *, longest: int = 2000) -> str:
        """Give text of at most `longest` characters."""
        value = self.values.get(key)
        if isinstance(value, str) and len(value) <= longest:
            return value
        refuse(f"text of at most {longest} characters", value, self._at(key))

    def one_of(self, key: str, allowed: tuple[str, ...]) -> Any:
        """Give one of the allowed words."""
        value = self.values.get(key)
        if isinstance(value, str) and value in allowed:
            return value
        refuse(" | ".join(allowed), value, self._at(key))

    def number(self, key: str, *, largest: float = _LARGEST) -> float:
        """Give a finite number of at most `largest`, either sign."""
        return _number(self.values.get(key), self._at(key), largest)

    def number_or_none(self, key: str) -> float | None:
        """Give a finite number, or null."""
        return None if self.values.get(key) is None else self.number(key)

    def whole(self, key: str) -> int:
        """Give a whole number."""
        value = self.values.get(key)
        if isinstance(value, int) and not isinstance(value, bool) and abs(value) <= _LARGEST:
            return value
        refuse("a whole number", value, self._at(key))

    def truth(self, key: str) -> bool:
        """Give true or false."""
        value = self.values.get(key)
        if isinstance(value, bool):
            return value
        refuse("true or false", value, self._at(key))

    def money(self, key: str) -> Decimal:
        """Give money written as text with two decimals."""
        value = self.values.get(key)
        if isinstance(value, str) and _MONEY.fullmatch(value):
            return Decimal(value)
        refuse('money as text with two decimals, such as "1250.00"', value, self._at(key))

    def record(self, key: str) -> "Record":
        """Give an object."""
        value = self.values.get(key)
        if isinstance(value, dict):
            return Record(value, self._at(key))
        refuse("an object", value, self._at(key))

    def record_or_none(self, key: str) -> "Record | None":
        """Give an object, or null."""
        return None if self.values.get(key) is None else self.record(key)

    def records(self, key: str, *, most: int = 10_000) -> tuple["Record", ...]:
        """Give a list of objects."""
        at = self._at(key)
        items = tuple(enumerate(self._list(key, most)))
        return tuple(
            Record(item, f"{at}[{i}]") if isinstance(item, dict) else refuse("an object", item, f"{at}[{i}]")
            for i, item in items
        )

    def texts(self, key: str) -> tuple[str, ...]:
        """Give a list of texts."""
        values = self._list(key, 10_000)
        for i, value in enumerate(values):
            if not isinstance(value, str):
                refuse("text", value, f"{self._at(key)}[{i}]")
        return tuple(values)

    def pair(self, key: str) -> tuple[str, str]:
        """Give two texts."""
        values = self.texts(key)
        if len(values) == 2:
            return values[0], values[1]
        refuse("a list of two names", list(values), self._at(key))

    def pairs(self, key: str) -> tuple[tuple[str, str], ...]:
        """Give a list of two texts each."""
        at = self._at(key)
        return tuple(Record({"pair": p}, f"{at}[{i}]").pair("pair") for i, p in enumerate(self._list(key, 10_000)))

    def points(self, key: str, *, largest: float) -> tuple[tuple[float, float], ...]:
        """Give a list of [x, y]."""
        return tuple(_point(value, f"{self._at(key)}[{i}]", largest) for i, value in enumerate(self._list(key, 10_000)))

    def _list(self, key: str, most: int) -> list[Any]:
        value = self.values.get(key)
        if isinstance(value, list) and len(value) <= most:
            return value
        refuse(f"a list of at most {most}", value, self._at(key))

    def _at(self, key: str) -> str:
        return f"{self.where}.{key}"


def _number(value: object, where: str, largest: float) -> float:
    if isinstance(value, int | float) and not isinstance(value, bool) and abs(value) <= largest:
        return float(value)
    size = "" if largest == _LARGEST or not math.isfinite(largest) else f" between -{largest:g} and {largest:g}"
    refuse(f"a number{size}", value, where)


def _point(value: object, where: str, largest: float) -> tuple[float, float]:
    if isinstance(value, list) and len(value) == 2:
        return _number(value[0], where, largest), _number(value[1], where, largest)
    refuse("a point [x, y]", value, where)
