/**
 * Templates of several bases: found or given, proved, and counted. Every plate of such a template is made and held against
 * the first, exactly; what differs is a fault that names both bases.
 */
import type { CheckedBase } from "../checks/checked.js";
import { checkAlone } from "../checks/checked.js";
import type { OpenQuestion } from "../checks/release.js";
import type { Finding, Place } from "../diagnostics/finding.js";
import { hasErrors, placeWords } from "../diagnostics/finding.js";
import type { Job, Memory } from "../job/index.js";
import { isShared, markKey } from "../job/index.js";
import type { HoldingBases, PlateKeys, ShapedBase, SharedTemplate, TemplateSet } from "../template/index.js";
import { equalSets, givenSets, madePlateKeys, plateDifference, plateKey, withTemplate } from "../template/index.js";
import { groupBy } from "../units/group-by.js";
import { baseKey } from "./base-key.js";
import type { WithShares } from "./count-templates.js";
import { countTemplates } from "./count-templates.js";
import { sheetKey } from "./sheet-key.js";

/** A job whose templates know the bases that they serve, and what is wrong with that. */
export interface SharedJob {
  readonly value: { readonly job: Job; readonly bases: readonly ShapedBase[] };
  readonly findings: readonly Finding[];
}

/** `isWhole`: no base is missing for its faults, so that what is not found is not there. */
export function shareTemplates(
  job: Job,
  bases: readonly ShapedBase[],
  { isWhole, memory }: { readonly isWhole: boolean; readonly memory?: Memory | undefined },
): SharedJob {
  const sets = job.merge === "auto" && isWhole ? equalSets(bases, plateKeysOf(job, memory)) : givenSets(bases);
  const counted = countTemplates(job, withSets(bases, sets), { isWhole });
  if (sets.length === 0 || hasErrors(counted.findings)) return counted;
  const proofs = proveSets(counted.value, memory);
  const findings = [...counted.findings, ...proofs.flatMap(({ fault }) => fault ?? [])];
  return { value: { job: counted.value.job, bases: withProofs(counted.value.bases, proofs) }, findings };
}

function plateKeysOf(job: Job, memory?: Memory): PlateKeys {
  const made = madePlateKeys(job);
  if (memory === undefined) return made;
  return (base, rods) => memory.recall("plate", baseKey(job, base, memory), () => made(base, rods));
}

function withSets(bases: readonly ShapedBase[], sets: readonly TemplateSet[]): WithShares {
  const setOf = new Map<string, { readonly mark: string; readonly sharedBy: readonly string[] }>();
  for (const { mark, members } of sets) {
    const sharedBy = members.map(({ base }) => base.mark);
    for (const each of sharedBy) setOf.set(each, { mark, sharedBy });
  }
  return bases.map((each) => {
    const set = setOf.get(each.base.mark);
    return set === undefined ? each : { ...each, base: withTemplate(each.base, set.mark, set.sharedBy) };
  });
}

interface Proof {
  readonly bases: readonly string[];
  readonly shared: SharedTemplate;
  readonly fault: Finding | null;
}

function proveSets({ job, bases }: SharedJob["value"], memory?: Memory): readonly Proof[] {
  const shared = bases.filter(({ base }) => isShared(base));
  return [...groupBy(shared, ({ base }) => base.template.mark).values()].map((set) => proveSet(job, set, memory));
}

/** What of a checked base its template hangs on; its plate is not kept. */
interface ProvedBase {
  readonly plate: string;
  readonly sheet: string;
  readonly open: readonly OpenQuestion[];
  readonly held: readonly string[];
}

function proveBase(job: Job, each: ShapedBase): ProvedBase {
  const checked = checkAlone(job, each);
  const plate = plateKey(checked.plate, each.base.template.use);
  return { plate, sheet: sheetKey(checked), open: checked.open, held: checked.held };
}

function knownProof(job: Job, each: ShapedBase, memory: Memory): ProvedBase {
  return memory.recall("proof", baseKey(job, each.base, memory), () => proveBase(job, each));
}

/** Goes through the bases one by one: no plate is kept meanwhile. */
function proveSet(job: Job, members: readonly ShapedBase[], memory?: Memory): Proof {
  const reasons = new Map<string, readonly string[]>();
  const sheetOf = new Map<string, string>();
  const open: OpenQuestion[] = [];
  let [first, fault]: [First | null, Finding | null] = [null, null];
  for (const each of members) {
    const proved = memory === undefined ? proveBase(job, each) : knownProof(job, each, memory);
    first ??= { shaped: each, key: proved.plate };
    if (proved.plate !== first.key) fault ??= differs(checkAlone(job, first.shaped), checkAlone(job, each));
    for (const question of proved.open) open.push(question);
    if (proved.held.length > 0) reasons.set(each.base.mark, proved.held);
    sheetOf.set(each.base.mark, proved.sheet);
  }
  const sheets = [...groupBy(sheetOf.keys(), (mark) => sheetOf.get(mark)).values()];
  const shared = { held: holdingBases(reasons), heldBy: [...reasons.keys()], open, sheets };
  return { bases: [...sheetOf.keys()], shared, fault };
}

function holdingBases(reasonsOf: ReadonlyMap<string, readonly string[]>): readonly HoldingBases[] {
  return [...groupBy(reasonsOf, ([, reasons]) => JSON.stringify(reasons)).values()].map((bases) => {
    return { marks: new Set(bases.map(([mark]) => mark)), reasons: bases[0]?.[1] ?? [] };
  });
}

interface First {
  readonly shaped: ShapedBase;
  readonly key: string;
}

function differs(first: CheckedBase, other: CheckedBase): Finding {
  const [a, b] = [first, other].map(({ base, plate }) => ({ base: base.mark, use: base.template.use, plate }));
  const { mark } = other.base.template;
  const words = a === undefined || b === undefined ? "differ" : plateDifference(a, b, other.job.unit);
  const places = `${first.base.mark} is at ${placeWords(first.base.place)}`;
  return {
    code: "template-differs",
    severity: "error",
    at: templatePlace(other.base.place),
    message: `${mark} stands on ${first.base.mark} and ${other.base.mark}, whose plates ${words}; ${places}`,
    hint: `make them alike, or give ${other.base.mark} a template.mark of its own`,
  };
}

function templatePlace(place: Place): Place {
  return place.path === undefined ? place : { ...place, path: `${place.path}.template.mark` };
}

function withProofs(bases: readonly ShapedBase[], proofs: readonly Proof[]): readonly ShapedBase[] {
  const sharedOf = new Map(proofs.flatMap(({ bases: marks, shared }) => marks.map((mark) => [markKey(mark), shared])));
  return bases.map((each) => {
    const shared = sharedOf.get(markKey(each.base.mark));
    return shared === undefined ? each : { ...each, shared };
  });
}
