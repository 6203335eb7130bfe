/** The title block at the lower right of the paper: the same facts as on the printed sheet, each typed over where it stands. */
import type { ComponentChildren, JSX } from "preact";
import type { LiveBase, LiveBaseView, LiveHead, LiveJob } from "../../tasks/live/model.js";
import { usePart } from "../app/page.js";
import { InPlace } from "./in-place.js";

/** Of the base that is shown. */
export function TitleBlock(): JSX.Element | null {
  const live = usePart((state) => state.live);
  const path = usePart((state) => state.base);
  const sheet = usePart((state) => state.sheet);
  const base = live?.bases.find((each) => each.path === path) ?? null;
  if (live === null) return null;
  return (
    <section class="title-block" aria-label="Title block">
      <JobRow live={live} />
      {base !== null && <TemplateRow base={base} sheet={sheet} live={live} />}
      <StatusRow live={live} sheet={sheet} />
      {base !== null && <MaterialRow base={base} live={live} />}
      <SignRow />
    </section>
  );
}

function Cell({
  name,
  wide = 1,
  children,
}: {
  readonly name: string;
  readonly wide?: number;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <div class="cell" style={{ flexGrow: wide }}>
      <span class="caption" aria-hidden="true">
        {name}
      </span>
      {children}
    </div>
  );
}

/** A word of the job's head, as it is written, else as it is taken. */
function Head({
  live,
  name,
  label,
  of,
}: {
  readonly live: LiveJob;
  readonly name: string;
  readonly label: string;
  readonly of?: keyof LiveHead;
}): JSX.Element {
  const path = `job.${name}`;
  const taken = of === undefined ? "" : String(live.head?.[of] ?? "");
  return <InPlace path={path} label={label} text={live.said[path] ?? ""} shown={taken === "" ? null : taken} />;
}

function JobRow({ live }: { readonly live: LiveJob }): JSX.Element {
  return (
    <div class="cells">
      <Cell name="Job no.">
        <Head live={live} name="number" label="Job number" of="number" />
      </Cell>
      <Cell name="Title" wide={3}>
        <Head live={live} name="title" label="Title" of="title" />
      </Cell>
      <Cell name="Owner" wide={2}>
        <Head live={live} name="owner" label="Owner" of="owner" />
      </Cell>
    </div>
  );
}

interface BaseWordProps {
  readonly base: LiveBase;
  readonly live: LiveJob;
  /** Key path within the base. */
  readonly name: string;
  readonly label: string;
  readonly shown?: string | null;
}

/** A word of the base: its own, or given to it. */
function BaseWord({ base, live, name, label, shown = null }: BaseWordProps): JSX.Element {
  const text = base.written[name] ?? base.given[name]?.text ?? "";
  if (live.basesIn === "sheet") return <bdi>{shown ?? text}</bdi>;
  return <InPlace path={`${base.path}.${name}`} hintAt={name} label={label} text={text} shown={shown} />;
}

interface BaseRowProps {
  readonly base: LiveBase;
  readonly live: LiveJob;
}

function TemplateRow({ base, sheet, live }: BaseRowProps & { readonly sheet: LiveBaseView | null }): JSX.Element {
  const quantity = base.written.quantity ?? base.given.quantity?.text ?? "1";
  const mark = sheet?.template ?? base.mark;
  return (
    <div class="cells">
      <Cell name={sheet?.block.documentType ?? "Setting template"} wide={3}>
        <span class="marked">
          <BaseWord base={base} live={live} name="template.mark" label="Mark of the template" shown={mark} />
          {base.state === "held" && <strong class="flag">HELD</strong>}
        </span>
      </Cell>
      <Cell name="Drawing no." wide={2}>
        <bdi>{sheet?.block.drawingNumber ?? ""}</bdi>
      </Cell>
      <Cell name="Rev">
        <Head live={live} name="revision" label="Revision" of="revision" />
      </Cell>
      <Cell name="Qty">
        <BaseWord base={base} live={live} name="template.quantity" label="Quantity of templates" shown={quantity} />
      </Cell>
    </div>
  );
}

function MaterialRow({ base, live }: BaseRowProps): JSX.Element {
  return (
    <div class="cells">
      <Cell name="Material" wide={2}>
        <span class="marked">
          <BaseWord base={base} live={live} name="template.material" label="Material" shown="steel" />
          <BaseWord base={base} live={live} name="template.thickness" label="Thickness of the template" />
          <BaseWord base={base} live={live} name="template.grade" label="Grade of the template" />
        </span>
      </Cell>
      <Cell name="Drawn by">
        <Head live={live} name="drawnBy" label="Drawn by" of="drawnBy" />
      </Cell>
      <Cell name="Tolerances">
        <Head live={live} name="tolerances" label="General tolerances" />
      </Cell>
    </div>
  );
}

function StatusRow({ live, sheet }: { readonly live: LiveJob; readonly sheet: LiveBaseView | null }): JSX.Element {
  const says = sheet === null ? "" : beyondStatus(sheet.block.status, live.head?.status ?? "");
  return (
    <div class="cells">
      <Cell name="Status" wide={3}>
        <span class="marked">
          <Head live={live} name="status" label="Status" of="status" />
          {says !== "" && (
            <span class="says" title={says}>
              {says}
            </span>
          )}
        </span>
      </Cell>
      <Cell name="Source drawing" wide={2}>
        <span class="marked">
          <Head live={live} name="drawing.number" label="Source drawing" />
          {live.said["job.drawing.number"] !== undefined && (
            <Head live={live} name="drawing.revision" label="Revision of the source drawing" />
          )}
        </span>
      </Cell>
      <Cell name="Date" wide={1.4}>
        <Head live={live} name="date" label="Date" of="date" />
      </Cell>
    </div>
  );
}

/** What a sheet's status says beside the job's own, and the flag that it is held: `QUESTION OPEN: Q-1` of `QUESTION OPEN: Q-1 (PRELIMINARY)`. */
function beyondStatus(words: string, status: string): string {
  return words === status.toUpperCase() ? "" : words.replace(/ \((JOB )?[A-Z ]+\)$/, "").replace(/^HELD(, )?/, "");
}

/** Nobody signs here. */
function SignRow(): JSX.Element {
  return (
    <div class="cells">
      <Cell name="Checked by">
        <span class="soft">Empty: only a person who checked it signs, on paper.</span>
      </Cell>
    </div>
  );
}
