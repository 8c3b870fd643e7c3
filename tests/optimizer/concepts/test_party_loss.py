"""The score's loss for guests without a place."""

from dataclasses import replace

import pytest

from optimizer.appraisal import PartyMeasures, appraise
from optimizer.catalogue import book_for, rates
from optimizer.concepts import losses_of
from optimizer.derived import Derived
from optimizer.layout import placed_of
from tests.yards import plain_layout, plain_rooms, plain_yard


def party_loss(without):
    yard, rooms = plain_yard(), plain_rooms()
    appraisal = replace(
        appraise(Derived(yard, placed_of(rooms, plain_layout())), book_for("USD")), party=PartyMeasures(without=without)
    )
    return dict(losses_of(yard, rooms, appraisal, left_out=(), worth_rate=0.0, wish_weights=0.0))["party"]


@pytest.mark.parametrize("people", [0, 1, 7])
def test_a_loss_for_each_person_without_a_place(people):
    assert party_loss(people) == pytest.approx(rates().party * people)
