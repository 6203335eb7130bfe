/**
 * Paths that a job file may not name: it may come from outside, and opening one of another machine would log on there, opening a
 * device would wait for ever. The same on every system, so that a job is read alike everywhere.
 */

/** Names that Windows takes for devices, with any ending (Microsoft, "Naming Files, Paths, and Namespaces"). */
const DEVICE = /^(con|prn|aux|nul|conin\$|conout\$|com[0-9\u00b9\u00b2\u00b3]|lpt[0-9\u00b9\u00b2\u00b3])$/i;

/** Folders of a Unix system whose entries are no files on a disk; /dev/shm holds files. */
const SYSTEM_FOLDER = /^\/(dev(?!\/shm\/)|proc|sys)(\/|$)/;

const INSTEAD = "copy the file beside the job and name it there";

/** What forbids to open it, to follow the name; null where nothing does. `path` is the name made absolute. */
export function foreignPathOffence(name: string, path: string): string | null {
  if (/^\s*[\\/]{2}/.test(name))
    return `is a path of another machine or of a device, which a job may not open; ${INSTEAD}`;
  if (/^\s*[a-z][a-z0-9+.-]+:[\\/]/i.test(name)) return `is an address, not a file of this machine; ${INSTEAD}`;
  const last = name.split(/[\\/]/).at(-1) ?? "";
  const isDevice = DEVICE.test((last.split(/[.:]/)[0] ?? "").trim()) || SYSTEM_FOLDER.test(path);
  return isDevice ? `is the name of a device on some systems, which a job may not open; ${INSTEAD}` : null;
}
