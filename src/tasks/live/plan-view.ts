/** The layout of a live job: drawn, listed, and its points to set out. */
import type { HeldLayout } from "../../checks/held.js";
import { heldLayout } from "../../checks/held.js";
import type { CheckRow } from "../../checks/model.js";
import { openQuestionsOf } from "../../checks/release.js";
import { nameIn } from "../../outputs/names.js";
import { settingOutFiles } from "../../outputs/setting-out.js";
import type { PlacedBase, Plan } from "../../plan/model.js";
import { turnText } from "../../sheets/plan/angles.js";
import { planLength } from "../../sheets/plan/lengths.js";
import type { Room, Zoom } from "../../sheets/plan/on-screen.js";
import { drawLayout } from "../../sheets/plan/on-screen.js";
import type { Unit } from "../../units/index.js";
import { textsUnderKeys, unchecked } from "./base-line.js";
import { layoutOf } from "./open-layout.js";
import type { OpenText } from "./open-text.js";
import type { LivePlacement, LivePlan, LivePoints } from "./plan-model.js";
import type { Right } from "./right.js";

const KEYS = ["grid", "placements", "control", "site", "settingOut"];

/** null where the job never was right. `rows`: of the job itself. */
export function livePlan(
  text: OpenText,
  right: Right | null,
  rows: readonly CheckRow[],
  room: Room,
  zoom: Zoom,
): LivePlan | null {
  const written = textsUnderKeys(text.root, KEYS);
  if (right === null) return { drawing: null, placements: [], unplaced: [], held: [], written };
  const { job, plan } = layoutOf(text, right);
  const checked = checkedLayout(right, rows);
  return {
    drawing:
      plan === null
        ? null
        : drawLayout({ ...checked, plan, coordinateFiles: [], dxfName: null, programVersion: "" }, room, zoom),
    placements: plan === null ? [] : placementsOf(right, plan),
    unplaced: unplacedOf(right, plan),
    held: heldLayout(rows, job.unit).reasons,
    written,
  };
}

function checkedLayout({ opened: { job }, slots }: Right, rows: readonly CheckRow[]) {
  const held = new Map(
    slots.flatMap(({ shaped, ledger }) => {
      const reasons = ledger?.standing.held ?? [];
      return reasons.length > 0 ? [[shaped.base.mark, reasons] as const] : [];
    }),
  );
  const layoutHeld: HeldLayout = heldLayout(rows, job.unit);
  return { job, held, layoutHeld, layoutOpen: openQuestionsOf("", rows), rows };
}

function placementsOf({ slots, opened: { job } }: Right, { bases }: Plan): readonly LivePlacement[] {
  const indices = new Map(slots.map(({ shaped }, index) => [shaped.base.mark, index]));
  return bases.map((placed) => {
    const { mark } = placed.placement;
    const index = indices.get(mark) ?? -1;
    const { state } = slots[index]?.ledger?.standing ?? unchecked("waiting");
    return { path: `bases[${index}]`, mark, state, name: placed.name, words: placedWords(placed, job.unit) };
  });
}

function placedWords({ placement: { turn, offset, topOfConcrete, delivery } }: PlacedBase, unit: Unit): string {
  const said = [
    turn === 0 ? "" : `turned ${turnText(turn)}`,
    offset.x === 0 && offset.y === 0
      ? ""
      : `off the crossing by ${planLength(offset.x, unit)}, ${planLength(offset.y, unit)}`,
    topOfConcrete.kind === "given" ? `T.O.C. ${planLength(topOfConcrete.value, unit)}` : "",
    delivery,
  ];
  return said.filter((words) => words !== "").join(", ");
}

function unplacedOf({ slots }: Right, plan: Plan | null): LivePlan["unplaced"] {
  const counts = new Map<string, number>();
  for (const { placement } of plan?.bases ?? []) counts.set(placement.mark, (counts.get(placement.mark) ?? 0) + 1);
  return slots.flatMap(({ shaped: { base } }, index) => {
    const missing = base.quantity - (counts.get(base.mark) ?? 0);
    return missing > 0 ? [{ path: `bases[${index}]`, mark: base.mark, missing }] : [];
  });
}

/** null where there is no layout. */
export function livePoints(right: Right | null, rows: readonly CheckRow[]): LivePoints | null {
  const plan = right?.opened.plan ?? null;
  if (right === null || plan === null) return null;
  const checked = { ...checkedLayout(right, rows), plan };
  const files = settingOutFiles(checked, { includeHeld: false }, "", ({ headed }) => headed);
  const decoder = new TextDecoder();
  return {
    files: files.map(({ path, bytes }) => ({ name: nameIn(path), text: decoder.decode(bytes) })),
    held: checked.layoutHeld.reasons,
  };
}
