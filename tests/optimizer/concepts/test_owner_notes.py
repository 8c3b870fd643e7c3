"""What an owner is told below a plan: money and safety in short, and nothing of safety lost."""

from dataclasses import replace

from optimizer.concepts import cautions_for
from optimizer.concepts.case import Case
from optimizer.concepts.owner_notes import owner_notes
from optimizer.concepts.owner_words import in_owners_words, with_signs
from optimizer.concepts.words import choice_words
from optimizer.layout import Layout
from tests.sample_run import sample_option, sample_scenario


def test_money_and_safety_are_said_once():
    """Each hazard that the full cautions name is named; what is special to the plan stays word for word."""
    scenario, option = sample_scenario(), sample_option()
    placed = Case.of(scenario).placed(option.layout)
    cost = option.appraisal.cost
    special = "Later hot tub: in the water reserve its water comes 1'-9\" too near to the drive."
    full = (*cautions_for(scenario, placed, (), cost), special)
    notes = owner_notes(scenario, replace(option, cautions=full))
    said = " ".join(notes.care)
    for hazard in ("Gas and electricity", "Slopes", "retaining walls", "drainage", "structures", "811", "licensed"):
        assert hazard in said
    assert notes.care[-1] == special
    assert len(notes.care) + len(notes.money) < len(full) + 4
    assert len(set(notes.care)) == len(notes.care)
    assert "invented" in notes.money[-1]
    assert not any(" USD" in note or "ceiling" in note for note in (*notes.money, *notes.care))


def test_hazards_go_by_what_is_there():
    """Fire where there is a flame, water where ground is held for it."""
    scenario, option = sample_scenario(), sample_option()
    none = owner_notes(scenario, replace(option, layout=Layout(()), cautions=()))
    assert not [note for note in none.care if note.startswith(("Fire", "Water"))]
    assert [note for note in none.care if note.startswith("Gas and electricity")]
    kinds = {room.name: room.kind for room in scenario.brief.rooms}
    every = owner_notes(scenario, replace(option, cautions=()))
    has_flame = any(kinds[place.room] in {"fire", "kitchen"} for place in option.layout.placements)
    assert any(note.startswith("Fire") for note in every.care) == has_flame


def test_words_of_owners():
    assert with_signs("about 70,000 to 100,000 USD, not 5 USD", "USD") == "about $70,000 to $100,000, not $5"
    assert with_signs("expect 70 to 90 CHF", "CHF") == "expect 70 to 90 CHF"
    assert in_owners_words("the contingency passes the ceiling") == "the sum for surprises passes the all-in limit"
    assert [choice_words(label) for label in ("one size", "one size, screened", "modest")] == ["", "screened", "modest"]
