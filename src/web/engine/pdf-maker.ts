/** pdfkit as it is built for browsers; loaded where a PDF is written. */
import PDFDocument from "pdfkit";
import type { PdfMaker } from "../../formats/pdf-maker.js";

/** Its typings know only what is for everybody. */
export const pdfMaker: PdfMaker = PDFDocument as unknown as PdfMaker;
