"""Requests that mean harm, or nothing: bytes that are a request, nearly one, or none at all."""
import json

WISH = {"words": [["home", "4 Lantern Row"], ["start", "2026-11-28T15:00"], ["minutes", "30"], ["want", "roundabout=1"]],
        "effort": "quick"}

WHOLE = ["/extract?name=a.osm.pbf&region=IE", "/extract?name=a.osm&region=GB-ENG&side=left", "/build", "/recorded?code=WREN&name=a.gpx",
         "/recorded/1", "/jobs/1/sketch?loop=1&row=2", "/jobs/1/sketches?loop=1", "/jobs/1/wish", "/jobs/1/keep",
         "/notes", "/notes/change", "/notes/drop", "/notes/drop/1", "/centres", "/centres/keep", "/centres/drop", "/centres/keep?name=x",
         "/told/near?home=4+Lantern+Row&want=zebra&within=3", "/told/near?home=--output&want=zebra", "/told/near?want=%00&within=99999999999",
         "/told/ground?near=54.3,2.6&at=2026-11-28T15:00", "/told/ground?near=Mill+Street", "/told/ground?near=-o&at=x",
         "/told/streets?days=30", "/told/streets?days=-1", "/told/streets?days=nan", "/told/notes", "/told/notes?x=1", "/told/", "/told/day"]

LINE = "54.30,2.60;54.31,2.60;54.30,2.61"
NOTE = {"type": "Feature", "geometry": {"type": "Point", "coordinates": [2.58907, 54.2945]}, "properties": {"says": "hump", "seen": "2026-11-20"}}
BODIES = [json.dumps(body).encode() for body in (
    {"number": 1, "was": NOTE}, {"number": 1, "was": NOTE, "words": [["seen", "2026-11-21"]]}, {"number": -1, "was": NOTE, "words": []},
    {"number": 10 ** 30, "was": {}}, {"number": 1, "was": [[[[]]]], "words": [["without", "remark"]]}, {"number": "1", "was": None},
    {"words": [["at", "54.2945,2.58907"], ["says", "hump"], ["seen", "2026-11-20"]]}, {"words": [["at", "91,181"], ["says", "hump"], ["seen", "2026-11-20"]]},
    {"words": [["area", "/etc/passwd"], ["says", "hump"]]}, {"words": [["says", "never"], ["hours", "Mo" * 4000]]},
    {"name": "North", "words": [["outline", LINE], ["hours", "Mo-Fr 08:00-16:30"], ["since", "2026-01-01"]]},
    {"name": "North"}, {"name": "--book=/tmp/x", "words": [["outline", LINE], ["hours", "Mo"]]}, {"name": "a\nb"}, {"name": 7, "words": {}},
    {"pupil": "WREN", "loop": 1, "length": 60, "elsewhere": False}, {"pupil": "../x", "loop": -1, "length": 1e300, "elsewhere": 0},
    {"lines": ["09:00 60 WREN"], "day": "2026-11-28"}, {"lines": [7], "day": "2026-02-31"})]


def random_bytes(dice, most):
    return bytes(dice.randrange(256) for _ in range(dice.randrange(most)))


def random_target(dice):
    pieces = ["/", "tiles", "jobs", "look", "find", "area", "loops", "symbols", "card", "drive", "..", "%2e", "%00", "//", "\\",
              "?", "at=", "text=", "loop=", "form=pdf", "&", "=", "-1", "99999999999", "14", "8310", "5130", "1", "é", "%zz", "NaN",
              "pupils", "WREN", "day", "keep", "erase", "export", "form=json", "day=", "lesson=",
              "2026-11-28T15:00", "54.3,2.6", "a" * 300]
    if dice.random() < 0.2:
        return dice.choice(WHOLE)
    return "/" + "".join(dice.choice(pieces) for _ in range(dice.randrange(1, 9)))


WRITES = ["/notes", "/notes/change", "/notes/drop", "/centres/keep", "/centres/drop", "/jobs/1/keep", "/day", "/pupils/WREN/add"]


def let_in(dice, cookie, port):
    """A request that the gate lets in: what it asks for may be sense or nonsense."""
    body = dice.choice(BODIES)
    head = [f"POST {dice.choice(WRITES)} HTTP/1.1", f"Host: 127.0.0.1:{port}", "Connection: close", f"Cookie: {cookie}",
            f"Origin: http://127.0.0.1:{port}", f"Content-Length: {len(body)}"]
    return "\r\n".join(head).encode() + b"\r\n\r\n" + body


def random_request(dice, cookie, port):
    """Bytes that are a request, nearly one, or none at all."""
    if dice.random() < 0.04:
        return let_in(dice, cookie, port)
    if dice.random() < 0.2:
        return random_bytes(dice, 400)
    method = dice.choice(["GET", "GET", "HEAD", "POST", "DELETE", "PUT", "OPTIONS", "TRACE", "get", "\x00"])
    lines = [f"{method} {random_target(dice)} HTTP/{dice.choice(['1.1', '1.1', '1.0', '2.0', '9'])}",
             f"Host: {dice.choice([f'127.0.0.1:{port}', f'127.0.0.1:{port}', 'evil.example', ''])}", "Connection: close"]
    if dice.random() < 0.8:
        lines.append(f"Cookie: {cookie}")
    body = b""
    if dice.random() < 0.4:
        body = dice.choice([dice.choice(BODIES), json.dumps(WISH).encode()[:dice.randrange(200)], b"[" * 5000, random_bytes(dice, 300),
                            b'{"words": [["home", "x\\u0000y"]]}', b'{"words": 7}', b'{"words": [["-o", "/tmp/x"]], "effort": "quick"}'])
        lines.append(f"Content-Length: {len(body) if dice.random() < 0.8 else dice.choice([-1, 10 ** 12, 'x'])}")
        lines.append(f"Origin: {dice.choice([f'http://127.0.0.1:{port}', 'http://evil.example', 'null'])}")
    if dice.random() < 0.1:
        lines.append("X-Long: " + "y" * dice.randrange(40000))
    return "\r\n".join(lines).encode("utf-8", "replace") + b"\r\n\r\n" + body
