/** Paths that a job may not name: network and device paths (Microsoft, "Naming Files, Paths, and Namespaces"; hier(7)). */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { foreignPathOffence } from "../../../src/cli/foreign-path.js";
import { runProgram } from "../../cli/program.js";

const told = (name: string): string | null => foreignPathOffence(name, resolve("/srv/jobs/24-118", name));

describe("refused", () => {
  it.each([
    "\\\\server\\share\\a.csv",
    "//server/share/a.csv",
    "/\\server\\a.csv",
    "\\/server/a",
    "\\\\?\\C:\\a.csv",
    "\\\\.\\PhysicalDrive0",
    " //server/a",
  ])("another machine or a device: %s", (name) => expect(told(name)).toContain("another machine or of a device"));

  it.each(["http://host/a.csv", "file:///etc/passwd", "smb:\\\\host\\a", "https:/host"])("an address: %s", (name) =>
    expect(told(name)).toContain("is an address"),
  );

  it.each([
    ...[
      "NUL",
      "nul.csv",
      "CON",
      "com1.csv",
      "lpt9.txt",
      "COM\u00b9",
      "aux.tar.csv",
      "sub/PRN.csv",
      "C:\\x\\con.csv",
      "nul:",
    ],
    ...["/dev/zero", "/dev/stdin", "../../../dev/zero", "/proc/self/environ", "/sys/kernel/notes", "/dev"],
  ])("a device: %s", (name) => expect(told(name)).toContain("device on some systems"));
});

describe("taken", () => {
  it.each([
    ...["schedule.csv", "./schedule.csv", "../shared/shop.yaml", "sub/folder/a.csv", "/srv/shops/plasma.yaml"],
    ...["C:\\jobs\\a.csv", "Z:/a.csv", "dev/zero.csv", "proc.csv", "/devices/a.csv", "/dev/shm/job/a.csv"],
    ...["console.csv", "com10.csv", "auxiliary.csv", "nul-points.csv", "lpt.csv", "rev:2.csv", "a//b.csv"],
  ])("%s", (name) => expect(told(name)).toBeNull());
});

describe("a job that names one", () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "rodplate-path-"));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const base = (from: string): string =>
    `bases:\n  - { mark: B1, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, basePlate: { from: ${from} }, template: { thickness: 1/4 } }\n`;

  it.each([
    ["schedule", "schedule: //server/a.csv\n", "3:11 schedule"],
    ["schedule with a sheet", "schedule: { file: //server/a.xlsx, sheet: S }\n", "3:19 schedule.file"],
    ["placements", `placements: /dev/zero\n${base("a.dxf")}`, "3:13 placements"],
    ["shop", `shop: '\\\\server\\shop.yaml'\n${base("a.dxf")}`, "3:7 shop"],
    ["base plate", base("//server/a.dxf"), "4:103 basePlate.from"],
    ["base plate by its file", base("{ file: NUL.dxf }"), "4:111 basePlate.from.file"],
  ])("as its %s is told where, and opens nothing", { timeout: 10_000 }, async (_, keys, where) => {
    writeFileSync(join(folder, "job.yaml"), `job: { number: "1" }\nunits: in\n${keys}`);
    const { status, stderr } = await runProgram(folder, ["check", "job.yaml"]);
    expect(status).toBe(2);
    const lines = stderr.split("\n").filter((line) => line.includes("which a job may not open"));
    expect(lines).toEqual([
      expect.stringMatching(new RegExp(`^job\\.yaml:${where.replaceAll(".", "\\.")}: ".*copy the file beside the job`)),
    ]);
  });
});
