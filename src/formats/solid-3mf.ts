/**
 * Solids as 3MF (3D Manufacturing Format, core specification 1.x; packed by ECMA-376 part 2): one object a shell, with its
 * name, in the job's own unit, which the file says. The same solids give the same bytes: the archive holds no clock.
 */
import { strToU8, zipSync } from "fflate";
import { readable } from "../diagnostics/printable.js";
import type { Solid } from "../solids/model.js";
import type { Unit } from "../units/length.js";

const DECLARATION = '<?xml version="1.0" encoding="UTF-8"?>\n';
const CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const MODEL = "3D/3dmodel.model";

const CONTENT_TYPES = `${DECLARATION}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;
const RELATIONS = `${DECLARATION}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Target="/${MODEL}" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

/** As the core specification calls it, and how many decimals are a nanometre or finer. */
const UNITS: Readonly<Record<Unit, { readonly name: string; readonly millimetres: number; readonly ticks: number }>> = {
  in: { name: "inch", millimetres: 25.4, ticks: 1e8 },
  mm: { name: "millimeter", millimetres: 1, ticks: 1e6 },
};

/** What the file says of itself. */
export interface ModelFacts {
  readonly title: string;
  readonly description: string;
  /** With its version. */
  readonly program: string;
  readonly unit: Unit;
}

/** The whole file; at least one solid. */
export function write3mf(solids: readonly Solid[], facts: ModelFacts): Uint8Array {
  const files = {
    "[Content_Types].xml": strToU8(CONTENT_TYPES),
    "_rels/.rels": strToU8(RELATIONS),
    [MODEL]: strToU8(modelXml(solids, facts)),
  };
  return zipSync(files, { mtime: FIRST_DAY, level: 1 });
}

/** The first day that a ZIP archive can name, in the zone of whoever reads it: the same bytes in every zone. */
const FIRST_DAY = "1980-01-01T12:00:00";

function modelXml(solids: readonly Solid[], { title, description, program, unit }: ModelFacts): string {
  const about = [
    ["Title", title],
    ["Description", description],
    ["Application", program],
  ].map(([name, words]) => `<metadata name="${name}">${escaped(words ?? "")}</metadata>`);
  return [
    `${DECLARATION}<model unit="${UNITS[unit].name}" xml:lang="en-US" xmlns="${CORE}">`,
    ...about,
    "<resources>",
    ...solids.map((solid, i) => objectXml(solid, i + 1, unit)),
    "</resources><build>",
    ...solids.map((_, i) => `<item objectid="${i + 1}"/>`),
    "</build></model>",
  ].join("");
}

function objectXml({ name, corners, triangles }: Solid, id: number, unit: Unit): string {
  const { millimetres, ticks } = UNITS[unit];
  const said = new Map<number, string>();
  const say = (mm: number): string => {
    const text = said.get(mm) ?? String(Math.round((mm / millimetres) * ticks) / ticks || 0);
    said.set(mm, text);
    return text;
  };
  let mesh = "<mesh><vertices>";
  for (const [x, y, z] of corners) mesh += `<vertex x="${say(x)}" y="${say(y)}" z="${say(z)}"/>`;
  mesh += "</vertices><triangles>";
  for (const [a, b, c] of triangles) mesh += `<triangle v1="${a}" v2="${b}" v3="${c}"/>`;
  return `<object id="${id}" name="${escaped(name)}" type="model">${mesh}</triangles></mesh></object>`;
}

function escaped(text: string): string {
  return readable(text)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
