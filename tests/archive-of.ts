/** A folder of this machine as the files of an archive. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Every file below a folder, by its path in it, with forward slashes. */
export function filesBelow(folder: string): ReadonlyMap<string, Uint8Array> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    entries.map(({ parentPath, name }) => {
      const path = join(parentPath, name);
      return [path.slice(folder.length + 1).replaceAll("\\", "/"), readFileSync(path)];
    }),
  );
}
