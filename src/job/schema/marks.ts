/** Marks name files: a mark must be a safe file name on every system. */

/** Longest mark, in characters. */
const LONGEST_MARK = 60;

const DEVICES = /^(con|prn|aux|nul|conin\$|conout\$|com[0-9]|lpt[0-9])$/i;

/** What makes a mark no safe file name, in words with what is allowed; null when it is one. */
export function markFault(mark: string): string | null {
  if (mark.length > LONGEST_MARK)
    return `has ${mark.length} characters; at most ${LONGEST_MARK} are allowed, since a mark names files`;
  const bad = [...mark].find((sign) => !/[ -~]/.test(sign) || '<>:"/\\|?*'.includes(sign));
  if (bad !== undefined) {
    return `"${mark}" holds ${JSON.stringify(bad)}, which no file name may hold on every system; allowed are plain ASCII characters without < > : " / \\ | ? *`;
  }
  if (/^[ .]|[ .]$/.test(mark)) return `"${mark}" starts or ends with a dot or a space; a mark names files`;
  if (DEVICES.test((mark.split(".")[0] ?? "").trim()))
    return `"${mark}" is the name of a device on some systems; a mark names files`;
  return null;
}

export { markKey } from "../../schedule/index.js";
