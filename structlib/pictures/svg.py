"""Scene to SVG text: the quick renderer of the live page.

Neighbouring outlines of one role become one path. Colours are custom properties, so the same
text is right in a light and in a dark page; ``stylesheet()`` is sent once a page.
"""

from html import escape

from structlib.ground.refusals import check_choice
from structlib.pictures.labels import Label
from structlib.pictures.scene import runs
from structlib.pictures.style import COLOURS, FONT_STACK, ROLES, TEXT_ROLES, THEMES

CLASS = "slp"
_ANCHOR = {"start": "", "middle": " m", "end": " e"}


def stylesheet():
    """Give the style element that a page holds once.

    Returns
    -------
    str
        A ``<style>`` element for light and dark pages [-].

    Examples
    --------
    >>> stylesheet().startswith("<style>")
    True
    """
    dark = _variables("dark")
    return (f"<style>.{CLASS}{{{_variables('light')}}}"
            f"[data-jp-theme-light=\"false\"] .{CLASS},.dark .{CLASS}{{{dark}}}"
            f"{_rules(lambda name: f'var(--{CLASS}-{name})')}"
            f".{CLASS}-stack{{display:grid}}.{CLASS}-stack>*{{grid-area:1/1;min-width:0}}</style>")


def _variables(theme):
    return "".join(f"--{CLASS}-{name}:{value};" for name, value in COLOURS[theme].items())


def _rules(paint):
    rules = [f".{CLASS}{{display:block;max-width:100%;height:auto;font-family:{FONT_STACK}}}",
             f".{CLASS} path{{fill:none;stroke:none;stroke-linejoin:round;stroke-linecap:round}}"]
    for role, style in ROLES.items():
        parts = [f"fill:{paint(style.fill)}"] if style.fill else []
        if style.stroke:
            parts += [f"stroke:{paint(style.stroke)}", f"stroke-width:{style.width:g}"]
        if style.dash:
            parts += ["stroke-dasharray:" + " ".join(f"{d:g}" for d in style.dash), "stroke-linecap:butt"]
        rules.append(f".{CLASS} .{role}{{{';'.join(parts)}}}")
    rules.append(f".{CLASS} .l{{fill:none}}")
    rules += [f".{CLASS} text.{role}{{fill:{paint(role)};stroke:none}}" for role in TEXT_ROLES]
    rules.append(f".{CLASS} .m{{text-anchor:middle}}.{CLASS} .e{{text-anchor:end}}.{CLASS} .b{{font-weight:700}}")
    return "".join(rules)


def svg_of(scene, standalone=False, theme="light", transparent=False):
    """Render a whole scene.

    Parameters
    ----------
    scene : Scene
        The picture [-].
    standalone : bool
        True for a file that carries its own style; False for a page that has ``stylesheet()`` [-].
    theme : str
        ``"light"`` or ``"dark"``; only a file needs it [-].
    transparent : bool
        True leaves the paper of a file unpainted [-].

    Returns
    -------
    str
        The SVG text [-].

    Examples
    --------
    >>> from structlib.pictures.scene import Line, Scene
    >>> text = svg_of(Scene(90, 60, (Line(((0, 5), (9, 5)), "ink"),), "a line", "", "a line"))
    >>> 'aria-label="a line"' in text
    True
    """
    if not standalone:
        return _open(scene) + _body(runs(scene)) + "</svg>"
    check_choice("theme", theme, THEMES)
    style = "<style>" + _rules(lambda name: COLOURS[theme][name]) + "</style>"
    drawn = [run for run in runs(scene) if not (transparent and getattr(run, "role", "") == "paper")]
    return _open(scene) + style + _body(drawn) + "</svg>"


def svg_layers(scene):
    """Render a scene as two texts that lie over each other, so that a page resends what changed.

    Parameters
    ----------
    scene : Scene
        The picture [-].

    Returns
    -------
    tuple of str
        The still layer (paper, axes, fixed names), hidden from screen readers; and the live
        layer, which carries the alt text [-].

    Examples
    --------
    >>> from structlib.pictures.scene import Line, Scene
    >>> still, live = svg_layers(Scene(90, 60, (Line(((0, 5), (9, 5)), "ink"),), "a line", "", "a line"))
    >>> 'aria-hidden' in still, 'aria-label' in live
    (True, True)
    """
    still = _open(scene, hidden=True) + _body(runs(scene, "still")) + "</svg>"
    live = _open(scene) + _body(runs(scene, "live")) + "</svg>"
    return still, live


def _open(scene, hidden=False):
    who = 'aria-hidden="true"' if hidden else f'role="img" aria-label="{escape(scene.alt)}"'
    return (f'<svg xmlns="http://www.w3.org/2000/svg" class="{CLASS}" '
            f'viewBox="0 0 {scene.width:g} {scene.height:g}" width="100%" {who}>')


def _body(drawn):
    parts = []
    for item in drawn:
        if type(item) is Label:
            parts.append(_text(item))
        else:
            line = " l" if item.kind == "line" else ""
            parts.append(f'<path class="{item.role}{line}" d="{_path(item.outlines)}"/>')
    return "".join(parts)


def _text(label):
    bold = " b" if label.bold else ""
    return (f'<text x="{label.x:.1f}" y="{label.y:.1f}" font-size="{label.size:g}" '
            f'class="{label.role}{_ANCHOR[label.anchor]}{bold}">{escape(label.text, quote=False)}</text>')


def _path(outlines):
    # integers are tenths of a unit while building: one rounding for each number, no float printing
    parts = []
    for points, closed in outlines:
        numbers = [round(value, 1) for point in points for value in point]
        parts.append(("M" + "%g " * len(numbers)) % tuple(numbers))
        if closed:
            parts[-1] = parts[-1][:-1] + "Z"
    return "".join(parts)
