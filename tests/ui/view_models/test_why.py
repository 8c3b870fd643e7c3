"""The answer to a question, in words."""

import json

from tests.sample_run import sample_scenario
from tests.ui.sample_concepts import WHY
from ui.view_models import told, words_of


def said(**changed):
    return told(json.dumps({**WHY, **changed}).encode(), words_of(sample_scenario()))


def test_owners_read_their_own_words():
    answer = said()
    assert answer.is_answered
    assert "the all-in limit is $130,000" in answer.answer
    assert answer.ways_out[0].text == "Raise the all-in limit to $140,000."
    assert answer.ways_out[0].patch == (("replace", "/budget/ceiling", 140000),)


def test_rules_name_the_rooms_that_their_sentence_does_not():
    rules = [
        {"id": "near", "sentence": "Nook within 12 ft of fire.", "rooms": ["fire"]},
        {"id": "apart", "sentence": "Fires keep their distance.", "rooms": ["fire", "nook"]},
        {"id": "money", "sentence": "Phase 1 keeps its ceiling.", "rooms": []},
    ]
    assert said(rules=rules).rules == (
        "Nook within 12 ft of fire.",
        "Fires keep their distance. For fire and nook.",
        "Phase 1 keeps its all-in limit.",
    )
