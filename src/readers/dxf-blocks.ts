/** BLOCK definitions and where INSERT puts them: nested, scaled, turned, mirrored, in rows and columns. */

import type { FindingList } from "./dxf-findings.js";
import type { DxfEntity } from "./dxf-model.js";
import { combineMoves, type DxfMove, MIRROR_X, moveEntity } from "./dxf-moves.js";
import type { TagRange, Tags } from "./dxf-tags.js";
import { type EntityValues, facingOf } from "./dxf-values.js";

/** The most lines, arcs and circles that blocks may make; a file of more is refused there. */
const MOST_INSERTED = 500_000;

/** Blocks within blocks. */
const DEEPEST = 32;

interface DxfBlock {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly content: TagRange;
}

/** Entities of a range of tags, in the file's order. */
export type ReadEntities = (range: TagRange) => readonly DxfEntity[];

/** The blocks of a file, each read when it is first inserted. */
export class DxfBlocks {
  private readonly blocks: ReadonlyMap<string, DxfBlock>;
  private readonly made = new Map<string, readonly DxfEntity[]>();
  private readonly open: string[] = [];
  private inserted = 0;

  constructor(
    tags: Tags,
    range: TagRange | undefined,
    private readonly findings: FindingList,
  ) {
    this.blocks = new Map(findBlocks(tags, range).map((block) => [block.name.toUpperCase(), block]));
  }

  /** The entities that an INSERT makes. */
  insert(values: EntityValues, read: ReadEntities): readonly DxfEntity[] {
    const { findings } = this;
    const block = this.blocks.get(values.name.toUpperCase());
    if (block === undefined) {
      findings.add("block-missing", "stop", `block ${values.name || "without a name"} is inserted but not defined`);
      return [];
    }
    const side = facingOf(values, findings);
    const content = this.contentOf(block, read);
    if (side === null || content.length === 0) return [];
    findings.add("inserted-block", "advise", "blocks are inserted; some controls do not read INSERT");
    const made: DxfEntity[] = [];
    const size = content.reduce((sum, each) => sum + (each.kind === "polyline" ? each.vertices.length : 1), 0);
    for (const place of placesOf(values, block)) {
      if (!this.takeRoom(size)) break;
      this.put(content, side === "up" ? place : combineMoves(MIRROR_X, place), values, made);
    }
    return made;
  }

  /** Blocks that hold entities and are never inserted; those that programs make for themselves start with `*`. */
  reportUnused(tags: Tags): void {
    for (const [key, { name, content }] of this.blocks) {
      if (this.made.has(key) || name.startsWith("*") || content.first >= content.end) continue;
      const type = tags.text(content.first);
      this.findings.add("block-content", "advise", `${type} inside a block that is not inserted is not read`);
    }
  }

  private contentOf(block: DxfBlock, read: ReadEntities): readonly DxfEntity[] {
    const key = block.name.toUpperCase();
    const known = this.made.get(key);
    if (known !== undefined) return known;
    if (this.open.includes(key) || this.open.length >= DEEPEST) {
      const why = this.open.includes(key) ? "inserts itself" : `lies more than ${DEEPEST} blocks deep`;
      this.findings.add("block-cycle", "stop", `block ${block.name} ${why}; it is not read`);
      return [];
    }
    this.open.push(key);
    const content = read(block.content);
    this.open.pop();
    this.made.set(key, content);
    return content;
  }

  private takeRoom(count: number): boolean {
    this.inserted += count;
    if (this.inserted <= MOST_INSERTED) return true;
    this.findings.add(
      "too-many-inserted",
      "stop",
      `blocks make more than ${MOST_INSERTED} lines and arcs; the rest is not read`,
    );
    return false;
  }

  /** Layer 0 in a block is the layer of its INSERT (DXF reference). */
  private put(content: readonly DxfEntity[], place: DxfMove, { layer }: EntityValues, made: DxfEntity[]): void {
    for (const entity of content) {
      const moved = moveEntity(entity, place);
      if (moved === null) {
        const message = "a block is scaled unevenly: its arcs would be ellipses, and are not read";
        this.findings.add("uneven-scale", "stop", message, [place.e, place.f]);
      } else made.push(moved.layer === "0" ? { ...moved, layer } : moved);
    }
  }
}

/** Row by row; the caller stops where it has no more room. */
function* placesOf(values: EntityValues, block: DxfBlock): Iterable<DxfMove> {
  const [x, y] = [values.first(10) ?? 0, values.first(20) ?? 0];
  const [scaleX, scaleY] = [values.first(41) ?? 1, values.first(42) ?? 1];
  const turn = ((values.first(50) ?? 0) * Math.PI) / 180;
  const [columns, rows] = [counted(values.first(70)), counted(values.first(71))];
  const [alongX, alongY] = [values.first(44) ?? 0, values.first(45) ?? 0];
  const [cos, sin] = exactTurn(values.first(50) ?? 0) ?? [Math.cos(turn), Math.sin(turn)];
  for (let index = 0; index < columns * rows; index++) {
    const [dx, dy] = [(index % columns) * alongX, Math.floor(index / columns) * alongY];
    const place = { a: cos, b: sin, c: -sin, d: cos, e: x + cos * dx - sin * dy, f: y + sin * dx + cos * dy };
    yield combineMoves(place, { a: scaleX, b: 0, c: 0, d: scaleY, e: -scaleX * block.x, f: -scaleY * block.y });
  }
}

/** Cosine and sine of quarter turns, which have no rounding. */
function exactTurn(degrees: number): readonly [number, number] | null {
  const quarter = (((degrees / 90) % 4) + 4) % 4;
  return (
    (
      [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ] as const
    )[quarter] ?? null
  );
}

function counted(value: number | undefined): number {
  return value !== undefined && Number.isInteger(value) && value > 0 ? value : 1;
}

function findBlocks(tags: Tags, range: TagRange | undefined): readonly DxfBlock[] {
  const found: DxfBlock[] = [];
  let head: { name: string; x: number; y: number; first: number } | null = null;
  for (let index = range?.first ?? 0; index < (range?.end ?? 0); index++) {
    if (tags.codes[index] !== 0) continue;
    const type = tags.text(index);
    if (type === "BLOCK") head = readHead(tags, index, range?.end ?? 0);
    else if (type === "ENDBLK" && head !== null) {
      found.push({ name: head.name, x: head.x, y: head.y, content: { first: head.first, end: index } });
      head = null;
    }
  }
  return found;
}

function readHead(tags: Tags, start: number, end: number) {
  const head = { name: "", x: 0, y: 0, first: start + 1 };
  for (; head.first < end && tags.codes[head.first] !== 0; head.first++) {
    const code = tags.codes[head.first];
    if (code === 2) head.name = tags.text(head.first);
    else if (code === 10) head.x = tags.number(head.first) ?? 0;
    else if (code === 20) head.y = tags.number(head.first) ?? 0;
  }
  return head;
}
