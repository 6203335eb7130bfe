/** What the rows of the whole job come to, as its checker asks for it first. */
import { startDigest } from "../../checks/digest.js";
import { heldLayout } from "../../checks/held.js";
import type { RowsOf } from "./ledger.js";
import type { LiveDigest } from "./model.js";
import type { Right } from "./right.js";

/** `parts`: rows of every base that is checked, and of the job. */
export function liveDigest(
  { opened: { job }, slots }: Right,
  parts: readonly RowsOf[],
): Omit<LiveDigest, "turn" | "isSettled"> {
  const digest = startDigest();
  const known = new Map(slots.map(({ shaped, ledger }) => [shaped.base.mark, { base: shaped.base, ledger }]));
  for (const { path, mark, rows } of parts) {
    const { base, ledger = null } = known.get(mark) ?? {};
    if (path === null || base === undefined) continue;
    const { quantity, template } = base;
    digest.add({ mark, quantity, template, rows, reasons: ledger?.standing.held ?? [] });
  }
  const own = parts.find(({ path }) => path === null)?.rows ?? [];
  const layoutHeld = heldLayout(own, job.unit).reasons;
  digest.add({ mark: "", quantity: 0, template: null, reasons: layoutHeld, rows: own });
  const whole = digest.digest();
  return { ...whole, layoutHeld, unit: job.unit, paths: pathsOf(whole, parts), lacking: lackingIn(parts) };
}

function pathsOf(
  { held, closest, advice }: Pick<LiveDigest, "held" | "closest" | "advice">,
  parts: readonly RowsOf[],
): LiveDigest["paths"] {
  const named = new Set([
    ...held.flatMap(({ marks }) => marks),
    ...closest.flatMap(({ marks }) => marks.first),
    ...advice.flatMap(({ marks }) => marks.first),
  ]);
  return Object.fromEntries(
    parts.flatMap(({ path, mark }) => (path !== null && named.has(mark) ? [[mark, path]] : [])),
  );
}

function lackingIn(parts: readonly RowsOf[]): LiveDigest["lacking"] {
  const first = new Map<string, string | null>();
  for (const { path, rows } of parts)
    for (const { missing } of rows) for (const key of missing) if (!first.has(key)) first.set(key, path);
  return Object.fromEntries(first);
}
