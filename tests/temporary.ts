/**
 * All temporary folders of a run of tests in one, which goes when they end: in memory where it has room, since `make` flushes
 * each file of a package to the disk.
 */
import { existsSync, mkdtempSync, rmSync, statfsSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const [MEMORY, ROOM] = ["/dev/shm", 4e9];
const NAME = "rodplate-tests-";

/** Called before the first test of each project; what it returns, after the last of all. */
export default function setUp(): () => void {
  if (tmpdir().includes(NAME)) return () => {};
  const folder = mkdtempSync(join(hasRoom() ? MEMORY : tmpdir(), NAME));
  process.env.TMPDIR = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}

function hasRoom(): boolean {
  if (!existsSync(MEMORY)) return false;
  const { bavail, bsize } = statfsSync(MEMORY);
  return bavail * bsize > ROOM;
}
