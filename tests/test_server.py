"""The server extension: it adds to the connection that is configured, and leaves a gateway's alone."""

import asyncio
import json
import tomllib
from pathlib import Path
from types import SimpleNamespace
from unittest.mock import Mock

import pytest
from jupyter_server.gateway.connections import GatewayWebSocketConnection
from jupyter_server.services.kernels.connection.base import BaseKernelWebsocketConnection
from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection
from tornado.websocket import WebSocketHandler

from structlib.pages import server

ROOT = Path(__file__).resolve().parents[1]
SETTING = "kernel_websocket_connection_class"


def _server(configured, gateway=False):
    return SimpleNamespace(
        web_app=SimpleNamespace(settings={SETTING: configured}), gateway_config=SimpleNamespace(gateway_enabled=gateway)
    )


class SomebodysConnection(BaseKernelWebsocketConnection):
    """A connection that somebody configured."""

    async def connect(self):
        return "connected in somebody's own way"


class SomebodysGateway(GatewayWebSocketConnection):
    """A connection to kernels on another machine."""


@pytest.mark.parametrize("configured", [SomebodysConnection, ZMQChannelsWebsocketConnection])
def test_the_configured_connection_is_extended(configured):
    app = _server(configured)
    server._load_jupyter_server_extension(app)
    made = app.web_app.settings[SETTING]
    assert made is not configured and issubclass(made, configured)


def test_the_configured_connection_still_connects_in_its_own_way_and_holds_nothing_back():
    app = _server(SomebodysConnection)
    server._load_jupyter_server_extension(app)
    socket = Mock(spec=WebSocketHandler)  # the page's end of the connection
    made = app.web_app.settings[SETTING](websocket_handler=socket)
    assert asyncio.run(made.connect()) == "connected in somebody's own way"
    socket.set_nodelay.assert_called_once_with(True)


@pytest.mark.parametrize(
    "configured, gateway",
    [
        (GatewayWebSocketConnection, False),
        (GatewayWebSocketConnection, True),
        (SomebodysGateway, False),
        (SomebodysConnection, True),
        (None, False),
    ],
)
def test_a_gateway_is_left_alone(configured, gateway):
    app = _server(configured, gateway)
    server._load_jupyter_server_extension(app)
    assert app.web_app.settings[SETTING] is configured


def test_every_notebook_names_the_template_that_asks_nothing_of_other_hosts_and_the_wheel_brings_it():
    shared = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["hatch"]["build"]["targets"]["wheel"]
    folder = next(
        here for here, there in shared["shared-data"].items() if there == "share/jupyter/voila/templates/structlib"
    )
    assert {path.name for path in (ROOT / folder).iterdir()} == {"conf.json", "index.html.j2"}
    for path in (ROOT / "notebooks").glob("*.ipynb"):
        assert json.loads(path.read_text())["metadata"]["voila"] == {"template": "structlib"}, path.name
