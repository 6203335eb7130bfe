import { it } from "vitest";
import { readFileSync } from "node:fs";
import { given, read } from "../cell-reading.js";
it("x", () => {
  const out = [];
  for (const line of readFileSync("/tmp/wt/cells-i9-grammar.txt", "utf8").split("\n")) {
    if (line.trim() === "") continue;
    const [form, unit, ...rest] = line.split(" ");
    const text = rest.join(" ");
    const r: any = read(text, form as any, unit as any);
    out.push(`${form!.padEnd(8)} ${unit} ${text.padEnd(30)} -> ${given(r).slice(0, 150)} ${r.how ? `   (${r.how})` : ""}`);
  }
  console.log(out.join("\n"));
});
