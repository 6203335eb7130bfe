/** Keys of rods as they are made, and `rodShop` of a shop file: what they may be, and what stands where they are left out. */
import { describe, expect, it } from "vitest";
import type { Rod, Shop } from "../../../src/job/model/job.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { faultsOf, inputsOf, jobOf, withBase } from "./files.js";

const rodOf = (keys: string): Rod => {
  const [base] = jobOf(withBase({ rods: `{ diameter: 1, ${keys} }` })).bases;
  const [group] = base?.groups ?? [];
  if (group === undefined) throw new Error("no group");
  return group.rod;
};
const faults = (keys: string) => faultsOf(withBase({ rods: `{ diameter: 1, ${keys} }` })).join("\n");

describe("lower end of rods", () => {
  it.each([
    ["nut", { kind: "nut", washer: null, tackWelded: false }],
    ["{ kind: nut }", { kind: "nut", washer: null, tackWelded: false }],
    [
      "{ kind: nut, tackWelded: yes, washer: { shape: square, size: 3, thickness: 1/2 } }",
      { kind: "nut", tackWelded: true, washer: { shape: "square", size: inches(3), thickness: inches(0.5) } },
    ],
    ["straight", { kind: "straight" }],
    ["{ kind: straight }", { kind: "straight" }],
    [
      "{ kind: plate, shape: round, size: 3, thickness: 1/2 }",
      { kind: "plate", shape: "round", size: inches(3), thickness: inches(0.5), nuts: 2, tackWelded: false },
    ],
    ["{ kind: plate, shape: round, size: 3, thickness: 1/2, nuts: 0 }", { kind: "plate", nuts: 0 }],
    ["{ kind: hook, reach: 4 }", { kind: "hook", reach: inches(4), radius: null }],
    ["{ kind: hook, reach: 4, radius: 1-1/2 }", { kind: "hook", radius: inches(1.5) }],
    ["{ kind: swedged, length: 6 }", { kind: "swedged", length: inches(6) }],
  ])("%s", (written, value) => {
    expect(rodOf(`bottom: ${written}`).bottom).toMatchObject({ kind: "given", value, from: "job" });
  });

  it.each([
    ["bottom: bolt", "nut, straight, or a group of keys with kind: straight, nut, plate, hook or swedged"],
    ["bottom: { kind: weld }", "kind: straight, nut, plate, hook or swedged"],
    ["bottom: { kind: swedged }", "length: is required"],
    ["bottom: { kind: plate, shape: round, size: 3, thickness: 1, nuts: 3 }", "a whole number from 0 to 2"],
    ["threads: half", "or full"],
    ["zincProcess: electro", "one of hot-dip, mechanical"],
    ["threadClass: 4A", "one of 1A, 2A, 3A, 6g, 8g"],
  ])("%s is a fault", (keys, words) => {
    expect(faults(keys)).toContain(words);
  });

  it("a grade with its supplement is told the key of that", () => {
    expect(faults("grade: F1554 55 S1")).toContain("supplement S1 is ordered by rods.weldable: yes");
  });
});

describe("threads of rods", () => {
  // ASME B1.1 has classes 1A to 3A of inch threads, ISO 965-1 tolerance classes of metric ones (6g, 8g).
  it.each(["6g", "8g"])("have no class of another system: %s of an inch thread", (name) => {
    expect(faults(`threadClass: ${name}`)).toContain(
      `${name} is no class of a UNC thread, as that of 1; allowed are 1A, 2A, 3A`,
    );
  });

  it.each(["1A", "2A", "3A"])("have no class of another system: %s of a metric thread", (name) => {
    const metric = (own: string) => faultsOf(withBase({ rods: `{ diameter: M24, ${own} }` })).join("\n");
    expect(metric(`threadClass: ${name}`)).toContain("is no class of a metric coarse thread, as that of M24");
    expect(metric("threadClass: 6g") + faults(`threadClass: ${name}`)).toBe("");
  });

  it("are of the whole rod or have a length at its lower end, not both", () => {
    expect(faults("threads: full, bottom: nut, bottomThreads: 4")).toContain(
      "4 in is given beside threads: full, which threads the whole rod; allowed is one of them",
    );
    expect(faults("threads: full, bottom: nut")).toBe("");
    expect(faults("threads: 6, bottom: nut, bottomThreads: 4")).toBe("");
  });

  it("are none at a lower end that is bent or swedged", () => {
    const [hook, swedged] = ["bottom: { kind: hook, reach: 4 }", "bottom: { kind: swedged, length: 6 }"];
    expect(faults(`${hook}, bottomThreads: 3`)).toContain(
      "3 in is given at a lower end that is bent to a hook; allowed is 0",
    );
    expect(faults(`${swedged}, bottomThreads: 3`)).toContain("that is swedged; allowed is 0");
    expect(faults(`${hook}, bottomThreads: 0`) + faults(`${swedged}, bottomThreads: 0`)).toBe("");
    expect(faults("bottom: straight, bottomThreads: 3")).toBe("");
  });

  it("in full go before a thread at the lower end that the job gives for all bases", () => {
    const job = (own: string, all: string) =>
      `${withBase({ rods: `{ ${own} }` })}defaults: { rods: { diameter: 1, ${all} } }\n`;
    expect(faultsOf(job("threads: full", "bottom: nut, bottomThreads: 4")).join("\n")).toBe("");
    expect(faultsOf(job("bottomThreads: 4", "bottom: nut, threads: full")).join("\n")).toContain(
      "beside threads: full",
    );
  });

  it("have none at a lower end without a nut, and one that is asked for at one with a nut", () => {
    expect(rodOf("bottom: straight").bottomThread).toMatchObject({ value: 0, from: "no thread at the lower end" });
    expect(rodOf("bottom: { kind: plate, shape: round, size: 3, thickness: 1, nuts: 0 }").bottomThread).toMatchObject({
      value: 0,
    });
    expect(rodOf("bottom: nut").bottomThread).toMatchObject({ kind: "missing", key: "rods.bottomThreads" });
    expect(rodOf("grade: 36").bottomThread).toMatchObject({ kind: "missing", key: "rods.bottom, rods.bottomThreads" });
    expect(rodOf("bottom: nut, bottomThreads: 0").bottomThread).toMatchObject({ value: 0, from: "job" });
  });

  it("in full are as long as what is known of the rod", () => {
    expect(rodOf("threads: full, length: 36")).toMatchObject({ fullThread: true, threadLength: { value: inches(36) } });
    expect(rodOf("threads: full, projection: 9, embedment: 24").threadLength).toMatchObject({ value: inches(33) });
    expect(rodOf("threads: full").threadLength).toMatchObject({ kind: "missing", key: "rods.length" });
    expect(rodOf("threads: 8")).toMatchObject({ fullThread: false, threadLength: { value: inches(8) } });
  });

  // ASTM F1554: class 1A or 2A where the order says nothing.
  it("are of class 2A, by the specification where there is one", () => {
    expect(rodOf("grade: 55").threadClass).toMatchObject({ value: "2A", from: "ASTM F1554" });
    expect(rodOf("finish: plain").threadClass).toMatchObject({ value: "2A", from: "common practice" });
    expect(rodOf("threadClass: 1A").threadClass).toMatchObject({ value: "1A", from: "job" });
  });
});

describe("rodShop of a shop file", () => {
  const plasma = String(inputsOf("").files.get("templates/shops/plasma.yaml")).replace(/^rodShop:\n(?: .*\n)*/m, "");
  const job = withBase({}).replace("rules: us", "rules: us\nshop: ./my.yaml");
  const shopOf = (...lines: readonly string[]): Shop =>
    jobOf(job, { "./my.yaml": `${plasma}\n${lines.join("\n")}\n` }).shop;

  it("is common practice where it is left out, in the job's own unit", () => {
    const { making } = shopOf().rodShop;
    expect(making).toMatchObject({
      shearedUpTo: { value: inches(1.25), from: "common practice" },
      rolledUpTo: { value: inches(1.5) },
      cutUpTo: { value: inches(4) },
      bendRadius: { value: 1, from: "common practice" },
    });
    const inInches = withBase({ rods: "{ diameter: M30 }", template: "{ thickness: 6 }" });
    const metric = jobOf(inInches.replace("units: in", "units: mm").replace("rules: us", "rules: metric"));
    expect(metric.shop.rodShop.making.shearedUpTo).toMatchObject({ value: millimetres(32), from: "common practice" });
  });

  it("is the shop's where it is given", () => {
    const { making } = shopOf("rodShop: { shearedUpTo: 1, bendRadius: 1.5, mechanicalHeaviest: 2 lb }").rodShop;
    expect(making.shearedUpTo).toMatchObject({ value: inches(1), from: "shop my" });
    expect(making.bendRadius).toMatchObject({ value: 1.5, from: "shop my" });
    expect(making.mechanicalHeaviest.value).toBeCloseTo(0.907185, 6);
    expect(making.rolledUpTo.from).toBe("common practice");
  });

  it.each([
    ["rodShop: { shearedUpTo: 0 }", '"0" is not above zero'],
    ["rodShop: { mechanicalHeaviest: 2 }", '"2" is not a weight, as 2 lb or 1 kg'],
    ["rodShop: { shear: 1 }", "shear"],
  ])("%s is a fault", (line, words) => {
    expect(faultsOf(job, { "./my.yaml": `${plasma}\n${line}\n` }).join("\n")).toContain(words);
  });
});
