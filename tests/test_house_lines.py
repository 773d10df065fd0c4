"""Every fault of a house that was read from a file names the line of the part and field that it is about."""

import dataclasses

import pytest

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft
from structlib.house.file import demo_house, house_from_text
from structlib.house.judging import judge_element
from structlib.house.lines import line_of
from structlib.house.meanwhile import wall_out
from structlib.house.path import follow
from structlib.house.plan import stretched, with_changes
from structlib.rules.choice import RULEBOOK

HOUSE = """
version = 2
name = "A house"

[[levels]]
name = "roof"
kind = "roof"
on = ["west", "east"]
start = "0 ft"
end = "20 ft"
slope = "6 in 12"
roof_live = "20 psf"
snow = "0 psf"

[[levels]]
name = "floor"
kind = "floor"
on = ["west", "middle", "east"]
start = "0 ft"
end = "20 ft"
live = "40 psf"
joist = { species = "Hem-Fir", grade = "No.2", size = "2x8", spacing = "16 in" }

[[walls]]
name = "west"
on = ["soil"]
at = "0 ft"
start = "0 ft"
end = "20 ft"
height = "8 ft"
weight = "8 psf"

[[walls]]
name = "middle"
on = ["beam"]
at = "12 ft"
start = "0 ft"
end = "20 ft"
height = "8 ft"
weight = "8 psf"

[[walls]]
name = "east"
on = ["soil"]
at = "24 ft"
start = "0 ft"
end = "20 ft"
height = "8 ft"
weight = "8 psf"

[[openings]]
name = "door"
wall = "middle"
start = "3 ft"
clear_width = "8 ft"
height = "80 in"
wall_above = "0 in"
left_seat = "3 in"
right_seat = "3 in"

[[beams]]
name = "beam"
on = ["north post", "south post"]
at = "12 ft"
start = "0 ft"
end = "20 ft"

[[posts]]
name = "north post"
on = "pad"
x = "12 ft"
y = "0 ft"
height = "7 ft"

[[posts]]
name = "south post"
on = "soil"
x = "12 ft"
y = "20 ft"
height = "7 ft"

[[pads]]
name = "pad"
x = "12 ft"
y = "0 ft"
side = "36 in"

[[loads]]
name = "tank"
on = "beam"
x = "12 ft"
y = "5 ft"
dead = "400 lb"
"""

TANK = '[[loads]]\nname = "tank"\non = "beam"\nx = "12 ft"\ny = "5 ft"'
BEAM = '[[beams]]\nname = "other"\non = ["south post", "north post"]\nat = "13 ft"\nstart = "0 ft"\nend = "20 ft"\n'
WOOD = 'wood = { species = "Hem-Fir", grade = "No.9", size = "6x6" }'

# what stands in the file, what is written instead, where its fault is told, and words of the sentence;
# the third is the text of the line that must be named
FAULTS = {
    # plan.py
    "no level": (HOUSE[HOUSE.index("[[levels]]"):], "", 'name = "A house"', "at least one level"),
    "one name twice": ('name = "east"', 'name = "west"', 'name = "west"', "used twice"),
    "no live": ('live = "40 psf"\n', "", 'name = "floor"', "floor has no live"),
    "a load that does not belong": ('live = "40 psf"', 'live = "40 psf"\nsnow = "9 psf"', 'snow = "9 psf"', "does not belong"),
    "continuous rafters": ('slope = "6 in 12"', 'slope = "6 in 12"\njoists = "continuous"', 'joists = "continuous"', "cut at the ridge"),
    "two ridges": ('slope = "6 in 12"', 'ridge = "beam"\nridge_at = "9 ft"', 'ridge_at = "9 ft"', "leave ridge_at out"),
    "a floor that slopes": ('live = "40 psf"', 'live = "40 psf"\nslope = "1 in 12"', 'slope = "1 in 12"', "a slope belongs to a roof"),
    "a seat of rafters": ('slope = "6 in 12"', 'slope = "6 in 12"\nseat = "3 in"', 'seat = "3 in"', "leave seat of roof out"),
    "an end at the start": ('at = "24 ft"\nstart = "0 ft"', 'at = "24 ft"\nstart = "20 ft"', 'end = "20 ft"', "ends where it starts"),
    # path.py
    "no such wall": ('wall = "middle"', 'wall = "muddle"', 'wall = "muddle"', "no wall is called that"),
    "the name of studs": ('name = "tank"', 'name = "door, left post"', 'name = "door, left post"', "give the other part"),
    "nothing under studs": ('on = ["beam"]', "on = []", "on = []", "has nothing under its post"),
    "a name that is not there": ('on = "pad"', 'on = "pat"', 'on = "pat"', "nothing in the house is called that"),
    "studs on nothing": ('clear_width = "8 ft"', 'left_on = "pat"\nclear_width = "8 ft"', 'left_on = "pat"', "nothing in the house is called that"),
    "a loop": ('on = "pad"', 'on = "middle"', 'on = ["beam"]', "rests on itself"),
    # steps.py, levels
    "a floor on a post": ('on = ["west", "middle", "east"]', 'on = ["west", "north post"]', 'on = ["west", "north post"]', "joists rest on walls"),
    "a floor on one wall": ('on = ["west", "middle", "east"]', 'on = ["west"]', 'on = ["west"]', "at least two walls"),
    "a tank past the floor": (TANK, '[[loads]]\nname = "tank"\non = "floor"\nx = "12 ft"\ny = "19 ft"\nlength = "5 ft"', 'y = "19 ft"', "reaches past its end"),
    "a tank beside the floor": (TANK, '[[loads]]\nname = "tank"\non = "floor"\nx = "32 ft"\ny = "1 ft"\nlength = "5 ft"', 'x = "32 ft"', "stands on floor by name"),
    "a gap under a floor": ('at = "24 ft"\nstart = "0 ft"', 'at = "24 ft"\nstart = "2 ft"', 'on = ["west", "east"]', "has nothing under it"),
    "two walls at once": ('at = "24 ft"', 'at = "12 ft"', 'on = ["west", "middle", "east"]', "rests on middle and east at once"),
    "a ridge past its walls": ('slope = "6 in 12"', 'slope = "6 in 12"\nridge_at = "30 ft"', 'ridge_at = "30 ft"', "must stand between"),
    # steps.py, walls
    "an opening past its wall": ('"middle"\nstart = "3 ft"', '"west"\nstart = "15 ft"', 'start = "15 ft"', "there is room from"),
    "an opening too high": ('height = "80 in"', 'height = "9 ft"', 'height = "9 ft"', "middle is 8 ft high"),
    "a wall across joists": (TANK, '[[walls]]\nname = "cross"\non = ["floor"]\nruns = "across"\nat = "3 ft"\nstart = "0 ft"\n'
                             'end = "9 ft"\nheight = "8 ft"\nweight = "8 psf"\n' + TANK, 'runs = "across"', "give it a wall or a beam"),
    "a wall on nothing": ('end = "20 ft"\nheight = "8 ft"\nweight = "8 psf"\n\n[[walls]]\nname = "east"',
                          'end = "22 ft"\nheight = "8 ft"\nweight = "8 psf"\n\n[[walls]]\nname = "east"', 'on = ["beam"]', "has nothing under it from 20 ft"),
    "a tank on studs": (TANK, TANK.replace('"beam"', '"middle"').replace('"5 ft"', '"16 ft"'), 'on = "middle"', "where no post takes it on"),
    # steps.py, beams
    "a beam on one post": ('on = ["north post", "south post"]', 'on = ["north post"]', 'on = ["north post"]', "two things that stand apart"),
    "a beam on a floor": ('on = ["north post", "south post"]', 'on = ["north post", "pad"]', 'on = ["north post", "pad"]', "must rest on posts, walls or beams"),
    "a post beside its beam": (TANK, BEAM + TANK, 'on = ["south post", "north post"]', "does not stand under it"),
    "wood that is not known": ('name = "beam"', 'name = "beam"\n' + WOOD, WOOD, "'No.9'"),
    "joists that are not known": ('size = "2x8"', 'size = "2x8.3"', 'joist = { species = "Hem-Fir", grade = "No.2", size = "2x8.3", spacing = "16 in" }', "2x8.3"),
    "a beam over an opening that is not known": ('wall_above = "0 in"', 'wall_above = "0 in"\n' + WOOD.replace("wood", "beam"),
                                                 WOOD.replace("wood", "beam"), "'No.9'"),
    "studs that are not known": ('wall_above = "0 in"', 'wall_above = "0 in"\n' + WOOD.replace("wood", "posts"), WOOD.replace("wood", "posts"), "'No.9'"),
    "a post of wood not known": ('on = "soil"\nx', WOOD + '\non = "soil"\nx', WOOD, "'No.9'"),
    # steps.py, posts, pads and loads
    "a post beside the one below": ('on = "pad"', 'on = "south post"', 'on = "south post"', "comes down 20 ft beside south post"),
    "a tank spread on a post": ('on = "beam"\nx = "12 ft"', 'length = "3 ft"\non = "north post"\nx = "12 ft"', 'on = "north post"', "must rest on a level"),
    "a post beside its pad": ('x = "12 ft"\ny = "0 ft"\nside', 'x = "12 ft"\ny = "9 ft"\nside', 'y = "9 ft"', "move the pad under it"),
    "a pad off across": ('x = "12 ft"\ny = "0 ft"\nside', 'x = "2 ft"\ny = "0 ft"\nside', 'x = "2 ft"', "move the pad under it"),
    "a tank beside its beam": (TANK, TANK.replace("12 ft", "13 ft"), 'on = "beam"', "does not stand over it"),
    "a tank on a floor": (TANK, TANK.replace('"beam"', '"floor"'), 'on = "floor"', "stops at floor"),
    "a tank on a tank": (TANK, '[[loads]]\nname = "other"\non = "tank"\nx = "12 ft"\ny = "5 ft"\n' + TANK, 'on = "tank"', "which carries no post"),
}  # fmt: skip


@pytest.mark.parametrize("fault", FAULTS)
def test_a_fault_names_the_line_of_its_part_and_field(fault):
    old, new, line, words = FAULTS[fault]
    assert HOUSE.count(old) == 1
    text = HOUSE.replace(old, new)
    with pytest.raises(BadInput, match=words.replace("[", "\\[")) as refused:
        follow(house_from_text(text, "mine.toml"))
    told = str(refused.value)
    assert told.startswith("line ") and "\n" not in told and told.count("mine.toml") == 1
    assert text.splitlines()[int(told.split()[1]) - 1] == line and "of mine.toml: " in told


#: what stands in the file, what is written instead, which wall comes out how near, the line named, words of the sentence
WALL_FAULTS = {
    "a wall across": (TANK, '[[walls]]\nname = "cross"\non = ["soil"]\nruns = "across"\nat = "3 ft"\nstart = "0 ft"\n'
                      'end = "9 ft"\nheight = "8 ft"\nweight = "8 psf"\n' + TANK, "cross", 2, 'runs = "across"', "no wall along the house"),
    "no joists": (TANK, '[[walls]]\nname = "cross"\non = ["soil"]\nat = "6 ft"\nstart = "0 ft"\nend = "9 ft"\nheight = "8 ft"\n'
                  'weight = "8 psf"\n' + TANK, "cross", 2, 'name = "cross"', "no joists rest on cross"),
    "rafters": ('on = ["west", "middle", "east"]', 'on = ["middle", "east"]', "west", 2, 'on = ["west", "east"]', "only rafters"),
    "too near": ('at = "24 ft"', 'at = "15 ft"', "middle", 4, 'at = "15 ft"', "does not stand between the two"),
    "nothing to stand on": ("AAA", "", "middle", 2, 'on = ["beam"]', "no floor is written under middle"),
    "a post on the opening": (TANK, TANK.replace('"beam"', '"door"'), "middle", 2, 'on = "door"', "tank presses on door at one place"),
}  # fmt: skip


GROUND = '[[levels]]\nname = "ground"\nkind = "floor"\non = ["west", "beam", "east"]\nstart = "0 ft"\nend = "20 ft"\nlive = "40 psf"\n'
LONG_TANK = '[[loads]]\nname = "long tank"\non = "{}"\nx = "{}"\ny = "11 ft"\nlength = "6 ft"\n'


@pytest.mark.parametrize(
    "on, x, line, words",
    [
        ("floor", "6 ft", 'y = "11 ft"', "long tank stands where floor is held in two ways meanwhile"),
        ("middle", "12 ft", 'name = "long tank"', "long tank reaches from 11 ft to 17 ft along middle, over an end"),
    ],
)
def test_what_lies_over_an_end_of_the_stretch_names_its_line(on, x, line, words):
    text = HOUSE.replace(TANK, LONG_TANK.format(on, x) + GROUND + TANK)
    with pytest.raises(BadInput, match=words) as refused:
        wall_out(house_from_text(text, "mine.toml"), "middle", 2 * ft, start=14 * ft)
    named = text.splitlines()[int(str(refused.value).split()[1]) - 1]
    assert named == line


@pytest.mark.parametrize("fault", WALL_FAULTS)
def test_a_wall_that_cannot_come_out_names_its_line(fault):
    old, new, wall, distance, line, words = WALL_FAULTS[fault]
    text = HOUSE.replace(old, new)
    with pytest.raises(BadInput, match=words) as refused:
        wall_out(house_from_text(text, "mine.toml"), wall, distance * ft)
    told = str(refused.value)
    assert told.startswith("line ") and told.count("mine.toml") == 1
    assert text.splitlines()[int(told.split()[1]) - 1] == line


def test_a_path_without_an_opening_or_a_beam_names_the_house():
    text = HOUSE[: HOUSE.index("[[openings]]")].replace('on = ["beam"]', 'on = ["soil"]')
    path = follow(house_from_text(text, "mine.toml"))
    for ask, words in ((path.opening, "has no opening"), (path.first_bay, "has no beam")):
        with pytest.raises(BadInput, match=f"^line 3 of mine.toml: A house {words}"):
            ask()


def test_every_fault_that_is_raised_is_in_the_table(request):
    """Each sentence of these modules that is about a part has words in a table here, but two that nothing written reaches."""
    raised, asked_of_a_path, over_an_end = 0, 2, 2
    for name in ("plan", "path", "steps", "meanwhile", "wall_pieces"):
        text = (request.path.parent.parent / "structlib" / "house" / f"{name}.py").read_text()
        raised += text.count(".about(") - text.count("raise error.about(")
    told = len(FAULTS) - sum("not known" in name for name in FAULTS)
    assert told + len(WALL_FAULTS) + asked_of_a_path + over_an_end >= raised - 1
    follow(house_from_text(HOUSE))


def test_what_a_rulebook_cannot_read_names_its_line_too():
    text = HOUSE.replace(
        'on = "pad"', WOOD.replace("No.9", "No.2") + '\nplate = { species = "Elm", grade = "No.2" }\non = "pad"'
    )
    judged = judge_element(follow(house_from_text(text, "mine.toml")), "north post", RULEBOOK)
    line = text[: text.index('name = "north post"')].count("\n") + 1
    assert judged.refused[0].startswith(f"north post cannot be judged: line {line} of mine.toml: species")


def test_a_house_keeps_its_lines_when_it_is_changed_and_is_equal_to_one_without():
    house = house_from_text(HOUSE, "mine.toml")
    assert house == dataclasses.replace(house) and dataclasses.replace(house).source is None
    assert hash(house) == hash(dataclasses.replace(house))
    for changed in (stretched(house, 12 * ft, right=1.5), with_changes(house, {"floor": {"end": 19 * ft}})):
        with pytest.raises(BadInput, match="^line 84 of mine.toml: north post comes down beside pad"):
            follow(changed, {"pad": {"x": 2 * ft}})
    with pytest.raises(BadInput, match="^north post comes down beside pad"):
        follow(dataclasses.replace(house), {"pad": {"x": 2 * ft}})


def test_a_file_of_version_1_names_its_lines(request):
    text = (request.path.parent / "houses" / "version_1.toml").read_text()
    wide = text.replace('clear_width = "', 'clear_width = "1')
    assert wide != text
    house = house_from_text(text, "old.toml")
    with pytest.raises(BadInput, match=r"^line \d+ of old.toml: the opening is 20 ft high") as refused:
        follow(house, {"the opening": {"height": 20 * ft}})
    named = text.splitlines()[int(str(refused.value).split()[1]) - 1]
    assert named.split("=")[0].strip() == "height" or named == "[opening]"


@pytest.mark.parametrize("keys, line", [
    (("levels", 0, "live"), 3), (("levels", 1, "layers", 1, "weight"), 9), (("levels", 1, "layers", 1, "name"), 8),
    (("levels", 1, "joist", "size"), 5), (("name",), 1), (("levels", 1, "end"), 4), (("walls", 0, "at"), 0),
])  # fmt: skip
def test_a_line_is_found_by_its_keys(keys, line):
    # 1 name, 2 [[levels]], 3 live, 4 [[levels]], 5 joist, 6 and 8 [[levels.layers]]
    text = (
        "name = 'x'\n[[levels]]\n'live' = 3\n[[levels]] # two\njoist = { size = 2 }\n[[levels.layers]]\nweight = 1\n"
        "[[levels.layers]]\nweight = 2\n"
    )
    assert line_of(text, keys) == line


def test_the_demo_house_has_no_fault_and_knows_its_file():
    assert demo_house().source.name == "alder_lane.toml"
