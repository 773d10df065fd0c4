"""Shared by all tests: the tally of published values, printed apart by how each is known."""

from collections import defaultdict

#: How each compared value is known -> list of (relative difference over tolerance, label).
TALLY = defaultdict(list)


def record_published(group, verified, used_tolerance, label):
    """Note one comparison with a published, computed or common-practice value."""
    TALLY[(group, verified)].append((used_tolerance, label))


def pytest_terminal_summary(terminalreporter):
    if not TALLY:
        return
    write = terminalreporter.write_line
    write("")
    write("values compared with a source, apart by how each is known (only 'seen' is a published check):")
    for (group, verified), rows in sorted(TALLY.items()):
        worst = max(rows)
        write(f"  {group:<22} {verified:<16} {len(rows):>5} hold; worst uses {100 * worst[0]:.0f} % of its tolerance "
              f"({worst[1]})")
