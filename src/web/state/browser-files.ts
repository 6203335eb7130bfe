/**
 * Files of this machine: by the File System Access API where the browser has it (WICG), which can write the file that was
 * opened; by a field and a download where not.
 */
import type { GivenFile } from "./model.js";

interface Picker {
  showOpenFilePicker?(options: { readonly multiple: boolean }): Promise<readonly FileSystemFileHandle[]>;
  showSaveFilePicker?(options: { readonly suggestedName: string }): Promise<FileSystemFileHandle>;
}

/** Of the same API: what the browser lets the page do with a file, which it forgets when the page is loaded again. */
interface Permitted {
  queryPermission?(options: { readonly mode: "readwrite" }): Promise<PermissionState>;
  requestPermission?(options: { readonly mode: "readwrite" }): Promise<PermissionState>;
}

const picker: Picker = globalThis as Picker;

/** Files that the user picks; none where the choice is given up. */
export async function pickFiles(): Promise<readonly GivenFile[]> {
  if (picker.showOpenFilePicker === undefined) return pickByField();
  try {
    const handles = await picker.showOpenFilePicker({ multiple: true });
    return await Promise.all(handles.map(async (handle) => ({ handle, file: await handle.getFile() })));
  } catch (error) {
    return isGivenUp(error) ? [] : pickByField();
  }
}

function pickByField(): Promise<readonly GivenFile[]> {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.multiple = true;
    input.addEventListener("change", () => resolve(givenBy(input.files)));
    input.addEventListener("cancel", () => resolve([]));
    input.click();
  });
}

/** Files of a field, or of what was dropped where no handles are to be had. */
export function givenBy(files: FileList | null): readonly GivenFile[] {
  return [...(files ?? [])].map((file) => ({ file, handle: null }));
}

/** Files that were dropped, with handles where the browser gives them: it does so only while the drop is told. */
export async function givenByDrop(data: DataTransfer): Promise<readonly GivenFile[]> {
  const items = [...data.items].filter(({ kind }) => kind === "file");
  const plain = givenBy(data.files);
  const handles = items.map((item) =>
    "getAsFileSystemHandle" in item
      ? (item as { getAsFileSystemHandle(): Promise<FileSystemHandle | null> })
          .getAsFileSystemHandle()
          .catch(() => null)
      : Promise.resolve(null),
  );
  return Promise.all(
    plain.map(async ({ file }, index) => {
      const handle = (await handles[index]) ?? null;
      return { file, handle: handle?.kind === "file" ? (handle as FileSystemFileHandle) : null };
    }),
  );
}

/** A place to save to that the user picks; `download`: the browser has no such choice. */
export async function pickPlace(name: string): Promise<FileSystemFileHandle | "given up" | "download"> {
  if (picker.showSaveFilePicker === undefined) return "download";
  try {
    return await picker.showSaveFilePicker({ suggestedName: name });
  } catch (error) {
    return isGivenUp(error) ? "given up" : "download";
  }
}

function isGivenUp(error: unknown): boolean {
  return error instanceof Error && error.name === "AbortError";
}

/** Writes a file whole: what stood there stays until it is closed. Why not, in a few words; null when it was written. */
export async function writeFile(handle: FileSystemFileHandle, text: string): Promise<string | null> {
  try {
    const stream = await handle.createWritable();
    try {
      await stream.write(text);
      await stream.close();
    } catch (error) {
      await stream.abort().catch(() => {});
      throw error;
    }
    return null;
  } catch (error) {
    return refusalOf(error);
  }
}

function refusalOf(error: unknown): string {
  const name = error instanceof Error ? error.name : "";
  if (name === "NotAllowedError") return "the browser was not allowed to read and write it";
  if (name === "NotFoundError") return "it is no longer there; save the job as another file";
  if (name === "QuotaExceededError") return "the disk is full";
  if (name === "NoModificationAllowedError") return "another program has it open";
  return "the browser could not read and write it";
}

/** Bytes of a file as it is now; or why it cannot be read, in a few words. Asks the user where the browser wants that. */
export async function readAgain(handle: FileSystemFileHandle): Promise<Uint8Array | string> {
  try {
    if (!(await isAllowed(handle))) return refusalOf(new DOMException("", "NotAllowedError"));
    return new Uint8Array(await (await handle.getFile()).arrayBuffer());
  } catch (error) {
    return refusalOf(error);
  }
}

async function isAllowed(handle: FileSystemFileHandle & Permitted): Promise<boolean> {
  const mode = { mode: "readwrite" } as const;
  if ((await handle.queryPermission?.(mode)) !== "prompt") return true;
  return (await handle.requestPermission?.(mode)) === "granted";
}

/** Hands a file to the browser, which asks where or saves, as it is set. */
export function download(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // some browsers read it after the press
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
