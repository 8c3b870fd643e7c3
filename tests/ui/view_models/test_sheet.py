"""The opened concept and its line in the list, in ready words."""

from dataclasses import replace
from decimal import Decimal

from optimizer.appraisal import CostRange
from optimizer.brief import RULES, Trip
from optimizer.check import Finding
from optimizer.concepts import DiffersBy, Idea, LeftOut, Proof
from optimizer.concepts.whys.left_out import NOT_FOUND
from optimizer.layout import Layout
from tests.sample_run import sample_option, sample_scenario
from ui.view_models import card, sheet, words_of


def opened(**changes):
    """Sheet of the made-up concept with some of it changed."""
    return sheet(replace(sample_option(), **changes), sample_scenario())


def listed_as(option, *trips):
    """Its line in the list of a brief with these trips."""
    scenario = sample_scenario()
    scenario = replace(scenario, brief=replace(scenario.brief, trips=trips))
    return card(option, scenario, words_of(scenario))


def test_card_says_the_figures_of_the_option():
    """Cost, walking, worth, seats and what is left out are those of the option."""
    shown = listed_as(sample_option(rank=3))
    assert (shown.title, shown.cost, shown.walking) == ("Concept 3", "$7,769", "1,234 ft")
    assert (shown.worth, shown.seats) == ("11", "8")
    assert shown.left_out == ("outdoor kitchen", "fire feature", "water reserve")
    assert shown.reason == "Shortest way from the kitchen door."


def test_card_says_of_how_many_trips_its_walking_is():
    """The sample has a way to the table and none to the kitchen, which it does without."""
    table, kitchen = (Trip("kitchen door", end, 2) for end in ("gathering area", "outdoor kitchen"))
    assert listed_as(sample_option(), table).walking_words == "1,234 ft walking"
    assert listed_as(sample_option(), table, kitchen).walking_words == "1,234 ft walking on 1 of 2 trips"


def test_card_names_the_idea():
    """With a capital; empty for none."""
    idea = Idea("a court and a garden room", "a court outside the door, and the nook out in the garden")
    assert listed_as(replace(sample_option(), idea=idea)).idea == "A court and a garden room"
    assert listed_as(sample_option()).idea == ""


def test_paragraph_says_what_it_gives_costs_and_leaves():
    """The paragraph has the reason, seats, phases against the ceiling and what is left out."""
    said = opened().paragraph
    assert said.startswith("Shortest way from the kitchen door. It seats 8")
    assert "Phase 1 costs $7,769 of an all-in limit of $130,000; later phases $16,100." in said
    assert "It does without outdoor kitchen, fire feature and water reserve." in said


def test_every_hard_rule_is_listed_as_kept():
    """Each rule of the registry is shown once, kept where the check found nothing; to an owner in an owner's words."""
    checks = sheet(sample_option(), sample_scenario(), for_designer=True).checks
    assert [check.sentence for check in checks] == [rule.sentence for rule in RULES.values()]
    assert "Phase 1, with its sum for surprises, costs no more than the all-in limit." in {
        check.sentence for check in opened().checks
    }
    assert all(check.is_kept for check in checks)


def test_broken_rule_is_not_hidden():
    """A finding shows its rule as broken, with its words, and no other."""
    finding = Finding("no_overlap", ("a", "b"), 4.0, "sq ft", "a overlaps b")
    broken = [check for check in opened(findings=(finding,)).checks if not check.is_kept]
    assert [(check.sentence, check.words) for check in broken] == [("No two rooms overlap.", "A overlaps b.")]


def test_proof_is_claimed_only_where_there_is_one():
    """A proven arrangement says so; a bounded one says how much might still be saved, and never `proven:`."""
    assert (
        opened().proof
        == "Proven: by the solver's own count, nothing better exists with these rooms in this arrangement."
    )
    bounded = opened(proof=Proof("bounded", 30_500.0, 29_000.0)).proof
    assert bounded.startswith("Not proven")
    assert "$1,500" in bounded


def test_reserve_says_that_it_is_kept_free():
    """A room of a later phase says that its place is held; one of the first phase does not."""
    option = sample_option()
    nook = option.layout.of("quiet nook")
    layout = replace(option.layout, placements=(nook, replace(nook, room="water reserve", choice="modest")))
    assert [room.meaning for room in opened(layout=layout).rooms] == ["two chairs", "modest; kept free for phase 2"]


def test_a_room_that_grew_has_both_its_sizes():
    """What is built, and what its choice asks for."""
    layout = sample_option().layout
    first, *others = layout.placements
    room = opened(layout=Layout((first.grown_to("+x", first.right_ft + 2), *others))).rooms[0]
    assert room.value == f"{first.width_ft + 2:g} ft × {first.depth_ft:g} ft"
    assert room.meaning.endswith(
        f"; {first.width_ft:g} ft × {first.depth_ft:g} ft before it was made larger to meet a line"
    )


def test_what_is_left_out_is_said_once():
    """A room that the reason names as left out is not named again; the others are."""
    said = opened(reason="does without the fire feature").paragraph
    assert said.count("fire feature") == 1
    assert "It does without outdoor kitchen and water reserve." in said


def test_the_verdict_says_rules_money_and_rooms_in_a_line():
    """130,000 less 7,769 is 122,231; three wished rooms are left out; a broken rule comes first."""
    assert opened().verdict == (
        "Keeps every rule · $122,231 under the all-in limit · without outdoor kitchen, fire feature and water reserve"
    )
    finding = Finding("no_overlap", ("a", "b"), 4.0, "sq ft", "a overlaps b")
    assert opened(findings=(finding,)).verdict.startswith("Breaks rules in 1 place · ")


def test_all_that_breaks_a_rule_is_told():
    """Two pairs that overlap are two places of one broken rule."""
    findings = tuple(Finding("no_overlap", ("a", name), 4.0, "sq ft", f"a overlaps {name}") for name in "bc")
    told = opened(findings=findings)
    assert told.verdict.startswith("Breaks rules in 2 places · ")
    assert [check.words for check in told.checks if not check.is_kept] == ["A overlaps b; a overlaps c."]


def test_no_command_is_named_to_whoever_has_a_button():
    """The page asks why itself."""
    told = opened(left_out=(LeftOut("fire feature", NOT_FOUND),)).left_out
    assert [one.value for one in told] == ["No plan with it was found in this run; why not was not asked yet."]


def test_what_phase_1_may_come_to_is_money_in_this_readers_words():
    """Rounded as to an owner, in the currency; for surprises to an owner, contingency to a designer."""
    option = sample_option()
    cost = replace(option.appraisal.cost, ranges=((1, CostRange(Decimal(104_610), Decimal(146_200), 4)),))
    ranged = replace(option, appraisal=replace(option.appraisal, cost=cost))
    first = sheet(ranged, sample_scenario()).figures[0]
    assert first.meaning == "expect $105,000 to $145,000; the sum for surprises included"
    to_designer = sheet(ranged, sample_scenario(), for_designer=True).figures[0]
    assert to_designer.meaning == "expect $105,000 to $145,000; contingency included"
    assert opened().figures[0].meaning == "the sum for surprises included"
    money = sheet(ranged, sample_scenario()).deciding[0]
    assert "Expect $105,000 to $145,000 until soil" in money.why


def test_how_it_differs_is_not_said_twice():
    """The reason often says it already."""
    differs = DiffersBy(0.2, "no fire feature, nook by the oak")
    assert "Compared with" in opened(differs_by=differs).paragraph
    assert (
        "Compared with" not in opened(differs_by=differs, reason="No court; no fire feature; nook by the oak").paragraph
    )
