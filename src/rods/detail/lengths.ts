/**
 * How long a rod is, and how long its bar is cut: as the job gives it, else out of its parts. Embedment goes down to what
 * anchors the rod: the bearing face of its nut, plate or hook; of a rod that nothing anchors, to its end.
 */
import type { Bottom, Rod, RodMaking } from "../../job/model/job.js";
import { nutHeight, nutsAtBottom } from "../../job/model/stack.js";
import type { Given, Input, Missing } from "../../job/model/values.js";
import { given, keysOfMissing, missing } from "../../job/model/values.js";
import { add, type Length, nanometres } from "../../units/length.js";
import type { Hook, LengthTerm, RodDetail, WorkedLength } from "./model.js";

/** A rod that is given no longer than projection and embedment has its embedment to its end, whatever anchors it there. */
export function isEmbeddedToEnd({ bottom, length, projection, embedment }: Rod): boolean {
  if (bottom.kind === "given" && bottom.value.kind === "hook") return false;
  if (length.kind === "missing" || projection.kind === "missing" || embedment.kind === "missing") return false;
  return length.value <= projection.value + embedment.value;
}

/** Where the embedment of a rod goes to. */
export function embedmentTo(rod: Rod): string {
  const { bottom } = rod;
  if (bottom.kind === "missing") return "to its lower end, which is not given";
  if (isEmbeddedToEnd(rod)) return TO_END;
  switch (bottom.value.kind) {
    case "straight":
    case "swedged":
      return TO_END;
    case "nut":
      return bottom.value.washer === null
        ? "to the top of the nut at the lower end"
        : "to the top of the plate washer at the lower end";
    case "plate":
      return "to the top of the plate at the lower end";
    case "hook":
      return "to the inside of the hook";
  }
}

const TO_END = "to the lower end of the rod";

type PartTerm = LengthTerm | Missing;

/** End to end; of a hooked rod from its top to the outside of its hook. */
export function overallOf(rod: Rod, bar: Input<Length>, making: RodMaking): Input<WorkedLength> {
  const { length, bottom } = rod;
  const hooked = bottom.kind === "given" && bottom.value.kind === "hook";
  if (length.kind === "given") {
    const own = term(hooked ? "length to the inside of the hook" : "length", length.value, length.from);
    return hooked ? sumUp([own, hookBar(bar)], "given") : sumUp([own], "given");
  }
  const parts: readonly PartTerm[] = [
    inputTerm("projection", rod.projection),
    inputTerm(`embedment ${embedmentTo(rod)}`, rod.embedment),
    ...(bottom.kind === "missing" ? [bottom] : lowerEnd(bottom.value, rod, bar, making)),
  ];
  return hooked ? sumUp(parts, "worked out") : roundUp(sumUp([...parts, ...zinc(rod)], "worked out"), making);
}

/** Of the bar. Of a straight rod its own length: threading, marking and zinc take nothing off it. */
export function cutOf(rod: Rod, overall: Input<WorkedLength>, hook: Input<Hook> | null, making: RodMaking) {
  if (hook === null || overall.kind === "missing") return overall;
  if (hook.kind === "missing") return hook;
  const { by } = overall.value;
  const toInside = overall.value.terms.slice(0, -1);
  const { insideRadius, radiusFrom, arc, leg } = hook.value;
  const bent = sumUp(
    [
      ...toInside,
      term("inside radius of the bend", nanometres(-insideRadius), radiusFrom),
      term("bend of 90 degrees along its axis", arc, "geometry: pi / 2 x (inside radius + half the bar)"),
      term("leg beyond the bend", leg, "reach less inside radius and half the bar"),
      ...zinc(rod),
    ],
    by,
  );
  return roundUp(bent, making, ", left on the leg");
}

function hookBar(bar: Input<Length>): PartTerm {
  return inputTerm("bar of the hook", bar);
}

/** What the lower end takes below the embedment. */
function lowerEnd(bottom: Bottom, rod: Rod, bar: Input<Length>, making: RodMaking): readonly PartTerm[] {
  const below = term("rod below it", making.belowNut.value, making.belowNut.from);
  return [...anchor(bottom, rod, bar), ...(nutsAtBottom(bottom) === 0 ? [] : [below])];
}

/** What anchors the rod, from its bearing face down: of a plate between two nuts the plate and the lower one. */
function anchor(bottom: Bottom, rod: Rod, bar: Input<Length>): readonly PartTerm[] {
  const nut = inputTerm("nut at the lower end", nutHeight(rod));
  switch (bottom.kind) {
    case "straight":
    case "swedged":
      return [];
    case "nut":
      return [...(bottom.washer === null ? [] : [term("plate washer", bottom.washer.thickness, "job")]), nut];
    case "plate":
      return [term("plate", bottom.thickness, "job"), ...(bottom.nuts === 0 ? [] : [nut])];
    case "hook":
      return [hookBar(bar)];
  }
}

function anchorHeight(rod: Rod, bar: Input<Length>): Input<Length> {
  return rod.bottom.kind === "missing" ? rod.bottom : lengthOf(sumUp(anchor(rod.bottom.value, rod, bar), "worked out"));
}

function lengthOf(sum: Input<WorkedLength>): Input<Length> {
  return sum.kind === "missing" ? sum : given(sum.value.value, sum.from);
}

/** Of a rod that is set to its projection: what is left of it below what anchors it. */
export function rodBelowAnchor(rod: Rod, { overall, bar }: Pick<RodDetail, "overall" | "bar">): Input<Length> {
  const parts = [
    inputTerm("overall length", lengthOf(overall)),
    takenOff("projection", rod.projection),
    takenOff("embedment", rod.embedment),
    takenOff("lower end", anchorHeight(rod, bar)),
  ];
  const left = lengthOf(sumUp(parts, "worked out"));
  return left.kind === "missing" ? left : given(nanometres(Math.max(left.value, 0)), left.from);
}

/** From where the embedment goes to down to the lowest steel of a rod that is set to its projection. */
export function steelBelowEmbedment(rod: Rod, detail: Pick<RodDetail, "overall" | "bar">): Input<Length> {
  if (isEmbeddedToEnd(rod)) return given(nanometres(0), "the embedment goes to the lower end of the rod");
  const height = anchorHeight(rod, detail.bar);
  const below = rodBelowAnchor(rod, detail);
  if (below.kind === "missing") return below;
  return height.kind === "missing" ? height : given(add(height.value, below.value), below.from);
}

/** Zinc adds to a length no more than to a diameter, which is nothing beside the tolerance: a term of zero says so. */
function zinc({ finish }: Rod): readonly LengthTerm[] {
  if (finish.kind === "missing" || finish.value === "plain") return [];
  return [
    term("zinc", nanometres(0), "thread is made before it and the nut is tapped over size: nothing off the length"),
  ];
}

function term(words: string, length: Length, from: string): LengthTerm {
  return { words, length, from };
}

function takenOff(words: string, input: Input<Length>): PartTerm {
  return input.kind === "missing" ? input : term(words, nanometres(-input.value), input.from);
}

function inputTerm(words: string, input: Input<Length>): PartTerm {
  return input.kind === "missing" ? input : term(words, input.value, input.from);
}

function sumUp(parts: readonly PartTerm[], by: WorkedLength["by"]): Input<WorkedLength> {
  const lacks = parts.flatMap((part) => ("kind" in part ? [part] : []));
  const [lack] = lacks;
  if (lack !== undefined) {
    const keys = [...new Set(lacks.flatMap(keysOfMissing))];
    return missing(keys.join(", "), [...new Set(lacks.flatMap(({ why }) => why.split("; ")))].join("; "));
  }
  const terms = parts.flatMap((part) => ("kind" in part ? [] : [part]));
  const value = nanometres(terms.reduce((sum, { length }) => sum + length, 0));
  return given({ value, by, terms }, by === "given" ? (terms[0]?.from ?? "job") : "worked out of its parts");
}

/** A length that is worked out goes up to the shop's step; one that is given stays as it is, but for a bent rod's bar. */
function roundUp(sum: Input<WorkedLength>, making: RodMaking, where = ""): Input<WorkedLength> {
  if (sum.kind === "missing") return sum;
  const { value, terms } = sum.value;
  const step: Given<Length> = making.lengthStep;
  const more = (step.value - (value % step.value)) % step.value;
  if (more === 0 || (sum.value.by === "given" && where === "")) return sum;
  const rounded = term(`rounded up${where}`, nanometres(more), step.from);
  return given({ ...sum.value, value: nanometres(value + more), terms: [...terms, rounded] }, sum.from);
}
