"""Prints, at the end of a run, the tally of values compared with a source, apart by how each is known.

Hypothesis draws the same examples in every run, so that a run can be repeated; to search further, run
``pytest --hypothesis-profile=explore``. With several workers (``-n``), each sends its part of the tally.
"""

import sys
from collections import Counter
from pathlib import Path

import pytest
from hypothesis import settings

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE / "browser"), str(HERE / "published")]

from tests_tally import TALLY, add_tally, tally_to_send  # noqa: E402

settings.register_profile("repeatable", derandomize=True, database=None, deadline=None)
settings.register_profile("explore", max_examples=1000, deadline=None)
settings.load_profile("repeatable")


def pytest_configure(config):
    config.option.loadscopereorder = False  # the order below is the order in which workers take modules


def pytest_collection_modifyitems(items):
    """The browser first, since it waits the longest, then the modules with the most tests: no worker is left with a long one."""
    tests = Counter(item.path for item in items)
    items.sort(key=lambda item: ("browser" not in item.keywords, -tests[item.path], str(item.path)))


def pytest_sessionfinish(session):
    if hasattr(session.config, "workeroutput"):
        session.config.workeroutput["tally"] = tally_to_send()


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node):
    add_tally(getattr(node, "workeroutput", {}).get("tally", []))


def pytest_terminal_summary(terminalreporter):
    if not TALLY:
        return
    write = terminalreporter.write_line
    write("")
    write("values compared with a source, apart by how each is known (only 'seen' is a published check):")
    for (group, verified), rows in sorted(TALLY.items()):
        worst = max(rows)
        write(
            f"  {group:<24} {verified:<16} {len(rows):>5} hold; worst uses {100 * worst[0]:.0f} % of its tolerance "
            f"({worst[1]})"
        )
