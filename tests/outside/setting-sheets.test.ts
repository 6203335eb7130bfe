/** The setting sheets of whole samples as one PDF, read back by qpdf (ISO 32000 syntax) and poppler: a page a base, its mark and its figures. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { loadInputs } from "../../src/cli/load.js";
import { processShell } from "../../src/cli/shell.js";
import { openJob } from "../../src/tasks/open.js";
import { formatLength } from "../../src/units/index.js";
import { builtPackage } from "../golden/package.js";
import { isSkipped, newFolder, run } from "./viewers.js";

const samples = fileURLToPath(new URL("../../samples", import.meta.url));
const skipped = isSkipped("pdftotext", "qpdf");

async function basesOf(folder: string) {
  const inputs = await loadInputs("job.yaml", { ...processShell(), currentFolder: folder });
  const opened = inputs.ok ? openJob(inputs.value, { date: "1970-01-01" }) : null;
  if (opened === null || !opened.ok) throw new Error("the sample has faults");
  return { bases: opened.value.bases.map(({ base }) => base), unit: opened.value.job.unit };
}

describe.skipIf(skipped)("the setting sheets of a sample, by poppler", () => {
  it.each(["machine-hall", "signal-mast"])("%s: a page a base, with its mark and each gauge", async (name) => {
    const folder = join(samples, name);
    const files = await builtPackage(folder, "job.yaml");
    const [path = "", bytes] = [...files].find(([each]) => each.endsWith("_setting-sheets.pdf")) ?? [];
    expect(path).toMatch(/^field\//);
    const file = join(newFolder(), "sheets.pdf");
    writeFileSync(file, bytes ?? "");
    expect(run("qpdf", ["--check", file])).toContain("No syntax or stream encoding errors");
    const pages = run("pdftotext", ["-layout", file, "-"]).split("\f").slice(0, -1);
    const { bases, unit } = await basesOf(folder);
    expect(pages).toHaveLength(bases.length);
    bases.forEach((base, i) => {
      const page = pages[i] ?? "";
      expect(page).toContain(`SETTING SHEET ${base.mark}`);
      expect(page).toContain(`TEMPLATE ${base.template.mark} REV`);
      for (const { rod } of base.groups) {
        const { height, thickness } = base.template;
        if (rod.projection.kind === "missing" || height.kind === "missing") throw new Error("the sample gives both");
        const gauge = formatLength(rod.projection.value - height.value - thickness, unit);
        expect(page).toMatch(new RegExp(`GAU?GE (. )?${gauge} \\(`));
      }
    });
  });
});
