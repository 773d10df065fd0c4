"""Contrast, colours for readers who do not see red or green, and type that a phone can show."""

import itertools

import numpy as np
import pytest
from matplotlib import get_data_path
from matplotlib.ft2font import FT2Font

from structlib.ground.refusals import BadInput
from structlib.pictures import style
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Line, Scene
from structlib.pictures.svg import stylesheet, svg_of

# linear RGB seen without the long-wave or the middle-wave cones: Machado, Oliveira, Fernandes,
# "A physiologically-based model for simulation of color vision deficiency", 2009, severity 1.0
# (matrices recalled; that white stays white is checked below)
EYES = {
    "all cones": np.eye(3),
    "protanopia": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "deuteranopia": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
}
TO_XYZ = np.array(
    [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.1191920, 0.9503041]]
)
WHITE = np.array([0.95047, 1.0, 1.08883])


def linear(hexa):
    c = np.array([int(hexa[k : k + 2], 16) / 255 for k in (1, 3, 5)])
    return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4)


def lab(rgb):
    t = TO_XYZ @ np.clip(rgb, 0, 1) / WHITE
    f = np.where(t > 216 / 24389, np.cbrt(t), (24389 / 27 * t + 16) / 116)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def contrast(one, other):
    light, dark = sorted((float(TO_XYZ[1] @ linear(c)) for c in (one, other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_measures_give_the_known_values_of_black_and_white():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert lab(linear("#ffffff")) == pytest.approx([100, 0, 0], abs=0.02)
    for eye in EYES.values():
        assert eye.sum(axis=1) == pytest.approx([1, 1, 1], abs=1e-5)


@pytest.mark.parametrize("theme", style.THEMES)
@pytest.mark.parametrize("role", style.TEXT_ROLES)
def test_text_stands_out_from_what_it_is_written_on(theme, role):
    for ground in style.TEXT_GROUNDS:
        assert contrast(style.colour(role, theme), style.colour(ground, theme)) >= 4.5, ground


@pytest.mark.parametrize("theme", style.THEMES)
def test_lines_that_carry_meaning_stand_out_from_paper(theme):
    for name in ("ghost", "wood_edge", "steel_edge", "bearing"):
        assert contrast(style.colour(name, theme), style.colour("paper", theme)) >= 3, name


@pytest.mark.parametrize("eye", EYES)
@pytest.mark.parametrize("theme", style.THEMES)
def test_colours_stay_apart_for_every_eye(theme, eye):
    for names, least in ((style.LINE_COLOURS, 15), (style.SURFACE_COLOURS, 15)):
        seen = {name: lab(EYES[eye] @ linear(style.colour(name, theme))) for name in names}
        for one, other in itertools.combinations(names, 2):
            assert np.linalg.norm(seen[one] - seen[other]) >= least, (one, other)


def test_no_two_line_roles_differ_by_colour_alone():
    # shapes that may lie over each other have their own dash or width
    looks = [
        (style.ROLES[role].width, style.ROLES[role].dash)
        for role in ("moved", "reference", "ghost", "limit", "governs", "axis")
    ]
    assert len(set(looks)) == len(looks)


def test_every_role_uses_known_colours_and_both_themes_have_the_same_names():
    assert set(style.COLOURS["light"]) == set(style.COLOURS["dark"])
    for name, role in style.ROLES.items():
        for used in (role.fill, role.stroke):
            assert used is None or used in style.COLOURS["light"], name


def test_type_is_large_enough_on_a_phone_and_smaller_type_is_refused():
    assert (
        style.LABEL_SIZE >= 22
        and min(style.TITLE_SIZES["page"][1][1]) >= 20
        and style.NOTE_SIZE >= style.LEAST_SIZE >= 18
    )
    # a picture 720 units wide on a phone of 360 px
    assert style.LEAST_SIZE * 360 / 720 >= 9
    with pytest.raises(BadInput, match="at least 18"):
        Label("small", 0, 0, size=17)


def test_unknown_words_are_refused_with_the_nearest():
    with pytest.raises(BadInput, match="did you mean 'force'"):
        style.role_style("forse")
    with pytest.raises(BadInput, match="theme"):
        style.colour("ink", "drak")
    with pytest.raises(BadInput, match="label role"):
        Label("x", 0, 0, "wood")


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize(
    "text",
    [
        "governs: bending 83 %",
        "1,240 lb/ft",
        "Sag drawn 40 times true size",
        "2-2x10",
        "14'-6 1/2\" clear",
        "stiffness 4.28 ×",
        "Same wood: twice as strong & stiff",
        "WHAT DOES THIS WALL CARRY",
        "Größe déjà vu",
        "7 ft × 50 psf = 350 lb/ft",
    ],
)
def test_estimated_width_covers_a_wide_face(text, bold):
    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    font = FT2Font(f"{get_data_path()}/fonts/ttf/{name}")
    font.set_size(1000, 72)
    real = sum(font.load_char(ord(letter)).linearHoriAdvance for letter in text) / 65536 * 20 / 1000
    estimate = text_width(text, 20, bold)
    assert 0.98 * real <= estimate <= 1.25 * real


def test_stylesheet_serves_light_and_dark_pages_by_the_page_not_by_the_machine():
    sheet = stylesheet()
    assert '[data-jp-theme-light="false"] .slp,.dark .slp' in sheet
    assert "prefers-color-scheme" not in sheet
    for theme in style.THEMES:
        assert f"--slp-moved:{style.colour('moved', theme)}" in sheet
    # a live picture carries no style of its own; a file carries colours of one theme and no variables
    scene = Scene(90, 60, (Line(((0, 5), (9, 5)), "ink"),), "a line", "", "a line")
    assert "style" not in svg_of(scene)
    file = svg_of(scene, standalone=True, theme="dark")
    assert style.colour("ink", "dark") in file and "var(" not in file
