"""Finds the guide holes of a printed guide in its STL file, knowing nothing of the stove.

`findHoles.py FILE collar MIDDLE ABOVE`: MIDDLE is a radius halfway through the wall, ABOVE a height over a lip.
`findHoles.py FILE disc MIDDLE`: MIDDLE is a height halfway through the plate.

Triangles that reach across the middle and hang together are the wall of one hole, or something else; a circle is
fitted to the corners of each on the near side, and what is not round is left out.
"""
import json
import math
import struct
import sys


def read(path):
    data = open(path, "rb").read()
    (count,) = struct.unpack_from("<I", data, 80)
    assert len(data) == 84 + 50 * count
    for index in range(count):
        v = struct.unpack_from("<12f", data, 84 + 50 * index)
        yield (v[3:6], v[6:9], v[9:12])


def components(triangles):
    parent = {}

    def root(corner):
        parent.setdefault(corner, corner)
        while parent[corner] != corner:
            parent[corner] = parent[parent[corner]]
            corner = parent[corner]
        return corner

    for a, b, c in triangles:
        parent[root(b)] = root(a)
        parent[root(c)] = root(a)
    groups = {}
    for triangle in triangles:
        groups.setdefault(root(triangle[0]), set()).update(triangle)
    return list(groups.values())


def solve(rows):
    """Gauss's elimination of three equations."""
    rows = [list(row) for row in rows]
    for i in range(3):
        pivot = max(range(i, 3), key=lambda j: abs(rows[j][i]))
        rows[i], rows[pivot] = rows[pivot], rows[i]
        for j in range(3):
            if j != i:
                factor = rows[j][i] / rows[i][i]
                rows[j] = [a - factor * b for a, b in zip(rows[j], rows[i])]
    return [rows[i][3] / rows[i][i] for i in range(3)]


def circle(points):
    """Least squares of x² + y² + D x + E y + F = 0: middle, radius, worst miss."""
    mx = sum(x for x, _ in points) / len(points)
    my = sum(y for _, y in points) / len(points)
    own = [(x - mx, y - my) for x, y in points]
    sums = [[0.0] * 4 for _ in range(3)]
    for x, y in own:
        row = (x, y, 1.0)
        for i in range(3):
            for j in range(3):
                sums[i][j] += row[i] * row[j]
            sums[i][3] -= row[i] * (x * x + y * y)
    try:
        d, e, f = solve(sums)
    except ZeroDivisionError:
        return None
    cx, cy = -d / 2, -e / 2
    square = cx * cx + cy * cy - f
    if square <= 0:
        return None
    radius = math.sqrt(square)
    miss = max(abs(math.hypot(x - cx, y - cy) - radius) for x, y in own)
    # Round all the way, not a piece of something larger.
    turns = sorted(math.atan2(y - cy, x - cx) for x, y in own)
    gaps = [b - a for a, b in zip(turns, turns[1:])] + [turns[0] + 2 * math.pi - turns[-1]]
    return (cx + mx, cy + my, radius, miss, max(gaps))


def radius_of(corner):
    return math.hypot(corner[0], corner[1])


def collar(triangles, middle, above):
    crossing = [t for t in triangles if min(map(radius_of, t)) < middle < max(map(radius_of, t))]
    holes = []
    for group in components(crossing):
        near = [c for c in group if radius_of(c) < middle]
        if len(near) < 8:
            continue
        angle = math.atan2(sum(c[0] for c in near), sum(c[1] for c in near))
        for _ in range(5):
            sin, cos = math.sin(angle), math.cos(angle)
            # Clockwise seen from above is to the right of someone who looks out from the axis.
            flat = [(c[0] * cos - c[1] * sin, c[2]) for c in near]
            fitted = circle(flat)
            if fitted is None:
                break
            angle += math.atan2(fitted[0], middle)
        if fitted is None or fitted[3] > 0.05 or fitted[4] > 1:
            continue
        holes.append({"bearing": math.degrees(angle) % 360, "at": fitted[1], "radius": fitted[2], "miss": fitted[3]})
    inside = math.inf
    for t in triangles:
        for (ax, ay, az), (bx, by, bz) in zip(t, t[1:] + t[:1]):
            if min(az, bz) < above:
                continue
            dx, dy = bx - ax, by - ay
            square = dx * dx + dy * dy
            along = 0 if square == 0 else max(0, min(1, -(ax * dx + ay * dy) / square))
            inside = min(inside, math.hypot(ax + along * dx, ay + along * dy))
    return {"holes": holes, "inside": inside}


def disc(triangles, middle):
    crossing = [t for t in triangles if min(c[2] for c in t) < middle < max(c[2] for c in t)]
    holes = []
    for group in components(crossing):
        fitted = circle([(c[0], c[1]) for c in group])
        if fitted is None or fitted[3] > 0.05 or fitted[2] > 15:
            continue
        x, y, radius, miss, _ = fitted
        holes.append({"bearing": math.degrees(math.atan2(x, y)) % 360, "at": math.hypot(x, y), "radius": radius, "miss": miss})
    return {"holes": holes, "outside": max(radius_of(c) for t in triangles for c in t)}


every = list(read(sys.argv[1]))
if sys.argv[2] == "collar":
    print(json.dumps(collar(every, float(sys.argv[3]), float(sys.argv[4]))))
else:
    print(json.dumps(disc(every, float(sys.argv[3]))))
