"""Requests that mean harm, or nothing: bytes that are a request, nearly one, or none at all."""
import json

WISH = {"words": [["home", "4 Lantern Row"], ["start", "2026-11-28T15:00"], ["minutes", "30"], ["want", "roundabout=1"]],
        "effort": "quick"}

WHOLE = ["/extract?name=a.osm.pbf&region=IE", "/extract?name=a.osm&region=GB-ENG&side=left", "/build", "/recorded?code=WREN&name=a.gpx",
         "/recorded/1", "/jobs/1/sketch?loop=1&row=2", "/jobs/1/sketches?loop=1"]


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


def random_request(dice, cookie, port):
    """Bytes that are a request, nearly one, or none at all."""
    if dice.random() < 0.2:
        return random_bytes(dice, 400)
    method = dice.choice(["GET", "GET", "HEAD", "POST", "DELETE", "PUT", "OPTIONS", "TRACE", "get", "\x00"])
    lines = [f"{method} {random_target(dice)} HTTP/{dice.choice(['1.1', '1.1', '1.0', '2.0', '9'])}",
             f"Host: {dice.choice([f'127.0.0.1:{port}', f'127.0.0.1:{port}', 'evil.example', ''])}", "Connection: close"]
    if dice.random() < 0.8:
        lines.append(f"Cookie: {cookie}")
    body = b""
    if dice.random() < 0.4:
        body = dice.choice([json.dumps(WISH).encode()[:dice.randrange(200)], b"[" * 5000, random_bytes(dice, 300),
                            b'{"words": [["home", "x\\u0000y"]]}', b'{"words": 7}', b'{"words": [["-o", "/tmp/x"]], "effort": "quick"}'])
        lines.append(f"Content-Length: {len(body) if dice.random() < 0.8 else dice.choice([-1, 10 ** 12, 'x'])}")
        lines.append(f"Origin: {dice.choice([f'http://127.0.0.1:{port}', 'http://evil.example', 'null'])}")
    if dice.random() < 0.1:
        lines.append("X-Long: " + "y" * dice.randrange(40000))
    return "\r\n".join(lines).encode("utf-8", "replace") + b"\r\n\r\n" + body
