"""House files: read, written whole, never guessed at, never overwritten unasked."""

import dataclasses
import os

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, psf
from structlib.house import file
from structlib.house.file import demo_house, house_from_text, read_house, write_house
from structlib.house.path import follow
from structlib.house.plan import Layer, with_changes

GOOD = """
version = 2
name = "A house"
[[levels]]
name = "upper floor"
kind = "floor"
on = ["west", "east"]
start = "0 ft"
end = "20 ft"
joist = { species = "Hem-Fir", grade = "No.2", size = "2x10", spacing = "16 in" }
live = "30 psf"
[[levels.layers]]
name = "planks"
weight = "3 psf"
[[walls]]
name = "west"
on = ["soil"]
at = "0 ft"
start = "0 ft"
end = "20 ft"
height = "8 ft"
weight = "8 psf"
[[walls]]
name = "east"
on = ["soil"]
at = "12 ft"
start = "0 ft"
end = "20 ft"
height = "8 ft"
weight = "7 psf"
"""


def put(tmp_path, text):
    path = tmp_path / "house.toml"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def refusal(tmp_path, text):
    with pytest.raises(BadInput) as error:
        read_house(put(tmp_path, text))
    sentence = str(error.value)
    assert sentence and "\n" not in sentence and str(tmp_path) not in sentence
    return sentence


def test_the_short_house_is_read(tmp_path):
    house = read_house(put(tmp_path, GOOD))
    assert house.walls[1].at == 12 * ft and house.levels[0].layers == (Layer(name="planks", weight=3 * psf),)
    assert house.levels[0].joists == "cut" and not house.invented


def test_a_mark_at_the_start_and_other_line_ends_do_no_harm(tmp_path):
    plain = read_house(put(tmp_path, GOOD))
    assert read_house(put(tmp_path, b"\xef\xbb\xbf" + GOOD.encode())) == plain
    assert read_house(put(tmp_path, GOOD.replace("\n", "\r\n"))) == plain


@pytest.mark.parametrize(
    "old, new, words",
    [
        ('name = "A house"', "name = ", "not laid out as TOML"),
        ('name = "A house"', "", "the house has no 'name'"),
        ('name = "upper floor"', "", "level 1 has no 'name'"),
        ('kind = "floor"', "", "level 'upper floor' has no 'kind'"),
        (
            'kind = "floor"',
            'kind = "flor"',
            "line 6 of house.toml: kind of level 'upper floor' 'flor' is not known; did you mean 'floor'",
        ),
        ('at = "12 ft"', 'att = "12 ft"', "did you mean 'at'"),
        ('at = "12 ft"', "at = 12", "line 26 of house.toml: at of wall 'east'"),
        ('at = "12 ft"', 'at = "12"', "at of wall 'east'"),
        ('at = "12 ft"', 'at = "12 psf"', "at of wall 'east'"),
        ('at = "12 ft"', 'at = "400 ft"', "between -200 ft and 200 ft"),
        ('at = "12 ft"', "at = nan", "at of wall 'east'"),
        ('on = ["west", "east"]', 'on = "west"', "on of level 'upper floor'"),
        ('on = ["west", "east"]', 'on = ["west", 5]', "on of level 'upper floor'"),
        ('live = "30 psf"', 'live = "30 ft"', "live of level 'upper floor'"),
        ('live = "30 psf"', "live = 1979-05-27", "live of level 'upper floor'"),
        ('live = "30 psf"', 'live = "30 psf"\nsnow = "30 psf"', "snow does not belong to it"),
        ('live = "30 psf"', "", 'write live = "0 psf"'),
        ('weight = "3 psf"', 'weight = "3 pounds"', "weight of layer 'planks' of level 'upper floor'"),
        ('weight = "3 psf"', "", "has no 'weight'"),
        ('name = "planks"', 'nam = "planks"', "did you mean 'name'"),
        ('spacing = "16 in"', 'spacing = "0 in"', "spacing of joist of level 'upper floor'"),
        ('spacing = "16 in"', 'spacing = "16 in", plies = 1.5', "whole number"),
        ('spacing = "16 in"', 'spacing = "16 in", plies = "two"', "which is not a number"),
        ('weight = "7 psf"', 'weight = "7 psf"\nplate = "pine"', "must be a group of fields"),
        ('weight = "7 psf"', 'weight = "7 psf"\nmade_of = "straw"', "made_of of wall 'east'"),
        ("version = 2", "version = 3", "reads versions 1 and 2"),
        ('live = "30 psf"', 'live = "30 psf"\nslope = "steep"', "rise in run"),
        ('live = "30 psf"', 'live = "30 psf"\nslope = "6 in 0"', "run in slope"),
        ('name = "A house"', 'name = "A house"\ninvented = "no"', "true or false"),
        ('name = "west"', 'name = "soil"', "used twice"),
    ],
    ids=range(30),
)
def test_one_sentence_that_names_the_place(tmp_path, old, new, words):
    assert GOOD.count(old) == 1
    assert words in refusal(tmp_path, GOOD.replace(old, new))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "version = 2\nname = 'A'\nlevels = []",
        "version = 2\nname = 'A'\nlevels = 5",
        "version = 2\nname = 'A'\nlevels = ['floor']",
        GOOD.replace("[[levels.layers]]", "[levels.layers]"),
        b"\xff\xfe\x00name",
        b"\x00" * 50,
        "x = " + "[" * 3000 + "]" * 3000,
    ],
    ids=range(8),
)
def test_files_that_are_no_house(tmp_path, text):
    refusal(tmp_path, text)


def test_layers_that_are_no_list(tmp_path):
    text = GOOD.replace('live = "30 psf"', 'live = "30 psf"\nlayers = 5')
    text = text.replace("[[levels.layers]]\n", "").replace('name = "planks"\n', "").replace('weight = "3 psf"\n', "")
    assert "layers of level 'upper floor'" in refusal(tmp_path, text)


@pytest.mark.parametrize("path", [None, 5, "", "a\0b", ["x"], "x" * 5000, "."], ids=repr)
def test_paths_that_are_none(path):
    for call in (read_house, lambda p: write_house(demo_house(), p)):
        with pytest.raises(BadInput) as error:
            call(path)
        assert "\n" not in str(error.value)


def test_a_folder_is_no_file(tmp_path):
    with pytest.raises(BadInput):
        read_house(tmp_path)
    for overwrite in (False, True):
        with pytest.raises(BadInput):
            write_house(demo_house(), tmp_path, overwrite=overwrite)
    with pytest.raises(BadInput, match="folder that exists"):
        write_house(demo_house(), tmp_path / "no" / "such" / "house.toml")
    assert os.listdir(tmp_path) == []


def test_a_house_that_cannot_stand_is_read_and_then_named(tmp_path):
    for old, new, words in (
        ('at = "12 ft"', 'at = "0 ft"', "at least two walls or beams"),
        ('on = ["west", "east"]', 'on = ["west"]', "at least two walls or beams"),
        ('name = "west"', 'name = "wes"', "nothing in the house is called that"),
    ):
        house = read_house(put(tmp_path, GOOD.replace(old, new)))
        with pytest.raises(BadInput, match=words):
            follow(house)


def test_files_too_long_or_too_deep_are_refused_at_once(tmp_path):
    refusal(tmp_path, GOOD + "#" * 500_000)
    for text in ("a." * 50_000 + "a = 1", "[" + ".".join("a" * 5000) + "]"):
        with pytest.raises(BadInput, match="groups within groups"):
            house_from_text(text)


def test_a_file_is_never_overwritten_unasked(tmp_path):
    path = put(tmp_path, "keep me")
    with pytest.raises(BadInput, match="was left as it is"):
        write_house(demo_house(), path)
    assert path.read_text() == "keep me"
    assert write_house(demo_house(), path, overwrite=True) == path
    assert read_house(path) == demo_house()
    assert os.listdir(tmp_path) == ["house.toml"]


def test_a_file_is_written_whole_or_not_at_all(tmp_path, monkeypatch):
    path = put(tmp_path, "keep me")

    def fails(*names):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(file.os, "replace", fails)
    with pytest.raises(BadInput, match="cannot be written: No space left"):
        write_house(demo_house(), path, overwrite=True)
    assert path.read_text() == "keep me" and os.listdir(tmp_path) == ["house.toml"]


@pytest.mark.parametrize(
    "spoil",
    [
        lambda: dataclasses.replace(demo_house(), levels=()),
        lambda: dataclasses.replace(demo_house(), levels=None),
        lambda: dataclasses.replace(demo_house(), walls=demo_house().walls * 2),
        lambda: dataclasses.replace(demo_house(), name="a \ud800 b"),
        lambda: with_changes(demo_house(), {"kitchen opening": {"clear_width": float("nan")}}),
        lambda: with_changes(demo_house(), {"kitchen opening": {"position": "sideways"}}),
        lambda: with_changes(demo_house(), {"kitchen opening": {"clear_width": 5.0}}),
        lambda: with_changes(demo_house(), {"middle wall": {"height": -1.0}}),
        lambda: "a house",
        lambda: None,
    ],
    ids=range(10),
)
def test_a_house_that_could_not_be_read_back_is_not_written(tmp_path, spoil):
    with pytest.raises(BadInput):
        write_house(spoil(), tmp_path / "house.toml")
    assert os.listdir(tmp_path) == []


@pytest.mark.parametrize(
    "name",
    [
        'quotes " and \\ strokes',
        "two\nlines\r\n",
        "\x7f\x01\x1f",
        "Grüne Gasse \u2014 10\u2032 \U0001f3e0",
        "",
        "'''",
        "# not a comment",
        "\u2028\u0085",
    ],
    ids=repr,
)
def test_any_name_is_read_back_as_it_was(tmp_path, name):
    house = demo_house()
    house = dataclasses.replace(house, name=name, note=name)
    assert read_house(write_house(house, tmp_path / "house.toml")) == house


def test_every_demo_house_says_that_it_is_invented_and_comes_down():
    house = demo_house()
    assert house.invented and "invented" in house.note.lower()
    assert follow(house).into_the_soil
