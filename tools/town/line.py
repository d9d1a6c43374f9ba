"""One line of a town, and how two lines come to share points."""
from town.shape import apart, cm, foot, meeting

MERGE_M = 9.0    # a join this near to a point that is there already uses that point


class Line:
    """A road, ring or track: its points, what the map says of it, and the layer it lies on."""

    def __init__(self, kind, points, tags):
        self.kind, self.points, self.tags = kind, points, tags
        self.layer = int(tags.get("layer", "0"))
        self.ends = {0: tags.pop("first", None), -1: tags.pop("last", None)}

    def nearest(self, point):
        """Distance, segment number and place of the nearest point of the line."""
        feet = [foot(a, b, point) for a, b in zip(self.points, self.points[1:])]
        return min((apart(f, point), i, f) for i, f in enumerate(feet))

    def length(self):
        return sum(apart(a, b) for a, b in zip(self.points, self.points[1:]))

    def along(self, segment, place):
        """Metres from the start of the line to a place on one of its segments."""
        before = self.points[:segment + 1] + [place]
        return sum(apart(a, b) for a, b in zip(before, before[1:]))

    def beside(self, metres, left_m):
        """The point so many metres along the line and so far to the left of it."""
        for a, b in zip(self.points, self.points[1:]):
            size = apart(a, b)
            if metres <= size or b == self.points[-1]:
                dx, dy = (b[0] - a[0]) / size, (b[1] - a[1]) / size
                return cm(a[0] + dx * metres - dy * left_m, a[1] + dy * metres + dx * left_m)
            metres -= size
        raise ValueError("a line of no length")

    def add(self, segment, place, merge_m=MERGE_M):
        """Puts a point into a segment, or takes the end of it that is near enough."""
        for known in (self.points[segment], self.points[segment + 1]):
            if apart(known, place) < merge_m:
                return known
        place = cm(*place)
        self.points.insert(segment + 1, place)
        return place


def nearest_of(lines, point):
    """Line.nearest of the nearest line, and that line; the earlier one of the plan when equal."""
    return min(((line.nearest(point), line) for line in lines), key=lambda found: found[0][0])


def box(points):
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs), min(ys), max(xs), max(ys)


def cross(line, other, merge_m=MERGE_M):
    """Gives two lines a common point wherever they cross; returns these points."""
    a, b = box(line.points), box(other.points)
    if a[0] > b[2] or b[0] > a[2] or a[1] > b[3] or b[1] > a[3]:
        return []
    shared, i = [], 0
    while i + 1 < len(line.points):
        for j in range(len(other.points) - 1):
            ends = line.points[i:i + 2] + other.points[j:j + 2]
            place = meeting(*ends) if len(set(ends)) == 4 else None
            if place:
                taken = line.add(i, place, merge_m)
                if taken not in other.points:
                    other.points.insert(j + 1, taken)
                shared.append(taken)
                break
        i += 1
    return shared
