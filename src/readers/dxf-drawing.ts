/**
 * The drawing in a DXF file: header, layers and the entities that are read, as plain data in the file's own unit. An entity
 * that is not read is counted in a finding that says so. By the published DXF reference.
 */

import { type DxfEntity, startEntities } from "./dxf-entities.js";
import { type CutFileFinding, collectFindings, type FindingList } from "./dxf-findings.js";
import { type DxfHeader, readHeader } from "./dxf-header.js";
import { readTags, type TagRange, type Tags } from "./dxf-tags.js";

export interface DxfLayer {
  readonly name: string;
  /** Off (negative colour) or frozen: drawn by no viewer, cut by some controls. */
  readonly hidden: boolean;
}

export interface DxfDrawing {
  readonly header: DxfHeader;
  /** The LAYER table, in its order. */
  readonly layers: readonly DxfLayer[];
  /** Entities of the model space that are read, in the file's order. */
  readonly entities: readonly DxfEntity[];
  readonly findings: readonly CutFileFinding[];
}

/** Reads any bytes: what is wrong with them is in the findings. */
export function readDrawing(bytes: Uint8Array): DxfDrawing {
  const findings = collectFindings();
  const tags = readTags(bytes, findings);
  const sections = findSections(tags, findings);
  const header = readHeader(tags, sections.get("HEADER"), findings);
  const layers = readLayers(tags, sections.get("TABLES"));
  reportBlocks(tags, sections.get("BLOCKS"), findings);
  const entities = readEntities(tags, sections.get("ENTITIES"), findings);
  reportLayers(entities, layers, findings);
  return { header, layers, entities, findings: findings.list() };
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

function reportBlocks(tags: Tags, range: TagRange | undefined, findings: FindingList): void {
  if (range === undefined) return;
  for (let index = range.first; index < range.end; index = nextObject(tags, index, range.end)) {
    const type = tags.text(index);
    if (tags.codes[index] !== 0 || type === "BLOCK" || type === "ENDBLK") continue;
    findings.add("block-content", "advise", `${type} inside a block is not read`);
  }
}

function readEntities(tags: Tags, range: TagRange | undefined, findings: FindingList): readonly DxfEntity[] {
  const entities: DxfEntity[] = [];
  if (range === undefined) return entities;
  const readEntity = startEntities(tags, findings);
  let index = range.first;
  while (index < range.end) {
    const end = nextObject(tags, index, range.end);
    if (tags.codes[index] === 0) {
      const entity = readEntity({ first: index, end });
      if (entity !== null) entities.push(entity);
    }
    index = end;
  }
  return entities;
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
