/** Which rows are put to the engineer of record. */
import type { CheckRow } from "./model.js";

/** True of a row that is put to the engineer of record: a fail of severity `ask`. */
export function isAsking({ status, severity }: Pick<CheckRow, "status" | "severity">): boolean {
  return status === "fail" && severity === "ask";
}
