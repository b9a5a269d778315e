"""Outlines in the plane: is a point on the boards, how far is it, how large is a strip. Points are (x, y) in metres."""

import math

TOUCHING = 0.05  # m; outlines nearer than this have no gap that a person would notice


def edges(outline):
    return [(outline[i], outline[(i + 1) % len(outline)]) for i in range(len(outline))]


def size(outline):
    """Area in m2 by the shoelace formula, without sign."""
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in edges(outline))) / 2


def to_segment(p, a, b):
    """Distance from a point to a segment."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length2 = dx * dx + dy * dy
    t = 0.0 if length2 == 0 else max(0.0, min(1.0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length2))
    return math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)


def is_inside(p, outline):
    inside = False
    for a, b in edges(outline):
        if (a[1] > p[1]) != (b[1] > p[1]) and p[0] < a[0] + (p[1] - a[1]) * (b[0] - a[0]) / (b[1] - a[1]):
            inside = not inside
    return inside


def distance(p, outline):
    """From a point to an outline and what lies in it: 0 inside."""
    if is_inside(p, outline):
        return 0.0
    return min(to_segment(p, a, b) for a, b in edges(outline))


def crosses(a, b, c, d):
    def side(p, q, r):
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def apart(first, second):
    """How far the boxes around two outlines are apart: never more than the outlines themselves."""
    gap = 0.0
    for axis in (0, 1):
        low1, high1 = min(p[axis] for p in first), max(p[axis] for p in first)
        low2, high2 = min(p[axis] for p in second), max(p[axis] for p in second)
        gap = max(gap, low2 - high1, low1 - high2)
    return gap


def between(first, second):
    """Distance between two outlines: 0 where they overlap or touch; where they are far apart, about."""
    gap = apart(first, second)
    if gap > TOUCHING:
        return gap
    if any(crosses(*s, *t) for s in edges(first) for t in edges(second)):
        return 0.0
    return min(min(distance(p, second) for p in first), min(distance(p, first) for p in second))


def contact(first, second):
    """Length in m along which two outlines run side by side."""
    total = 0.0
    for a, b in edges(first):
        long = math.dist(a, b)
        steps = max(1, round(long / 0.1))
        for i in range(steps):
            t = (i + 0.5) / steps
            p = (a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))
            if distance(p, second) <= TOUCHING:
                total += long / steps
    return total


def grid(outline, step=0.25):
    """Points spread over an outline, its corners among them."""
    points = list(outline)
    xs, ys = [p[0] for p in outline], [p[1] for p in outline]
    nx, ny = max(1, math.ceil((max(xs) - min(xs)) / step)), max(1, math.ceil((max(ys) - min(ys)) / step))
    nx, ny = min(nx, 24), min(ny, 24)
    for i in range(nx):
        for j in range(ny):
            p = (min(xs) + (i + 0.5) * (max(xs) - min(xs)) / nx, min(ys) + (j + 0.5) * (max(ys) - min(ys)) / ny)
            if is_inside(p, outline):
                points.append(p)
    return points


def overlap(first, second):
    """About how many m2 two outlines share."""
    points = [p for p in grid(first) if is_inside(p, first)]
    if not points:
        return 0.0
    return size(first) * sum(is_inside(p, second) for p in points) / len(points)
