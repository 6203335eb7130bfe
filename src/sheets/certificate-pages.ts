/** Certificates of cut files as pages for the checker: what the reader found in each file, and whether that is its plate. */
import type { Job } from "../job/model/job.js";
import type { CutCertificate } from "../summary/certificate.js";
import { groupBy } from "../units/group-by.js";
import { drawDocument } from "./document-pages.js";
import type { Scene } from "./scene.js";
import type { Column, TableText } from "./table.js";

/** Its pages, landscape; a row a plate. None where there is no cut file. */
export function drawCertificates(
  job: Pick<Job, "number" | "title" | "revision" | "status" | "date" | "unit">,
  version: string,
  certificates: readonly CutCertificate[],
): readonly Scene[] {
  if (certificates.length === 0) return [];
  const blocks = [{ kind: "table" as const, table: certificateTable(certificates, job.unit) }];
  return drawDocument({ job, version, title: "CERTIFICATES OF CUT FILES", way: "landscape", blocks });
}

const column = (title: string, share: number, align: Column["align"] = "end"): Column => ({ title, share, align });

const COLUMNS: readonly Column[] = [
  column("PLATE", 0.18, "start"),
  column("RESULT", 0.12, "start"),
  column("FILES", 0.06),
  column("HOLES", 0.07),
  column("OTHER", 0.07),
  column("SIZE", 0.16),
  column("CUT LENGTH", 0.11),
  column("PIERCES", 0.08),
  column("OFF", 0.08),
  column("SHA-256 OF EACH FILE", 0.2),
];

function certificateTable(certificates: readonly CutCertificate[], unit: string): TableText {
  const plates = [...groupBy(certificates, readingKey).values()];
  const failing = plates.flatMap(([first], i) => (first?.result !== "pass" || first.held ? [i] : []));
  return {
    name: "certificates",
    heading: `WHAT WAS READ BACK FROM EACH OF ${certificates.length} CUT FILES`,
    columns: COLUMNS,
    rows: plates.map(plateCells),
    foot: [
      `Lengths in ${UNIT_WORDS[unit] ?? unit}. Holes: round ones. Other: openings of other shapes. Off: largest error of place or diameter.`,
      "Read from the bytes by a reader that shares no code with the writer, and laid on the plate.",
      "SHA-256: the first 8 signs. Each file is in the CSV; the command proof reads all again, any day.",
    ],
    under: [],
    strong: new Set(failing),
  };
}

const UNIT_WORDS: Readonly<Record<string, string>> = { in: "inches", mm: "millimetres" };

/** Files of one plate in which the same was read stand on one row. */
function readingKey({
  kind: _kind,
  path: _path,
  bytes: _bytes,
  sha256: _hash,
  version: _version,
  ...read
}: CutCertificate) {
  return JSON.stringify(read);
}

function plateCells(files: readonly CutCertificate[]): readonly string[] {
  const [first] = files;
  if (first === undefined) return [];
  const { plate, held, result, holes, openings, extent, cutLength, pierces, match } = first;
  const size = extent === null ? "" : `${plain(extent[2] - extent[0])} x ${plain(extent[3] - extent[1])}`;
  return [
    plate,
    held ? `HELD, ${result}` : result,
    ...[files.length, holes, openings].map(String),
    size,
    ...[plain(cutLength), String(pierces)],
    match === null ? "" : plain(Math.max(match.positionError, match.diameterError)),
    files.map(({ sha256 }) => sha256.slice(0, 8)).join(" "),
  ];
}

/** Three decimals at most. */
function plain(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
