/** Where a job begins: a new one, a sample, a file. */
import type { JSX } from "preact";
import { useActions } from "../app/page.js";
import { SAMPLES, sampleFiles } from "./samples.js";

/** The samples to look at. */
export function BeginView(): JSX.Element {
  const { open } = useActions();
  return (
    <section class="reading begin">
      <h2>Begin</h2>
      <ul>
        {SAMPLES.map((name) => (
          <li key={name}>
            <button type="button" onClick={async () => open(await sampleFiles(name), `sample ${name}`)}>
              {name}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
