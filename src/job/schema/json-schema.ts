/** The JSON Schema of a job file, for editors. */
import * as z from "zod";
import { jobSchemas } from "./job.js";
import { shopSchema } from "./shop.js";

/** The text of templates/job.schema.json; `rules` are the ids that a job may cite. */
export function jobJsonSchema(rules: readonly string[]): string {
  return schemaText(jobSchemas("in", rules).full, "rodplate job", ({ properties: { bases, kinds } = {} }) => {
    for (const part of [objectOf(bases)?.items, objectOf(kinds)?.additionalProperties]) allowNothing(part);
  });
}

/** The text of templates/shop.schema.json. */
export function shopJsonSchema(): string {
  return schemaText(shopSchema("in"), "rodplate shop");
}

type Schema = z.core.JSONSchema.JSONSchema;

function schemaText(schema: z.ZodType, title: string, amend: (whole: Schema) => void = () => {}): string {
  const whole = z.toJSONSchema(schema, { io: "input", target: "draft-7" });
  amend(whole);
  const { $schema, ...rest } = whole;
  return `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`;
}

function isSchema(value: unknown): value is Schema {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function objectOf(value: unknown): Schema | null {
  return isSchema(value) ? value : null;
}

/** Nothing (`~`) may stand for what is not required, a group deep: it stops what a kind or the defaults give. */
function allowNothing(schema: unknown, depth = 1): void {
  const { properties = {}, required = [] } = objectOf(schema) ?? {};
  for (const [key, value] of Object.entries(properties)) {
    const own = objectOf(value);
    if (own === null || required.includes(key)) continue;
    if (depth > 0) allowNothing(own, depth - 1);
    const { description, ...bare } = own;
    properties[key] = { ...(description === undefined ? {} : { description }), anyOf: [bare, { type: "null" }] };
  }
}
