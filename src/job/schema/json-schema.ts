/** The JSON Schema of a job file, for editors. */
import * as z from "zod";
import { jobSchemas } from "./job.js";
import { shopSchema } from "./shop.js";

/** The text of templates/job.schema.json; `rules` are the ids that a job may cite. */
export function jobJsonSchema(rules: readonly string[]): string {
  return schemaText(jobSchemas("in", rules).full, "rodplate job");
}

/** The text of templates/shop.schema.json. */
export function shopJsonSchema(): string {
  return schemaText(shopSchema("in"), "rodplate shop");
}

function schemaText(schema: z.ZodType, title: string): string {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: "input", target: "draft-7" });
  return `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`;
}
