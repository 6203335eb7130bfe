/** Marks are compared as file systems do that ignore case. */
export function markKey(mark: string): string {
  return mark.toUpperCase();
}
