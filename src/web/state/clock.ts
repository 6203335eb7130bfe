/** The clock of this machine: below the page nobody reads one. */

/** ISO date in the person's own time zone. */
export function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;
}

/** This moment in universal time. */
export function instant(): string {
  return new Date().toISOString();
}
