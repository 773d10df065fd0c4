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

# a live picture is sent on every move of a slider, so its roles travel as short class names
CODES = {role: f"r{number}" for number, role in enumerate(ROLES)}
_ANCHOR = {"start": "", "middle": " m", "end": " e"}
_SIZES = (18, 20, 22, 25)


def stylesheet():
    """Give the style element that a page holds once.

    Examples
    --------
    >>> stylesheet().startswith("<style>")
    True
    """
    dark = _variables("dark")
    return (
        f"<style>.{CLASS}{{{_variables('light')}}}"
        f'[data-jp-theme-light="false"] .{CLASS},.dark .{CLASS}{{{dark}}}'
        f"{_rules(lambda name: f'var(--{CLASS}-{name})')}"
        f".{CLASS}-stack{{display:grid}}.{CLASS}-stack>*{{grid-area:1/1;min-width:0}}</style>"
    )


def _variables(theme):
    return "".join(f"--{CLASS}-{name}:{value};" for name, value in COLOURS[theme].items())


def _rules(paint):
    rules = [
        f".{CLASS}{{display:block;max-width:100%;height:auto;font-family:{FONT_STACK}}}",
        f".{CLASS} path{{fill:none;stroke:none;stroke-linejoin:round;stroke-linecap:round}}",
    ]
    for role, style in ROLES.items():
        parts = [f"fill:{paint(style.fill)}"] if style.fill else []
        if style.stroke:
            parts += [f"stroke:{paint(style.stroke)}", f"stroke-width:{style.width:g}"]
        if style.dash:
            parts += ["stroke-dasharray:" + " ".join(f"{d:g}" for d in style.dash), "stroke-linecap:butt"]
        rules.append(f".{CLASS} .{CODES[role]}{{{';'.join(parts)}}}")
    rules.append(f".{CLASS} .l{{fill:none}}")
    rules += [f".{CLASS} .s{size}{{font-size:{size}px}}" for size in _SIZES]
    rules += [f".{CLASS} text.{role}{{fill:{paint(role)};stroke:none}}" for role in TEXT_ROLES]
    rules.append(f".{CLASS} .m{{text-anchor:middle}}.{CLASS} .e{{text-anchor:end}}.{CLASS} .b{{font-weight:700}}")
    return "".join(rules)


def svg_of(scene, standalone=False, theme="light", transparent=False):
    """Render a whole scene.

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


def _open(scene):
    who = f'role="img" aria-label="{escape(scene.alt)}"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{CLASS}" '
        f'viewBox="0 0 {scene.width:g} {scene.height:g}" width="100%" {who}>'
    )


def _body(drawn):
    parts = []
    for item in drawn:
        if type(item) is Label:
            parts.append(_text(item))
        else:
            line = " l" if item.kind == "line" and ROLES[item.role].fill else ""
            parts.append(f'<path class="{CODES[item.role]}{line}" d="{_path(item.outlines)}"/>')
    return "".join(parts)


def _text(label):
    bold = " b" if label.bold else ""
    size = label.size
    if size in _SIZES:
        how = f'class="{label.role} s{size:g}{_ANCHOR[label.anchor]}{bold}"'
    else:
        how = f'font-size="{size:g}" class="{label.role}{_ANCHOR[label.anchor]}{bold}"'
    x, y = _TENTHS[round(label.x * 10)].strip(), _TENTHS[round(label.y * 10)].strip()
    return f'<text x="{x}" y="{y}" {how}>{escape(label.text, quote=False)}</text>'


class _Tenths(dict):
    """Text of a whole number of tenths, with its separator: 123 -> " 12.3", -5 -> "-.5"."""

    def __missing__(self, tenths):
        whole, rest = divmod(abs(tenths), 10)
        text = f"{whole or ''}.{rest}" if rest else str(whole)
        self[tenths] = text = ("-" if tenths < 0 else " ") + text
        return text


_TENTHS = _Tenths()


def _path(outlines):
    # every point is rounded once, to a tenth; steps between rounded points lose nothing
    # each outline starts from where the one before ended (SVG returns to its start after "z")
    parts, text = [], _TENTHS
    x = y = 0
    for points, closed in outlines:
        way = "m"
        for px, py in points:
            nx, ny = round(px * 10), round(py * 10)
            if way == "m":
                parts.append("m" + text[nx - x][nx >= x :] + text[ny - y])
                way, start = "", (nx, ny)
            elif ny == y:
                parts.append("h" + text[nx - x][nx >= x :])
                way = "h"
            elif nx == x:
                parts.append("v" + text[ny - y][ny >= y :])
                way = "v"
            elif way == "l":
                parts.append(text[nx - x] + text[ny - y])
            else:
                parts.append("l" + text[nx - x][nx >= x :] + text[ny - y])
                way = "l"
            x, y = nx, ny
        if closed:
            parts.append("z")
            x, y = start
    return "".join(parts)
