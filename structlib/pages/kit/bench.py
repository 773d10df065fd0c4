"""The controls of a page and their live link to a picture. The only room with widgets in it.

A page is a plain object: ``controls(values)`` describes what can be moved, ``compute(values, before)``
answers with a `Shown`. The bench makes the widgets, and redraws on every move. No engineering here.
"""

import html
import math
import os
import re

# One answer for each move instead of two: the page needs no echo of what it has just sent.
os.environ.setdefault("JUPYTER_WIDGETS_ECHO", "0")

import ipywidgets as W  # noqa: E402

from structlib.ground.refusals import BadInput, OutsideRule  # noqa: E402
from structlib.pages.kit import questions as exercises
from structlib.pages.kit.controls import Box, Pick, Shown, Slide, Steps, Switch, start_values
from structlib.pages.kit.door import hold
from structlib.pages.kit.prediction import Prediction
from structlib.pictures import svg  # noqa: E402

_STYLE = """
.sl-bench { max-width: 1240px; }
.sl-bench { container-type: inline-size; }
.sl-bench .sl-grid { display: grid; grid-template: "first side" auto "rest side" 1fr / 300px minmax(0, 900px);
  column-gap: 12px; width: 100%; }
.sl-bench .sl-first { grid-area: first; }
.sl-bench .sl-rest { grid-area: rest; }
.sl-bench .sl-side { grid-area: side; min-width: 0; overflow: hidden; }
@container (max-width: 700px) {
  .sl-bench .sl-grid { grid-template: "first" auto "side" auto "rest" auto / minmax(0, 1fr); }
  .sl-bench .sl-first, .sl-bench .sl-rest { min-width: 0; max-width: 100%; }
  .sl-bench .widget-text, .sl-bench .widget-dropdown, .sl-bench .widget-slider { max-width: 98%; }
}
.sl-bench .sl-picture, .sl-bench .sl-picture > div { height: auto; min-width: 0; width: 100%; margin: 0; }
.sl-bench .sl-picture svg { max-width: 720px; display: block; }
.sl-scroll { overflow-x: auto; }
.sl-bench .noUi-handle:focus { outline: 3px solid #155f9f; outline-offset: 3px; }
.sl-bench .widget-label, .sl-bench input, .sl-bench select { font-size: 15px; }
.sl-table { border-collapse: collapse; font-size: 15px; line-height: 1.35; margin: 4px 0 2px 0;
  font-variant-numeric: tabular-nums; }
.sl-table caption { text-align: left; font-weight: 600; padding: 2px 0; }
.sl-table th, .sl-table td { text-align: left; padding: 2px 14px 2px 0; border-bottom: 1px solid #8886;
  vertical-align: top; }
.sl-table td:nth-child(-n+3):not(:last-child) { white-space: nowrap; }
.sl-table td:nth-child(4) { min-width: 112px; }
.sl-table td:nth-child(1):nth-last-child(5) { white-space: normal; min-width: 105px; }
.sl-table td:nth-child(5) { min-width: 170px; }
.sl-table th:nth-child(-n+3) { white-space: nowrap; }
@container (max-width: 700px) {
  .sl-table { font-size: 13px; }
  .sl-table td:first-child { white-space: normal; min-width: 105px; }
  .sl-table td:last-child { min-width: 170px; }
}
.sl-note { font-size: 14px; line-height: 1.4; margin: 3px 0; }
.sl-practice .jupyter-widgets, .sl-predict .jupyter-widgets { max-width: 98%; }
.sl-gate { border-left: 6px solid #a4342c; padding: 6px 10px; margin: 4px 0; font-size: 15px;
  line-height: 1.4; }
.sl-status { min-height: 28px; font-size: 15px; }
.sl-text { font-size: 16px; line-height: 1.45; max-width: 780px; }
"""


def _head_style():
    return W.HTML(f"<style>{_STYLE}</style>{svg.stylesheet()}", layout=W.Layout(height="0px", margin="0px"))


class Bench(W.VBox):
    """Sliders for span, depth and plies first, then the rest; beside them the live picture and its numbers."""

    def __init__(self, page, system: str | None = None, **start):
        self.values = start_values(page, system, **start)
        self.page, self.system = page, system or page.system
        self.before, self._last_moved, self._busy = None, None, False
        self._widgets = {}
        self._picture = W.HTML(layout=W.Layout(width="100%"))
        self._picture.add_class("sl-picture")
        self._status = W.HTML()
        self._status.add_class("sl-status")
        self._sliders, self._rest = W.VBox(), W.VBox()
        self._sliders.add_class("sl-first")
        self._rest.add_class("sl-rest")
        self._first = dict(self.values)
        self._build()
        side = W.VBox([self._status, self._picture])
        side.add_class("sl-side")
        row = W.Box([self._sliders, side, self._rest])
        row.add_class("sl-grid")
        super().__init__([_head_style(), row])
        self.add_class("sl-bench")
        self._draw()

    # ---- making the widgets -------------------------------------------------------------------

    def _build(self):
        children = []
        self._specs = {control.name: control for control in self.page.controls(self.values)}
        for name, control in self._specs.items():
            if isinstance(control, (Slide, Steps)):
                slider, box = self._slider(control), self._text(control)
                self._widgets[name] = (slider, box)
                children.append(W.VBox([box, slider], layout=W.Layout(margin="0 0 6px 0")))
            elif isinstance(control, Box):
                box = self._text(control)
                self._widgets[name] = (None, box)
                children.append(box)
            else:
                widget = self._choice(control)
                self._widgets[name] = (widget, None)
                children.append(widget)
        again = W.Button(description="Start again", tooltip="Put every control back to where it began")
        again.on_click(lambda _: self._start_again())
        # on a narrow page the picture stands between the three sliders and the rest
        self._sliders.children, self._rest.children = children[:3], (*children[3:], again)

    def _slider(self, control):
        layout = W.Layout(width="290px")
        value = self.values[control.name]
        if isinstance(control, Steps):
            options = [(control.text(listed, self.system), listed) for listed in control.values]
            slider = W.SelectionSlider(options=options, value=control.nearest(value), readout=False, layout=layout)
        elif control.dimension == "count":
            slider = W.IntSlider(
                value=int(value),
                min=int(control.low),
                max=int(control.high),
                step=1,
                readout=False,
                layout=layout,
            )
        else:
            slider = W.FloatSlider(
                value=value,
                min=control.low,
                max=control.high,
                step=control.step,
                readout=False,
                layout=layout,
            )
        slider.add_class(f"sl-slider-{control.name}")
        slider.observe(lambda change: self._moved(control.name, change["new"]), names="value")
        return slider

    def _text(self, control):
        box = W.Text(
            value=control.text(self.values[control.name], self.system),
            description=control.label,
            continuous_update=False,
            layout=W.Layout(width="290px"),
            style={"description_width": "150px"},
        )
        box.add_class(f"sl-box-{control.name}")
        box.observe(lambda change: self._typed(control.name, change["new"]), names="value")
        return box

    def _choice(self, control):
        # the label takes no more room than its word needs: the rest is for the choice
        layout, style = W.Layout(width="290px"), {"description_width": "initial"}
        if isinstance(control, Switch):
            widget = W.Checkbox(
                value=bool(self.values[control.name]), description=control.label, indent=False, layout=layout
            )
        elif isinstance(control, Pick):
            widget = W.Dropdown(
                options=list(control.options),
                value=self.values[control.name],
                description=control.label,
                layout=layout,
                style=style,
            )
        else:
            raise TypeError(f"unknown kind of control {type(control).__name__}")
        widget.add_class(f"sl-pick-{control.name}")
        widget.observe(lambda change: self._moved(control.name, change["new"]), names="value")
        return widget

    # ---- answering the reader -----------------------------------------------------------------

    def _moved(self, name, value):
        if self._busy or value is None or _alike(value, self.values[name]):
            return
        self._take(name, value)

    def _typed(self, name, text):
        if self._busy:
            return
        control = self._specs[name]
        try:
            value = control.value(text, self.system)
        except (BadInput, OutsideRule) as error:
            self._say(str(error))
            self._write_boxes(name)
            return
        self._take(name, value, typed=text)

    def _take(self, name, value, typed=None):
        old, earlier = dict(self.values), (self.before, self._last_moved)
        self.values[name] = value
        if name != self._last_moved:  # the ghost stays where it is while one control moves
            self.before, self._last_moved = old, name
        try:
            shown, notices = self._settle(name)
        except (BadInput, OutsideRule) as error:
            self.values, (self.before, self._last_moved) = old, earlier
            self._write_all()
            self._say(str(error))
            return
        if typed is not None and isinstance(self._specs[name], Steps):
            taken = self._specs[name].text(value, self.system)
            if taken != typed.strip():
                notices.insert(0, f"took the nearest listed value, {taken}")
        self._write_boxes(name)
        self._show(shown)
        self._say("; ".join(notices))

    def _settle(self, name):
        """Fit the other controls to the one that moved (stock depths follow the material), and compute."""
        notices = []
        specs = {control.name: control for control in self.page.controls(self.values)}
        for other, control in specs.items():
            if isinstance(control, Steps) and self.values[other] not in control.values:
                taken = control.nearest(self.values[other])
                self.values[other] = taken
                notices.append(
                    f"{control.label.lower()} is now {control.text(taken, self.system)}, the nearest kept in stock"
                )
        shown = self._compute()
        if specs != self._specs:
            self._respec(specs)
        return shown, notices

    def _respec(self, specs):
        self._busy = True
        try:
            for name, control in specs.items():
                if control != self._specs[name] and isinstance(control, Steps):
                    slider, box = self._widgets[name]
                    options = [(control.text(listed, self.system), listed) for listed in control.values]
                    slider.options = options
                    slider.value = self.values[name]
                    box.value = control.text(self.values[name], self.system)
            self._specs = specs
        finally:
            self._busy = False

    def _compute(self):
        return self.page.compute(dict(self.values), None if self.before is None else dict(self.before))

    def _draw(self):
        self._show(self._compute())

    def _show(self, shown):
        self._picture.value = picture_html(shown)

    def _say(self, sentence):
        text = f'<span role="status">{html.escape(sentence)}</span>'
        if self._status.value != text:
            self._status.value = text

    def _write_boxes(self, name):
        self._busy = True
        try:
            slider, box = self._widgets[name]
            control = self._specs[name]
            if box is not None:
                box.value = control.text(self.values[name], self.system)
            if slider is not None and isinstance(control, (Slide, Steps)):
                value = control.nearest(self.values[name]) if isinstance(control, Steps) else self.values[name]
                if slider.value != value:
                    slider.value = value
        finally:
            self._busy = False

    def _write_all(self):
        for name in self._specs:
            slider, box = self._widgets[name]
            if box is None:
                self._busy = True
                slider.value = self.values[name]
                self._busy = False
            else:
                self._write_boxes(name)

    def _start_again(self):
        self.values = dict(self._first)
        self.before = self._last_moved = None
        self._settle("")
        self._write_all()
        self._draw()
        self._say("every control is back to where it began")


def _alike(value, held):
    """Say whether a slider sent back the value it was given: the page rounds its last digit."""
    both = isinstance(value, float) and isinstance(held, float)
    return both and math.isclose(value, held, rel_tol=1e-9, abs_tol=1e-9)


def picture_html(shown: Shown):
    """Return the picture, its gates and questions, its table and its notes as one piece of HTML."""
    first = [("Stop and call.", gate) for gate in shown.gates]
    first += [("A question first.", question) for question in shown.questions]
    return (
        "".join(f'<div class="sl-gate" role="alert"><b>{word}</b> {html.escape(told)}</div>' for word, told in first)
        + svg.svg_of(shown.scene)
        + table_html(shown.head, shown.rows)
        + "".join(f'<p class="sl-note">{html.escape(note)}</p>' for note in (*shown.notes, shown.evidence))
    )


def table_html(head: tuple[str, ...], rows):
    """Return rows of text as an HTML table.

    Examples
    --------
    >>> "<td>12 ft</td>" in table_html(("what", "value"), (("span", "12 ft"),))
    True
    """
    top = "".join(f'<th scope="col">{html.escape(name)}</th>' for name in head)
    body = "".join("<tr>" + "".join(f"<td>{html.escape(text)}</td>" for text in row) + "</tr>" for row in rows)
    return f'<div class="sl-scroll"><table class="sl-table"><thead><tr>{top}</tr></thead><tbody>{body}</tbody></table></div>'


class Predict(W.VBox):
    """A question to commit to before the answer is shown. Works by keyboard alone."""

    def __init__(self, prediction: Prediction):
        if prediction.right not in prediction.choices:
            raise BadInput(
                f"the right answer must be one of the choices, got {prediction.right!r}; "
                f"for example {prediction.choices[0]!r}"
            )
        self.prediction = prediction
        self._choice = W.RadioButtons(options=list(prediction.choices), value=None, layout=W.Layout(width="auto"))
        self._button = W.Button(description="Show me", disabled=True, tooltip="Pick an answer first")
        self._answer = W.HTML()
        self._choice.observe(self._chosen, names="value")
        self._button.on_click(self._reveal)
        question = html.escape(prediction.question)
        super().__init__(
            [
                _head_style(),
                W.HTML(f'<div class="sl-text"><b>Predict.</b> {question}</div>'),
                self._choice,
                self._button,
                self._answer,
            ]
        )
        self.add_class("sl-predict")

    def _chosen(self, change):
        self._button.disabled = change["new"] is None

    def _reveal(self, _):
        if self._choice.value is None:
            return
        right = self.prediction.right
        word = "Yes." if self._choice.value == right else f"Not quite: {right}."
        self._answer.value = (
            f'<div class="sl-text" role="status"><b>{html.escape(word)}</b> '
            f"{html.escape(self.prediction.because)}</div>"
        )


class Practice(W.VBox):
    """Questions with fresh numbers: read, answer with a unit, be told what went wrong, see it worked."""

    def __init__(self, notebook: str, seed: int = 1, progress: str | None = None):
        self._path = progress
        self._progress = exercises.load_progress(progress) if progress else exercises.Progress()
        titles = [(exercises.make_question(kind, 1).title, kind) for kind in exercises.kinds(notebook)]
        self._kind = W.Dropdown(options=titles, description="Question", layout=W.Layout(width="460px"))
        self._seed = W.BoundedIntText(
            value=seed, min=0, max=999999, description="Number", layout=W.Layout(width="200px")
        )
        self._prompt, self._verdict, self._help = W.HTML(), W.HTML(), W.HTML()
        self._answer = W.Text(
            description="Answer",
            placeholder="number and unit",
            continuous_update=False,
            layout=W.Layout(width="320px"),
        )
        check, fresh = W.Button(description="Check"), W.Button(description="Fresh numbers")
        hint, worked = W.Button(description="Hint"), W.Button(description="Worked solution")
        for widget in (self._kind, self._seed):
            widget.observe(lambda _: self._ask(), names="value")
        self._answer.observe(lambda change: self._judge() if change["new"].strip() else None, names="value")
        check.on_click(lambda _: self._judge())
        fresh.on_click(lambda _: setattr(self._seed, "value", (self._seed.value + 1) % 1000000))
        hint.on_click(lambda _: self._hint())
        worked.on_click(lambda _: self._worked())
        wrap = W.Layout(flex_flow="row wrap")
        super().__init__(
            [
                _head_style(),
                W.HBox([self._kind, self._seed, fresh], layout=wrap),
                self._prompt,
                W.HBox([self._answer, check, hint, worked], layout=wrap),
                self._verdict,
                self._help,
            ]
        )
        self.add_class("sl-practice")
        self._ask()

    def _ask(self):
        self.question = exercises.make_question(self._kind.value, self._seed.value)
        self._hints, self._judged = 0, None
        self._verdict.value = self._help.value = self._answer.value = ""
        self._prompt.value = f'<div class="sl-text">{_paragraphs(self.question.prompt)}</div>'

    def _judge(self):
        answer = self._answer.value
        verdict = exercises.judge(self.question, answer)
        self._verdict.value = f'<div class="sl-text" role="status">{_paragraphs(verdict.message)}</div>'
        if not verdict.asks and answer != self._judged:
            self._judged = answer
            self._keep(self._progress.with_answer(self.question, answer, verdict))

    def _hint(self):
        self._hints = min(self._hints + 1, len(self.question.hints))
        self._help.value = (
            '<div class="sl-text">'
            + "".join(
                f"<p>Hint {number}: {html.escape(text)}</p>"
                for number, text in enumerate(self.question.hints[: self._hints], 1)
            )
            + "</div>"
        )
        self._keep(self._progress.with_hint(self.question))

    def _worked(self):
        self._help.value = f'<div class="sl-text">{_paragraphs(self.question.solution)}</div>'

    def _keep(self, progress):
        self._progress = exercises.save_progress(progress, self._path) if self._path else progress


def _paragraphs(text):
    """Plain lines with **bold** words as HTML paragraphs."""
    lines = [html.escape(line) for line in str(text).split("\n") if line.strip()]
    return "".join("<p>" + re.sub(r"[*][*](.+?)[*][*]", r"<b>\1</b>", line) + "</p>" for line in lines)


hold(globals())
