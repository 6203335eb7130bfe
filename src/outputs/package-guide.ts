/** What a package holds, by who opens it: said on its first page and on the terminal. */
import { groupBy } from "../units/group-by.js";
import type { JobRest } from "./model.js";
import { FOLDERS } from "./names.js";

/** A file as a guide has it. */
export interface GuidedFile {
  readonly kind: string;
  readonly path: string;
}

/** One reader's part of a package. */
export interface GuideEntry {
  /** With a slash at its end; "" for the top of the package. */
  readonly folder: string;
  readonly who: string;
  /** Sentences: what to do with what lies there. */
  readonly how: readonly string[];
  /** What to open first; null where nothing goes before the rest. */
  readonly first: string | null;
  readonly files: readonly GuidedFile[];
}

type FolderKey = keyof typeof FOLDERS;

const WHO: Readonly<Record<FolderKey | "top", string>> = {
  top: "everybody",
  cut: "cutting table",
  sheets: "whoever reads drawings",
  rods: "rod shop and truck",
  field: "setter and surveyor",
  engineer: "engineer and checker",
  machine: "other programs",
};

const HOW: Readonly<Record<FolderKey | "top", readonly string[]>> = {
  top: ["The set has every sheet as a page: what there is on paper is there."],
  cut: ["The cut list says what to cut from which plate, how many of each, and by which file."],
  sheets: ["One sheet a template: what is cut, how it is checked, how it is set. Names are by template mark."],
  rods: ["What rods are made, cut, packed and sent by."],
  field: ["What rods are set out and set by."],
  engineer: [
    "What was checked, and what is asked: every answer goes back into the job.",
    "rodplate sign FOLDER --by NAME records in engineer/signed who has checked which bytes.",
  ],
  machine: ["For other programs; nobody need open these."],
};

/** What is said of a folder only where it holds such files. */
interface Remark {
  readonly at: FolderKey;
  readonly isOf: (file: GuidedFile) => boolean;
  readonly words: string;
}

const ofKinds =
  (...kinds: readonly string[]): Remark["isOf"] =>
  ({ kind }) =>
    kinds.includes(kind);

const inside =
  (folder: string): Remark["isOf"] =>
  ({ path }) =>
    path.startsWith(folder);

/** How boards are made, as cut list and guide say it. */
export const PLYWOOD_WORDS =
  "Plywood is drilled by its drill list, or through its print in full size: measure the bars of the print first.";

const REMARKS: readonly Remark[] = [
  {
    at: "cut",
    isOf: ofKinds("cut-joined", "cut-r12"),
    words:
      "Load every DXF file that lies in cut/ itself: each is one plate, and its name says how many, of what plate and grade.",
  },
  { at: "cut", isOf: ofKinds("drill-list"), words: PLYWOOD_WORDS },
  { at: "cut", isOf: inside("cut/held/"), words: "cut/held/: HELD, not to be cut." },
  {
    at: "cut",
    isOf: inside("cut/lines/"),
    words:
      "cut/lines/: the same plates again in lines and arcs, for a control that does not read polylines. Load one or the other, not both.",
  },
  {
    at: "cut",
    isOf: inside("cut/polyline/"),
    words: "cut/polyline/: the same plates again in closed polylines. Load one or the other, not both.",
  },
  {
    at: "cut",
    isOf: ofKinds("full-size-pdf"),
    words: "..._full-size.pdf is a board to saw and drill by hand: print it at 100 %, and measure its bar before use.",
  },
  {
    at: "machine",
    isOf: ofKinds("solid-stl"),
    words:
      "The .stl and .3mf files are each piece as a solid, to look at or to measure, in millimetres (STL) and in the job's unit (3MF); plates are cut by cut/, never by these.",
  },
];

/** The top first, then folder by folder in the order of the package. */
export function guidePackage(files: readonly GuidedFile[], about: JobRest["about"]): readonly GuideEntry[] {
  const folders = groupBy(files, ({ path }) => (path.includes("/") ? path.slice(0, path.indexOf("/")) : "top"));
  const keys: readonly (FolderKey | "top")[] = ["top", ...FOLDER_KEYS];
  return keys.flatMap((key): readonly GuideEntry[] => {
    const own = folders.get(key === "top" ? key : FOLDERS[key]) ?? [];
    if (own.length === 0) return [];
    const folder = key === "top" ? "" : `${FOLDERS[key]}/`;
    const remarks = REMARKS.filter(({ at, isOf }) => at === key && own.some(isOf)).map(({ words }) => words);
    const first = own.find(({ kind }) => about(kind)?.opensFirst === true) ?? null;
    return [{ folder, who: WHO[key], how: [...HOW[key], ...remarks], first: first?.path ?? null, files: own }];
  });
}

const FOLDER_KEYS: readonly FolderKey[] = ["cut", "sheets", "rods", "field", "engineer", "machine"];
