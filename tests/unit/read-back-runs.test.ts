/** Every cut file is read back before it is delivered: a writer that writes another plate than its own stops the build. */
import { beforeEach, expect, it, vi } from "vitest";
import { ProgramFault } from "../../src/diagnostics/program-fault.js";
import type { CutFlavour } from "../../src/formats/cut-file.js";
import type { Plate } from "../../src/template/model.js";
import { buildDelivered, inputsWith, STEEL, usBase } from "../delivered.js";

type Writer = CutFlavour<string>["write"];

const wrong = vi.hoisted(() => ({ writer: "" }));

/** The writer; where it is the wrong one, it leaves out the last hole of plate S2. */
const spoil = vi.hoisted(() => (name: string, write: Writer): Writer => {
  const lacking = ({ holes, region, ...others }: Plate): Plate => ({
    ...others,
    holes: holes.slice(0, -1),
    region: { ...region, inner: region.inner.slice(0, -1) },
  });
  return (plate, options) => write(wrong.writer === name && plate.mark === "S2" ? lacking(plate) : plate, options);
});

vi.mock("../../src/formats/cut-dxf-joined.js", async (original) => {
  const real = await original<{ joinedFlavour: CutFlavour<"cut-joined"> }>();
  return { ...real, joinedFlavour: { ...real.joinedFlavour, write: spoil("joined", real.joinedFlavour.write) } };
});
vi.mock("../../src/formats/cut-dxf-r12.js", async (original) => {
  const real = await original<{ r12Flavour: CutFlavour<"cut-r12"> }>();
  return { ...real, r12Flavour: { ...real.r12Flavour, write: spoil("r12", real.r12Flavour.write) } };
});

const inputs = inputsWith([usBase("S1", STEEL), usBase("S2", STEEL)]);

beforeEach(() => {
  wrong.writer = "";
});

it("delivers what writers write that write their plates", () => {
  expect([...buildDelivered(inputs).bases].map(({ files }) => files.length)).toEqual([2, 2]);
});

it.each(["joined", "r12"])(
  "stops at a file of the %s writer that lacks a hole, with the bases before it delivered",
  (name) => {
    wrong.writer = name;
    const delivered: string[] = [];
    const goThrough = (): void => {
      for (const { mark } of buildDelivered(inputs).bases) delivered.push(mark);
    };
    expect(goThrough).toThrow(ProgramFault);
    expect(goThrough).toThrow(/^cut\/.*S2_.*: read back, the file differs/);
    expect(delivered).toEqual(["S1", "S1"]);
  },
);
