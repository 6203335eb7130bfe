/**
 * The drawing in a DXF file: header, layers and the entities that are read, as plain data in the file's own unit. An entity
 * that is not read is counted in a finding that says so. By the published DXF reference.
 */

import { FARTHEST_POINT } from "../units/coordinate.js";
import { DxfBlocks } from "./dxf-blocks.js";
import { CurveReader, ROUND_MM } from "./dxf-curves.js";
import { startEntities } from "./dxf-entities.js";
import { type CutFileFinding, collectFindings, type FindingList } from "./dxf-findings.js";
import { type DxfHeader, millimetresPer, readHeader } from "./dxf-header.js";
import { coverEntities } from "./dxf-measures.js";
import type { DxfEntity } from "./dxf-model.js";
import { readPolyline } from "./dxf-polyline.js";
import { readTags, type TagRange, type Tags } from "./dxf-tags.js";
import { type EntityValues, readValues } from "./dxf-values.js";

/** One row of the LAYER table. */
export interface DxfLayer {
  readonly name: string;
  /** Off (negative colour) or frozen: drawn by no viewer, cut by some controls. */
  readonly hidden: boolean;
}

/** A DXF file as far as cutting asks: header, layers and the entities of the model space, in the file's unit. */
export interface DxfDrawing {
  readonly header: DxfHeader;
  /** The LAYER table, in its order. */
  readonly layers: readonly DxfLayer[];
  /** Entities of the model space that are read, in the file's order. */
  readonly entities: readonly DxfEntity[];
  /** How many entities of each type were met, inserted blocks counted once. */
  readonly types: ReadonlyMap<string, number>;
  readonly findings: readonly CutFileFinding[];
}

/** Reads any bytes: what is wrong with them is in the findings. */
export function readDrawing(bytes: Uint8Array): DxfDrawing {
  const findings = collectFindings();
  const tags = readTags(bytes, findings);
  const sections = findSections(tags, findings);
  const header = readHeader(tags, sections.get("HEADER"), findings);
  const layers = readLayers(tags, sections.get("TABLES"));
  const tolerance = ROUND_MM / millimetresPer(header.unit);
  const reader = new EntityReader(tags, sections.get("BLOCKS"), tolerance, findings);
  const entities = withinBounds(reader.readSection(sections.get("ENTITIES")), millimetresPer(header.unit), findings);
  reportLayers(entities, layers, findings);
  return { header, layers, entities, types: reader.types, findings: findings.list() };
}

/** Lines, arcs and circles that are looked at of one file. */
const MOST_SEGMENTS = 500_000;

/** Without what lies too far away, and without what is more than can be looked at: both are told. */
function withinBounds(entities: readonly DxfEntity[], mm: number, findings: FindingList): readonly DxfEntity[] {
  let segments = 0;
  return entities.filter((entity) => {
    const { x0, y0, x1, y1 } = coverEntities([entity]);
    if (!(Math.max(-x0, -y0, x1, y1) * mm <= FARTHEST_POINT)) {
      findings.add("too-far", "stop", "entities farther than 100 km from 0,0 are not read: is the unit right?", [
        x0,
        y0,
      ]);
      return false;
    }
    segments += entity.kind === "polyline" ? entity.vertices.length : 1;
    if (segments <= MOST_SEGMENTS) return true;
    findings.add(
      "too-many-segments",
      "stop",
      `the file has more than ${MOST_SEGMENTS} lines and arcs; the rest is not read`,
    );
    return false;
  });
}

function findSections(tags: Tags, findings: FindingList): ReadonlyMap<string, TagRange> {
  const { codes } = tags;
  const sections = new Map<string, TagRange>();
  let open: { name: string; first: number } | null = null;
  let ended = tags.count === 0;
  for (let index = 0; index < tags.count && !ended; index++) {
    if (codes[index] !== 0) continue;
    const value = tags.text(index);
    if (value === "SECTION") {
      if (open !== null) findings.add("truncated", "stop", `section ${open.name} is not closed`);
      open = { name: tags.text(index + 1), first: index + 2 };
    } else if (value === "ENDSEC" && open !== null) {
      if (sections.has(open.name)) findings.add("section-twice", "stop", `section ${open.name} stands twice`);
      sections.set(open.name, { first: open.first, end: index });
      open = null;
    } else if (value === "EOF") {
      ended = true;
      if (index < tags.count - 1) findings.add("after-end", "advise", "the file goes on after its end mark (EOF)");
    }
  }
  if (open !== null) {
    sections.set(open.name, { first: open.first, end: tags.count });
    findings.add("truncated", "stop", `section ${open.name} is not closed`);
  }
  if (!ended) findings.add("truncated", "stop", "the file has no end mark (EOF)");
  if (tags.count > 0 && !sections.has("ENTITIES"))
    findings.add("no-entities", "stop", "the file has no ENTITIES section");
  return sections;
}

/** Ends of the objects that start with code 0 between `first` and `end`. */
function nextObject(tags: Tags, after: number, end: number): number {
  let index = after + 1;
  while (index < end && tags.codes[index] !== 0) index++;
  return index;
}

function readLayers(tags: Tags, range: TagRange | undefined): readonly DxfLayer[] {
  const layers: DxfLayer[] = [];
  if (range === undefined) return layers;
  for (let index = range.first; index < range.end; index = nextObject(tags, index, range.end)) {
    if (tags.codes[index] !== 0 || tags.text(index) !== "LAYER") continue;
    let name = "";
    let hidden = false;
    const end = nextObject(tags, index, range.end);
    for (let at = index + 1; at < end; at++) {
      if (tags.codes[at] === 2) name = tags.text(at);
      else if (tags.codes[at] === 62) hidden ||= (tags.number(at) ?? 0) < 0;
      else if (tags.codes[at] === 70) hidden ||= (tags.number(at) ?? 0) % 2 === 1;
    }
    layers.push({ name, hidden });
  }
  return layers;
}

/** Reads the ENTITIES section, and through INSERT the blocks that it names. */
class EntityReader {
  readonly types = new Map<string, number>();
  private readonly simple: (range: TagRange) => DxfEntity | null;
  private readonly blocks: DxfBlocks;
  private readonly curves: CurveReader;

  constructor(
    private readonly tags: Tags,
    blocks: TagRange | undefined,
    tolerance: number,
    private readonly findings: FindingList,
  ) {
    this.curves = new CurveReader(tolerance, findings);
    this.simple = startEntities(tags, findings);
    this.blocks = new DxfBlocks(tags, blocks, findings);
  }

  readSection(range: TagRange | undefined): readonly DxfEntity[] {
    const entities = range === undefined ? [] : this.read(range);
    this.blocks.reportUnused(this.tags);
    return entities;
  }

  private read(range: TagRange): readonly DxfEntity[] {
    const entities: DxfEntity[] = [];
    let index = range.first;
    while (index < range.end) {
      let end = nextObject(this.tags, index, range.end);
      if (this.tags.codes[index] === 0) {
        const type = this.tags.text(index);
        this.types.set(type, (this.types.get(type) ?? 0) + 1);
        if (type === "POLYLINE") end = this.endOfPolyline(end, range.end);
        this.readOne(type, { first: index, end }, entities);
      }
      index = end;
    }
    return entities;
  }

  private readOne(type: string, range: TagRange, into: DxfEntity[]): void {
    switch (type) {
      case "POLYLINE":
        take(this.readPolyline(range), into);
        break;
      case "SPLINE":
      case "ELLIPSE":
        take(this.readCurve(range), into);
        break;
      case "INSERT":
        this.readInsert(range, into);
        break;
      case "SEQEND":
        break;
      default:
        take(this.simple(range), into);
    }
  }

  private readCurve(range: TagRange): DxfEntity | null {
    const values = readValues(this.tags, range, this.findings);
    return values === null ? null : this.curves.read(values);
  }

  private readInsert(range: TagRange, into: DxfEntity[]): void {
    const values = readValues(this.tags, range, this.findings);
    if (values === null) return;
    for (const entity of this.blocks.insert(values, (content) => this.read(content))) into.push(entity);
  }

  /** Past the vertices that follow a POLYLINE, up to its SEQEND. */
  private endOfPolyline(from: number, end: number): number {
    let index = from;
    while (index < end && this.tags.text(index) === "VERTEX") index = nextObject(this.tags, index, end);
    if (index >= end || this.tags.text(index) !== "SEQEND") {
      this.findings.add("no-seqend", "stop", "POLYLINE is not ended by SEQEND");
    }
    return index;
  }

  private readPolyline({ first, end }: TagRange): DxfEntity | null {
    const head = readValues(this.tags, { first, end: nextObject(this.tags, first, end) }, this.findings);
    const vertices: EntityValues[] = [];
    let index = nextObject(this.tags, first, end);
    while (index < end) {
      const next = nextObject(this.tags, index, end);
      const vertex = readValues(this.tags, { first: index, end: next }, this.findings);
      if (vertex === null) return null;
      vertices.push(vertex);
      index = next;
    }
    return head === null ? null : readPolyline(head, vertices, this.findings);
  }
}

function take(entity: DxfEntity | null, into: DxfEntity[]): void {
  if (entity !== null) into.push(entity);
}

/** Layer names are the same in any case of their letters (DXF reference, symbol table names). */
function reportLayers(entities: readonly DxfEntity[], layers: readonly DxfLayer[], findings: FindingList): void {
  const known = new Map(layers.map((layer) => [layer.name.toUpperCase(), layer]));
  const used = new Set(entities.map((entity) => entity.layer));
  for (const name of used) {
    const layer = known.get(name.toUpperCase());
    if (layer === undefined)
      findings.add("layer-unknown", "advise", `layer ${name} is used but not in the LAYER table`);
    else if (layer.hidden) findings.add("layer-hidden", "advise", `layer ${name} is off or frozen, but holds entities`);
  }
}
