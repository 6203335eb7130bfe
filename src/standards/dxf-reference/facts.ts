/** The published DXF reference: header values, codes and entities that cut files use. */
import type { Confidence, Fact } from "../model.js";

/** Topic, item, value, source, confidence. */
export const dxfFacts: readonly Fact[] = [
  row("$INSUNITS", "0", "unitless", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "1", "inch", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "2", "foot", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "3", "mile", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "4", "mm", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "5", "cm", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "6", "m", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "7", "km", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "8", "microinch", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "9", "mil", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "10", "yard", "published DXF reference; ezdxf documentation", "high"),
  row("$INSUNITS", "21", "US survey foot", "published DXF reference; ezdxf documentation", "high"),
  row("$MEASUREMENT", "0", "English", "published DXF reference; ezdxf documentation", "high"),
  row("$MEASUREMENT", "1", "metric", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1009", "R11/R12", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1012", "R13", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1014", "R14", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1015", "R2000", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1018", "R2004", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1021", "R2007", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1024", "R2010", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1027", "R2013", "published DXF reference; ezdxf documentation", "high"),
  row("$ACADVER", "AC1032", "R2018", "published DXF reference; ezdxf documentation", "high"),
  row(
    "LWPOLYLINE",
    "42",
    "bulge = tan(theta/4) = sagitta/half-chord; + CCW; 1 = semicircle; last vertex bulge used only when closed (70 bit 1)",
    "published DXF reference; ezdxf documentation",
    "high",
  ),
  row(
    "LWPOLYLINE",
    "-",
    "needs R2000 (AC1015)+; R12 needs POLYLINE/VERTEX/SEQEND",
    "published DXF reference; ezdxf documentation",
    "high",
  ),
  row(
    "LWPOLYLINE",
    "circle",
    "two vertices bulge 1 closed = full circle",
    "published DXF reference; ezdxf documentation",
    "high",
  ),
  row(
    "lineweight",
    "370",
    "0 5 9 13 15 18 20 25 30 35 40 50 53 60 70 80 90 100 106 120 140 158 200 211 (1/100 mm), R2000+",
    "published DXF reference; ezdxf documentation",
    "high",
  ),
  row(
    "AC1009 R12",
    "-",
    "no lineweight, true colour or LWPOLYLINE",
    "published DXF reference; ezdxf documentation (from memory)",
    "medium-high",
  ),
];

function row(topic: string, item: string, value: string, source: string, confidence: Confidence): Fact {
  return { topic, item, value, source, confidence, note: "" };
}
