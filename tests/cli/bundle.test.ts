/** The library goes into a browser bundle: no module of Node's is asked for anywhere below the shells. */
import { builtinModules } from "node:module";
import { fileURLToPath } from "node:url";
import { createContext, runInContext } from "node:vm";
import { build } from "vite";
import { expect, it } from "vitest";
import { makeInputs } from "../bench/jobs.js";

const entry = fileURLToPath(new URL("../../src/index.ts", import.meta.url));

it("is bundled for a browser and builds a job there", async () => {
  const asked: string[] = [];
  const result = await build({
    configFile: false,
    logLevel: "silent",
    build: { write: false, minify: false, lib: { entry, formats: ["iife"], name: "rodplate" } },
    plugins: [
      {
        name: "no-node",
        enforce: "pre",
        resolveId: (id) => {
          if (id.startsWith("node:") || builtinModules.includes(id)) asked.push(id);
          return null;
        },
      },
    ],
  });
  expect(asked).toEqual([]);
  const outputs = [result].flat().flatMap((one) => ("output" in one ? one.output : []));
  const code = outputs.map((output) => (output.type === "chunk" ? output.code : "")).join("");
  const page = createContext({ TextEncoder, TextDecoder, console, inputs: makeInputs(3) });
  runInContext(code, page);
  const made = runInContext(
    `const built = rodplate.build(inputs, { date: "2026-11-24", version: "0", document: null, outputs: ["cut-joined", "cut-r12", "summary"] });
     ({ findings: built.findings, pierces: [...built.bases].map((base) => base.summary.template.pierces), schema: built.finish().summary.schema })`,
    page,
  );
  expect(made.findings).toEqual([]);
  expect([...made.pierces]).toEqual([6, 10, 8]);
  expect(made.schema).toBe(1);
});
