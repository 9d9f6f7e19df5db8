"""Reads DXF with ezdxf (audited) and SVG with Python's own XML reader, and prints what is in them, a line of JSON for each.

python3 readOutside.py FOLDER: every .dxf and .svg in it, in millimetres, y up.
"""
import gc
import json
import math
import os
import sys
import xml.etree.ElementTree as ET

import ezdxf

SVG = '{http://www.w3.org/2000/svg}'


def spot(p):
    return {'x': p[0], 'y': p[1]}


def around(centre, radius, angle):
    return (centre[0] + radius * math.cos(math.radians(angle)), centre[1] + radius * math.sin(math.radians(angle)))


def read_dxf(path):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    items, texts = [], []
    for e in doc.modelspace():
        layer = e.dxf.layer.lower()
        kind = e.dxftype()
        if kind == 'LINE':
            items.append({'kind': 'path', 'layer': layer, 'points': [spot(e.dxf.start), spot(e.dxf.end)], 'closed': False})
        elif kind == 'CIRCLE':
            items.append({'kind': 'circle', 'layer': layer, 'centre': spot(e.dxf.center), 'radius': e.dxf.radius})
        elif kind == 'ARC':
            c, r = e.dxf.center, e.dxf.radius
            ends = [spot(around(c, r, e.dxf.start_angle)), spot(around(c, r, e.dxf.end_angle))]
            items.append({'kind': 'arc', 'layer': layer, 'centre': spot(c), 'radius': r, 'ends': ends})
        elif kind == 'POLYLINE':
            items.append({'kind': 'path', 'layer': layer, 'points': [spot(p) for p in e.points()], 'closed': e.is_closed})
        elif kind == 'TEXT':
            texts.append(e.plain_text())
        else:
            raise ValueError(kind)
    return {
        'items': items,
        'texts': texts,
        'faults': [error.message for error in audit.errors + audit.fixes],
        'version': doc.dxfversion,
        'units': doc.units,
        'metric': doc.header['$MEASUREMENT'],
        'size': list(doc.header['$EXTMAX'])[:2],
        'linetypes': {layer.dxf.name: layer.dxf.linetype for layer in doc.layers},
    }


def arc_of(d, high):
    """An SVG arc's centre from its ends, radius and flags (SVG 1.1, appendix F.6.5); circles only."""
    m, x1, y1, a, r, ry, _, large, sweep, x2, y2 = d.split()
    assert m == 'M' and a == 'A' and r == ry
    x1, y1, r, x2, y2 = (float(v) for v in (x1, y1, r, x2, y2))
    dx, dy = (x1 - x2) / 2, (y1 - y2) / 2
    q = math.sqrt(max(0.0, r * r / (dx * dx + dy * dy) - 1))
    q = q if large != sweep else -q
    c = (q * dy + (x1 + x2) / 2, -q * dx + (y1 + y2) / 2)
    return {'kind': 'arc', 'centre': spot((c[0], high - c[1])), 'radius': r,
            'ends': [spot((x1, high - y1)), spot((x2, high - y2))]}


def read_svg(path):
    root = ET.parse(path).getroot()
    width, high = (float(root.get(side)[:-2]) for side in ('width', 'height'))
    assert root.get('width').endswith('mm') and root.get('height').endswith('mm')
    box = [float(v) for v in root.get('viewBox').split()]
    assert box == [0, 0, width, high], 'one unit is not a millimetre'
    items, texts = [], []
    for group in root.findall(SVG + 'g'):
        layer = group.get('id')
        for e in group:
            num = lambda name: float(e.get(name))
            tag = e.tag.replace(SVG, '')
            if tag == 'line':
                points = [(num('x1'), high - num('y1')), (num('x2'), high - num('y2'))]
                items.append({'kind': 'path', 'layer': layer, 'points': [spot(p) for p in points], 'closed': False})
            elif tag in ('polyline', 'polygon'):
                v = [float(n) for n in e.get('points').split()]
                points = [spot((v[i], high - v[i + 1])) for i in range(0, len(v), 2)]
                items.append({'kind': 'path', 'layer': layer, 'points': points, 'closed': tag == 'polygon'})
            elif tag == 'circle':
                centre = spot((num('cx'), high - num('cy')))
                items.append({'kind': 'circle', 'layer': layer, 'centre': centre, 'radius': num('r')})
            elif tag == 'path':
                items.append({'layer': layer, **arc_of(e.get('d'), high)})
            elif tag == 'text':
                texts.append(e.text)
            else:
                raise ValueError(tag)
    return {'items': items, 'texts': texts, 'faults': [], 'size': [width, high]}


if __name__ == '__main__':
    folder = sys.argv[1]
    readers = {'dxf': read_dxf, 'svg': read_svg}
    # A line for each file, so that nothing piles up that the collector has to walk again and again; what was loaded
    # it need not walk either.
    gc.freeze()
    for name in sorted(os.listdir(folder)):
        read = readers.get(name.rsplit('.', 1)[-1])
        if read is not None:
            # In one go: json.dump writes it in scraps, which takes as long as reading the file.
            print(json.dumps({'name': name, **read(os.path.join(folder, name))}))
