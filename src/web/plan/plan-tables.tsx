/** What of the layout stands beside its drawing: lines, north, places of bases, those without one, points to set out. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { KeyEdit } from "../../readers/yaml-edit.js";
import type { LivePlan, LivePoints } from "../../tasks/live/plan-model.js";
import { useActions, usePart } from "../app/page.js";
import { isWritten, listUnder, type Texts } from "../schedule/texts.js";
import { download } from "../state/browser-files.js";
import { EditSpot } from "./edit-spot.js";
import {
  type Axis,
  axisEdit,
  axisOf,
  NO_PLACES,
  PLACEMENT_CELLS,
  placedAt,
  placementEdits,
  placementsOf,
  stepsOf,
  type WrittenPlacement,
} from "./grid-edits.js";

/** What is wrong at a key, and under it. */
export type FaultsAt = (key: string) => readonly string[];

interface TableProps {
  readonly written: Texts;
  readonly faultsAt: FaultsAt;
}

const AXES: readonly (readonly [Axis, string])[] = [
  ["x", "Lines that run north"],
  ["y", "Lines that run east"],
];

const AXIS_KEYS = [
  ["names", "Names"],
  ["spacing", "Spacings"],
  ["at", "Positions"],
  ["from", "First line at"],
] as const;

/** Names and spacings of both axes as lists: lines are added and taken out here. */
export function Lines({ written, faultsAt }: TableProps): JSX.Element {
  const { edit } = useActions();
  return (
    <>
      {AXES.map(([axis, title]) => {
        const now = axisOf(written, axis);
        const texts = { names: now.names.join(", "), spacing: now.spacing, at: now.at.join(", "), from: now.from };
        const keys = AXIS_KEYS.filter(([key]) => (now.at.length > 0 ? key === "names" || key === "at" : key !== "at"));
        return (
          <fieldset key={axis} class="axis">
            <legend>{title}</legend>
            {keys.map(([key, name]) => (
              <Keyed
                key={key}
                name={`${name}, ${axis}`}
                label={name}
                text={texts[key]}
                faults={faultsAt(`grid.${axis}.${key}`)}
                take={(text) =>
                  void edit(`grid ${axis}, ${name.toLowerCase()} ${text}`, axisEdit(written, axis, key, text))
                }
              />
            ))}
          </fieldset>
        );
      })}
      {listUnder(written, "grid.others").length > 0 && (
        <p class="hint">Skewed and radial lines and arcs are drawn; their figures are edited in the job file.</p>
      )}
    </>
  );
}

const SITE = [
  ["site.trueNorth", "Plan north from true north"],
  ["site.topOfConcrete", "T.O.C. where a place names none"],
  ["site.bottomOfPlate", "B.O.P. where a place names none"],
  ["site.origin.northing", "Northing of plan 0,0"],
  ["site.origin.easting", "Easting of plan 0,0"],
  ["site.origin.bearing", "Plan north from site north"],
  ["site.scaleFactor", "Combined scale factor"],
  ["site.tolerance", "Tolerance of the control points"],
  ["settingOut.order", "Order of the points' columns"],
  ["settingOut.unit", "Unit of the points"],
] as const;

/** North, and the way to the site. */
export function Site({ written, faultsAt }: TableProps): JSX.Element {
  const { edit } = useActions();
  const hasControl = isWritten(written, "control");
  const keys = SITE.filter(([key]) => !hasControl || !key.startsWith("site.origin") || written[key] !== undefined);
  return (
    <div class="site">
      {keys.map(([key, name]) => (
        <Keyed
          key={key}
          name={name}
          label={name}
          text={written[key] ?? ""}
          faults={faultsAt(key)}
          take={(text) => void edit(`${name.toLowerCase()} ${text}`, keyEdit(written, key, text))}
        />
      ))}
    </div>
  );
}

function keyEdit(written: Texts, key: string, text: string): readonly KeyEdit[] {
  if (text !== "") return [{ kind: "set", path: stepsOf(key), text }];
  return written[key] === undefined ? [] : [{ kind: "remove", path: stepsOf(key) }];
}

interface KeyedProps {
  readonly name: string;
  readonly label: string;
  readonly text: string;
  readonly faults: readonly string[];
  take(text: string): void;
}

function Keyed({ name, label, text, faults, take }: KeyedProps): JSX.Element {
  return (
    <div class="keyed">
      <span class="soft" aria-hidden="true">
        {label}
      </span>
      <EditSpot
        name={name}
        text={text}
        shown={text === "" ? "\u2013" : text}
        class="figure-button"
        isWrong={faults.length > 0}
        take={take}
      />
      {faults.map((message) => (
        <span key={message} class="fault">
          {message}
        </span>
      ))}
    </div>
  );
}

/** Where the bases stand, as the job file has it: an entry a row. */
export function Placements({ written, faultsAt }: TableProps): JSX.Element {
  const { edit } = useActions();
  const entries = placementsOf(written);
  if (entries === null) {
    const file = written.placements ?? written["placements.file"];
    return <p class="hint">Places stand in the spreadsheet {file}: they are drawn here, and edited there.</p>;
  }
  if (entries.length === 0) return <p class="hint">No base has a place yet.</p>;
  const remove = (index: number, { base }: WrittenPlacement) =>
    void edit(`places of ${base} taken out`, [
      entries.length === 1 ? NO_PLACES : { kind: "remove", path: ["placements", index] },
    ]);
  return (
    <div class="wide">
      <table class="placements" aria-label="Places of bases">
        <thead>
          <tr>
            {PLACEMENT_CELLS.map(({ key, name }) => (
              <th key={key} scope="col">
                {name}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {entries.map((entry, index) => (
            <tr key={index}>
              {PLACEMENT_CELLS.map(({ key, name }) => (
                <PlacementCell key={key} {...{ written, index, name, faultsAt }} cell={key} entry={entry} />
              ))}
              <td>
                <button
                  type="button"
                  onClick={() => remove(index, entry)}
                  aria-label={`Take out the places of ${entry.base} at ${entry.at}`}
                >
                  Take out
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface PlacementCellProps extends TableProps {
  readonly index: number;
  readonly name: string;
  readonly cell: keyof WrittenPlacement;
  readonly entry: WrittenPlacement;
}

function PlacementCell({ written, faultsAt, index, name, cell, entry }: PlacementCellProps): JSX.Element {
  const { edit } = useActions();
  const keys = cell === "at" ? ["at", "every"] : [cell];
  const faults = keys.flatMap((key) => faultsAt(`placements[${index}].${key}`));
  const text = entry[cell];
  return (
    <td>
      <EditSpot
        name={`Place ${index + 1}, ${name}`}
        text={text}
        shown={text === "" ? "\u2013" : text}
        class="figure-button"
        isWrong={faults.length > 0}
        take={(now) =>
          void edit(`place of ${entry.base}, ${name.toLowerCase()} ${now}`, placementEdits(written, index, cell, now))
        }
      />
      {faults.map((message) => (
        <span key={message} class="fault">
          {message}
        </span>
      ))}
    </td>
  );
}

/** Bases that stand nowhere yet, or not as often as their quantity says; each can be placed. */
export function Unplaced({ plan }: { readonly plan: LivePlan }): JSX.Element | null {
  const { edit } = useActions();
  const [base, setBase] = useState("");
  const [at, setAt] = useState("");
  const { unplaced, written } = plan;
  if (placementsOf(written) === null) return null;
  const mark = base === "" ? (unplaced[0]?.mark ?? plan.placements[0]?.mark ?? "") : base;
  const marks = [...new Set([...unplaced.map((each) => each.mark), ...plan.placements.map((each) => each.mark)])];
  const place = (event: Event): void => {
    event.preventDefault();
    if (at.trim() === "" || mark === "") return;
    void edit(`${mark} placed at ${at.trim()}`, [placedAt(written, mark, at.trim())]);
    setAt("");
  };
  return (
    <>
      {unplaced.length > 0 && (
        <p>
          Without a place:{" "}
          {unplaced.map(({ mark: each, missing }) => `${each}${missing > 1 ? ` (${missing} of them)` : ""}`).join(", ")}
        </p>
      )}
      <form class="row" onSubmit={place}>
        <label>
          Place base
          <select value={mark} onChange={({ currentTarget: { value } }) => setBase(value)}>
            {marks.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </label>
        <label>
          at the lines
          <input value={at} size={7} placeholder="A-1" onInput={({ currentTarget: { value } }) => setAt(value)} />
        </label>
        <button type="submit">Place</button>
      </form>
    </>
  );
}

/** Points to set out by, as the package has them. */
export function Points(): JSX.Element {
  const turn = usePart((state) => state.live?.turn);
  const isSettled = usePart((state) => state.live?.isSettled);
  const actions = useActions();
  const [isOpen, setOpen] = useState(false);
  const [points, setPoints] = useState<LivePoints | null>(null);
  useEffect(() => {
    if (!isOpen) return;
    let isCurrent = true;
    void actions.points().then((found) => {
      if (isCurrent) setPoints(found);
    });
    return () => {
      isCurrent = false;
    };
  }, [turn, isSettled, isOpen, actions]);
  return (
    <details onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>Points to set out</summary>
      {points?.held.map((why) => (
        <p key={why} class="fault">
          {why}
        </p>
      ))}
      {points?.files.map(({ name, text }) => (
        <PointsFile key={name} name={name} text={text} />
      ))}
      {points !== null && points.files.length === 0 && <p>No point is set out by while the layout is held.</p>}
    </details>
  );
}

const MOST_ROWS = 300;

function PointsFile({ name, text }: { readonly name: string; readonly text: string }): JSX.Element {
  const [head = [], ...rows] = text
    .trimEnd()
    .split("\r\n")
    .map((line) => line.split(","));
  return (
    <>
      <h3 class="row">
        {name}
        <button type="button" onClick={() => download(name, new Blob([text], { type: "text/csv" }))}>
          Download
        </button>
      </h3>
      <div class="wide points">
        <table aria-label={name}>
          <thead>
            <tr>
              {head.map((cell) => (
                <th key={cell} scope="col">
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, MOST_ROWS).map((row, index) => (
              <tr key={index}>
                {row.map((cell, at) => (
                  <td key={at}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {rows.length > MOST_ROWS && <p class="hint">{rows.length - MOST_ROWS} more points stand in the file.</p>}
    </>
  );
}
