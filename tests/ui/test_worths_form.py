"""What you would miss most, as a person answers it: pair by pair, a contradiction, and what is taken."""

from optimizer.worths import Answer, things_of
from tests.ui.on_the_page import opened, pressed, version, words
from ui.state import store
from ui.yards import scenario_of


def said(tab):
    """Answers that count for the version of the page."""
    return store().answers.of_revision(version(tab))


def test_answers_become_worths_of_a_new_version(searches, tab):
    """One press an answer; what is taken is in the file with the form's other answers, and nothing is asked anew."""
    opened(tab)
    first = version(tab)
    assert "Which would you miss more: gathering area (table for eight), or outdoor kitchen?" in words(tab)
    pressed(tab, "miss_much_other")
    (answer,) = said(tab)
    assert answer.how == "much_other"
    assert "outdoor kitchen much more than gathering area (table for eight)" in words(tab)
    assert "Which would you miss more: gathering area (table for eight), or outdoor kitchen" not in words(tab)
    tab.number_input(key=f"party_{first.id}").set_value(30).run()
    pressed(tab, "take_worths")
    now = version(tab)
    assert now.parent_id == first.id
    assert now.what.startswith("30 guests at a party; What you would miss: outdoor kitchen 9 → ")
    worths = {thing.name: thing.worth for thing in things_of(scenario_of(now).brief)}
    assert worths[answer.other] >= 2 * worths[answer.one]
    assert said(tab) == (answer,)
    assert "The file says the same already." in words(tab)
    assert "take_worths" not in {button.key for button in tab.button}


def test_a_contradiction_is_told_and_an_answer_taken_back(searches, tab):
    """Nothing can be taken until one of the answers is; then the next pair is asked again."""
    opened(tab)
    kitchen, fire, nook = "outdoor kitchen", "fire feature", "quiet nook (two chairs)"
    for one, other in ((kitchen, fire), (fire, nook), (nook, kitchen)):
        store().answers.give(version(tab), Answer(one, other, "one"))
    tab.run()
    assert "These answers cannot hold together" in tab.error[0].value
    keys = {button.key for button in tab.button}
    assert {"instead_0", "instead_1", "instead_2"} <= keys
    assert not keys & {"take_worths", "miss_same"}
    pressed(tab, "instead_1")
    assert not tab.error
    assert len(said(tab)) == 2
    assert "miss_same" in {button.key for button in tab.button}
