"""What tests of the page do and read: they open it, press, wait, and read its words and its address."""

from time import monotonic, sleep

from ui.state import store


def words(tab):
    """Everything that the page says outside its widgets, with its errors."""
    said = [*(part.proto.body for part in tab.get("html")), *(part.value for part in tab.error)]
    return " ".join([*said, *(part.value for part in tab.subheader), *(part.value for part in tab.header)])


def named(tab, key):
    """What the address says under a key: a list of one where it was given, text where the page has set it."""
    value = tab.query_params[key]
    return value if isinstance(value, str) else value[0]


def opened(tab):
    """The yard opened, before any search."""
    tab.run().button(key="open_yard").click().run()
    assert not tab.exception
    return tab


def at(tab, step):
    """The page at a step."""
    return _chosen(tab, "step", step)


def in_part(tab, name):
    """The page with this part of the opened concept."""
    return _chosen(tab, "part", name)


def holding(tab, part):
    """The page with this part of where rooms are held."""
    return _chosen(tab, "holding", part)


def _chosen(tab, key, value):
    tab.segmented_control(key=key).set_value(value).run()
    assert not tab.exception
    return tab


def pressed(tab, start):
    """The page after the press of the button of that key, else of the first whose key begins so."""
    found = [button for button in tab.button if button.key == start] or [
        button for button in tab.button if button.key.startswith(start)
    ]
    found[0].click().run()
    assert not tab.exception
    return tab


def search_ended(tab, *, button="find", seconds=15.0):
    """Press the button and wait until the search is over, as the timer of the page would."""
    tab.button(key=button).click().run()
    end = monotonic() + seconds
    while "Searching" in words(tab) and monotonic() < end:
        sleep(0.1)
        tab.run()
    assert not tab.exception
    return tab


def same_address(tab, project):
    """Give another tab with the address of this one."""
    other = type(tab).from_file(project / "ui" / "app.py", default_timeout=20)
    for key, values in tab.query_params.items():
        other.query_params[key] = values
    return other.run()


def version(tab):
    """The version that the page is at."""
    return store().revisions.get(int(named(tab, "version")))
