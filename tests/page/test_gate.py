#!/usr/bin/python3
"""Whom the page lets in, and what it does with those who mean it harm.

    tests/page/test_gate.py PROGRAM [REQUESTS]

REQUESTS: random ones thrown at it (2,000; the long run throws 100,000). RFC 9110 for what a status means; the attacks
are those of the OWASP Web Security Testing Guide: host header, cross-site requests, path traversal, slow clients.
"""
import contextlib
import json
import pathlib
import random
import signal
import socket
import subprocess
import sys
import tempfile
import time
import unittest

from random_requests import WISH, random_request
from served import ROOT, served

PROGRAM = sys.argv[1]
REQUESTS = int(sys.argv[2]) if len(sys.argv) > 2 else 2000
TILE = "/tiles/14/8310/5130?at=2026-11-28T15:00&minutes=60"
EVERYWHERE = ["/", "/desk.js", "/desk.css", "/fonts/regular.ttf", "/area", "/find?text=Mill", TILE, "/look?at=54.3,2.6",
              "/symbols/zebra", "/jobs/1", "/jobs/1/loops", "/none", "/loops", "/jobs/1/keep", "/jobs/1/paper", "/day?day=2026-11-28", "/notes", "/notes/drop", "/told/near?home=4+Lantern+Row&want=zebra",
              "/pupils", "/pupils/WREN", "/pupils/WREN/export?form=json", "/pupils/WREN/erase"]


class Gate(unittest.TestCase):
    def test_without_the_key_nothing_answers(self):
        with served(PROGRAM) as page:
            for target in EVERYWHERE:
                for method in ("GET", "HEAD", "POST", "DELETE"):
                    self.assertEqual(page.ask(method, target)[0], 401, f"{method} {target}")
                self.assertEqual(page.ask("GET", target, Cookie=f"loopwright-{page.port}=" + "0" * 64)[0], 401, target)
            self.assertEqual(page.ask("GET", "/?key=" + "0" * 64)[0], 401)

    def test_the_key_is_good_once_and_the_cookie_from_then_on(self):
        with served(PROGRAM) as page:
            page.enter()
            self.assertEqual(page.ask("GET", f"/?key={page.key}", Cookie=None)[0], 401)
            for _ in range(3):
                self.assertEqual(page.ask("GET", "/area")[0], 200)
            status, headers, body = page.ask("GET", "/")
            self.assertEqual((status, headers["Content-Type"]), (200, "text/html; charset=utf-8"))
            self.assertIn(b"/desk.js", body)
            self.assertIn("default-src 'none'", headers["Content-Security-Policy"])
            self.assertNotIn(b"http", body, "nothing from elsewhere")

    def test_other_hosts_and_pages_are_refused(self):
        with served(PROGRAM) as page:
            page.enter()
            for host in ("evil.example", f"evil.example:{page.port}", "127.0.0.1", "", f"127.0.0.1:{page.port + 1}", None):
                self.assertEqual(page.ask("GET", "/area", Host=host)[0], 403, host)
            for origin in ("http://evil.example", "null", f"https://127.0.0.1:{page.port}", f"http://localhost:{page.port}"):
                self.assertEqual(page.ask("GET", "/area", Origin=origin)[0], 403, origin)
            wish = json.dumps(WISH)
            self.assertEqual(page.ask("POST", "/loops", wish)[0], 403, "a post that doesn't say where it comes from")
            self.assertEqual(page.ask("POST", "/loops", wish, Origin="http://evil.example")[0], 403)
            self.assertEqual(page.ask("GET", "/area", Sec_Fetch_Site="cross-site")[0], 403)
            self.assertEqual(page.ask("GET", "/area", Sec_Fetch_Site="same-site")[0], 403)
            self.assertEqual(page.ask("POST", "/loops", wish, Origin=page.origin)[0], 200)

    def test_a_wish_is_looked_for_watched_and_broken_off(self):
        with served(PROGRAM) as page:
            page.enter()
            job = json.loads(page.ask("POST", "/loops", json.dumps(WISH), Origin=page.origin)[2])["job"]
            while (state := json.loads(page.ask("GET", f"/jobs/{job}")[2]))["stage"] in ("waiting", "working"):
                time.sleep(0.05)
            self.assertEqual((state["stage"], state["code"], state["trouble"]), ("over", 0, ""))
            self.assertEqual(json.loads(page.ask("GET", f"/jobs/{job}/loops")[2])["format"], "loopwright-loops")
            drive = json.loads(page.ask("GET", f"/jobs/{job}/drive?loop=1")[2])
            self.assertEqual(drive["type"], "FeatureCollection")
            status, headers, pdf = page.ask("GET", f"/jobs/{job}/card?loop=1&form=pdf&pupil=WREN")
            self.assertEqual((status, headers["Content-Type"], pdf[:5]), (200, "application/pdf", b"%PDF-"))
            self.assertEqual(page.ask("GET", f"/jobs/{job}/card?loop=9&form=pdf")[0], 422)
            self.assertEqual(page.ask("GET", f"/jobs/{job}/card?loop=1&form=exe")[0], 400)
            long = {"words": [*WISH["words"][:2], ["minutes", "600"], ["want", "roundabout=max"], ["want", "emerge=max"]], "effort": "thorough"}
            job = json.loads(page.ask("POST", "/loops", json.dumps(long), Origin=page.origin)[2])["job"]
            time.sleep(0.3)
            self.assertEqual(page.ask("DELETE", f"/jobs/{job}", Origin=page.origin)[0], 200)
            deadline = time.monotonic() + 5
            while json.loads(page.ask("GET", f"/jobs/{job}")[2])["stage"] != "broken off":
                self.assertLess(time.monotonic(), deadline)
            self.assertEqual(page.ask("GET", f"/jobs/{job}/loops")[0], 409)

    def test_words_of_a_wish_are_only_words_of_a_wish(self):
        with served(PROGRAM) as page:
            page.enter()
            for words, status in (([["home", "x\ny"]], 400), ([["home"]], 400), ("home", 400), ([["home", 7]], 400)):
                body = json.dumps({"words": words, "effort": "quick"})
                self.assertEqual(page.ask("POST", "/loops", body, Origin=page.origin)[0], status, words)
            job = json.loads(page.ask("POST", "/loops", json.dumps({"words": [["output", "/tmp/x"]]}), Origin=page.origin)[2])["job"]
            while (state := json.loads(page.ask("GET", f"/jobs/{job}")[2]))["stage"] in ("waiting", "working"):
                time.sleep(0.05)
            self.assertEqual(state["code"], 1)
            self.assertIn("output", state["trouble"])

    def test_a_search_broken_off_and_others_begun_at_once_does_no_harm(self):
        with served(PROGRAM) as page:
            page.enter()
            slow = json.dumps(dict(WISH, effort="thorough", words=[*WISH["words"][:2], ["minutes", "90"], ["want", "roundabout=max"]]))
            short = json.dumps({"words": [["minutes", "none"]]})
            job = json.loads(page.ask("POST", "/loops", slow, Origin=page.origin)[2])["job"]
            for _ in range(70):  # more than are kept
                while page.ask("POST", "/loops", short, Origin=page.origin)[0] == 503:
                    time.sleep(0.05)
            with socket.create_connection(("127.0.0.1", page.port)) as both:
                head = f"HTTP/1.1\r\nHost: 127.0.0.1:{page.port}\r\nCookie: {page.cookie}\r\nOrigin: {page.origin}\r\n"
                both.sendall((f"DELETE /jobs/{job} {head}\r\n" + f"POST /loops {head}Content-Length: {len(short)}\r\n\r\n{short}").encode())
                both.recv(4000)
            time.sleep(0.5)
            self.assertEqual(page.ask("GET", TILE)[0], 200)
            self.assertIsNone(page.process.poll())

    def test_the_terminal_closed_leaves_nothing(self):
        with served(PROGRAM) as page:
            page.enter()
            page.ask("POST", "/loops", json.dumps(dict(WISH, effort="thorough")), Origin=page.origin)
            page.process.send_signal(signal.SIGHUP)
            page.process.wait(timeout=20)  # and served looks for what is left

    def test_what_a_killed_page_left_goes_with_the_next(self):
        with tempfile.TemporaryDirectory() as folder:
            area = pathlib.Path(folder) / "a.area"
            subprocess.run([PROGRAM, "build", ROOT / "maps" / "quillham.osm.pbf", "-o", area, "--region", "GB-ENG"],
                           check=True, stdout=subprocess.DEVNULL)

            def begin():
                page = subprocess.Popen([PROGRAM, "page", area], stdout=subprocess.PIPE, encoding="utf-8",
                                        env={"TMPDIR": folder, "PATH": "/usr/bin:/bin"})
                page.stdout.readline()
                return page

            def end(page, how):
                page.send_signal(how)
                page.wait(timeout=20)
                page.stdout.close()

            killed, living = begin(), begin()
            end(killed, signal.SIGKILL)
            self.assertEqual(len(list(pathlib.Path(folder).glob("loopwright-page-*"))), 2)
            last = begin()
            self.assertEqual(len(list(pathlib.Path(folder).glob("loopwright-page-*"))), 2, "the living one's stays")
            end(living, signal.SIGTERM)
            end(last, signal.SIGTERM)
            self.assertEqual(list(pathlib.Path(folder).iterdir()), [area])

    def test_too_much_at_once_is_refused_and_the_page_goes_on(self):
        with served(PROGRAM) as page:
            page.enter()
            try:
                status = page.ask("POST", "/loops", b"x" * (2 << 20), Origin=page.origin)[0]
            except OSError:
                status = 413  # it hung up on us in the middle
            self.assertEqual(status, 413)
            slow = [socket.create_connection(("127.0.0.1", page.port)) for _ in range(200)]
            for number, each in enumerate(slow):
                each.sendall(b"GET /area HTTP/1.1\r\nHost: 127.0.0.1"[:number % 30])
            self.assertEqual(page.ask("GET", "/area")[0], 200, "with 200 connections that say nothing")
            for each in slow:
                each.close()
            slow_wish = dict(WISH, effort="thorough", words=[*WISH["words"][:2], ["minutes", "120"], ["want", "roundabout=max"]])
            told = [page.ask("POST", "/loops", json.dumps(slow_wish), Origin=page.origin) for _ in range(40)]
            self.assertIn(503, [status for status, _, _ in told])
            self.assertEqual(page.ask("GET", TILE)[0], 200)
            for status, _, body in told:
                if status == 200:
                    page.ask("DELETE", f"/jobs/{json.loads(body)['job']}", Origin=page.origin)

    def test_slow_cards_hold_up_no_tile(self):
        with served(PROGRAM) as page:
            page.enter()
            job = json.loads(page.ask("POST", "/loops", json.dumps(WISH), Origin=page.origin)[2])["job"]
            while json.loads(page.ask("GET", f"/jobs/{job}")[2])["stage"] in ("waiting", "working"):
                time.sleep(0.05)
            waiting = [socket.create_connection(("127.0.0.1", page.port), timeout=60) for _ in range(30)]
            for each in waiting:
                each.sendall(f"GET /jobs/{job}/card?loop=1&form=pdf HTTP/1.1\r\nHost: 127.0.0.1:{page.port}\r\nCookie: {page.cookie}\r\n\r\n".encode())
            time.sleep(0.2)
            for target in (TILE, f"/jobs/{job}", "/area", "/find?text=Mill"):
                self.assertEqual(page.ask("GET", target)[0], 200)
            answered = 0
            for each in waiting:
                each.setblocking(False)
                with contextlib.suppress(BlockingIOError):
                    answered += len(each.recv(1000)) > 0
            self.assertLess(answered, 20, "they were answered before all of the cards")
            for each in waiting:
                each.close()

    def test_random_requests_neither_stop_it_nor_get_an_answer_without_the_key(self):
        dice = random.Random(20261129)
        with tempfile.TemporaryDirectory() as kept, served(PROGRAM, more=["--notes", f"{kept}/n.geojson", "--book", f"{kept}/p.book"]) as page:
            page.enter()
            page.ask("GET", TILE)
            before = None
            for number in range(REQUESTS):
                request = random_request(dice, page.cookie, page.port)
                with socket.create_connection(("127.0.0.1", page.port), timeout=60) as connection:
                    try:
                        connection.sendall(request)
                        connection.shutdown(socket.SHUT_WR)
                        reply = connection.recv(200)
                    except OSError:
                        reply = b""
                if reply and page.cookie.encode() not in request:
                    self.assertRegex(reply, rb"^HTTP/1\.1 (400|401|403|413|431) ", request[:300])
                self.assertNotRegex(reply, rb"^HTTP/1\.1 500 ", request[:300])
                if number == REQUESTS // 2:
                    before = page.resident_kb()
            grown = page.resident_kb() - before
            self.assertLess(grown, 40_000, "kilobytes more after the second half")
            self.assertEqual(page.ask("GET", "/area")[0], 200)
            self.assertIsNone(page.process.poll())
            print(f"{REQUESTS} random requests, {grown} kB more after the second half of them")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
