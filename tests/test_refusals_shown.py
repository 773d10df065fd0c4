"""A no as a reader meets it: one sentence in a notebook, without the way through the code."""

import pytest
from IPython.core.interactiveshell import InteractiveShell
from IPython.utils.capture import capture_output
from traitlets.config import Config

from structlib.ground.refusals import BadInput, NotAsked, OutsideRule


def _shown(cell):
    """What a cell puts on the page when it fails."""
    shell = InteractiveShell(config=Config(HistoryManager={"enabled": False}))
    with capture_output() as caught:
        shell.run_cell(cell)
    return caught.stdout + caught.stderr


def test_an_error_in_a_house_file_is_one_line_on_the_page(tmp_path):
    path = tmp_path / "house.toml"
    path.write_text('name = "A house"\n[[levels]]\nname = "upper"\nkind = "flor"\n', encoding="utf-8")
    told = _shown(f"from structlib.house.file import read_house\nread_house({str(path)!r})")
    assert told.strip().splitlines() == [told.strip()] and "did you mean 'floor'" in told
    assert "Traceback" not in told and ".py" not in told and str(tmp_path) not in told


@pytest.mark.parametrize("kind", [BadInput, OutsideRule, NotAsked])
def test_every_refusal_is_its_sentence_alone(kind):
    told = _shown(f"from structlib.ground import refusals\nraise refusals.{kind.__name__}('give 4 ft')")
    assert told.strip() == "give 4 ft"


def test_a_mistake_of_another_kind_keeps_its_traceback():
    assert "ZeroDivisionError" in _shown("1 / 0") and "Traceback" in _shown("1 / 0")
