/** Shop file -> the shop of the job. */
import type { Finding, Outcome } from "../../diagnostics/finding.js";
import type { SourceNode } from "../../readers/source.js";
import { findNode } from "../../readers/source.js";
import { readYaml } from "../../readers/yaml.js";
import { largestSettingPlate, steelDensities } from "../../standards/index.js";
import type { Length, Unit } from "../../units/index.js";
import { nanometres } from "../../units/index.js";
import type { SourceDocument } from "../document.js";
import { allowedWords, faultAt, issueFindings, toPlain } from "../document.js";
import type { Density, Given, Input, Material, Shop, SpliceBolt, Washer } from "../model/job.js";
import { CUT_NAME_PARTS, given, missing } from "../model/job.js";
import type { ShopDocument } from "../schema/shop.js";
import { shopSchema } from "../schema/shop.js";
import { makeRodShop } from "./rod-shop.js";
import { makeRates } from "./rod-stock.js";
import { readSpliceBolt, usualBolt } from "./splice-bolt.js";

/** A shop and the grades that it declares beside those of the standards. */
export interface ReadShop {
  readonly shop: Shop;
  readonly grades: readonly { readonly name: string; readonly nut: "hex" | "heavy hex" | null }[];
}

/** Folder of the shop files that come with the program, as the job's inputs name them. */
export const SHOP_FOLDER = "templates/shops/";

/** The shop files that come with the program, by the names that a job writes. */
export const SHOP_NAMES = ["plasma", "laser", "oxyfuel", "waterjet", "plywood"].flatMap((name) => [
  name,
  `${name}-metric`,
]);

/** Name under which the inputs hold the file of `shop: NAME`, in any case of its letters; a text with a slash or a yaml ending is a path already. */
export function shopFileName(shop: string): string {
  if (isShopPath(shop)) return shop;
  const ours = SHOP_NAMES.find((name) => name === shop.trim().toLowerCase());
  return `${SHOP_FOLDER}${ours ?? shop}.yaml`;
}

/** True when `shop:` names a file by its path, false when it is one of templates/shops. */
export function isShopPath(shop: string): boolean {
  return /[\\/]|\.(ya?ml|json)$/i.test(shop);
}

const schemas: Partial<Record<Unit, ReturnType<typeof shopSchema>>> = {};

/** Made when it is first asked for, and kept. */
function schemaIn(unit: Unit): ReturnType<typeof shopSchema> {
  schemas[unit] ??= shopSchema(unit);
  return schemas[unit];
}

/** Reads a shop file. Every value says that it is the shop's. */
export function readShop(input: string | Uint8Array, file: string, jobUnit: Unit): Outcome<ReadShop> {
  const source = readYaml(input, file);
  if (!source.ok) return source;
  const document: SourceDocument = { root: source.value, path: "", nameOf: () => null };
  const parsed = schemaIn(unitOf(source.value)).safeParse(toPlain(source.value), { error: allowedWords });
  const findings = parsed.success ? shopFaults(parsed.data, document) : issueFindings(parsed.error.issues, document);
  if (!parsed.success || findings.length > 0) return { ok: false, findings };
  const name = file.replace(/^.*[\\/]/, "").replace(/\.(ya?ml|json)$/i, "");
  return {
    ok: true,
    value: { shop: makeShop(name, parsed.data, jobUnit), grades: declaredGrades(parsed.data) },
    findings: [],
  };
}

/** The unit that a document names; inches until it names one, so that its other faults are told too. */
export function unitOf(root: SourceNode): Unit {
  const unit = findNode(root, "units");
  return unit?.kind === "scalar" && unit.text.trim().toLowerCase() === "mm" ? "mm" : "in";
}

function shopFaults(shop: ShopDocument, document: SourceDocument): Finding[] {
  const findings: Finding[] = [];
  const { layers } = shop.cutFile;
  const cut = [layers.outline, layers.holes, layers.openings].map((layer) => layer.toUpperCase());
  for (const role of ["marks", "drill"] as const) {
    if (!cut.includes(layers[role].toUpperCase())) continue;
    const message = `"${layers[role]}" is a layer that is cut; allowed is a layer of its own for ${role}`;
    findings.push(faultAt(document, ["cutFile", "layers", role], "shop-layers", message));
  }
  for (const fault of nameFaults(shop, document)) findings.push(fault);
  if (shop.marking.leastTextHeight > shop.marking.textHeight) {
    const message = "the least text height is above the text height; allowed is at most the text height";
    findings.push(faultAt(document, ["marking", "leastTextHeight"], "shop-text-height", message));
  }
  const bolt = shop.splice === undefined ? null : readSpliceBolt(shop.splice.bolt, shop.units);
  if (bolt?.ok === false) findings.push(faultAt(document, ["splice", "bolt"], "unknown-bolt", bolt.message));
  return findings;
}

/** The mark alone tells two templates apart, in the name of a file too. */
function nameFaults({ cutFile: { name } }: ShopDocument, document: SourceDocument): Finding[] {
  if (name === undefined) return [];
  const twice = name.find((part, at) => name.indexOf(part) !== at);
  const messages = [
    ...(name.includes("mark")
      ? []
      : ["mark is not in it: files of two templates could have one name; allowed is a list with mark"]),
    ...(twice === undefined ? [] : [`${twice} stands in it twice; allowed is once`]),
  ];
  return messages.map((message) => faultAt(document, ["cutFile", "name"], "shop-file-name", message));
}

function declaredGrades(shop: ShopDocument): ReadShop["grades"] {
  return (shop.grades ?? []).map(({ name, nut }) => ({ name, nut: nut ?? null }));
}

const DEFAULT_SIDE: Given<Length> = given(
  largestSettingPlate.value,
  `${largestSettingPlate.edition}, ${largestSettingPlate.clause}`,
);

function makeShop(name: string, document: ShopDocument, jobUnit: Unit): Shop {
  const from = `shop ${name}`;
  const own = (value: Length): Given<Length> => given(value, from);
  const { cut, distances } = document;
  const { largestSide } = distances;
  return {
    name,
    process: document.process,
    deviation:
      typeof cut.deviation === "number"
        ? { kind: "own", value: cut.deviation }
        : { kind: "iso9013", class: cut.deviation.number },
    drilled: drilledDeviation(document, from),
    taper:
      typeof cut.taper === "number" ? { kind: "own", value: cut.taper } : { kind: "iso9013", range: cut.taper.number },
    smallestHole: document.smallest.hole,
    smallestWeb: document.smallest.web,
    smallestCorner: document.smallest.corner,
    edge: own(distances.edge),
    web: own(distances.web),
    nutGap: own(distances.nutGap),
    bearing: own(distances.bearing),
    formGap: own(distances.formGap),
    increment: own(distances.increment),
    finishingRoom: own(distances.finishingRoom),
    groutRoom:
      distances.groutRoom === undefined
        ? given(nanometres(0), "default: the nut clears the concrete")
        : own(distances.groutRoom),
    largestSide: largestSide === undefined ? DEFAULT_SIDE : own(largestSide),
    table:
      document.table === undefined
        ? missing("table of the shop file", "the shop file names no largest plate")
        : given(document.table, from),
    thicknesses: thicknesses(document, from),
    templateWasher: templateWasher(document, from),
    density: densities(document, from, jobUnit),
    marking: document.marking,
    cutFile: cutFileOf(document),
    spliceBolt: shopBolt(document, from, jobUnit),
    rodShop: makeRodShop(document.rodShop, from, jobUnit),
    rates: makeRates(document.rates, from, document.units),
  };
}

/** The shop's own, else that of `USUAL_BOLT`; a size that is none is told by `shopFaults`. */
function shopBolt({ splice, units }: ShopDocument, from: string, jobUnit: Unit): Given<SpliceBolt> {
  const own = splice === undefined ? null : readSpliceBolt(splice.bolt, units);
  return own?.ok === true ? given(own.value, from) : usualBolt(jobUnit);
}

function cutFileOf({ cutFile: { layers, origin = "lower left", name, flavour = "polyline" } }: ShopDocument) {
  return { layers, origin, name: name ?? CUT_NAME_PARTS, flavour };
}

/** A shop that drills its holes gives the figure as its deviation; an ISO 9013 class is for thermal cuts. */
function drilledDeviation({ process, cut }: ShopDocument, from: string): Input<Length> {
  const { drilled, deviation } = cut;
  if (drilled !== undefined) return given(drilled, from);
  if (process === "drill" && typeof deviation === "number") return given(deviation, from);
  return missing("cut.drilled of the shop file", "the shop file gives no deviation of a drilled hole");
}

function thicknesses({ thicknesses: stocked }: ShopDocument, from: string): Shop["thicknesses"] {
  const listOf = (material: Material): Input<readonly Length[]> => {
    const own = stocked !== undefined && "length" in stocked ? stocked : stocked?.[material];
    return own === undefined
      ? missing("thicknesses of the shop file", `the shop file names no ${material} in stock`)
      : given(own, from);
  };
  return { steel: listOf("steel"), plywood: listOf("plywood") };
}

function templateWasher({ templateWasher: washer }: ShopDocument, from: string): Input<Washer> {
  if (washer === undefined)
    return missing("templateWasher of the shop file", "the shop file names no washer on the template");
  const { thickness } = washer;
  const thick: Input<Length> =
    thickness === undefined
      ? missing("templateWasher.thickness of the shop file", "the shop file names no thickness of the washer")
      : given(thickness, from);
  return given({ shape: washer.shape, size: washer.size, thickness: thick }, from);
}

function densities({ density }: ShopDocument, from: string, jobUnit: Unit): Shop["density"] {
  const plywood: Input<Density> =
    density?.plywood === undefined
      ? missing("density.plywood of the shop file", "the shop file names no density for plywood")
      : given(density.plywood, from);
  if (density?.steel !== undefined) return { steel: given(density.steel, from), plywood };
  const { value, unit } = steelDensities[jobUnit];
  return { steel: given({ value, unit }, "AISC practice"), plywood };
}
