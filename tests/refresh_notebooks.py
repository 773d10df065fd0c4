"""Runs the notebooks from top to bottom and writes them back lean: counts kept, outputs only where they are compared.

python tests/refresh_notebooks.py                 all of them
python tests/refresh_notebooks.py notebooks/01*   some of them
"""

import sys
from pathlib import Path

import nbformat
from nbclient import NotebookClient

NOTEBOOKS = Path(__file__).resolve().parents[1] / "notebooks"
COMPARED = "nbval-check-output"


def leaned(notebook):
    """Drop what need not be kept: run times, and the outputs of every cell that is not compared."""
    for cell in notebook.cells:
        cell.metadata.pop("execution", None)
        if cell.cell_type == "code" and COMPARED not in cell.metadata.get("tags", []):
            cell.outputs = []
    notebook.metadata.pop("widgets", None)
    notebook.metadata["language_info"] = {"name": "python"}
    return notebook


def refresh(path):
    """Run one notebook and write it back."""
    notebook = nbformat.read(path, as_version=4)
    NotebookClient(
        notebook,
        timeout=120,
        kernel_name="python3",
        resources={"metadata": {"path": str(path.parent)}},
        store_widget_state=False,
    ).execute()
    nbformat.write(leaned(notebook), path)


if __name__ == "__main__":
    for path in [Path(name) for name in sys.argv[1:]] or sorted(NOTEBOOKS.glob("*.ipynb")):
        refresh(path)
        print(path.name)
