"""Lets the Jupyter server pass each message on at once.

By default the operating system may hold a small message back until the one before it is acknowledged,
and the browser may wait some 40 ms with that. A slider's answer is the second of two small messages,
so it is often late by those 40 ms. The installed wheel enables this as a server extension.
"""


def _jupyter_server_extension_points():
    return [{"module": "structlib.pages.server"}]


def _load_jupyter_server_extension(server):
    """Extend the connection between page and kernel that is configured; with a gateway, leave it alone."""
    from jupyter_server.gateway.connections import GatewayWebSocketConnection

    settings = server.web_app.settings
    configured = settings.get("kernel_websocket_connection_class")
    if configured is None or server.gateway_config.gateway_enabled:
        return
    if issubclass(configured, GatewayWebSocketConnection):
        return

    class PromptConnection(configured):
        """The connection that was configured, with nothing held back."""

        def connect(self):
            self.websocket_handler.set_nodelay(True)
            return super().connect()

    settings["kernel_websocket_connection_class"] = PromptConnection
