/** The layout of a job while its bases are being placed: that some stand nowhere yet does not keep it from being drawn. */
import { readJobFile } from "../../job/index.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import { openJob } from "../open.js";
import type { OpenedJob } from "../opened-job.js";
import type { OpenText } from "./open-text.js";
import type { Right } from "./right.js";

const MISSING = /^bases\[(\d+)\]\.(?:quantity|mark)$/;
const CODES = new Set(["count", "not-placed"]);

/** The job as it stands, or as it was last right; where nothing but places is missing, as far as it is placed. */
export function layoutOf(text: OpenText, right: Right): OpenedJob {
  const faults = text.findings.filter(({ severity }) => severity === "error");
  const isPlacing = faults.length > 0 && faults.every(({ at, code }) => CODES.has(code) && MISSING.test(at.path ?? ""));
  if (!isPlacing) return right.opened;
  const nowhere = faults.flatMap(({ at, code }) =>
    code === "not-placed" ? Number(MISSING.exec(at.path ?? "")?.[1]) : [],
  );
  return asPlaced(text, right, new Set(nowhere)) ?? right.opened;
}

function asPlaced(
  { inputs, text }: OpenText,
  { opened: { job } }: Right,
  nowhere: ReadonlySet<number>,
): OpenedJob | null {
  const file = readJobFile(text, inputs.job);
  if (!file.root.ok || file.root.value.kind !== "map") return null;
  const value = file.root.value;
  const bases = findNode(value, "bases");
  const items = bases?.kind === "list" ? bases.items : [];
  const placed = items.filter((_, index) => !nowhere.has(index));
  const isBare = placed.length === 0;
  const now: Readonly<Record<string, SourceNode>> = isBare
    ? { bases: listOf(value, items.slice(0, 1)), placements: oneAnywhere(value, items[0]) }
    : { bases: listOf(value, placed) };
  const entries = value.entries.map((entry) => ({ ...entry, value: now[entry.key] ?? entry.value }));
  const files = new Map([
    ...inputs.files,
    [inputs.job, { ...file, root: { ...file.root, value: { ...value, entries } } }],
  ]);
  const opened = openJob({ ...inputs, files }, { date: job.date });
  if (!opened.ok) return null;
  const { plan } = opened.value;
  return isBare && plan !== null ? { ...opened.value, plan: { ...plan, bases: [] } } : opened.value;
}

function listOf({ place }: SourceNode, items: readonly SourceNode[]): SourceNode {
  return { kind: "list", place, items: items.map(withoutQuantity) };
}

/** A grid on which nothing stands is drawn as one on which its first base stood. */
function oneAnywhere(root: SourceNode, base: SourceNode | undefined): SourceNode {
  const { place } = root;
  const first = (axis: string): SourceNode => {
    const names = findNode(root, "grid", axis, "names");
    return (
      (names?.kind === "list" ? names.items[0] : undefined) ?? { kind: "scalar", text: "", style: "quoted", place }
    );
  };
  const at: SourceNode = { kind: "list", place, items: [first("x"), first("y")] };
  const entries = [
    { key: "base", place, value: findNode(base, "mark") ?? at },
    { key: "at", place, value: at },
  ];
  return { kind: "list", place, items: [{ kind: "map", place, entries }] };
}

function withoutQuantity(base: SourceNode): SourceNode {
  return base.kind === "map" ? { ...base, entries: base.entries.filter(({ key }) => key !== "quantity") } : base;
}
