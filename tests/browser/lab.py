"""A real JupyterLab, and a real Voila, on a copy of the notebooks, and a headless Chromium that looks at them."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

NOTEBOOKS = Path(__file__).resolve().parents[2] / "notebooks"
CHROMIUM_FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-quic",
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",  # the network is off: only this machine answers
]


def chromium():
    """Path of the browser, or None."""
    return shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")


def _free_port():
    with socket.socket() as sock:
        sock.bind(("127.0.0.1", 0))
        return sock.getsockname()[1]


def asked_of_other_hosts(addresses):
    """Pick the addresses that are not on this machine."""
    return [
        one
        for one in addresses
        if urlsplit(one).scheme not in ("data", "blob", "about")
        and urlsplit(one).hostname not in ("127.0.0.1", "localhost", "::1")
    ]


def listen(page):
    """Note every address that a page asks for, and every error it meets."""
    page.errors, page.asked = [], []
    page.on("console", lambda message: page.errors.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: page.errors.append(str(error)))
    page.on("request", lambda request: page.asked.append(request.url))
    page.on("websocket", lambda socket: page.asked.append(socket.url))


def copied_notebooks(folder):
    """Copy the notebooks into ``folder``, and return where they are."""
    return shutil.copytree(NOTEBOOKS, Path(folder) / "notebooks", ignore=shutil.ignore_patterns(".ipynb_checkpoints"))


@contextmanager
def _answering(command, address, folder):
    """Start a server with settings of its own in ``folder``, wait until it answers, and end it at last."""
    environment = dict(
        os.environ,
        JUPYTER_CONFIG_DIR=str(folder / "config"),
        JUPYTER_DATA_DIR=str(folder / "data"),
        JUPYTER_RUNTIME_DIR=str(folder / "runtime"),
        IPYTHONDIR=str(folder / "ipython"),
        JUPYTERLAB_SETTINGS_DIR=str(folder / "user"),
        JUPYTERLAB_WORKSPACES_DIR=str(folder / "spaces"),
    )
    with (folder / "server.log").open("w") as log:
        server = subprocess.Popen(command, env=environment, stdout=log, stderr=subprocess.STDOUT)
        try:
            for _ in range(240):
                try:
                    urllib.request.urlopen(address, timeout=2).read()
                    break
                except OSError:
                    if server.poll() is not None:
                        raise RuntimeError((folder / "server.log").read_text()) from None
                    time.sleep(0.25)
            else:
                raise RuntimeError("the server did not answer within a minute")
            yield
        finally:
            server.terminate()
            try:
                server.wait(10)
            except subprocess.TimeoutExpired:
                server.kill()


@contextmanager
def running_lab(folder):
    """Start JupyterLab on a copy of the notebooks in ``folder``; yields its address."""
    folder = Path(folder)
    work = copied_notebooks(folder)
    settings = folder / "settings"
    settings.mkdir()
    (settings / "overrides.json").write_text(
        '{"@jupyterlab/apputils-extension:notification": {"fetchNews": "false", "checkForUpdates": false}}'
    )
    port = _free_port()
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
    address = f"http://127.0.0.1:{port}"
    with _answering(command, f"{address}/api", folder):
        yield address


@contextmanager
def running_voila(folder, notebook):
    """Start Voila on a copy of one notebook, as README.md says; yields its address."""
    folder, port = Path(folder), _free_port()
    work = copied_notebooks(folder)
    command = [sys.executable, "-m", "voila", str(work / notebook), "--no-browser", f"--port={port}"]
    with _answering(command, f"http://127.0.0.1:{port}/voila/static/voila.js", folder):
        yield f"http://127.0.0.1:{port}"


#: 'bench' where a bench is drawn, else what the kernel is at.
_STATE = """() => document.querySelector('.sl-bench svg') ? 'bench'
    : document.querySelector('.jp-Notebook-ExecutionIndicator')?.dataset.status"""


#: The notebook in front has joined its kernel.
_JOINED = """async () => {
    const context = window.jupyterapp?.shell?.currentWidget?.sessionContext;
    if (!context) return false;
    await context.ready;
    if (!context.session?.kernel) return false;
    await context.session.kernel.info;
    return context.session.kernel.connectionStatus === 'connected';
}"""


def open_and_run(page, address, notebook, timeout=120_000):
    """Open one notebook, run all of its cells, wait for the bench, and return when the kernel is idle."""
    page.goto(f"{address}/lab/tree/{notebook}?reset", wait_until="domcontentloaded", timeout=timeout)
    page.wait_for_selector(".jp-Notebook .jp-Cell", timeout=timeout)
    page.wait_for_function(
        "() => document.querySelector('.jp-Notebook-ExecutionIndicator')?.dataset.status === 'idle'",
        timeout=timeout,
    )
    # without a kernel the lab would ask which one is meant, and its question would lie over the page
    page.wait_for_function(_JOINED, timeout=timeout)
    # what is asked while the page is still joining the kernel is dropped: it is asked again, but only when the kernel
    # has rested for a while, or a slow machine would run all cells twice and put new benches in place of those tested
    rested = 12
    for _ in range(timeout // 250):
        if rested >= 12:  # three seconds
            page.evaluate("() => { window.jupyterapp.commands.execute('notebook:run-all-cells'); }")
            rested = 0
        page.wait_for_timeout(250)
        state = page.evaluate(_STATE)
        if state == "bench":
            break
        rested = rested + 1 if state == "idle" else 0
    page.wait_for_selector(".sl-bench svg", timeout=5000, state="attached")
    page.wait_for_function(
        "() => document.querySelector('.jp-Notebook-ExecutionIndicator')?.dataset.status === 'idle'",
        timeout=timeout,
    )
