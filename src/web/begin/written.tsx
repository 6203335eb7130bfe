/** Text of a cell as it is written, from its own direction; of a very long one the beginning, the whole where it is asked for. */
import type { JSX } from "preact";

/** `most`: characters that are shown at once. */
export function Written({ text, most }: { readonly text: string; readonly most: number }): JSX.Element {
  if (text.length <= most) return <bdi>{text}</bdi>;
  return (
    <>
      <bdi>{beginningOf(text, most)}</bdi>
      <details class="whole">
        <summary>all {text.length} characters</summary>
        <bdi>{text}</bdi>
      </details>
    </>
  );
}

/** `text` itself where it is none too long. */
export function beginningOf(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most)}...`;
}
