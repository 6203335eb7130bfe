/** A cut file that differs from its plate is a fault of the program: exit code 3, and nothing of the run is delivered. */
import { readdirSync, rmSync } from "node:fs";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { runProgram } from "../../../src/cli/run.js";
import type { Output, Shell } from "../../../src/cli/shell.js";
import { newFolder, writeJob } from "../../cli/program.js";

vi.mock("../../../src/formats/read-back.js", () => ({
  compareCutFile: (bytes: Uint8Array, plate: { mark: string }) =>
    plate.mark === "B2" ? [`hole A1 is missing among ${bytes.length > 0 ? "others" : "none"}`] : [],
}));

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function collect(into: string[]): Output {
  return {
    isTerminal: false,
    columns: undefined,
    refusal: null,
    write: async (text) => void into.push(typeof text === "string" ? text : new TextDecoder().decode(text)),
  };
}

it("ends with 3, says what to report, and leaves DIR and the names beside it alone", async () => {
  writeJob(folder, "job.yaml", { bases: 3 });
  const [out, err]: [string[], string[]] = [[], []];
  const shell: Shell = {
    environment: {},
    currentFolder: folder,
    out: collect(out),
    err: collect(err),
    processors: 1,
    now: () => 0,
  };
  expect(await runProgram(["make", "job.yaml", "--out", "out"], shell)).toBe(3);
  expect(out).toEqual([]);
  expect(err.join("")).toMatch(
    /a fault of the program[\s\S]*cut\/B2_2-off_PL1-4_steel_rev-A\.dxf: read back[\s\S]*hole A1 is missing/,
  );
  expect(readdirSync(folder)).toEqual(["job.yaml"]);
});
