"""Lets the Jupyter server pass each message on at once.

By default the operating system may hold a small message back until the one before it is acknowledged,
and the browser may wait some 40 ms with that. A slider's answer is the second of two small messages,
so it is often late by those 40 ms. The installed wheel enables this as a server extension.
"""


def _jupyter_server_extension_points():
    return [{"module": "structlib.pages.server"}]


def _load_jupyter_server_extension(server):
    from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection

    class PromptConnection(ZMQChannelsWebsocketConnection):
        """The server's own connection between page and kernel, with nothing held back."""

        async def connect(self):
            self.websocket_handler.set_nodelay(True)
            return await super().connect()

    server.web_app.settings["kernel_websocket_connection_class"] = PromptConnection
