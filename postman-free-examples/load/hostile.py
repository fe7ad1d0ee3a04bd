"""Clients that mean no good, beside the senders of soak.py: they hold connections, drip, send rubbish or lie about lengths.

They come from an address of their own (127.0.0.2), as an attacker's would: the service bounds the connections of one address. Each holds
its connection until the service ends it. One that is not ended within PATIENCE seconds counts as a fault of the service.
"""

import collections
import random
import socket
import struct
import threading
import time

ADDRESS = "127.0.0.2"
PATIENCE = 150
DRIP_S = 4.0
HEAD = b"POST /v1/plans/review HTTP/1.1\r\nHost: soak\r\nContent-Type: application/json\r\n"


def silent(connection, _):
    """Says nothing."""


def dripping_head(connection, ended):
    """A header of which one byte comes in four seconds."""
    drip(connection, b"GET /v1/examples HTTP/1.1\r\nHost: soak\r\nX-Drip: " + b"a" * 1000, ended)


def dripping_body(connection, ended):
    """An upload of which one byte comes in four seconds."""
    connection.sendall(HEAD + b"Content-Length: 20000\r\n\r\n{")
    drip(connection, b" " * 1000, ended)


def missing_body(connection, _):
    """Promises a body and sends none."""
    connection.sendall(HEAD + b"Content-Length: 20000\r\n\r\n")


def promised_gigabytes(connection, _):
    connection.sendall(HEAD + b"Content-Length: 9000000000\r\n\r\n{")


def endless_header(connection, _):
    connection.sendall(b"GET /health HTTP/1.1\r\nHost: soak\r\nX-Long: " + b"a" * 200_000)


def rubbish(connection, _):
    connection.sendall(random.randbytes(500) + b"\r\n\r\n")


def two_lengths(connection, _):
    """Two lengths at once, as for smuggling a second request."""
    connection.sendall(HEAD + b"Content-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET /health HTTP/1.1\r\n\r\n")


def torn_off(connection, _):
    """Resets in the middle of a body."""
    connection.sendall(HEAD + b"Content-Length: 20000\r\n\r\n{\"parts\":")
    connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
    connection.shutdown(socket.SHUT_RD)  # Wakes end_of, which then closes; with nothing to linger for that is a reset.


def drip(connection, text, ended):
    for byte in text:
        if ended.wait(DRIP_S):
            return
        connection.sendall(bytes([byte]))


KINDS = [silent, dripping_head, dripping_body, missing_body, promised_gigabytes, endless_header, rubbish, two_lengths, torn_off]


class Hostile(threading.Thread):
    """Connects again and again, each time in one of the ways above."""

    def __init__(self, seed, address, stop):
        super().__init__(daemon=True)
        self.random = random.Random(seed)
        self.address, self.stop = address, stop
        self.ends, self.longest_s = collections.Counter(), collections.Counter()
        self.kept = []

    def run(self):
        while not self.stop.wait(self.random.uniform(0.05, 1.0)):
            self.attack(self.random.choice(KINDS))

    def attack(self, kind):
        begun = time.monotonic()
        host, port = self.address.split(":")
        try:
            connection = socket.create_connection((host, int(port)), PATIENCE, (ADDRESS, 0))
        except OSError as refused:
            self.ends[kind.__name__, type(refused).__name__] += 1
            return
        ended = threading.Event()
        writer = threading.Thread(target=self.write, args=(kind, connection, ended), daemon=True)
        writer.start()
        end = self.end_of(connection)
        ended.set()
        connection.close()
        writer.join()
        seconds = time.monotonic() - begun
        self.ends[kind.__name__, end] += 1
        self.longest_s[kind.__name__] = max(self.longest_s[kind.__name__], seconds)
        if end == "kept open":
            self.kept.append(f"{kind.__name__}: still open after {seconds:.0f} s")

    @staticmethod
    def write(kind, connection, ended):
        try:
            kind(connection, ended)
        except OSError:
            pass  # The service has ended it; how, end_of tells.

    @staticmethod
    def end_of(connection):
        """The status of the answer, or how the connection was ended without one."""
        first = b""
        try:
            while came := connection.recv(65536):
                first = first or came
        except TimeoutError:
            return "kept open"
        except OSError:
            pass
        return first[9:12].decode("latin-1") if first.startswith(b"HTTP/1.") else "cut off"


class Probe(threading.Thread):
    """Asks /health twice a second, as a balancer would, and keeps how long each answer took."""

    def __init__(self, address, stop):
        super().__init__(daemon=True)
        self.address, self.stop = address, stop
        self.seconds, self.failed = [], []

    def run(self):
        while not self.stop.wait(0.5):
            begun = time.monotonic()
            host, port = self.address.split(":")
            try:
                with socket.create_connection((host, int(port)), 10) as connection:
                    connection.sendall(b"GET /health HTTP/1.1\r\nHost: soak\r\nConnection: close\r\n\r\n")
                    answer = connection.recv(65536)
                if not answer.startswith(b"HTTP/1.1 200"):
                    self.failed.append(answer[:12].decode("latin-1") or "closed")
            except OSError as broken:
                self.failed.append(type(broken).__name__)
            self.seconds.append(time.monotonic() - begun)
