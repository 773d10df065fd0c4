"""House files: read, written whole, never guessed at, never overwritten unasked."""

import dataclasses
import os

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, psf
from structlib.house import model
from structlib.house.model import Layer, demo_house, house_from_data, read_house, write_house
from structlib.house.takedown import take_down

GOOD = """
name = "A house"
[[levels]]
name = "upper floor"
kind = "floor"
left_span = "12 ft"
joist = { species = "Hem-Fir", grade = "No.2", size = "2x10", spacing = "16 in" }
live = "30 psf"
[[levels.layers]]
name = "planks"
weight = "3 psf"
[opening]
clear_width = "12 ft"
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
    assert house.levels[0].left_span == 12 * ft and house.levels[0].layers == (Layer("planks", 3 * psf),)
    assert house.opening.position == "dropped" and not house.invented


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
        ('kind = "floor"', "", "(upper floor) has no 'kind'"),
        ('kind = "floor"', 'kind = "flor"', "did you mean 'floor'"),
        ('left_span = "12 ft"', 'left_spam = "12 ft"', "did you mean 'left_span'"),
        ('left_span = "12 ft"', "left_span = 12", "left_span of level 1 (upper floor)"),
        ('left_span = "12 ft"', 'left_span = "12"', "left_span of level 1 (upper floor)"),
        ('left_span = "12 ft"', 'left_span = "12 psf"', "left_span of level 1 (upper floor)"),
        ('left_span = "12 ft"', 'left_span = "400 ft"', "between 0 in and 40 ft"),
        ('left_span = "12 ft"', 'left_span = "-12 ft"', "left_span of level 1 (upper floor)"),
        ('left_span = "12 ft"', "left_span = nan", "left_span of level 1 (upper floor)"),
        ('left_span = "12 ft"', "", "reaches to neither side"),
        ('live = "30 psf"', 'live = "30 ft"', "live of level 1 (upper floor)"),
        ('live = "30 psf"', "live = 1979-05-27", "live of level 1 (upper floor)"),
        ('live = "30 psf"', 'snow = "30 psf"', "belong to a level of kind 'roof'"),
        ('weight = "3 psf"', 'weight = "3 pounds"', "layer 'planks' of level 1"),
        ('weight = "3 psf"', "", "has no 'weight'"),
        ('name = "planks"', 'nam = "planks"', "did you mean 'name'"),
        ('spacing = "16 in"', 'spacing = "0 in"', "spacing of joist of level 1"),
        ('spacing = "16 in"', 'spacing = "16 in", plies = 1.5', "whole number"),
        ('spacing = "16 in"', 'spacing = "16 in", plies = "two"', "which is not a number"),
        ('clear_width = "12 ft"', "", "the opening has no 'clear_width'"),
        ('clear_width = "12 ft"', 'clear_width = "12 ft"\nplate = "pine"', "must be a group of fields"),
        ('clear_width = "12 ft"', 'clear_width = "12 ft"\nposition = "up"', "position of the beam"),
        ("[opening]", "[opening_]", "did you mean 'opening'"),
        ('live = "30 psf"', 'live = "30 psf"\nslope = "steep"', "rise in run"),
        ('live = "30 psf"', 'live = "30 psf"\nslope = "6 in 0"', "run of the slope"),
        ('live = "30 psf"', 'live = "30 psf"\nlands = "no"', "true or false"),
        ('name = "A house"', 'name = "A house"\ninvented = "no"', "true or false"),
        ('live = "30 psf"', 'live = "30 psf"\njoists = "continuous"', "one span only"),
        ('live = "30 psf"', 'live = "30 psf"\nwall_under = 8', "must be a group of fields"),
    ],
    ids=range(32),
)
def test_one_sentence_that_names_the_place(tmp_path, old, new, words):
    assert GOOD.count(old) == 1
    assert words in refusal(tmp_path, GOOD.replace(old, new))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "name = 'A'\nlevels = []\n[opening]\nclear_width='12 ft'",
        "name = 'A'\nlevels = 5\n[opening]\nclear_width='12 ft'",
        "name = 'A'\nlevels = ['floor']\n[opening]\nclear_width='12 ft'",
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
    text = (
        text.replace("[[levels.layers]]\n", "")
        .replace('name = "planks"\n', "")
        .replace('weight = "3 psf"\n', "")
    )
    assert "layers of level 1" in refusal(tmp_path, text)


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


def test_data_that_is_no_group():
    for data in (None, 5, [], "x"):
        with pytest.raises(BadInput):
            house_from_data(data)


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

    monkeypatch.setattr(model.os, "replace", fails)
    with pytest.raises(BadInput, match="cannot be written: No space left"):
        write_house(demo_house(), path, overwrite=True)
    assert path.read_text() == "keep me" and os.listdir(tmp_path) == ["house.toml"]


@pytest.mark.parametrize(
    "spoil",
    [
        lambda h: dataclasses.replace(h, levels=()),
        lambda h: dataclasses.replace(h, levels=None),
        lambda h: dataclasses.replace(h, opening=None),
        lambda h: dataclasses.replace(h, name="a \ud800 b"),
        lambda h: dataclasses.replace(h, opening=dataclasses.replace(h.opening, clear_width=float("nan"))),
        lambda h: dataclasses.replace(h, opening=dataclasses.replace(h.opening, position="sideways")),
        lambda h: dataclasses.replace(h, opening=dataclasses.replace(h.opening, clear_width=5.0)),
        lambda h: dataclasses.replace(h, levels=(dataclasses.replace(h.levels[0], left_span=-1.0),)),
        lambda h: "a house",
        lambda h: None,
    ],
    ids=range(10),
)
def test_a_house_that_could_not_be_read_back_is_not_written(tmp_path, spoil):
    with pytest.raises(BadInput):
        write_house(spoil(demo_house()), tmp_path / "house.toml")
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


def test_every_demo_house_says_that_it_is_invented_and_comes_down_without_loss():
    house = demo_house()
    assert house.invented and "invented" in house.note.lower()
    found = take_down(house.levels)
    assert abs(found.left_over) < 1e-9 * sum(share.entered for share in found.shares)
