"""Makes two fonts that cannot be set, from one that can: odd_fonts.py FONT FOLDER. Families 'Varlito' and 'Collito'."""
import pathlib
import struct
import sys


def tables(font):
    count, = struct.unpack(">H", font[4:6])
    for at in range(12, 12 + 16 * count, 16):
        tag, _, offset, length = struct.unpack(">4sIII", font[at:at + 16])
        yield tag, font[offset:offset + length]


def font(tables, start=0):
    """OpenType 1.9, 'Organization of an OpenType Font'. Offsets count from the beginning of the file."""
    head = struct.pack(">IHHHH", 0x00010000, len(tables), 0, 0, 0)
    at, entries, data = start + 12 + 16 * len(tables), b"", b""
    for tag, table in sorted(tables.items()):
        entries += struct.pack(">4sIII", tag, 0, at + len(data), len(table))
        data += table + b"\0" * (-len(table) % 4)
    return head + entries + data


def named(tables, name):
    names = tables[b"name"].replace(b"Carlito", name.encode())
    return {**tables, b"name": names.replace("Carlito".encode("utf-16-be"), name.encode("utf-16-be"))}


whole, folder = dict(tables(open(sys.argv[1], "rb").read())), pathlib.Path(sys.argv[2])
glyphs, = struct.unpack(">H", whole[b"maxp"][4:6])
# One axis, the weight from 400 to 700, along which no glyph changes, and a place on it that has a name.
axis = struct.pack(">8H4siiiHH", 1, 0, 16, 2, 1, 20, 1, 8, b"wght", 400 << 16, 400 << 16, 700 << 16, 0, 2)
axis += struct.pack(">HHi", 2, 0, 700 << 16)
changes = struct.pack(">HHHHIHHI", 1, 0, 1, 0, 20 + 2 * (glyphs + 1), glyphs, 0, 20 + 2 * (glyphs + 1))
variable = {**named(whole, "Varlito"), b"fvar": axis, b"gvar": changes + b"\0\0" * (glyphs + 1)}
(folder / "variable.ttf").write_bytes(font(variable))
(folder / "collection.ttc").write_bytes(struct.pack(">4sHHII", b"ttcf", 1, 0, 1, 16) + font(named(whole, "Collito"), 16))
