/** Sheets as a PDF of their own: what leaves the package by itself, as a letter or labels. */
import type { PdfMaker } from "../formats/pdf-maker.js";
import type { Bookmark, PdfFacts } from "../formats/sheet-pdf.js";
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

/** The sheets as pages of their own sizes, in order, each with a bookmark of its title; none is held once the next is asked for. */
export function documentPdf(
  maker: PdfMaker,
  scenes: Iterable<Scene>,
  { job, version, subject }: { readonly job: Job; readonly version: string; readonly subject: string },
): Uint8Array {
  const pdf = startPdf(maker, pdfFacts(job, version, subject));
  const order: number[] = [];
  const bookmarks: Bookmark[] = [];
  for (const scene of scenes) {
    order.push(pdf.add(writePage(scene)));
    bookmarks.push({ title: scene.title, page: order.length, under: [] });
  }
  return pdf.finish(order, bookmarks);
}
