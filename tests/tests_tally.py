"""The tally of compared values, shared by the tests and printed by conftest at the end."""

from collections import defaultdict

#: (group, how it is known) -> list of (share of the tolerance used, label).
TALLY = defaultdict(list)


def record_published(group, verified, used_tolerance, label):
    """Note one comparison with a published, computed or common-practice value."""
    TALLY[(group, verified)].append((used_tolerance, label))


def tally_to_send():
    """Return the tally in plain values, as a worker can send them."""
    return [[*key, float(share), str(label)] for key, rows in TALLY.items() for share, label in rows]


def add_tally(sent):
    """Add what a worker has sent."""
    for group, verified, share, label in sent:
        record_published(group, verified, share, label)
