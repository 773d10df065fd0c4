"""A real JupyterLab on a copy of the notebooks, and a headless Chromium that looks at it."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import TimeoutError as PlaywrightTimeout

NOTEBOOKS = Path(__file__).resolve().parents[2] / "notebooks"
CHROMIUM_FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-quic",
]


def chromium():
    """Path of the browser, or None."""
    return shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")


def _free_port():
    with socket.socket() as sock:
        sock.bind(("127.0.0.1", 0))
        return sock.getsockname()[1]


@contextmanager
def running_lab(folder):
    """Start JupyterLab on a copy of the notebooks in ``folder``; yields its address."""
    folder = Path(folder)
    work = folder / "notebooks"
    shutil.copytree(NOTEBOOKS, work, ignore=shutil.ignore_patterns(".ipynb_checkpoints"))
    settings = folder / "settings"
    settings.mkdir()
    (settings / "overrides.json").write_text(
        '{"@jupyterlab/apputils-extension:notification": {"fetchNews": "false", "checkForUpdates": false}}'
    )
    port = _free_port()
    environment = dict(
        os.environ,
        JUPYTER_CONFIG_DIR=str(folder / "config"),
        JUPYTER_DATA_DIR=str(folder / "data"),
        JUPYTER_RUNTIME_DIR=str(folder / "runtime"),
        IPYTHONDIR=str(folder / "ipython"),
        JUPYTERLAB_SETTINGS_DIR=str(folder / "user"),
        JUPYTERLAB_WORKSPACES_DIR=str(folder / "spaces"),
    )
    command = [
        sys.executable,
        "-m",
        "jupyterlab",
        "--no-browser",
        f"--port={port}",
        "--ServerApp.port_retries=0",
        "--IdentityProvider.token=",
        "--ServerApp.password=",
        "--ServerApp.disable_check_xsrf=True",
        "--LabApp.expose_app_in_browser=True",
        f"--LabApp.app_settings_dir={settings}",
        f"--ServerApp.root_dir={work}",
    ]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        command.append("--allow-root")
    log = (folder / "lab.log").open("w")
    server = subprocess.Popen(command, env=environment, stdout=log, stderr=subprocess.STDOUT)
    address = f"http://127.0.0.1:{port}"
    try:
        for _ in range(240):
            try:
                urllib.request.urlopen(f"{address}/api", timeout=2).read()
                break
            except OSError:
                if server.poll() is not None:
                    raise RuntimeError((folder / "lab.log").read_text()) from None
                time.sleep(0.25)
        else:
            raise RuntimeError("JupyterLab did not answer within a minute")
        yield address
    finally:
        server.terminate()
        try:
            server.wait(10)
        except subprocess.TimeoutExpired:
            server.kill()
        log.close()


def open_and_run(page, address, notebook, timeout=120_000):
    """Open one notebook, run all of its cells, wait for the bench, and return when the kernel is idle."""
    page.goto(f"{address}/lab/tree/{notebook}?reset", wait_until="domcontentloaded", timeout=timeout)
    page.wait_for_selector(".jp-Notebook .jp-Cell", timeout=timeout)
    page.wait_for_function(
        "() => document.querySelector('.jp-Notebook-ExecutionIndicator')?.dataset.status === 'idle'",
        timeout=timeout,
    )
    # what is asked while the page is still joining the kernel is dropped: ask again until the bench is there
    for attempt in range(6):
        page.wait_for_timeout(1000)
        page.evaluate("() => { window.jupyterapp.commands.execute('notebook:run-all-cells'); }")
        try:
            page.wait_for_selector(".sl-bench svg", timeout=timeout / 6, state="attached")
            break
        except PlaywrightTimeout:
            if attempt == 5:
                raise
    page.wait_for_function(
        "() => document.querySelector('.jp-Notebook-ExecutionIndicator')?.dataset.status === 'idle'",
        timeout=timeout,
    )
