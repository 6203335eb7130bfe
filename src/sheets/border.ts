/** The border of a sheet with its centring marks. */
import { border } from "../standards/index.js";
import { toMillimetres } from "../units/index.js";
import { at, group, line, rectangle, stroke } from "./items.js";
import type { Area } from "./paper.js";
import type { SceneItem } from "./scene.js";
import type { SheetSize } from "./sheet-sizes.js";

/** Borders by ISO 5457, in mm: the binding edge at the left is the wider. */
export const BORDER = { left: toMillimetres(border.value.binding), other: toMillimetres(border.value.other) };

/** The paper inside the border. */
export function insideBorder(sheet: SheetSize): Area {
  const { left, other } = BORDER;
  return { x0: left, y0: other, x1: sheet.width - other, y1: sheet.height - other };
}

/** Border and centring marks. */
export function frameOf(sheet: SheetSize): SceneItem {
  const inside = insideBorder(sheet);
  const edge = stroke("frame", ...rectangle(inside.x0, inside.y0, inside.x1, inside.y1));
  return group("frame", [edge, ...centringMarks(sheet, inside)]);
}

/** Short strokes at the middle of each border, for copying and trimming (ISO 5457). */
function centringMarks(sheet: SheetSize, inside: Area): readonly SceneItem[] {
  const [cx, cy] = [(inside.x0 + inside.x1) / 2, (inside.y0 + inside.y1) / 2];
  return [
    stroke(
      "frame",
      line(at(inside.x0 - 5, cy), at(inside.x0, cy)),
      line(at(inside.x1, cy), at(inside.x1 + 5, cy)),
      line(at(cx, inside.y0 - 5), at(cx, inside.y0)),
      line(at(cx, inside.y1), at(cx, sheet.height - BORDER.other + 5)),
    ),
  ];
}
