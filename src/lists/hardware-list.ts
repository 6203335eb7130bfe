/** Nuts, washers and plates of the whole job, as they are ordered. */
import type { RodStock } from "../job/model/rod-stock.js";
import type { Hardware } from "../rods/detail/model.js";
import type { RodLot } from "../rods/lots.js";
import { groupBy } from "../units/group-by.js";
import type { Unit } from "../units/index.js";
import { sumKnown, thousandths, weightEachCell, weightSumCell, weightTotalCell, weightUnit } from "./cells.js";
import type { ListCell, ListTable } from "./model.js";
import type { SplicePiece } from "./splice-bolts.js";

/** Hardware that is ordered alike. */
export interface HardwareKind {
  /** `H1`, `H2`, ... in the order of the list: by it packing lists name it. */
  readonly item: string;
  readonly what: Hardware["what"] | SplicePiece["what"];
  readonly words: string;
  /** On all rods, or at all joints of templates. */
  readonly count: number;
  /** Beside these, by the shop file; null where it names none. */
  readonly spare: number | null;
  /** Of one, in thousandths of the unit. */
  readonly weight: number | null;
  /** Marks of lots; of bolts and nuts of splice plates that of their template. */
  readonly lots: readonly string[];
}

const ORDER = [
  "nut",
  "washer",
  "plate washer",
  "plate",
  "bolt",
  "thread protector",
] as const satisfies readonly HardwareKind["what"][];

/** Hardware that is ordered alike has the same. */
export function hardwareKey({ what, words }: Pick<HardwareKind, "what" | "words">): string {
  return JSON.stringify([what, words]);
}

/** Nuts first; within a kind in the order of the lots. */
export function hardwareKinds(
  lots: readonly RodLot[],
  splices: readonly SplicePiece[],
  stock: RodStock,
  unit: Unit,
): readonly HardwareKind[] {
  const pieces = lots.flatMap((lot) => lot.detail.hardware.map((hardware) => ({ hardware, lot })));
  const kinds = [...groupBy(pieces, ({ hardware }) => hardwareKey(hardware)).values()].flatMap(
    (own): readonly Kind[] => {
      const [first] = own;
      if (first === undefined) return [];
      const { what, words, kilograms } = first.hardware;
      const count = own.reduce((sum, { hardware, lot }) => sum + hardware.count * lot.total, 0);
      const lots = [...new Set(own.map(({ lot }) => lot.mark))];
      return [
        {
          what,
          words,
          count,
          spare: spareOf(what, count, stock),
          weight: kilograms === null ? null : thousandths(kilograms, unit),
          lots,
        },
      ];
    },
  );
  const own = splices.map(({ what, words, mark, count, kilograms }): Kind => {
    const weight = kilograms === null ? null : thousandths(kilograms, unit);
    return { what, words, count, spare: spareOf(what, count, stock), weight, lots: [mark] };
  });
  const ordered = ORDER.flatMap((what) => [...kinds, ...own].filter((kind) => kind.what === what));
  return ordered.map((kind, i) => ({ item: `H${i + 1}`, ...kind }));
}

type Kind = Omit<HardwareKind, "item">;

/** Of each hundred so many, rounded up; plates are made to count. */
function spareOf(what: HardwareKind["what"], count: number, { spareNuts, spareWashers }: RodStock): number | null {
  const share = what === "nut" ? spareNuts : what === "washer" ? spareWashers : null;
  return share === null || share.kind === "missing" ? null : Math.ceil((count * share.value) / 100);
}

/** A row a kind. */
export function hardwareList(kinds: readonly HardwareKind[], lots: readonly RodLot[], unit: Unit): ListTable {
  const weight = weightUnit(unit);
  const weights = kinds.map(({ weight: each, count }) => (each === null ? null : each * count));
  const { unknown } = sumKnown(weights);
  const total = (of: (kind: HardwareKind) => number) => kinds.reduce((all, kind) => all + of(kind), 0);
  return {
    key: "hardware",
    name: "Hardware",
    title: "NUTS, WASHERS AND PLATES",
    columns: [
      { heading: "item", width: 7 },
      { heading: "what", width: 13 },
      { heading: "as ordered", width: 60, isWrapped: true },
      { heading: "on rods", width: 9, isFigure: true },
      { heading: "spare", width: 8, isFigure: true },
      { heading: "to order", width: 9, isFigure: true },
      { heading: `weight each, ${weight}`, width: 10, isFigure: true },
      { heading: `weight on rods, ${weight}`, width: 11, isFigure: true },
      { heading: "lots", width: 24, isWrapped: true },
    ],
    rows: kinds.map(({ item, what, words, count, spare, weight: each, lots }): readonly ListCell[] => [
      ...[item, what, words, count, spare, count + (spare ?? 0)],
      ...[weightEachCell(each), weightTotalCell(each === null ? null : each * count), lots.join(" ")],
    ]),
    totals: [
      [
        "TOTAL",
        null,
        null,
        total(({ count }) => count),
        total(({ spare }) => spare ?? 0),
        total(({ count, spare }) => count + (spare ?? 0)),
        null,
        weightSumCell(weights),
        null,
      ],
    ],
    views: [
      {
        title: `NUTS, WASHERS AND PLATES (${weight})`,
        columns: [
          ...["item", "what", "as ordered", "lots", "on rods", "spare", "to order"].map(
            (heading) => [heading, heading] as const,
          ),
          [`weight each, ${weight}`, "EACH"],
          [`weight on rods, ${weight}`, "TOTAL"],
        ],
      },
    ],
    remarks: [...hardwareRemarks(kinds, unknown), ...openHardwareWords(lots)],
  };
}

/** Which lots may take more than is counted. */
export function openHardwareWords(lots: readonly RodLot[]): readonly string[] {
  const open = lots.filter(({ detail }) => detail.open.length > 0);
  if (open.length === 0) return [];
  return [
    `What goes on the rods is not all given of ${open.map(({ mark }) => mark).join(" ")}: there may be more than is counted (see Not given).`,
  ];
}

function hardwareRemarks(kinds: readonly HardwareKind[], unknown: number): readonly string[] {
  const noSpare = kinds.some(({ what, spare }) => (what === "nut" || what === "washer") && spare === null);
  return [
    ...(kinds.some(({ what }) => what === "bolt")
      ? [
          "Bolts and nuts of splice plates stand with the mark of their template; without washers, since holes are of standard size.",
        ]
      : []),
    "Counts are those of the rods. A nut that holds the template is counted once where it stays as a levelling nut.",
    ...(noSpare ? ["No spare pieces where the shop file names none: rodShop.spareNuts, rodShop.spareWashers."] : []),
    ...(unknown === 0 ? [] : [`The weight of ${unknown} of ${kinds.length} kinds is not known and not in the total.`]),
  ];
}
