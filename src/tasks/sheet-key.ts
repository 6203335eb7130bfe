/** Whether two bases of one template can stand on one sheet: everything that a sheet is drawn from, but for their marks. */
import type { CheckedBase } from "../checks/checked.js";

/** The same text where the sheets of two bases would say the same. The plate is that of the template: it is not held against itself. */
export function sheetKey({ base, rows, plate, held, weight }: CheckedBase): string {
  const { omitted, keyed, sized } = plate;
  const { template, origins: _origins, kind: _kind, ...others } = base;
  const { written: _written, ...plain } = template;
  const said = rows.map(({ answer, givenBy: _givenBy, ...row }) => [
    row,
    answer === null ? null : [answer.kind, answer.by, answer.date],
  ]);
  const drawn = { ...others, mark: "", quantity: 0, template: plain };
  return JSON.stringify([drawn, said, omitted, keyed, sized, held, weight], withoutOrigins);
}

/** Where a value was written makes no difference to what it is. */
function withoutOrigins(key: string, value: unknown): unknown {
  return key === "place" || key === "from" ? undefined : value;
}
