/** Names of files as this page gives them; those that it is given may come from anywhere. */

const ENDING = /\.(ya?ml|json)$/i;

/** A name under which a job may be saved on every system, made of one that may hold anything. */
export function safeFileName(name: string): string {
  const last = name.split(/[\\/]/).at(-1) ?? "";
  const plain = last
    .normalize("NFC")
    .replace(/[\p{C}\p{Zl}\p{Zp}<>:"|?*]/gu, "_")
    .replace(/^[.\s]+|[.\s]+$/g, "");
  const stem = plain.replace(ENDING, "").slice(0, 100);
  const isDevice = /^(con|prn|aux|nul|com\d|lpt\d)$/i.test(stem.split(".")[0] ?? "");
  if (stem === "" || isDevice) return "job.yaml";
  return `${stem}${ENDING.exec(plain)?.[0] ?? ".yaml"}`;
}

/** As long as a name of a sheet is kept; a job file takes some more. */
const LONGEST_SHEET_NAME = 120;

/** A name under which a job file may name a sheet: without unseen signs, none too long, its ending kept. */
export function sheetFileName(name: string): string {
  const plain = name.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, "");
  if (plain.length <= LONGEST_SHEET_NAME) return plain;
  const ending = /\.[^.]{1,8}$/.exec(plain)?.[0] ?? "";
  return `${plain.slice(0, LONGEST_SHEET_NAME - ending.length)}${ending}`;
}

/** The part after the last folder. */
export function lastPart(name: string): string {
  return name.split(/[\\/]/).at(-1) ?? name;
}
