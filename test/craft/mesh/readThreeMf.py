"""Reads a 3MF file with Python's own zip and XML readers and says what is in it, as JSON.

Checks what the core specification of 3MF asks of such a file, and raises where it does not hold.
"""
import json
import sys
import xml.etree.ElementTree as ET
import zipfile

CORE = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"
RELS = "{http://schemas.openxmlformats.org/package/2006/relationships}"
TYPES = "{http://schemas.openxmlformats.org/package/2006/content-types}"
MODEL_TYPE = "application/vnd.ms-package.3dmanufacturing-3dmodel+xml"
RELS_TYPE = "application/vnd.openxmlformats-package.relationships+xml"
MODEL_REL = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"

archive = zipfile.ZipFile(sys.argv[1])
assert archive.testzip() is None
types = {one.get("Extension"): one.get("ContentType") for one in ET.fromstring(archive.read("[Content_Types].xml")).iter(TYPES + "Default")}
assert types == {"rels": RELS_TYPE, "model": MODEL_TYPE}, types
rels = list(ET.fromstring(archive.read("_rels/.rels")).iter(RELS + "Relationship"))
assert [one.get("Type") for one in rels] == [MODEL_REL]
target = rels[0].get("Target")
assert target.startswith("/")
model = ET.fromstring(archive.read(target[1:]))
assert model.tag == CORE + "model"
objects = []
for one in model.iter(CORE + "object"):
    vertices = [tuple(float(v.get(axis)) for axis in "xyz") for v in one.iter(CORE + "vertex")]
    triangles = [tuple(int(t.get(key)) for key in ("v1", "v2", "v3")) for t in one.iter(CORE + "triangle")]
    assert len(vertices) >= 3 and len(triangles) >= 4
    edges = {}
    volume = 0.0
    for triangle in triangles:
        assert len(set(triangle)) == 3 and max(triangle) < len(vertices) and min(triangle) >= 0
        for a, b in zip(triangle, triangle[1:] + triangle[:1]):
            assert (a, b) not in edges
            edges[(a, b)] = True
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = (vertices[i] for i in triangle)
        volume += (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6
    assert all((b, a) in edges for a, b in edges)
    objects.append({"id": one.get("id"), "type": one.get("type"), "name": one.get("name"), "volume": volume, "triangles": len(triangles)})
items = [one.get("objectid") for one in model.find(CORE + "build")]
print(json.dumps({
    "unit": model.get("unit"),
    "names": archive.namelist(),
    "dates": [list(info.date_time) for info in archive.infolist()],
    "metadata": {one.get("name"): one.text for one in model.findall(CORE + "metadata")},
    "objects": objects,
    "items": items,
}))
