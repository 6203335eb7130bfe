/** `defaults` and `kinds` of a job: judged once where they are written, then laid under the bases that take them. */
import type { Finding } from "../../diagnostics/finding.js";
import { hasErrors } from "../../diagnostics/finding.js";
import { nearestWords } from "../../diagnostics/nearest.js";
import { ownValue } from "../../diagnostics/own-value.js";
import type { SourceEntry, SourceMap, SourceNode, SourcePlace } from "../../readers/source.js";
import { findNode, isNothing } from "../../readers/source.js";
import { groupBy } from "../../units/group-by.js";
import { lastFor } from "../../units/once.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { faultAt, joinPath } from "../document.js";
import type { Memory } from "../memory.js";
import { writingOf } from "../memory.js";
import { parseForgiving } from "../schema/forgiving.js";
import type { JobSchemas } from "../schema/job.js";
import type { BaseSources } from "./base-report.js";
import type { WrittenBase } from "./complete-base.js";
import { completeBase, saidBeside } from "./complete-base.js";
import { joinedGroup, joinLayers } from "./join-layers.js";
import { countedMarks } from "./marks-in-words.js";

/** A layer that lies under bases: its sound values, each with who gives it and with its place in the job. */
interface Layer {
  readonly root: SourceMap;
  /** True where parts of it were refused: what a base then lacks was perhaps given. */
  readonly lacks: boolean;
}

interface Kind extends Layer {
  readonly name: string;
  readonly place: SourcePlace;
}

/** What a job says once for many bases. */
export interface Layers {
  readonly defaults: Layer | null;
  /** null: what is written under kinds cannot be read, and says nothing of who may be cited. */
  readonly kinds: readonly Kind[] | null;
}

/** What layers are judged with. */
export interface LayerSources {
  readonly document: SourceDocument;
  readonly schemas: Pick<JobSchemas, "base" | "layer">;
  readonly beside: BaseSources;
}

/** The layers of a job with their own faults: a wrong value is told here once, whether a base takes it or not. */
export function readLayers(sources: LayerSources, memory?: Memory): WithFindings<Layers> {
  if (memory === undefined) return readAllLayers(sources);
  const nodes = ["defaults", "kinds"].map((key) => findNode(sources.document.root, key));
  const written = nodes.map((node) => (node ? `${node.place.line} ${memory.nameOf(node, writingOf)}` : ""));
  const key = [memory.nameOf(sources.beside, saidBeside), ...written].join();
  return memory.recall("layers", key, () => readAllLayers(sources));
}

function readAllLayers(sources: LayerSources): WithFindings<Layers> {
  const written = findNode(sources.document.root, "defaults");
  const defaults = written === undefined ? null : readLayer(written, "defaults", "default", sources);
  const kinds = readKinds(sources);
  const findings = [...(defaults?.findings ?? []), ...kinds.findings];
  return { value: { defaults: defaults?.value ?? null, kinds: kinds.value }, findings };
}

function readKinds(sources: LayerSources): WithFindings<Layers["kinds"]> {
  const { document } = sources;
  const written = findNode(document.root, "kinds");
  if (written === undefined) return { value: [], findings: [] };
  if (written.kind !== "map") {
    const message = "is no group of keys; allowed are names of kinds, each with a part of a base";
    return { value: null, findings: [faultAt(document, ["kinds"], "bad-value", message)] };
  }
  if (written.entries.length > MOST_KINDS) {
    const message = `has ${written.entries.length} kinds; at most ${MOST_KINDS} are allowed`;
    return { value: null, findings: [faultAt(document, ["kinds"], "too-many-kinds", message)] };
  }
  const read = written.entries.map((entry) => {
    const path = joinPath("kinds", [entry.key]);
    const layer = readLayer(entry.value, path, `kind ${entry.key}`, sources);
    const kind: Kind = { ...layer.value, name: entry.key, place: { ...entry.place, label: path } };
    return { kind, findings: layer.findings };
  });
  const kinds = read.map(({ kind }) => kind);
  return { value: kinds, findings: [...read.flatMap(({ findings }) => findings), ...nameFaults(kinds)] };
}

const MOST_KINDS = 500;
const LONGEST_NAME = 40;

function nameFaults(kinds: readonly Kind[]): readonly Finding[] {
  return kinds.flatMap(({ name, place }, index) => {
    const twin = kinds.slice(0, index).find((other) => kindKey(other.name) === kindKey(name));
    if (twin !== undefined)
      return [atKind(place, "kind-twice", `is the kind ${twin.name} again: capitals do not count`)];
    const isName = /^[ -~]+$/.test(name) && name.trim() === name && name.length <= LONGEST_NAME && !name.includes(";");
    const allowed = `allowed is a name of 1 to ${LONGEST_NAME} plain ASCII characters, without ; and without spaces at its ends`;
    return isName ? [] : [atKind(place, "bad-value", `"${name}" is no name of a kind; ${allowed}`)];
  });
}

function atKind({ file, line, column, label = "" }: SourcePlace, code: string, message: string): Finding {
  return { code, severity: "error", at: { file, line, column, path: label }, message };
}

/** Names of kinds are the same whatever their capitals, as marks are. */
export const kindKey = (name: string): string => name.trim().toLowerCase();

function readLayer(written: SourceNode, path: string, giver: string, sources: LayerSources): WithFindings<Layer> {
  const root: SourceNode = isNothing(written) ? { kind: "map", entries: [], place: written.place } : written;
  const document: SourceDocument = { root, path, nameOf: () => null };
  const faults = layerFaults(document, sources);
  const sound =
    root.kind === "map" ? soundPart(root, faults) : { kind: "map" as const, entries: [], place: root.place };
  return { value: { root: asLayer(sound, path, giver), lacks: hasErrors(faults) }, findings: faults };
}

/** What the schema refuses, and what a base made of nothing but the layer would be refused for. */
function layerFaults(document: SourceDocument, { schemas, beside }: LayerSources): readonly Finding[] {
  const findings = parseForgiving(schemas.layer, document, {}).findings.map(sayWhoseKey);
  if (document.root.kind !== "map") return findings;
  const sound = soundPart(document.root, findings);
  const probe = joinLayers(sound, standIn(sound, beside));
  const deeper = completeBase({ ...document, root: probe, lacks: hasErrors(findings) }, schemas.base, beside).findings;
  return [...findings, ...deeper.filter((finding) => isOwnFault(finding, sound))];
}

/** Keys that a base may have and a layer may not. */
function sayWhoseKey(finding: Finding): Finding {
  const isOwn = finding.code === "unknown-key" && /\.(mark|quantity|kind)$/.test(finding.at.path ?? "");
  return isOwn ? { ...finding, message: finding.message.replace("unknown key", "is for each base to say") } : finding;
}

/** Where the parts of a base stand that a layer does not have to give. */
const NOWHERE: SourcePlace = { file: "", line: 0, column: 0 };

/** What a base needs beside a layer, so that the layer can be judged alone. */
function standIn(layer: SourceMap, { unit }: Pick<BaseSources, "unit">): SourceMap {
  const map = (entries: Readonly<Record<string, SourceNode>>): SourceMap => ({
    kind: "map",
    place: NOWHERE,
    entries: Object.entries(entries).map(([key, value]) => ({ key, value, place: NOWHERE })),
  });
  const text = (value: string): SourceNode => ({ kind: "scalar", text: value, style: "plain", place: NOWHERE });
  const whole = map({
    mark: text("X"),
    rods: map({ diameter: text(unit === "in" ? "1" : "M24") }),
    pattern: map({ kind: text("rectangle"), x: text("1 ft"), y: text("1 ft") }),
    template: map({ thickness: text("1/4 in") }),
  });
  const hasGroups = findNode(layer, "groups") !== undefined;
  return { ...whole, entries: whole.entries.filter(({ key }) => !(hasGroups && key === "pattern")) };
}

/** What a fault is judged by beside the key that it names: where the layer does not give it, its bases are judged. */
const JUDGED_BY: Readonly<Record<string, readonly string[]>> = {
  "unknown-thread": ["rods", "diameter"],
  "other-thread-class": ["rods", "diameter"],
  "rod-count-differs": ["pattern"],
};

/** False for what hangs on the rod size, the pattern or the hole table of a base that is not known yet. */
function isOwnFault({ code, at }: Finding, layer: SourceMap): boolean {
  if (at.file === NOWHERE.file || code === "hole-unknown") return false;
  const beside = ownValue(JUDGED_BY, code);
  return beside === undefined || findNode(layer, ...beside) !== undefined;
}

/** The layer without what was refused, so that no base is told of it again. */
function soundPart(root: SourceMap, findings: readonly Finding[]): SourceMap {
  const errors = findings.filter(({ severity }) => severity === "error");
  const places = new Set(errors.map(({ at }) => `${at.line}:${at.column}`));
  return places.size === 0 ? root : soundKeys(root, places);
}

function soundKeys(map: SourceMap, faults: ReadonlySet<string>): SourceMap {
  const entries = map.entries.flatMap((entry): readonly SourceEntry[] => {
    const group = joinedGroup(entry);
    if (isFaulty(entry.place, faults) || (group !== null && isFaulty(group.place, faults))) return [];
    if (group !== null) return [{ ...entry, value: soundKeys(group, faults) }];
    return holdsFault(entry.value, faults) ? [] : [entry];
  });
  return { ...map, entries };
}

function isFaulty({ line, column }: SourcePlace, faults: ReadonlySet<string>): boolean {
  return faults.has(`${line}:${column}`);
}

function holdsFault(node: SourceNode, faults: ReadonlySet<string>): boolean {
  if (isFaulty(node.place, faults)) return true;
  if (node.kind === "scalar") return false;
  if (node.kind === "list") return node.items.some((item) => holdsFault(item, faults));
  return node.entries.some(({ place, value }) => isFaulty(place, faults) || holdsFault(value, faults));
}

/** Each value with who gives it, and with its place in the job as its label; what is written as nothing gives nothing. */
export function asLayer(map: SourceMap, path: string, giver: string): SourceMap {
  const entries = map.entries.map((entry): SourceEntry => {
    const own = joinPath(path, [entry.key]);
    const group = joinedGroup(entry);
    const place = { ...entry.place, label: own };
    if (group !== null) return { ...entry, place, value: asLayer(group, own, giver) };
    return { ...entry, place, value: labelled(entry.value, own), givenBy: giver };
  });
  return { ...map, entries, place: { ...map.place, label: path } };
}

function labelled(node: SourceNode, path: string): SourceNode {
  const place = { ...node.place, label: path };
  switch (node.kind) {
    case "scalar":
      return { ...node, place };
    case "list":
      return { ...node, place, items: node.items.map((item, index) => labelled(item, joinPath(path, [index]))) };
    case "map": {
      const entries = node.entries.map((entry) => {
        const own = joinPath(path, [entry.key]);
        return { ...entry, place: { ...entry.place, label: own }, value: labelled(entry.value, own) };
      });
      return { ...node, place, entries };
    }
  }
}

/** Each base over its kind over the defaults; a kind that is not there is told once, one that nobody cites too. */
export function layBases(bases: readonly SourceDocument[], layers: Layers): WithFindings<readonly WrittenBase[]> {
  const kinds = layers.kinds ?? [];
  const byName = new Map(kinds.toReversed().map((kind) => [kindKey(kind.name), kind]));
  const cited = new Set<Kind>();
  const value = bases.map((base): WrittenBase => {
    const name = kindName(base);
    const kind = name === null ? undefined : byName.get(kindKey(name));
    if (kind !== undefined) cited.add(kind);
    return layBase(base, [kind ?? null, layers.defaults], kind === undefined && name !== null);
  });
  const isUnknown = (name: string) => layers.kinds !== null && !byName.has(kindKey(name));
  const citing = groupBy(bases, kindName);
  const unknown = [...citing].flatMap(([name, of]) => (name !== null && isUnknown(name) ? [[name, of] as const] : []));
  const absent = unknown.slice(0, MOST_UNKNOWN).map(([name, of]) => unknownKind(name, of, kinds));
  const isIdle = (kind: Kind) => byName.get(kindKey(kind.name)) === kind && !cited.has(kind);
  const idle = bases.length === 0 || absent.length > 0 ? [] : kinds.filter(isIdle).map(idleKind);
  return { value, findings: [...absent, ...idle] };
}

/** So many names are looked for; those beyond stop the job all the same, and are told in the next run. */
const MOST_UNKNOWN = 50;

function layBase(
  base: SourceDocument,
  [kind, defaults]: readonly [kind: Layer | null, defaults: Layer | null],
  isKindAbsent: boolean,
): WrittenBase {
  const lacks = isKindAbsent || kind?.lacks === true || defaults?.lacks === true;
  return { ...base, root: rootOver(base.root, kind, defaults), lacks };
}

/** Of a job that is edited most bases and layers are those of before. */
const rootOver = lastFor((base: SourceNode, kind: Layer | null, defaults: Layer | null): SourceNode => {
  const under = [kind, defaults].filter((layer) => layer !== null);
  return under.reduce<SourceNode>((upper, layer) => joinLayers(upper, layer.root), base);
});

function kindName({ root }: SourceDocument): string | null {
  const node = findNode(root, "kind");
  return node?.kind === "scalar" ? node.text : null;
}

function unknownKind(name: string, bases: readonly SourceDocument[], kinds: readonly Kind[]): Finding {
  const [first] = bases;
  if (first === undefined) throw new TypeError("an unknown kind is cited by a base");
  const near = nearestWords(
    name,
    kinds.map((kind) => kind.name),
    3,
  );
  const words = kinds.length === 0 ? "the job has no kinds" : `no such kind; nearest are ${near.join(", ")}`;
  const citing = bases.length === 1 ? "" : `; cited by ${countedMarks(bases)}`;
  const hint = kinds.length === 0 ? `write it as kinds: { ${name}: { ... } }` : undefined;
  return faultAt(first, ["kind"], "unknown-kind", `"${name}": ${words}${citing}`, hint);
}

function idleKind({ name, place: { file, line, column, label = "" } }: Kind): Finding {
  const message = `no base cites the kind ${name}`;
  return { code: "unused-kind", severity: "warning", at: { file, line, column, path: label }, message };
}
