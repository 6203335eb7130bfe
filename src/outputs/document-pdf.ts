/** Sheets as a PDF of their own: what leaves the package by itself, as a letter or labels. */
import type { PdfMaker } from "../formats/pdf-maker.js";
import type { PdfFacts } from "../formats/sheet-pdf.js";
import { startPdf, writePage } from "../formats/sheet-pdf.js";
import type { Job } from "../job/model/job.js";
import type { Scene } from "../sheets/scene.js";
import { printable } from "../sheets/text-metrics.js";

/** What a PDF of the job says of itself. */
export function pdfFacts(job: Job, version: string, subject: string): PdfFacts {
  return {
    title: `${printable(job.number)} rev ${printable(job.revision)}: ${printable(job.title)}`,
    author: printable(job.drawnBy),
    subject,
    day: job.date,
    program: `rodplate ${version}`,
  };
}

/** The sheets as pages of their own sizes, in order, each with a bookmark of its title. */
export function documentPdf(
  maker: PdfMaker,
  scenes: readonly Scene[],
  { job, version, subject }: { readonly job: Job; readonly version: string; readonly subject: string },
): Uint8Array {
  const pdf = startPdf(maker, pdfFacts(job, version, subject));
  const order = scenes.map((scene) => pdf.add(writePage(scene)));
  const bookmarks = scenes.map(({ title }, i) => ({ title, page: i + 1, under: [] }));
  return pdf.finish(order, bookmarks);
}
