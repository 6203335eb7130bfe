/** What a person drops or chooses: files, and folders with all that lies in them. */
import type { Dropped, FolderFile } from "../engine/dropped.js";

/** One more than any folder may hold: a larger one is not walked to its end. */
const MOST_FILES = 65_535;

/** Files, and folders where they are taken; called while the drop is being told, since later nothing is there any more. */
export function droppedFiles(transfer: DataTransfer | null, takesFolders: boolean): Promise<readonly Dropped[]> {
  const given = [...(transfer?.items ?? [])].flatMap((item) => {
    const entry = takesFolders ? item.webkitGetAsEntry() : null;
    const file = item.getAsFile();
    if (entry?.isDirectory === true) return walkFolder(entry as FileSystemDirectoryEntry);
    return file === null ? [] : Promise.resolve({ name: file.name, blob: file });
  });
  return Promise.all(given);
}

/** A folder that was chosen, by its files; none where nothing was. */
export function chosenFolder(files: readonly File[]): readonly Dropped[] {
  const [first] = files;
  if (first === undefined) return [];
  const name = first.webkitRelativePath.split("/")[0] ?? "";
  const folder = files.map((file) => ({ path: file.webkitRelativePath.slice(name.length + 1), blob: file }));
  return [{ name, blob: new Blob(), folder }];
}

/** What cannot be read of it is read later, and told then. */
async function walkFolder(root: FileSystemDirectoryEntry): Promise<Dropped> {
  const folder: FolderFile[] = [];
  const open = [{ at: root, path: "" }];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    for (const entry of await entriesIn(next.at)) {
      const path = `${next.path}${entry.name}`;
      if (entry.isDirectory) open.push({ at: entry as FileSystemDirectoryEntry, path: `${path}/` });
      else if (folder.length < MOST_FILES) folder.push({ path, blob: await fileOf(entry as FileSystemFileEntry) });
    }
  return { name: root.name, blob: new Blob(), folder };
}

/** The browser hands them out by the hundred. */
async function entriesIn(folder: FileSystemDirectoryEntry): Promise<readonly FileSystemEntry[]> {
  const reader = folder.createReader();
  const entries: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve) => reader.readEntries(resolve, () => resolve([])));
    if (some.length === 0 || entries.length > MOST_FILES) return entries;
    for (const each of some) entries.push(each);
  }
}

function fileOf(entry: FileSystemFileEntry): Promise<Blob> {
  return new Promise((resolve) => entry.file(resolve, () => resolve(new Blob())));
}
