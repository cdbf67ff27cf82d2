"""Exports read by readers written from the formats' specifications, with areas by formula."""
import csv
import json
import math
import pathlib
import struct
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).parent))
from bench import bench  # noqa: E402

# Component types and how many numbers each accessor type has: glTF 2.0 specification (Khronos, ISO/IEC 12113), 3.6.2.2
# and 3.6.2.3.
COMPONENTS = {5120: "b", 5121: "B", 5122: "h", 5123: "H", 5125: "I", 5126: "f"}
WIDTHS = {"SCALAR": 1, "VEC2": 2, "VEC3": 3, "VEC4": 4}


def check(is_true, what):
    if not is_true:
        raise SystemExit("FAILED: " + what)


def read_glb(path):
    """4.4: header of 12 bytes, then chunks whose lengths are multiples of four; JSON first, then the binary buffer."""
    data = path.read_bytes()
    magic, version, length = struct.unpack_from("<III", data)
    check(magic == 0x46546C67 and version == 2 and length == len(data), "header of the GLB file")
    chunks, at = [], 12
    while at < len(data):
        size, name = struct.unpack_from("<II", data, at)
        check(size % 4 == 0 and at + 8 + size <= len(data), "a chunk's length")
        chunks.append((name, data[at + 8:at + 8 + size]))
        at += 8 + size
    check([name for name, _ in chunks] == [0x4E4F534A, 0x004E4942], "the chunks' names and order")
    return json.loads(chunks[0][1].decode("utf-8")), chunks[1][1]


def read_accessor(root, binary, index):
    accessor = root["accessors"][index]
    view = root["bufferViews"][accessor["bufferView"]]
    letter, width = COMPONENTS[accessor["componentType"]], WIDTHS[accessor["type"]]
    size = struct.calcsize("<" + letter)
    begin = view.get("byteOffset", 0) + accessor.get("byteOffset", 0)
    count = accessor["count"]
    # 3.6.2.4: data alignment; the accessor lies wholly within its view, the view within its buffer.
    check(begin % size == 0, "an accessor out of step with its component's size")
    check(view["target"] != 34962 or (size * width) % 4 == 0, "vertex data out of step with four bytes")
    check(count >= 1 and count * size * width <= view["byteLength"], "an accessor beyond its view")
    check(view.get("byteOffset", 0) + view["byteLength"] <= root["buffers"][0]["byteLength"] <= len(binary), "a view beyond its buffer")
    flat = struct.unpack_from(f"<{count * width}{letter}", binary, begin)
    rows = [flat[k * width:(k + 1) * width] for k in range(count)]
    if "min" in accessor:  # 3.6.2.5: bounds as stored
        for axis in range(width):
            values = [row[axis] for row in rows]
            check(accessor["min"][axis] == min(values) and accessor["max"][axis] == max(values), "bounds of an accessor")
    return accessor, rows


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def length(a):
    return math.sqrt(sum(x * x for x in a))


def read_mesh(root, binary, mesh):
    primitive = mesh["primitives"][0]
    attributes = primitive["attributes"]
    position, points = read_accessor(root, binary, attributes["POSITION"])
    check("min" in position and "max" in position, "3.7.2.1: bounds of POSITION are required")
    normal, normals = read_accessor(root, binary, attributes["NORMAL"])
    colour, colours = read_accessor(root, binary, attributes["COLOR_0"])
    check(colour["componentType"] == 5121 and colour["normalized"] is True, "3.7.2.1: byte colours are normalized")
    check(len(points) == len(normals) == len(colours), "attributes of unlike counts")
    check(all(abs(length(n) - 1) < 1e-3 for n in normals), "a normal that is not of unit length")
    index, indices = read_accessor(root, binary, primitive["indices"])
    indices = [row[0] for row in indices]
    check(len(indices) % 3 == 0 and max(indices) < len(points) and max(indices) != 0xFFFFFFFF, "indices")
    area = against = 0.0
    for k in range(0, len(indices), 3):
        a, b, c = (points[i] for i in indices[k:k + 3])
        n = cross([b[i] - a[i] for i in range(3)], [c[i] - a[i] for i in range(3)])
        area += 0.5 * length(n)
        against += sum(n[i] * normals[indices[k]][i] for i in range(3)) < 0
    check(against == 0, f"{against} triangles turned against their normals")
    return points, area


def gltf(work):
    work.run("export", "a.toml", "--gltf", "a.glb", "--cells", "8000")
    root, binary = read_glb(work.folder / "a.glb")
    check(root["asset"]["version"] == "2.0", "version")
    check([node["name"] for node in root["nodes"]] == ["rim", "top"], "nodes")
    meshes = [read_mesh(root, binary, mesh) for mesh in root["meshes"]]
    # Metres, y up: the rim is an upright cylinder. Its size is the prediction's own.
    points, area = meshes[0]
    radius = sum(math.hypot(p[0], p[2]) for p in points) / len(points)
    low, high = min(p[1] for p in points), max(p[1] for p in points)
    sizes = work.prediction("a.toml")["features"][0]["sizes"][0]
    check(abs(2000 * radius - sizes["mean_mm"]) < 0.002, f"diameter {2000 * radius}, not {sizes['mean_mm']}")
    columns = root["nodes"][0]["extras"]["columns"]
    # derived: an upright prism of n flat sides, each 2 r sin(pi/n) wide; e along it differs by some um.
    wanted = columns * 2 * radius * math.sin(math.pi / columns) * (high - low)
    check(abs(area - wanted) < 2e-3 * wanted, f"area {area}, not {wanted}")
    points, area = meshes[1]
    check(all(abs(p[1] - 0.004) < 0.0002 for p in points), "the top does not lie at 4 mm")
    # A disc of 20 mm less the half cell at its edge that has no neighbour.
    check(math.pi * 0.0097**2 < area < math.pi * 0.01**2, f"area {area} of the top")


def table(work):
    work.run("export", "a.toml", "--csv", "a.csv")
    lines = [line for line in (work.folder / "a.csv").read_text().splitlines() if not line.startswith("#")]
    rows = list(csv.DictReader(lines))
    check({(row["feature"], row["direction"]) for row in rows} == {("rim", "s"), ("rim", "z"), ("top", "x"), ("top", "y")}, "directions")
    profile = work.prediction("a.toml")["features"][0]["profile_along"]
    mine = [row for row in rows if row["feature"] == "rim" and row["direction"] == "s"]
    check([float(row["position_mm"]) for row in mine] == profile["s_mm"], "places")
    check([float(row["mean_residual_um"]) if row["mean_residual_um"] else None for row in mine] == profile["mean_residual_um"], "profile")


def names(work):
    """A name that would break a table or a JSON string."""
    work.job("odd.toml", wall='rim, "outer" <b>')
    done = work.run("export", "odd.toml", "--gltf", "odd.glb", "--csv", "odd.csv", "--stl", "odd.stl")
    root, _ = read_glb(work.folder / "odd.glb")
    check(root["meshes"][0]["name"] == 'rim, "outer" <b>', root["meshes"][0]["name"])
    lines = [line for line in (work.folder / "odd.csv").read_text().splitlines() if not line.startswith("#")]
    check(list(csv.DictReader(lines))[0]["feature"] == 'rim, "outer" <b>', "a name in the table")
    check("A closed part" in done.stdout, done.stdout)


def main():
    with bench(sys.argv[1]) as work:
        work.job("a.toml")
        gltf(work)
        table(work)
        names(work)
    print("exported files: fine")
    return 0


sys.exit(main())
