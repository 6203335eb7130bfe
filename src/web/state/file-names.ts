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

/** The part after the last folder. */
export function lastPart(name: string): string {
  return name.split(/[\\/]/).at(-1) ?? name;
}
