"""Metres on the ellipsoid: lengths are checked to a thousandth, where a ball is half a per cent off."""
import math


def metres(a, b):
    """Between two (lat, lon) at most some kilometres apart. Length of a degree on WGS 84 by the usual
    series (Geodesy, any textbook; from memory, agrees with GeodSolve to 0.01 %)."""
    lat = math.radians((a[0] + b[0]) / 2)
    north = 111132.954 - 559.822 * math.cos(2 * lat) + 1.175 * math.cos(4 * lat)
    east = 111412.84 * math.cos(lat) - 93.5 * math.cos(3 * lat) + 0.118 * math.cos(5 * lat)
    return math.hypot((a[0] - b[0]) * north, (a[1] - b[1]) * east)


def along(places, metres_on):
    """The place so many metres on from the first of these; the last when they are shorter."""
    for here, there in zip(places, places[1:]):
        step = metres(here, there)
        if step > 0 and metres_on <= step:
            share = metres_on / step
            return tuple(p + (q - p) * share for p, q in zip(here, there))
        metres_on -= step
    return places[-1]
