/** A writer of cut files that draws a hole in the wrong place, past a read-back that sees nothing: the proof stops the package. */
import { readdirSync, rmSync } from "node:fs";
import { expect, it, vi } from "vitest";
import { newFolder, runProgram, writeJob } from "../../cli/program.js";

vi.mock("../../../src/formats/read-back.js", () => ({ compareCutFile: () => [] }));
vi.mock("../../../src/formats/cut-dxf-joined.js", async (importOriginal) => {
  const { joinedFlavour } = await importOriginal<typeof import("../../../src/formats/cut-dxf-joined.js")>();
  const moveHole = (bytes: Uint8Array): Uint8Array => {
    const text = Buffer.from(bytes).toString("latin1");
    const move = (_: string, before: string, x: string) => `${before}${Number(x) + 0.0625}`;
    return Buffer.from(text.replace(/(\r\nCIRCLE\r\n[\s\S]*?\r\n10\r\n)([\d.]+)/, move), "latin1");
  };
  const write: typeof joinedFlavour.write = (plate, options) => {
    const bytes = joinedFlavour.write(plate, options);
    return plate.mark === "B2" ? moveHole(bytes) : bytes;
  };
  return { joinedFlavour: { ...joinedFlavour, write } };
});

it("ends with 3 and names the file and the hole; nothing is delivered", async () => {
  const folder = newFolder();
  writeJob(folder, "job.yaml", { bases: 3 });
  const { status, stdout, stderr } = await runProgram(folder, ["make", "job.yaml", "--out", "out"]);
  expect([status, stdout]).toEqual([3, ""]);
  expect(stderr).toMatch(/a fault of the program[\s\S]*cut\/B2[^\n]*proved against its plate[^\n]*hole-position: hole/);
  expect(readdirSync(folder)).toEqual(["job.yaml"]);
  rmSync(folder, { recursive: true });
});
