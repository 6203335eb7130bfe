"""Reads anchor-rod plans with ezdxf (Debian python3-ezdxf). Standard input: a JSON list of paths; standard output: for each
what ezdxf says of it: audit, version, units, layers, circles and texts by layer, kinds of entities."""
import json
import sys

import ezdxf


def describe(path):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    model = list(doc.modelspace())
    layers = {layer.dxf.name for layer in doc.layers}
    return {
        "errors": [str(error.message) for error in audit.errors],
        "fixes": [str(fix.message) for fix in audit.fixes],
        "version": doc.dxfversion,
        "units": doc.header["$INSUNITS"],
        "measurement": doc.header["$MEASUREMENT"],
        "extent": [*doc.header["$EXTMIN"][:2], *doc.header["$EXTMAX"][:2]],
        "unlisted": sorted({entity.dxf.layer for entity in model} - layers),
        "kinds": sorted({entity.dxftype() for entity in model}),
        "circles": [
            [entity.dxf.layer, entity.dxf.center.x, entity.dxf.center.y, 2 * entity.dxf.radius]
            for entity in model
            if entity.dxftype() == "CIRCLE"
        ],
        "texts": [[entity.dxf.layer, entity.plain_text()] for entity in model if entity.dxftype() == "TEXT"],
        "open": sum(1 for entity in model if entity.dxftype() == "LWPOLYLINE" and not entity.closed),
    }


json.dump([describe(path) for path in json.load(sys.stdin)], sys.stdout)
