/** Certificates of the cut files in machine form: `proof` holds the files against them. */
import { writeCertificatesJson } from "../formats/certificates-json.js";
import { certificatesOf } from "./certificates.js";
import type { JobOutput } from "./model.js";
import { FOLDERS, jobStem } from "./names.js";
import { textFile } from "./text-file.js";

/** All of them in one file. */
export const certificatesJson: JobOutput<"certificates-json"> = {
  scope: "job",
  needs: "job",
  kind: "certificates-json",
  role: "document",
  title: "The certificates of the cut files in machine form",
  drawn: false,
  named: `${FOLDERS.machine}/JOB_rev-REVISION[_NOT-RELEASED]_certificates.json`,
  *write({ job }, around) {
    const text = writeCertificatesJson(job, certificatesOf(around));
    yield textFile(`${FOLDERS.machine}/${jobStem(job)}_certificates.json`, text);
  },
};
