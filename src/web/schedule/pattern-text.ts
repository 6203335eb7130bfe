/**
 * A pattern, a base plate, a pier as one readable cell: `rectangle 12 x 10, 3 by 2`, `circle 24, 8 rods, straddle`,
 * `lines x -9; 0; 9, y -6; 6`, `points -6,5; 6,5`, `18 x 16 x 1-1/2`, `dia 30`. Figures stay texts: what they mean is for the
 * job's own reader.
 */
import { listUnder, type Texts, textsUnder } from "./texts.js";

/** Keys with what they are given: one text, several, or points. */
export type Values = Readonly<Record<string, string | readonly string[] | readonly (readonly string[])[]>>;

/** What a cell says, or why it says nothing. */
export type CellSays = { readonly ok: true; readonly values: Values } | { readonly ok: false; readonly why: string };

const ALLOWED =
  "allowed is, as an example, rectangle 12 x 10; rectangle 14 x 24, 2 by 4; circle 24, 8 rods, straddle; lines x -9; 0; 9, y -6; 6; points -6,5; 6,5; 6,-5";

const UNKNOWN = "?";
const NO_WORDS = new Set(["", "no", "false"]);

/** Of the texts under `pattern`. */
export function patternText(texts: Texts): string {
  const { kind } = texts;
  const one = (key: string) => texts[key] ?? UNKNOWN;
  const edge = NO_WORDS.has((texts.perimeter ?? "").toLowerCase()) ? "" : ", perimeter";
  switch (kind) {
    case "rectangle": {
      const counts = texts.nx === undefined && texts.ny === undefined ? "" : `, ${texts.nx ?? 2} by ${texts.ny ?? 2}`;
      return `rectangle ${one("x")} x ${one("y")}${counts}${edge}`;
    }
    case "circle": {
      const start = texts.start === undefined ? "" : `, ${texts.start}`;
      return `circle ${one("diameter")}, ${one("count")} rods${start}`;
    }
    case "lines":
      return `lines x ${listUnder(texts, "x").join("; ")}, y ${listUnder(texts, "y").join("; ")}${edge}`;
    case "points":
      return `points ${pointsOf(texts).join("; ")}`;
    default:
      return Object.entries(texts)
        .map(([key, text]) => `${key} ${text}`)
        .join(", ");
  }
}

function pointsOf(texts: Texts): readonly string[] {
  const points = new Map<string, string[]>();
  for (const [path, text] of Object.entries(textsUnder(texts, "at"))) {
    const point = path.slice(0, path.indexOf("]") + 1);
    points.set(point, [...(points.get(point) ?? []), text]);
  }
  return [...points.values()].map((own) => own.join(","));
}

/** What a cell of a pattern says; a kind that is not named is that of its form, a rectangle or points. */
export function readPattern(cell: string): CellSays {
  const [, word = "", rest = ""] = /^\s*([a-z]*)\s*(.*)$/is.exec(cell.replace(/\s+/g, " ")) ?? [];
  switch (word.toLowerCase()) {
    case "":
      return /^[^;]*,[^;]*;/.test(rest) ? pointsSaid(rest) : rectangleSaid(rest);
    case "rect":
    case "rectangle":
      return rectangleSaid(rest);
    case "circle":
      return circleSaid(rest);
    case "lines":
      return linesSaid(rest);
    case "points":
      return pointsSaid(rest);
    default:
      return refused(cell);
  }
}

function refused(cell: string): CellSays {
  return { ok: false, why: `"${cell.trim()}" is no pattern; ${ALLOWED}` };
}

const filled = (values: Record<string, string | undefined>): Values =>
  Object.fromEntries(
    Object.entries(values).flatMap(([key, text]) =>
      text === undefined || text === "" || text === UNKNOWN ? [] : [[key, text.trim()]],
    ),
  );

function rectangleSaid(text: string): CellSays {
  const [sizes = "", ...more] = text.split(/\s*,\s*/);
  const sides = sizes.split(/\s*[x\u00d7]\s*/i);
  const counts = more.map((part) => /^(\d+)\s*(?:by|x|\u00d7)\s*(\d+)(?: rods)?$/i.exec(part));
  const isPerimeter = more.some((part) => /^perimeter$/i.test(part));
  const known = more.every((part, index) => counts[index] !== null || /^perimeter$/i.test(part));
  if (sides.length !== 2 || !known) return refused(`rectangle ${text}`);
  const [nx, ny] = counts.find((count) => count !== null)?.slice(1) ?? [];
  const perimeter = isPerimeter ? "yes" : undefined;
  return { ok: true, values: filled({ kind: "rectangle", x: sides[0], y: sides[1], nx, ny, perimeter }) };
}

function circleSaid(text: string): CellSays {
  const [diameter = "", count = "", ...start] = text.split(/\s*,\s*/);
  const rods = /^(\d+|\?)(?: rods?)?$/i.exec(count)?.[1];
  if (diameter === "" || rods === undefined || start.length > 1) return refused(`circle ${text}`);
  const bare = diameter.replace(/^(?:dia\.?|\u00d8|\u2300)\s*/i, "");
  return { ok: true, values: filled({ kind: "circle", diameter: bare, count: rods, start: start[0] }) };
}

function linesSaid(text: string): CellSays {
  const [, x, y, edge] = /^x\s*([^,xy]+),\s*y\s*([^,xy]+?)(,\s*perimeter)?$/i.exec(text) ?? [];
  if (x === undefined || y === undefined) return refused(`lines ${text}`);
  const list = (part: string) => part.split(";").map((each) => each.trim());
  const perimeter: Values = edge === undefined ? {} : { perimeter: "yes" };
  return { ok: true, values: { kind: "lines", x: list(x), y: list(y), ...perimeter } };
}

function pointsSaid(text: string): CellSays {
  const points = text
    .split(";")
    .map((point) => point.split(",").map((each) => each.trim()))
    .filter((point) => point.join("") !== "");
  const isWhole = points.length > 0 && points.every((point) => point.length === 2 && !point.includes(""));
  return isWhole ? { ok: true, values: { kind: "points", at: points } } : refused(`points ${text}`);
}

/** `18 x 16 x 1-1/2`, `dia 30 x 1-1/2`, `24 x 24`; "" where no size is given. */
export function sizeText({ x, y, diameter, thickness }: Texts): string {
  if ([x, y, diameter, thickness].every((each) => each === undefined)) return "";
  const plan = diameter === undefined ? `${x ?? UNKNOWN} x ${y ?? UNKNOWN}` : `dia ${diameter}`;
  return thickness === undefined ? plan : `${plan} x ${thickness}`;
}

/** What a cell of a size says; `withThickness`: a plate's. */
export function readSize(cell: string, withThickness: boolean): CellSays {
  const round = /^(?:dia\.?|\u00d8|\u2300)\s*(.*)$/i.exec(cell.trim());
  const parts = (round?.[1] ?? cell).trim().split(/\s*[x\u00d7]\s*/i);
  const count = round === null ? 2 : 1;
  const isWhole = parts.length === count || (withThickness && parts.length === count + 1);
  if (!isWhole || parts.includes("")) {
    const more = withThickness ? " x 1-1/2" : "";
    return {
      ok: false,
      why: `"${cell.trim()}" is no size; allowed is, as an example, 18 x 16${more} or dia 30${more}`,
    };
  }
  const thickness = parts[count];
  const [x, y] = parts;
  return { ok: true, values: round === null ? filled({ x, y, thickness }) : filled({ diameter: x, thickness }) };
}
