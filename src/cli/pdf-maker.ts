/** pdfkit, which is loaded only where a PDF is written: it takes longer to load than a small command to run. */
import PDFDocument from "pdfkit";
import type { PdfMaker } from "../formats/pdf-maker.js";

/** Its typings know only what is for everybody. */
export const pdfMaker: PdfMaker = PDFDocument as unknown as PdfMaker;
