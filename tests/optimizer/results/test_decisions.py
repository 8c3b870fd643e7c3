"""Decisions as a table: written by the page, read by the command, and told in a revision note."""

from dataclasses import replace

import pytest

from optimizer.errors import InputError
from optimizer.layout import Layout
from optimizer.results.decisions import DecisionRow, decision_lines, decisions_csv, read_decisions
from optimizer.results.revision import revision_note
from tests.sample_run import sample_option, sample_scenario

ROWS = (
    DecisionRow("2026-05-02 10:15", 2, "All-in limit 140,000", 'The kitchen, with its "good" grill,\nis worth it.'),
    DecisionRow("2026-05-03 09:00", 3, "Held: quiet nook"),
)


def test_a_table_comes_back(tmp_path):
    """Every word but the break of a line, which a table on one line cannot keep."""
    path = tmp_path / "decisions.csv"
    path.write_text(decisions_csv(ROWS), encoding="utf-8")
    first, second = read_decisions(path)
    assert first == replace(ROWS[0], reason=ROWS[0].reason.replace("\n", " "))
    assert second == ROWS[1]


def test_no_cell_is_taken_for_a_formula():
    """A reason may begin with any sign."""
    assert "'=SUM(A1)" in decisions_csv([replace(ROWS[0], reason="=SUM(A1)")])


@pytest.mark.parametrize("reason", ["- too dear", "=1+1", "'twas the shade", "", "plain words"])
def test_the_sign_that_a_spreadsheet_needs_is_no_word_of_the_reason(tmp_path, reason):
    """A reason is read back as it was given, whatever it begins with."""
    path = tmp_path / "decisions.csv"
    path.write_text(decisions_csv([replace(ROWS[0], reason=reason)]), encoding="utf-8")
    assert read_decisions(path)[0].reason == reason


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "expected columns when, version, what, reason, found 'nothing'"),
        ("a,b\n", "expected columns when, version, what, reason, found 'a, b'"),
        ("when,version,what,reason\nx,one,y,z\n", "decisions.csv:2: expected when, version as a number"),
        ('when,version,what,reason\n"x', "expected a table (CSV)"),
    ],
)
def test_what_is_no_such_table_is_told(tmp_path, text, words):
    path = tmp_path / "decisions.csv"
    path.write_text(text)
    with pytest.raises(InputError, match=r"take decisions.csv as the page") as caught:
        read_decisions(path)
    assert words in str(caught.value)


def test_a_file_that_is_not_there_is_told(tmp_path):
    with pytest.raises(InputError, match="expected a table of decisions, found nothing of that name"):
        read_decisions(tmp_path / "none.csv")


def test_a_note_has_rooms_figures_and_decisions():
    """A nook 10 ft farther on, and why."""
    before = sample_option()
    nook = before.layout.of("quiet nook")
    moved = replace(nook, x_ft=nook.x_ft + 10)
    layout = Layout(tuple(moved if place is nook else place for place in before.layout.placements))
    after = replace(before, layout=layout, appraisal=replace(before.appraisal, walking_ft=1300.0))
    note = revision_note(sample_scenario(), before, after, ROWS)
    assert "  quiet nook moved 10.0 ft to the " in note
    assert "  walking ft: 1,234, then 1,300 (+66)" in note
    assert "  2026-05-02 10:15, version 2: All-in limit 140,000. Why: The kitchen" in note
    assert "  2026-05-03 09:00, version 3: Held: quiet nook.\n" in note
    assert "local codes and licensed practice decide" in note
    assert "Decided" not in revision_note(sample_scenario(), before, after)


def test_a_decision_without_a_reason_is_told_without():
    (line,) = decision_lines(ROWS[1:])
    assert line == "2026-05-03 09:00, version 3: Held: quiet nook."
