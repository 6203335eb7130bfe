/** Certificates of the cut files, for the checker: a table, and pages of the set. */
import { writeCertificatesCsv } from "../formats/certificates-csv.js";
import { drawCertificates } from "../sheets/certificate-pages.js";
import { certificatesOf } from "./certificates.js";
import type { JobOutput } from "./model.js";
import { FOLDERS, jobStem } from "./names.js";
import { documentSheets } from "./sheet-set.js";
import { textFile } from "./text-file.js";

/** One row a cut file. */
export const certificatesCsv: JobOutput<"certificates-csv"> = {
  scope: "job",
  needs: "job",
  kind: "certificates-csv",
  role: "table",
  title: "Certificate of each cut file: what was read back from its bytes, whether that is its plate, and its hash",
  drawn: false,
  inSet: true,
  named: `${FOLDERS.engineer}/JOB_rev-REVISION[_NOT-RELEASED]_certificates.csv`,
  *write({ job }, around) {
    const certificates = certificatesOf(around);
    const scenes = around.set === null ? [] : drawCertificates(job, around.version, certificates);
    around.set?.addSheets(
      "checking",
      documentSheets(scenes, {
        name: "CERTIFICATES",
        about: "EACH CUT FILE AS IT WAS READ BACK",
        bookmark: "Certificates of cut files",
      }),
    );
    yield textFile(`${FOLDERS.engineer}/${jobStem(job)}_certificates.csv`, writeCertificatesCsv(certificates));
  },
};
