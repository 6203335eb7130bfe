/** Certificates of cut files as CSV: one file a row, figures in the file's unit. */
import type { CutCertificate } from "../summary/certificate.js";
import { type CsvCell, writeCsvRows } from "./csv-cells.js";

const COLUMNS: Readonly<Record<string, (certificate: CutCertificate) => CsvCell>> = {
  file: ({ path }) => path,
  kind: ({ kind }) => kind,
  plate: ({ plate }) => plate,
  bases: ({ bases }) => bases.join(" "),
  held: ({ held }) => (held ? "HELD" : ""),
  result: ({ result }) => result,
  "read back": () => "same",
  "dxf version": ({ version }) => version,
  unit: ({ unit }) => unit,
  contours: ({ contours }) => contours,
  "round holes": ({ holes }) => holes,
  "other openings": ({ openings }) => openings,
  x0: ({ extent }) => extent?.[0] ?? null,
  y0: ({ extent }) => extent?.[1] ?? null,
  x1: ({ extent }) => extent?.[2] ?? null,
  y1: ({ extent }) => extent?.[3] ?? null,
  "area inside outline": ({ area }) => area,
  "net area": ({ netArea }) => netArea,
  "cut length": ({ cutLength }) => cutLength,
  pierces: ({ pierces }) => pierces,
  "turn, degrees": ({ match }) => match?.turn ?? null,
  mirrored: ({ match }) => match && (match.mirrored ? "yes" : "no"),
  scale: ({ match }) => match?.scale ?? null,
  "position error": ({ match }) => match?.positionError ?? null,
  "diameter error": ({ match }) => match?.diameterError ?? null,
  "holes missing": ({ match }) => match?.missing ?? null,
  "holes extra": ({ match }) => match?.extra ?? null,
  stops: ({ stops }) => stops.join("; "),
  looks: ({ looks }) => looks.join("; "),
  bytes: ({ bytes }) => bytes,
  sha256: ({ sha256 }) => sha256,
  reader: () => CERTIFYING_READER,
};

/** Who read the files back. */
export const CERTIFYING_READER = "rodplate's reader of foreign DXF files, which shares no code with the writers";

/** The heading row, then one row a certificate. A file whose read-back differs from its plate is not handed out: it has no row. */
export function writeCertificatesCsv(certificates: readonly CutCertificate[]): string {
  const cells = Object.values(COLUMNS);
  return writeCsvRows([
    Object.keys(COLUMNS),
    ...certificates.map((certificate) => cells.map((cell) => cell(certificate))),
  ]);
}
