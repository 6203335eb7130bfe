/** An edit inside one base that concerns no other: that base alone is read, laid out and checked again. */
import type { Finding } from "../../diagnostics/finding.js";
import { hasErrors } from "../../diagnostics/finding.js";
import type { Base } from "../../job/index.js";
import { isShared } from "../../job/index.js";
import type { SourceNode } from "../../readers/source.js";
import { readYamlItem } from "../../readers/yaml.js";
import type { Splice } from "../../readers/yaml-edit.js";
import { spliced } from "../../readers/yaml-edit.js";
import { placeRods } from "../../rods/index.js";
import type { ShapedBase } from "../../template/index.js";
import { makePlateShape } from "../../template/index.js";
import { writtenLine } from "./base-line.js";
import type { OpenText } from "./open-text.js";
import type { Right, Slot } from "./right.js";

/** The job after the edit; null where the whole must be opened again. */
export function editBase(
  before: OpenText,
  right: Right,
  splice: Splice,
): { readonly text: OpenText; readonly right: Right } | null {
  const item = before.opened === null ? null : itemAfter(before, splice);
  const old = item === null ? undefined : right.opened.bases[item.index];
  if (item === null || old === undefined || before.alone === null || isJoint(right)) return null;
  const read = before.alone.read(item.node, item.index);
  if (read.value === null || hasErrors(read.findings)) return null;
  const base = read.value;
  if (!concernsItAlone(old.base, base)) return null;
  const shaped = shapeOf(right, base);
  if (shaped === null) return null;
  const findings = [...read.findings, ...shaped.findings];
  const slot: Slot = { key: null, shaped: shaped.value, ledger: null };
  return { text: textAfter(before, splice, item, findings), right: rightAfter(right, item.index, slot) };
}

/** True where any base concerns others: by the layout, or by templates that are found to be equal. */
function isJoint({ opened: { job, plan } }: Right): boolean {
  return plan !== null || job.merge === "auto";
}

interface ItemAfter {
  readonly index: number;
  readonly node: SourceNode;
  readonly lines: number;
}

/** The item that the edit lies within, read anew; null where it lies in none, or makes it something else. */
function itemAfter({ alone, root, text, inputs }: OpenText, splice: Splice): ItemAfter | null {
  if (alone === null || root === null) return null;
  const { dashes, end } = alone.places;
  const index = dashes.findLastIndex((dash) => dash < splice.at);
  const [dash, next] = [dashes[index], dashes[index + 1] ?? end];
  if (dash === undefined || splice.at + splice.was.length > next - 1) return null;
  const lineStart = text.lastIndexOf("\n", dash) + 1;
  const piece = spliced(text.slice(dash, next), { ...splice, at: splice.at - dash });
  const line = linesIn(text.slice(0, dash)) + 1;
  const node = readYamlItem(piece, inputs.job, line, dash - lineStart + 1);
  return node === null ? null : { index, node, lines: linesIn(splice.now) - linesIn(splice.was) };
}

function linesIn(text: string): number {
  let count = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count += 1;
  return count;
}

/** Marks, quantities and shared templates are matters of the whole job. */
function concernsItAlone(old: Base, now: Base): boolean {
  return (
    old.mark === now.mark &&
    old.quantity === now.quantity &&
    old.template.mark === now.template.mark &&
    old.template.quantity === now.template.quantity &&
    !isShared(old) &&
    !isShared(now)
  );
}

function shapeOf(
  { opened: { job } }: Right,
  base: Base,
): { readonly value: ShapedBase; readonly findings: readonly Finding[] } | null {
  const rods = placeRods(base);
  if (!rods.ok) return null;
  const shape = makePlateShape(job, base, rods.value);
  if (!shape.ok) return null;
  const value = { base, rods: rods.value, outline: shape.value.outline.contour, shape: shape.value };
  return { value, findings: [...rods.findings, ...shape.findings] };
}

function textAfter(before: OpenText, splice: Splice, item: ItemAfter, findings: readonly Finding[]): OpenText {
  const { alone, root } = before;
  const grown = splice.now.length - splice.was.length;
  const others = before.findings.filter((finding) => !isOfBase(finding, item.index));
  const moved = item.lines === 0 ? others : others.map((finding) => movedBelow(finding, item));
  return {
    ...before,
    text: spliced(before.text, splice),
    findings: [...moved, ...findings],
    lines: before.lines.with(item.index, writtenLine(item.node, item.index, root)),
    alone: alone && {
      ...alone,
      places: {
        dashes: alone.places.dashes.map((dash) => (dash > splice.at ? dash + grown : dash)),
        end: alone.places.end + grown,
      },
    },
  };
}

/** Findings of what stands below the item stand so many lines lower. */
function movedBelow(finding: Finding, { node, lines }: ItemAfter): Finding {
  const { line = 0 } = finding.at;
  return line <= node.place.line ? finding : { ...finding, at: { ...finding.at, line: line + lines } };
}

function rightAfter({ opened, slots }: Right, index: number, slot: Slot): Right {
  const job = { ...opened.job, bases: opened.job.bases.with(index, slot.shaped.base) };
  return { opened: { ...opened, job, bases: opened.bases.with(index, slot.shaped) }, slots: slots.with(index, slot) };
}

/** Of the base at this index, by its path. */
function isOfBase({ at }: Finding, index: number): boolean {
  const path = `bases[${index}]`;
  return at.path === path || at.path?.startsWith(`${path}.`) === true;
}
