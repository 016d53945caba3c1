"""Tests the served program from outside, with real sockets: what it answers to calls that are wrong,
how it bears clients that are slow or greedy, live updates, and its end."""
import socket
import ssl
import time
import unittest

from support.harness import main
from support.served import Served, Visitor


class Plant(unittest.TestCase):
    """One served program for all tests of a class: mara leads, ole is a hand on his own tablet."""

    @classmethod
    def setUpClass(cls):
        cls.served = Served()
        cls.addClassCleanup(cls.served.close)
        cls.mara, cls.ole = Visitor(cls.served, "one"), Visitor(cls.served, "two")
        assert cls.mara.enrol_first().status == 201
        assert cls.mara.sign_in("mara").status == 201
        cls.mara.let_in(cls.ole, "ole", "hand")

    def assert_refused(self, answer, status, code):
        """The one shape of an error, with that status and code."""
        self.assertEqual((answer.status, answer.code), (status, code), answer.data[:300])
        body = answer.json
        self.assertLessEqual(set(body), {"code", "message", "problems", "outstanding"})
        self.assertTrue(body["message"])
        for problem in body["problems"]:
            self.assertEqual(set(problem), {"code", "file", "line", "field", "found", "accepted",
                                            "message"})


class Bytes(Plant):
    """What is no HTTP, too large, or too slow."""

    def status_of(self, data, timeout=30):
        first = self.served.raw(data, timeout).split(b"\r\n")[0]
        return first.decode()

    def test_what_is_no_request_gets_400_and_the_end(self):
        for data in (b"\x16\x03\x01\x02\x00\x01\x00", b"HELLO\r\n\r\n", b"GET\r\n\r\n",
                     b"GET / HTTP/9.9\r\n\r\n", b"GET / HTTP/1.1\r\nno colon\r\n\r\n",
                     b"GET /\x00 HTTP/1.1\r\n\r\n",
                     b"POST /api/sessions HTTP/1.1\r\nContent-Length: x\r\n\r\n"):
            with self.subTest(data):
                self.assertIn(" 400 ", self.status_of(data))

    def test_a_head_above_16_kib_gets_431(self):
        data = b"GET / HTTP/1.1\r\nX: " + b"a" * 200000 + b"\r\n\r\n"
        self.assertIn(" 431 ", self.status_of(data))

    def test_a_body_above_1_mib_gets_413_before_it_is_sent(self):
        start = time.monotonic()
        for path in (b"/api/sessions", b"/api/people", b"/api/nothing"):
            self.assertIn(" 413 ", self.status_of(
                b"POST " + path + b" HTTP/1.1\r\nContent-Length: 9000000\r\n\r\n"))
        self.assertLess(time.monotonic() - start, 3)

    def test_a_body_in_chunks_is_bounded_too(self):
        chunk = b"10000\r\n" + b"a" * 65536 + b"\r\n"
        with self.served.socket() as connection:
            connection.sendall(b"POST /api/sessions HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\n")
            try:
                for _ in range(100):
                    connection.sendall(chunk)
            except OSError:
                pass
            try:
                self.assertIn(b" 413 ", connection.recv(4096))
            except ConnectionResetError:
                pass  # it was cut while more was on the way

    def test_a_head_that_drips_is_cut_after_ten_seconds_and_holds_nobody(self):
        with self.served.socket() as slow:
            start = time.monotonic()
            slow.sendall(b"GET /api/health HTTP/1.1\r\n")
            slow.settimeout(1)
            cut = None
            while cut is None and time.monotonic() - start < 20:
                try:
                    slow.sendall(b"X: y\r\n")
                    if slow.recv(1) == b"":
                        cut = time.monotonic() - start
                except TimeoutError:
                    before = time.monotonic()
                    self.assertEqual(self.mara.get("/api/health").status, 200)
                    self.assertLess(time.monotonic() - before, 1)
                except OSError:
                    cut = time.monotonic() - start
            self.assertIsNotNone(cut)
            self.assertGreater(cut, 8)
            self.assertLess(cut, 13)

    def test_two_requests_in_one_piece_get_two_answers(self):
        data = b"GET /api/health HTTP/1.1\r\nHost: x\r\n\r\n" \
               b"GET /api/health HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n"
        self.assertEqual(self.served.raw(data).count(b"HTTP/1.1 200 OK"), 2)

    def test_a_head_alone_is_answered_without_a_body(self):
        answer = self.served.raw(b"HEAD /api/health HTTP/1.1\r\nConnection: close\r\n\r\n")
        head, _, body = answer.partition(b"\r\n\r\n")
        self.assertRegex(head.decode(), r"Content-Length: [1-9]")
        self.assertEqual(body, b"")

    def test_every_answer_is_guarded(self):
        for path in ("/api/health", "/api/nothing", "/nothing.js"):
            headers = self.mara.get(path).headers
            policy = headers["Content-Security-Policy"]
            self.assertNotIn("unsafe-inline", policy)
            self.assertIn("default-src 'none'", policy)
            self.assertIn("frame-ancestors 'none'", policy)
            self.assertEqual(headers["X-Content-Type-Options"], "nosniff")
            self.assertEqual(headers["Referrer-Policy"], "no-referrer")
            self.assertEqual(headers["Cache-Control"], "no-store")


class Connections(unittest.TestCase):
    def test_one_address_has_so_many_connections_and_no_more(self):
        served = Served("--connections-per-address", "20")
        self.addCleanup(served.close)
        held = [served.socket() for _ in range(20)]
        time.sleep(0.3)
        self.assertIn(b" 503 ", served.raw(b""))
        for connection in held:
            connection.close()
        time.sleep(0.3)
        self.assertEqual(Visitor(served).get("/api/health").status, 200)

    def test_a_flood_of_half_heads_holds_nobody(self):
        served = Served()
        self.addCleanup(served.close)
        flood = [served.socket() for _ in range(400)]
        for connection in flood:
            connection.sendall(b"GET / HTTP/1.1\r\nX:")
        start = time.monotonic()
        self.assertEqual(Visitor(served).get("/api/health").status, 200)
        self.assertLess(time.monotonic() - start, 1)
        for connection in flood:
            connection.close()


class Tls(unittest.TestCase):
    def test_a_certificate_is_made_and_good_for_this_machine(self):
        served = Served("--tls")
        self.addCleanup(served.close)
        self.assertEqual(served.scheme, "https")
        certificate = served.folder / "plant.steamworthy.cert"
        self.assertEqual((served.folder / "plant.steamworthy.cert.key").stat().st_mode & 0o777, 0o600)
        context = ssl.create_default_context(cafile=str(certificate))
        with socket.create_connection(("127.0.0.1", served.port)) as plain:
            with context.wrap_socket(plain, server_hostname="localhost") as secure:
                shown = ":".join(f"{b:02X}" for b in __import__("hashlib").sha256(
                    secure.getpeercert(binary_form=True)).digest())
                self.assertIn(shown, served.said)
                self.assertIn(secure.version(), ("TLSv1.2", "TLSv1.3"))
                secure.sendall(b"GET /api/health HTTP/1.1\r\nConnection: close\r\n\r\n")
                self.assertIn(b"200 OK", secure.recv(4096))
        old = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        old.check_hostname, old.verify_mode = False, ssl.CERT_NONE
        with self.assertWarns(DeprecationWarning):
            old.maximum_version = ssl.TLSVersion.TLSv1_1
        with socket.create_connection(("127.0.0.1", served.port)) as plain:
            with self.assertRaises(OSError):
                old.wrap_socket(plain)

    def test_plain_http_is_not_spoken_where_others_can_listen(self):
        served = Served("--address", "0.0.0.0")
        self.addCleanup(served.close)
        self.assertEqual(served.scheme, "https")


if __name__ == "__main__":
    main()
