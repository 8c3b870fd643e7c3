"""The check by stages: it refuses what the whole check refuses, and stops where it has found something."""

from optimizer.brief import RULES, Relation
from optimizer.check import CHECKS, STAGES, CheckCase, first_findings
from optimizer.derived import Derived
from optimizer.layout import Layout, placed_of
from tests.yards import KEPT_RELATIONS, plain_layout, plain_rooms, plain_yard, stand


def case_of(layout=None, *relations):
    return CheckCase(Derived(plain_yard(*relations), placed_of(plain_rooms(), layout or plain_layout())))


def test_every_rule_is_checked_in_some_stage():
    """No rule can be forgotten: those whose own check is in no stage are steps, which have a check in two."""
    staged = {check for checks in STAGES.values() for check in checks}
    assert {rule for rule in RULES if CHECKS[rule] not in staged} == {"steps_clear"}


def test_what_holds_passes_all_stages():
    """Relations kept, no finding in any stage."""
    assert first_findings(case_of(None, *KEPT_RELATIONS)) == ()


def test_later_stages_are_not_worked_out():
    """Two rooms on each other are refused before any way is laid, and all findings of that stage are told."""
    case = case_of(plain_layout(stand("nook", 25, 17, 8, 7), stand("fire", 2, 2, 8, 8)))
    rules = {finding.rule for finding in first_findings(case)}
    assert {"no_overlap", "fire_clear"} <= rules
    assert not {"laid", "network", "levelled"} & set(vars(case.derived))


def test_a_refusal_on_foot_lays_no_way():
    """A relation on foot that is missed is found on the open ground."""
    case = case_of(None, Relation(("nook", "kitchen door"), "near", within_ft=4, by="walking"))
    assert [finding.rule for finding in first_findings(case)] == ["near"]
    assert "network" in vars(case.derived)
    assert "laid" not in vars(case.derived)


def test_an_empty_layout_misses_what_is_required():
    """Nothing at all can be checked without a fault."""
    assert [finding.rule for finding in first_findings(case_of(Layout(())))] == ["required_rooms"]
