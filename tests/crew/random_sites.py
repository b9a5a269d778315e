"""Places to oil, made up by chance: where the areas lie, how high, what surrounds them. Lengths in metres."""

import math

TIMBERS = ["kwila", "iroko", "larch", "oak", "teak", "western-red-cedar", "southern-pine-treated", "garapa", "ipe"]
BOARDS = [(138, 5, 32), (120, 6, 27), (140, 8, 35), (90, 4, 22), (145, 5, 28)]  # width, gap, thickness in mm


def half(rng, low, high):
    """A length between two, on the half metre."""
    return rng.randrange(round(low * 2), round(high * 2) + 1) / 2


def metres(value):
    return f"{value:g} m"


def place(x, y):
    return [metres(round(x, 3)), metres(round(y, 3))]


def outfit(rng, ordinary):
    """What all areas of a site share: boards, timber, state."""
    width, gap, thick = rng.choice(BOARDS)
    states = ["weathered", "weathered", "oiled", "sanded"] + ([] if ordinary else ["new", "film"])
    return {"boards": {"width": f"{width} mm", "gap": f"{gap} mm", "thickness": f"{thick} mm", "face": "smooth",
                       "wetted": "top"},
            "timber": rng.choice(TIMBERS), "state": rng.choice(states)}


def deck(rng, name, shape, at, outfit_, height=0.0, **more):
    area = {"name": name, "shape": shape, "at": place(*at), "boards": dict(outfit_["boards"]), "joists": "450 mm",
            "fixings": {"kind": rng.choice(["screws", "nails"]), "per_crossing": 2}, "timber": outfit_["timber"],
            "state": outfit_["state"]}
    area["boards"]["run"] = rng.choice(["long side", "short side"])
    if height > 0:
        area["edge_height"] = metres(height)
    area.update(more)
    return area


def rectangle(width, depth):
    return {"rectangle": [metres(width), metres(depth)]}


def stairs(rng, name, at, outfit_, rise):
    steps = max(2, round(rise / 0.17))
    return {"name": name, "at": place(*at), "timber": outfit_["timber"], "state": outfit_["state"],
            "shape": {"stairs": {"steps": steps, "width": metres(half(rng, 1, 2.5)), "going": "300 mm",
                                 "rise": "170 mm"}}}


def sides(**kinds):
    """What lies beside the edges of a deck: sides(north="wall")."""
    return [{"side": side, "is": kind} for side, kind in kinds.items()]


def garden_deck(rng, o):
    """One deck on the ground, sometimes L-shaped or with a tree."""
    w, d = half(rng, 3, 9), half(rng, 2.5, 6)
    shape = rectangle(w, d)
    if rng.random() < 0.3 and w > 4 and d > 3:
        cut_x, cut_y = w - half(rng, 1, w / 2), d - half(rng, 0.5, d / 2)
        shape = {"points": [place(*p) for p in [(0, 0), (w, 0), (w, cut_y), (cut_x, cut_y), (cut_x, d), (0, d)]]}
    more = {}
    if rng.random() < 0.2 and "rectangle" in shape:
        more["without"] = [{"circle": "0.6 m", "at": place(w / 2, d / 2), "name": "tree"}]
    if rng.random() < 0.5:
        more["edges"] = sides(north="wall", **({"east": rng.choice(["wall", "drop"])} if rng.random() < 0.3 else {}))
    return [deck(rng, "Deck", shape, (0, 0), o, **more)]


def raised_deck(rng, o):
    """A deck that one leaves by its stairs."""
    w, d, high = half(rng, 3, 8), half(rng, 2.5, 5), rng.choice([0.5, 0.7, 0.9, 1.2])
    return [deck(rng, "Deck", rectangle(w, d), (0, 0), o, high, way_out=place(w, d / 2)),
            stairs(rng, "Steps", (w, d / 2 - 0.5), o, high)]


def porch(rng, o):
    """A porch under a roof, left over the deck before it, and stairs down."""
    w, d, deep, high = half(rng, 4, 8), half(rng, 2.5, 4), half(rng, 2, 4), rng.choice([0.6, 0.9, 1.0])
    return [deck(rng, "Porch", rectangle(w, deep), (0, 0), o, high, covered=True, way_out=place(w / 2, deep),
                 edges=sides(north="wall", **({"east": "drop", "west": "drop"} if rng.random() < 0.5 else {}))),
            deck(rng, "Sun deck", rectangle(w, d), (0, deep), o, high, way_out=place(w / 2, d)),
            stairs(rng, "Stairs", (w / 2 - 0.5, deep + d), o, high)]


def jetty(rng, o):
    """A boardwalk and a jetty behind it; all edges of the jetty lie over water."""
    long, wide, out = half(rng, 6, 20), half(rng, 1.5, 2.5), half(rng, 4, 12)
    return [deck(rng, "Boardwalk", rectangle(long, wide), (0, 0), o, 0.4),
            deck(rng, "Jetty", rectangle(2, out), (long / 2, wide), o, 0.8, way_out=place(1, 0),
                 edges=sides(east="water", west="water", south="water"))]


def chain(rng, o):
    """Decks one behind the other, all left by the last."""
    count, w, x, areas = rng.randint(2, 4), half(rng, 2.5, 5), 0.0, []
    for i in range(count):
        d = half(rng, 2, 5)
        areas.append(deck(rng, f"Deck {i + 1}", rectangle(d, w), (x, 0), o, 0.5, way_out=place(d, w / 2)))
        x += d
    return areas


def scattered(rng, o):
    """Decks that do not touch, each left to the ground."""
    x, areas = 0.0, []
    for i in range(rng.randint(2, 4)):
        w, d = half(rng, 2, 6), half(rng, 2, 5)
        areas.append(deck(rng, f"Deck {i + 1}", rectangle(w, d), (x, 0), o))
        x += w + 2
    return areas


def round_deck(rng, o):
    across = half(rng, 3, 7)
    shape = {"circle": metres(across)} if rng.random() < 0.5 else {"ring": [metres(across + 2), "1 m"]}
    return [deck(rng, "Round deck", shape, (0, 0), o)]


def measured(rng, o):
    """A deck that somebody else has measured: its size is known, its shape is not."""
    size = rng.randint(10, 60)
    return [deck(rng, "Measured deck", {"area": f"{size} m2", "perimeter": metres(math.ceil(4 * size ** 0.5))},
                 (0, 0), o)]


def large(rng, o):
    """More than a day's coat."""
    return [deck(rng, "Large deck", rectangle(half(rng, 14, 26), half(rng, 7, 12)), (0, 0), o,
                 **({"edges": sides(north="wall", west="wall")} if rng.random() < 0.4 else {}))]


def upright(rng, o, number):
    """A rail, a fascia or a screen beside the rest."""
    base = {"name": f"{['Rail', 'Fascia', 'Screen'][number % 3]} {number + 1}", "timber": o["timber"], "state": o["state"]}
    if number % 3 == 2:
        base["shape"] = {"screen": {"width": metres(half(rng, 2, 6)), "height": "1.8 m", "sides": 2, "solid": "60 %"}}
    else:
        base["shape"] = {"length": metres(half(rng, 4, 20)), "girth": rng.choice(["200 mm", "400 mm", "900 mm"])}
    return base


KINDS = [garden_deck, raised_deck, porch, jetty, chain, scattered, round_deck, measured, large]
ORDINARY = [garden_deck, garden_deck, raised_deck, porch, jetty, chain, scattered]


def site(rng, ordinary=False):
    """The areas of a site."""
    o = outfit(rng, ordinary)
    areas = rng.choice(ORDINARY if ordinary else KINDS)(rng, o)
    for number in range(rng.choice([0, 0, 0, 1, 2] if ordinary else [0, 0, 1, 2])):
        if len(areas) < 6:
            areas.append(upright(rng, o, rng.randrange(3) + 3 * number))
    for area in areas:
        area["coats"] = rng.choice([1, 2, 2, 2]) if ordinary else rng.choice([1, 2, 2, 3])
        if "boards" in area and rng.random() < 0.2 and "covered" not in area:
            area["sun"] = rng.choice(["never", "09:00-15:00", "12:00-18:00"])
    return areas
