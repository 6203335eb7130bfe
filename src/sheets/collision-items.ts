/** A scene taken apart for the search for collisions: texts, lines, leaders, holes and tags, each with its bounds. */
import type { Extent } from "../geometry/index.js";
import { extentOfPoints } from "../geometry/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { type Box, type Mark, marksOf, type TextItem, textBox } from "./occupied.js";
import type { FillRole, PaperPoint, SceneGroup, SceneItem, StrokeRole } from "./scene.js";

/** A text; `frame` is the stretch from left to right of the ruled lines among which it stands. */
export interface PlacedText extends Extent {
  readonly words: string;
  readonly box: Box;
  readonly frame: Frame | null;
}

/** Lines that rule a table or block, and the name of its group. */
export interface Frame extends Extent {
  readonly name: string;
}

/** A straight line or a circle; `owner` is the innermost group. */
export interface PlacedMark extends Extent {
  readonly mark: Mark;
  readonly role: StrokeRole | FillRole;
  readonly owner: SceneGroup | null;
}

/** A straight piece of a leader, with the words of its group. */
export interface PlacedLeader extends Extent {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly words: string;
  readonly owner: SceneGroup | null;
}

/** A round hole on paper. */
export interface PlacedHole extends PaperPoint {
  readonly radius: number;
}

/** A tag without a tick, and the hole that its group names as its own. */
export interface PlacedTag {
  readonly words: string;
  readonly box: Extent;
  readonly own: PlacedHole;
}

/** Everything on a sheet that can collide. `border`: the frame of the sheet, null where none is drawn. */
export interface Placed {
  readonly texts: PlacedText[];
  readonly marks: PlacedMark[];
  readonly leaders: PlacedLeader[];
  readonly holes: PlacedHole[];
  readonly tags: PlacedTag[];
  border: Extent | null;
}

/** Takes a scene apart. */
export function placeItems(items: readonly SceneItem[]): Placed {
  const placed: Placed = { texts: [], marks: [], leaders: [], holes: [], tags: [], border: null };
  collect(items, null, null, placed);
  placed.border = borderOf(placed.marks);
  return placed;
}

function collect(items: readonly SceneItem[], owner: SceneGroup | null, frame: Frame | null, placed: Placed): void {
  const own = owner === null ? frame : (ruledBy(owner) ?? frame);
  for (const item of items)
    if (item.kind === "group") {
      if (item.name === "tag") for (const tag of tagOf(item)) placed.tags.push(tag);
      collect(item.items, item, own, placed);
    } else if (item.kind === "text") placed.texts.push(textOf(item, own));
    else for (const mark of marksOf(item)) placeMark(mark, item, owner, placed);
}

function placeMark(
  mark: Mark,
  { role }: Extract<SceneItem, { kind: "stroke" | "fill" }>,
  owner: SceneGroup | null,
  { marks, leaders, holes }: Placed,
): void {
  const bounds = boundsOf(mark);
  marks.push({ ...bounds, mark, role, owner });
  if (mark.kind === "circle") {
    if (role === "hole" && !isSame(holes.at(-1), mark)) holes.push({ ...mark.center, radius: mark.radius });
  } else if (role === "leader")
    leaders.push({ ...bounds, from: mark.from, to: mark.to, owner, words: owner === null ? "" : wordsOf(owner) });
}

function isSame(hole: PlacedHole | undefined, { center, radius }: Extract<Mark, { kind: "circle" }>): boolean {
  return hole !== undefined && hole.x === center.x && hole.y === center.y && hole.radius === radius;
}

function boundsOf(mark: Mark): Extent {
  if (mark.kind === "segment") return extentOfPoints([mark.from, mark.to]);
  const { center, radius } = mark;
  return { x0: center.x - radius, y0: center.y - radius, x1: center.x + radius, y1: center.y + radius };
}

function textOf(item: TextItem, frame: Frame | null): PlacedText {
  const box = textBox(item);
  return { ...extentOfPoints(box), words: item.text, box, frame: LETTERED_IN.has(item.role) ? frame : null };
}

/** Texts that stand in ruled frames; labels and figures stand beside the lines that they belong to. */
const LETTERED_IN: ReadonlySet<string> = new Set(["table", "note", "heading", "title"]);

function wordsOf({ items }: SceneGroup): string {
  return items.flatMap((item) => (item.kind === "text" ? [item.text] : [])).join(" ");
}

const RULES: ReadonlySet<string> = new Set(["table", "table-heavy", "frame"]);

/** The lines that a group rules itself, from the first to the last; null where it rules none. */
function ruledBy({ name, items }: SceneGroup): Frame | null {
  const bounds = items.flatMap((item) =>
    item.kind === "stroke" && RULES.has(item.role) ? marksOf(item).map(boundsOf) : [],
  );
  return bounds.length === 0 ? null : { ...around(bounds), name };
}

function around(bounds: readonly Extent[]): Extent {
  return {
    x0: leastOf(bounds.map(({ x0 }) => x0)),
    y0: leastOf(bounds.map(({ y0 }) => y0)),
    x1: greatestOf(bounds.map(({ x1 }) => x1)),
    y1: greatestOf(bounds.map(({ y1 }) => y1)),
  };
}

/** A group of tags says where its hole stands: `x`, `y`, `radius` on paper. With a tick it may stand anywhere. */
function tagOf({ items, data: { x, y, radius } }: SceneGroup): readonly PlacedTag[] {
  const [text, ...rest] = items;
  if (text?.kind !== "text" || rest.length > 0) return [];
  if (typeof x !== "number" || typeof y !== "number" || typeof radius !== "number") return [];
  return [{ words: text.text, box: extentOfPoints(textBox(text)), own: { x, y, radius } }];
}

/** The longest lines of role `frame`, both ways; centring marks are shorter and stand outside. */
function borderOf(marks: readonly PlacedMark[]): Extent | null {
  const lines = marks.filter(({ role }) => role === "frame");
  const longest = (length: (bounds: Extent) => number) => greatestOf(lines.map(length), 0);
  const [wide, high] = [longest(({ x0, x1 }) => x1 - x0), longest(({ y0, y1 }) => y1 - y0)];
  const sides = lines.filter(({ x0, x1, y0, y1 }) => x1 - x0 >= wide * 0.99 || y1 - y0 >= high * 0.99);
  return wide === 0 || high === 0 ? null : around(sides);
}
