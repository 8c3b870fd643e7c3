"""Words from files never become markup."""

import pytest

from ui.components import Markup, element, image, plain


def test_text_and_attributes_are_escaped():
    """A name with a tag or a quote in it stays text."""
    made = element("p", "<script>x</script>", title='"><b>')
    assert made == '<p title="&quot;&gt;&lt;b&gt;">&lt;script&gt;x&lt;/script&gt;</p>'


def test_elements_nest():
    """An element in an element is not escaped again, and joins plain text that is."""
    assert element("p", element("b", "a"), " & c", css="lead") == '<p class="lead"><b>a</b> &amp; c</p>'


def test_drawing_is_shown_as_a_picture():
    """A drawing becomes the data of a picture, where no script of it can run; its words are escaped."""
    made = image("<svg><script/></svg>", words='"x"')
    assert isinstance(made, Markup)
    assert made.startswith('<img alt="&quot;x&quot;" src="data:image/svg+xml;base64,')
    assert "script" not in made


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("![x](http://192.0.2.1/x)", r"\!\[x\]\(http\://192\.0\.2\.1/x\)"),
        ("Sketch: first idea", "Sketch: first idea"),
        ("a :smile: *b* $c$", r"a \:smile: \*b\* \$c\$"),
    ],
)
def test_words_of_a_file_make_no_marks(text, said):
    """In titles and messages a picture, a smile or a formula of a file is shown as it is written."""
    assert plain(text) == said
