"""Questions that are refused, since there is nothing to answer."""

import pytest

from optimizer.concepts.whys.question import Question, refuse_unanswerable
from optimizer.errors import InputError
from tests.optimizer.concepts.whys.tiny_yard import TEXT, tiny
from tests.small_yard import changed

CASE = tiny(changed("kind: nook\n", "kind: nook\n      cover: true\n", TEXT))


@pytest.mark.parametrize("choice", ["large", "large, covered", "small, covered"])
def test_more_than_the_smallest(choice):
    """A larger size, or a roof to the smallest."""
    refuse_unanswerable(CASE, Question("larger", "nook", choice=choice), None)


def test_no_more_than_the_smallest():
    """Refused with the sizes that are larger."""
    with pytest.raises(InputError, match=r"larger than small, found 'small'; larger is large$"):
        refuse_unanswerable(CASE, Question("larger", "nook", choice="small"), None)
