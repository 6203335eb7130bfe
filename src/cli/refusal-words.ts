/** What the system refuses, in words that name neither Node nor errno. */

/** By the system's own codes. */
export const WORDS: Readonly<Record<string, string>> = {
  EACCES: "no permission",
  EPERM: "not permitted",
  EROFS: "the file system is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  EFBIG: "the file is larger than the file system allows",
  EIO: "the disk reports a fault",
  ENOENT: "there is no such file or folder",
  EEXIST: "it is there already",
  EISDIR: "it is a folder; allowed is a file",
  ENOTDIR: "a part of the path is a file, not a folder",
  ENOTEMPTY: "the folder is not empty",
  ELOOP: "its symbolic links lead in a circle",
  ENAMETOOLONG: "a name is too long for this file system",
  EXDEV: "the folder is a mount point and cannot be renamed",
  EBUSY: "the folder is in use or a mount point and cannot be renamed",
  EMFILE: "too many open files",
  ENFILE: "too many open files",
  ERR_FS_FILE_TOO_LARGE: "it is too large: more than 2 GiB",
  ERR_INVALID_ARG_VALUE: "its name holds a character that no file name can hold",
};

/** What an error of the system says, in a few words: of a code that is not known the code, never the message of a library. */
export function refusalWords({ code }: NodeJS.ErrnoException): string {
  return WORDS[code ?? ""] ?? `the system refused it${code === undefined ? "" : ` (${code})`}`;
}
