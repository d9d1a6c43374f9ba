"""A recording of a drive made up from the track of a card (`card --format gpx`), as a phone would write it: GPX 1.1 with
times, the car at one speed all along, each point off by normally distributed metres."""
import datetime
import math
import random
import re

METRES_PER_DEGREE = 111320  # good enough for noise


def track_of(gpx):
    """The points of the card's track, (lat, lon)."""
    return [(float(lat), float(lon)) for lat, lon in re.findall(r'<trkpt lat="([-\d.]+)" lon="([-\d.]+)"', gpx)]


def metres(a, b):
    east = (b[1] - a[1]) * math.cos(math.radians(a[0]))
    return math.hypot(b[0] - a[0], east) * METRES_PER_DEGREE


def places(track, speed_mps, every_s):
    """Where the car is each so many seconds."""
    at, left = 0.0, 0.0
    for a, b in zip(track, track[1:]):
        length = metres(a, b)
        while length > 0 and left <= length:
            share = left / length
            yield (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))
            left += speed_mps * every_s
        left -= length
    yield track[-1]


def gpx_of(points):
    """points: (seconds since 1970, lat, lon)."""
    lines = ['<?xml version="1.0" encoding="UTF-8"?>',
             '<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>']
    for seconds, lat, lon in points:
        time = datetime.datetime.fromtimestamp(seconds, datetime.timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ")
        lines.append(f'<trkpt lat="{lat:.7f}" lon="{lon:.7f}"><ele>12</ele><time>{time}</time></trkpt>')
    return "\n".join(lines + ["</trkseg></trk></gpx>"]) + "\n"


def recorded(track, start_s, minutes, every_s=5, sigma_m=4, seed=7):
    """A drive along the track in so many minutes; points (seconds, lat, lon)."""
    chance = random.Random(seed)
    whole = sum(metres(a, b) for a, b in zip(track, track[1:]))
    points = []
    for k, (lat, lon) in enumerate(places(track, whole / (minutes * 60), every_s)):
        north, east = chance.gauss(0, sigma_m), chance.gauss(0, sigma_m)
        points.append((start_s + k * every_s, lat + north / METRES_PER_DEGREE,
                       lon + east / METRES_PER_DEGREE / math.cos(math.radians(lat))))
    return points
