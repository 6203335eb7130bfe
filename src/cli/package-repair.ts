/** Puts right what killed runs left beside DIR. Nothing is removed that is not ours by its content. */
import { join } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Disk } from "./disk.js";
import { diskWith, isThere, namesIn } from "./disk.js";
import { attempt, removeIfPossible } from "./file-system.js";
import { inspectPackage } from "./package-contents.js";
import { isForeign } from "./package-lock.js";
import type { Settlement } from "./package-settle.js";
import { eraseRest, settleOld } from "./package-settle.js";
import type { PackageTarget } from "./package-target.js";
import { packageFault, runNameKind, unwrittenPackage } from "./package-target.js";

/** First file of a package that is being written: the folder is ours, and unfinished. */
export const UNFINISHED = ".rodplate-unfinished";

/**
 * Makes sure that DIR may be replaced: absent, empty or a package. Where a killed run left the earlier package in .DIR.old and
 * nothing in DIR, it is put back, which the value tells. A finding, with nothing touched, when DIR is something else.
 */
export function restorePackage(target: PackageTarget, disk: Disk = diskWith()): Outcome<boolean> {
  return attempt<boolean>(() => {
    const { name, folder, old, parent } = target;
    const now = inspectPackage(folder);
    if (now.kind === "foreign") return refuse(packageFault(name, `${folder} is not replaced: ${now.offence}`));
    if (now.kind === "package" || inspectPackage(old).kind !== "package")
      return { ok: true, value: false, findings: [] };
    if (now.kind === "empty") disk.removeFolder(folder);
    disk.rename(old, folder);
    disk.syncFolder(parent);
    return { ok: true, value: true, findings: [] };
  }, unwrittenPackage(target));
}

const refuse = (fault: Finding): Outcome<never> => ({ ok: false, findings: [fault] });

/**
 * Settles what an earlier run left in .DIR.old under the package in DIR, and removes the unfinished folders of earlier runs.
 * null where there was nothing to settle. A finding where .DIR.old is not ours and would be in the way.
 */
export function clearLeftovers(target: PackageTarget, disk: Disk = diskWith()): Outcome<Settlement | null> {
  return attempt<Settlement | null>(() => {
    const { folder, old } = target;
    removeRunFolders(target, disk);
    if (inspectPackage(folder).kind !== "package") return { ok: true, value: null, findings: [] };
    const settled = settleOld(target, { replace: false }, disk);
    if (isThere(old)) return refuse(inTheWay(target));
    return { ok: true, value: settled, findings: [] };
  }, unwrittenPackage(target));
}

function inTheWay({ name, folder, old }: PackageTarget): Finding {
  const found = inspectPackage(old);
  const why = found.kind === "foreign" ? found.offence : "it is not empty";
  const how = `${old} is in the way, and is not ours: ${why}; move it away and try again`;
  return packageFault(name, `${folder} is replaced by renames beside it, and ${how}`);
}

/** The lock is held: no other run uses these names now. What cannot be removed stays, and is in nobody's way. */
function removeRunFolders(target: PackageTarget, disk: Disk): void {
  for (const name of namesIn(target.parent)) {
    const path = join(target.parent, name);
    switch (runNameKind(name, target)) {
      case "new":
        removeFresh(path, disk);
        break;
      case "erase":
        eraseRest(path, disk);
        break;
      case "lock":
        if (!isForeign(path)) removeIfPossible(path);
        break;
      case null:
        break;
    }
  }
}

/** Unfinished by its mark; without the mark it was whole and not yet in place, or has nothing in it. */
function removeFresh(path: string, disk: Disk): void {
  if (namesIn(path).includes(UNFINISHED)) disk.removeAll(path);
  else if (inspectPackage(path).kind !== "foreign") eraseRest(path, disk);
}
