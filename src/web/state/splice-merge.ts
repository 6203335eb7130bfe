/** Splices of one text when somebody else changed it meanwhile. */
import { type Splice, spliceBetween, spliced } from "../../readers/yaml-edit.js";

/** The one splice that makes `now` of `was`; null where they are equal. */
export function differenceOf(was: string, now: string): Splice | null {
  return was === now ? null : spliceBetween(was, now);
}

/**
 * Splices that were made on a text, as they are to be made after `other` was made on it too; null where they touch the same
 * place: a value that both changed is nobody's to choose.
 */
export function movedOver(splices: readonly Splice[], other: Splice): readonly Splice[] | null {
  const moved: Splice[] = [];
  let before = other;
  for (const each of splices) {
    const [end, otherEnd] = [each.at + each.was.length, before.at + before.was.length];
    if (each.at <= otherEnd && before.at <= end) return null;
    const isAfter = each.at > before.at;
    moved.push(isAfter ? { ...each, at: each.at + grown(before) } : each);
    if (!isAfter) before = { ...before, at: before.at + grown(each) };
  }
  return moved;
}

function grown({ was, now }: Splice): number {
  return now.length - was.length;
}

/** True where everything that the splices put something in the place of stands there. */
export function fits(text: string, splices: readonly Splice[]): boolean {
  let now = text;
  for (const splice of splices) {
    if (!now.startsWith(splice.was, splice.at) || splice.at > now.length) return false;
    now = spliced(now, splice);
  }
  return true;
}
