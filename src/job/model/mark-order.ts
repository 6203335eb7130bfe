/** The natural order of marks: numbers in them count as numbers. No locale. */

/** Negative where `a` comes before `b`: T2 before T10, capitals like small letters unless nothing else tells them apart. */
export function compareMarks(a: string, b: string): number {
  const [one, other] = [partsOf(a), partsOf(b)];
  for (let at = 0; at < Math.min(one.length, other.length); at += 1) {
    const order = compareParts(one[at] ?? "", other[at] ?? "");
    if (order !== 0) return order;
  }
  return one.length - other.length || compareTexts(a, b);
}

function partsOf(mark: string): readonly string[] {
  return mark.toUpperCase().match(/[0-9]+|[^0-9]+/g) ?? [];
}

function compareParts(a: string, b: string): number {
  if (!/^[0-9]/.test(a) || !/^[0-9]/.test(b)) return compareTexts(a, b);
  const [one, other] = [a, b].map((digits) => digits.replace(/^0+/, ""));
  return (one ?? "").length - (other ?? "").length || compareTexts(one ?? "", other ?? "");
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
