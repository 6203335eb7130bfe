/** The JSON Schema of a job as an editor has it: nothing may stand where a default would come, and nothing is required of a part. */
import { describe, expect, it } from "vitest";
import { jobJsonSchema } from "../../../src/job/index.js";

interface Node {
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node;
  readonly additionalProperties?: Node;
  readonly anyOf?: readonly Node[];
  readonly type?: string;
  readonly description?: string;
}

const { properties = {} } = JSON.parse(jobJsonSchema([])) as Node;
const { bases, kinds, defaults } = properties;

const takesNothing = (node: Node | undefined): boolean => node?.anyOf?.some(({ type }) => type === "null") ?? false;
const groupOf = (node: Node | undefined): Node | undefined =>
  node?.anyOf?.find((each) => each.properties !== undefined);

describe("the JSON Schema of a job", () => {
  it("requires of a base its mark alone, of defaults and kinds nothing", () => {
    expect(bases?.items?.required).toEqual(["mark"]);
    expect([defaults?.required, kinds?.additionalProperties?.required]).toEqual([undefined, undefined]);
    for (const part of [bases?.items, kinds?.additionalProperties]) {
      for (const key of ["rods", "template", "concrete", "basePlate"]) {
        expect(groupOf(part?.properties?.[key])?.required, key).toBeUndefined();
      }
    }
  });

  it("lets nothing stand in a base and a kind, a group deep, but for the mark", () => {
    for (const part of [bases?.items, kinds?.additionalProperties]) {
      expect(takesNothing(part?.properties?.grout)).toBe(true);
      expect(takesNothing(groupOf(part?.properties?.template)?.properties?.thickness)).toBe(true);
    }
    expect(takesNothing(bases?.items?.properties?.mark)).toBe(false);
    expect(groupOf(bases?.items?.properties?.template)?.properties?.thickness?.description).toBe(
      "Thickness of the template.",
    );
  });

  it("keeps marks and quantities to the base", () => {
    for (const part of [defaults, kinds?.additionalProperties]) {
      expect(Object.keys(part?.properties ?? {})).not.toEqual(expect.arrayContaining(["mark"]));
      expect(Object.keys(part?.properties ?? {})).not.toEqual(expect.arrayContaining(["quantity"]));
      expect(Object.keys(part?.properties ?? {})).not.toEqual(expect.arrayContaining(["kind"]));
    }
    expect(Object.keys(defaults?.properties?.template?.properties ?? {})).not.toContain("mark");
    expect(Object.keys(groupOf(bases?.items?.properties?.template)?.properties ?? {})).toContain("mark");
  });
});
