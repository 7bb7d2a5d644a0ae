#!/usr/bin/env python3
"""Hands out a folder on this machine alone: web_server.py FOLDER PORT (0 = any, which is printed)."""

import functools
import http.server
import sys


class Handler(http.server.SimpleHTTPRequestHandler):
    extensions_map = {**http.server.SimpleHTTPRequestHandler.extensions_map,
                      ".wasm": "application/wasm", ".data": "application/octet-stream"}

    def log_message(self, *_):
        pass

    def end_headers(self):
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()


def main():
    serve = http.server.ThreadingHTTPServer(
        ("127.0.0.1", int(sys.argv[2])), functools.partial(Handler, directory=sys.argv[1]))
    if sys.argv[2] == "0":
        print(serve.server_address[1], flush=True)
    serve.serve_forever()


if __name__ == "__main__":
    main()
