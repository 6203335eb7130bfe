/** 96 random bits; `crypto.randomUUID` is refused to pages of plain http. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
