"""Lines of points on a plan, in metres: feet, crossings, curves and parallels."""
import math


def cm(x, y):
    """A point whose coordinates are whole centimetres, so that equal points are equal keys."""
    return (round(x, 2), round(y, 2))


def apart(a, b):
    return math.hypot(a[0] - b[0], a[1] - b[1])


def towards(a, b, metres):
    share = metres / apart(a, b)
    return cm(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def on_circle(centre, radius, angle):
    return cm(centre[0] + radius * math.cos(angle), centre[1] + radius * math.sin(angle))


def angle_of(centre, point):
    return math.atan2(point[1] - centre[1], point[0] - centre[0])


def foot(a, b, p):
    """Nearest place to p on the segment from a to b."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    square = dx * dx + dy * dy
    share = 0.0 if square == 0 else ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square
    share = min(1.0, max(0.0, share))
    return (a[0] + dx * share, a[1] + dy * share)


def meeting(a, b, c, d):
    """Where the segments a-b and c-d cross, or None."""
    rx, ry, sx, sy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    cross = rx * sy - ry * sx
    if cross == 0:
        return None
    t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / cross
    u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / cross
    if 0 <= t <= 1 and 0 <= u <= 1:
        return (a[0] + rx * t, a[1] + ry * t)
    return None


def bend(points):
    """A Catmull-Rom curve through all points, in steps of about 25 m; straight runs stay short."""
    if len(points) < 3:
        return list(points)
    padded = [points[0]] + list(points) + [points[-1]]
    curve = [points[0]]
    for p0, p1, p2, p3 in zip(padded, padded[1:], padded[2:], padded[3:]):
        steps = max(1, round(apart(p1, p2) / 25))
        for step in range(1, steps):
            t = step / steps
            weights = (-t + 2 * t**2 - t**3, 2 - 5 * t**2 + 3 * t**3,
                       t + 4 * t**2 - 3 * t**3, -t**2 + t**3)
            curve.append(cm(*(sum(w * p[axis] for w, p in zip(weights, (p0, p1, p2, p3))) / 2
                              for axis in (0, 1))))
        curve.append(p2)
    return thinned(curve, set(points))


def thinned(curve, keep):
    """The curve without points that stand less than 0.7 m off the line between their neighbours."""
    out = [curve[0]]
    for here, after in zip(curve[1:], curve[2:]):
        if here in keep or apart(foot(out[-1], after, here), here) > 0.7:
            out.append(here)
    return out + [curve[-1]]


def beside(points, metres):
    """The line moved to its left."""
    out = []
    for i, point in enumerate(points):
        a, b = points[max(0, i - 1)], points[min(len(points) - 1, i + 1)]
        share = metres / apart(a, b)
        out.append(cm(point[0] - (b[1] - a[1]) * share, point[1] + (b[0] - a[0]) * share))
    return out
