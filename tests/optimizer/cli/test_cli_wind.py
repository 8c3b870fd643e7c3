"""The command that reads a file of weather."""

import pytest
import yaml

from optimizer.cli import main
from optimizer.cli.wind import months_of, rose_line
from optimizer.errors import InputError
from optimizer.scenario import read_scenario
from optimizer.site import WindRose
from tests.small_yard import SMALL
from tests.weather_file import write_epw


def call(capsys, *arguments):
    """Exit status, standard output and standard error of a call."""
    status = main(["wind", *map(str, arguments)])
    return (status, *capsys.readouterr())


@pytest.fixture
def summer_west(tmp_path):
    """West wind from May to September, south wind in all other months."""
    return write_epw(tmp_path / "invented.epw", lambda at: (270 if 5 <= at.month <= 9 else 180, 3))


def test_the_line_stands_in_a_scenario(capsys, summer_west):
    """What is printed, put under `site:` as it is, reads as the rose."""
    status, out, err = call(capsys, summer_west)
    assert (status, err) == (0, "")
    lines = out.split("\n\n")[0]
    assert yaml.safe_load(lines)["wind_rose"][12] == 1
    text = SMALL.replace("site:\n", "site:\n" + "".join(f"  {line}\n" for line in lines.splitlines()))
    assert read_scenario(text, "yard.yaml").site.wind_rose == WindRose((0.0,) * 12 + (1.0,) + (0.0,) * 3)


def test_the_table_names_sectors_and_calm(capsys, summer_west):
    """All sixteen sectors and calm, in per cent."""
    _, out, _ = call(capsys, summer_west)
    table = [line.split() for line in out.split("\n\n")[1].splitlines()]
    assert len(table) == 18
    assert ["W", "100.0%"] in table
    assert table[-1][:2] == ["calm", "0.0%"]


@pytest.mark.parametrize(("months", "sector"), [("5-9", 12), ("11-2", 8), ("10", 8), ("6, 7", 12)])
def test_months_are_chosen(capsys, summer_west, months, sector):
    """Also over the new year."""
    _, out, _ = call(capsys, summer_west, "--months", months)
    assert yaml.safe_load(out.split("\n\n")[0])["wind_rose"][sector] == 1


def test_the_south_has_its_summer_then(capsys, tmp_path):
    """Below the equator the season without being asked is November to March."""
    path = write_epw(tmp_path / "south.epw", lambda at: (270 if 5 <= at.month <= 9 else 180, 3), latitude=-33.0)
    _, out, _ = call(capsys, path)
    assert "months 11, 12, 1, 2, 3" in out
    assert yaml.safe_load(out.split("\n\n")[0])["wind_rose"][8] == 1


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--months", "0-3"), "months from 1 to 12"),
        (("--months", "may"), "found 'may'"),
        (("--from", "4pm"), "found '4pm'"),
        (("--to", "24:30"), "found '24:30'"),
        (("--from", "22:00"), "two different hours"),
        (("--from", "16:00", "--to", "16:20"), "a window of at least an hour"),
    ],
)
def test_a_wrong_wish_is_told(capsys, summer_west, arguments, words):
    """Exit status 2 and one message that says what was expected."""
    status, out, err = call(capsys, summer_west, *arguments)
    assert (status, out) == (2, "")
    assert words in err


def test_a_bad_file_is_told(capsys, tmp_path):
    """Exit status 2, the file's name, and what to do."""
    path = tmp_path / "notes.txt"
    path.write_text("none", encoding="utf-8")
    status, out, err = call(capsys, path)
    assert (status, out) == (2, "")
    assert "notes.txt: expected an EPW file" in err
    assert "give the .epw of a place nearby" in err


def test_shares_are_rounded_down():
    """Three thirds do not add up to more than everything; a plain tenth stays one."""
    line = rose_line(WindRose((1 / 3,) * 3 + (0.0,) * 13))
    assert line.startswith("wind_rose: [0.3333, 0.3333, 0.3333, 0, ")
    assert rose_line(WindRose((0.1, 0.29) + (0.0,) * 14)).startswith("wind_rose: [0.1, 0.29, 0, ")


def test_months_are_named_once():
    """A month that is named twice counts once; nothing is no month."""
    assert months_of("4,5,4-6") == (4, 5, 6)
    with pytest.raises(InputError):
        months_of("")
