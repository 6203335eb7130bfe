/** The empty page: what the program makes, ways to begin, samples to look at, jobs that are kept here, cautions. */
import type { JSX } from "preact";
import { useActions, usePart } from "../app/page.js";
import { SceneItems } from "../sheet/scene-drawing.js";
import type { KeptJob } from "../state/model.js";
import { BegunBefore } from "./begun-before.js";
import { emptyFigures } from "./first-figures.js";
import { handOver } from "./hand-over.js";
import type { Picture } from "./sample-pictures.js";
import { useSamplePictures } from "./sample-pictures.js";
import { SAMPLES, type Sample, sampleFiles } from "./samples.js";
import { SheetField } from "./sheet-field.js";
import { usualUnit } from "./usual-unit.js";

/** The page before any job. */
export function Choice(): JSX.Element {
  return (
    <div class="reading choice">
      <h2>From a column-base schedule to setting templates for anchor rods: checked, drawn and ready to cut.</h2>
      <Ways />
      <BegunBefore />
      <Kept />
      <Samples />
      <Cautions />
    </div>
  );
}

const CHOICE = { kind: "choice" } as const;

function Ways(): JSX.Element {
  const actions = useActions();
  const { begin, openFromDisk } = actions;
  return (
    <section aria-labelledby="ways">
      <h3 id="ways">Begin from what you have</h3>
      <div class="ways">
        <div class="way">
          <h4>A base plate to set</h4>
          <p>Rod, pattern and plate: a right template from a few figures, drawn as you type.</p>
          <button
            type="button"
            class="main"
            onClick={() => begin({ kind: "first", figures: emptyFigures(usualUnit(navigator.language)) })}
          >
            Type a first template
          </button>
        </div>
        <div class="way">
          <h4>The engineer's schedule</h4>
          <p>Drop it anywhere on this page, untidy as it came: XLSX, CSV or text. What is unclear is asked.</p>
          <div class="row">
            <SheetField take={(files) => void handOver(files, actions, CHOICE)}>Choose the schedule</SheetField>
            <button type="button" onClick={() => begin({ kind: "paste", text: "" })}>
              Paste its cells
            </button>
          </div>
        </div>
        <div class="way">
          <h4>A job file</h4>
          <p>One that was begun here, by the command line or by another person, with the files that it names.</p>
          <button type="button" onClick={() => void openFromDisk()}>
            Open a job file
          </button>
        </div>
      </div>
    </section>
  );
}

function Kept(): JSX.Element | null {
  const kept = usePart((state) => state.kept);
  if (kept.length === 0) return null;
  return (
    <section aria-labelledby="kept">
      <h3 id="kept">Kept in this browser</h3>
      <ul class="kept">
        {kept.map((job) => (
          <KeptLine key={job.id} job={job} />
        ))}
      </ul>
    </section>
  );
}

function KeptLine({ job: { id, title, file, steps, changed, isUnsaved } }: { readonly job: KeptJob }): JSX.Element {
  const { reopen, throwAway } = useActions();
  const name = title === "" ? file : title;
  const when = new Date(changed).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
  return (
    <li>
      <button type="button" onClick={() => void reopen(id)}>
        {name}
      </button>
      <span class="soft">
        {file}, {steps === 1 ? "1 step" : `${steps} steps`}, {when}
        {isUnsaved ? ", not saved to a file" : ""}
      </span>
      <button type="button" class="quiet" onClick={() => void throwAway(id)}>
        Throw away<span class="for-readers"> {name}</span>
      </button>
    </li>
  );
}

function Samples(): JSX.Element {
  const pictures = useSamplePictures();
  return (
    <section aria-labelledby="samples">
      <h3 id="samples">Or look at a sample</h3>
      <ul class="samples">
        {SAMPLES.map((sample) => (
          <SampleCard key={sample.name} sample={sample} picture={pictures.get(sample.name) ?? null} />
        ))}
      </ul>
    </section>
  );
}

function SampleCard({
  sample: { name, lookAt },
  picture,
}: {
  readonly sample: Sample;
  readonly picture: Picture | null;
}): JSX.Element {
  const { open } = useActions();
  return (
    <li>
      <div class="picture drawing">
        {picture !== null && (
          <svg viewBox={picture.viewBox} aria-hidden="true">
            <SceneItems items={picture.items} height={picture.height} />
          </svg>
        )}
      </div>
      <button type="button" onClick={async () => open(await sampleFiles(name), `sample ${name}`)}>
        Open sample {name}
      </button>
      <p>{lookAt}</p>
    </li>
  );
}

function Cautions(): JSX.Element {
  return (
    <section aria-labelledby="cautions" class="cautions">
      <h3 id="cautions">What it does not do</h3>
      <p>
        It checks and reports; the engineer of record decides. Local codes and licensed practice govern. It looks at no
        strength of rods, concrete, welds or columns. Set from released drawings only, survey again after the pour, and
        bend, cut, weld or replace no rod, nor enlarge a hole, without the engineer of record.
      </p>
      <p class="soft">Everything runs on this machine; nothing is sent anywhere.</p>
    </section>
  );
}
