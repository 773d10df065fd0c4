"""The tally at the end of a run is complete, whoever ran the tests."""

import numpy as np
import tests_tally
from execnet.gateway_base import dumps, loads


def test_what_workers_send_adds_up_to_one_tally(monkeypatch):
    """Two workers share a group: the line through which they send takes plain values only."""
    sent = []
    for shares in ((0.5, np.float64(0.25)), (1.0,)):
        monkeypatch.setattr(tests_tally, "TALLY", tests_tally.defaultdict(list))
        for share in shares:
            tests_tally.record_published("spans", "seen", share, np.str_("a row"))
        sent.append(loads(dumps(tests_tally.tally_to_send())))
    monkeypatch.setattr(tests_tally, "TALLY", tests_tally.defaultdict(list))
    for part in sent:
        tests_tally.add_tally(part)
    assert tests_tally.TALLY == {("spans", "seen"): [(0.5, "a row"), (0.25, "a row"), (1.0, "a row")]}
