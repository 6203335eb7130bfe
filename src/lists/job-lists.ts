/** Lists of the rods of a job, each worked out once. */
import type { Job } from "../job/model/job.js";
import { type RodLot, rodLots } from "../rods/lots.js";
import type { BaseFacts } from "../summary/facts.js";
import { barGroups } from "./bar-groups.js";
import { barList, barPieces, barSummary } from "./bar-list.js";
import { deliveryNames, shareDeliveries } from "./deliveries.js";
import { hardwareKinds, hardwareList } from "./hardware-list.js";
import { notesList } from "./list-notes.js";
import type { ListTable } from "./model.js";
import { packedLines, packingList } from "./packing-list.js";
import { type PackingPart, packingPages } from "./packing-pages.js";
import { quoteList } from "./quote.js";
import { rodList } from "./rod-list.js";
import { splicePieces } from "./splice-bolts.js";
import { threadList } from "./thread-list.js";

/** What lists are made of, when all bases are made. */
export interface ListsOf {
  readonly job: Job;
  readonly facts: readonly BaseFacts[];
  /** Marks of the bases that are held. */
  readonly held: ReadonlySet<string>;
  /** Numbers of the questions that have no answer. */
  readonly openQuestions: readonly string[];
}

/** In the order of the workbook. */
export interface JobLists {
  readonly lots: readonly RodLot[];
  readonly tables: readonly ListTable[];
  /** The packing list on paper. */
  readonly packing: readonly PackingPart[];
  readonly quote: ListTable;
}

/** Lists of all rods; of a job whose file of the shop says little they say what is missing. */
export function makeLists({ job, facts, held, openQuestions }: ListsOf): JobLists {
  const { unit, shop, bases, status } = job;
  const { stock } = shop.rodShop;
  const lots = rodLots(job);
  const stops = { held, stopped: new Set(facts.flatMap(({ mark, released }) => (released ? [] : [mark]))) };
  const groups = barGroups(lots, stock);
  const bars = { groups, stock, unit };
  const splices = splicePieces(facts, unit, shop.density.steel.value);
  const hardware = hardwareKinds(lots, splices, stock, unit);
  const packing = { job, lots, hardware, facts, splices, stops };
  const packed = packedLines(packing);
  return {
    lots,
    tables: [
      rodList({ lots, unit, stops }),
      barList(bars),
      barPieces(bars),
      barSummary(bars),
      threadList(lots, unit),
      hardwareList(hardware, lots, unit),
      packingList(packed, packing),
      notesList({ ...bars, lots }),
    ],
    packing: packingPages({ lines: packed, unit, stops }),
    quote: quoteList({
      ...{ rates: shop.rates, lots, hardware, facts, status, openQuestions },
      deliveries: deliveryNames(shareDeliveries(job)),
      held: bases.flatMap(({ mark }) => (held.has(mark) ? [mark] : [])),
    }),
  };
}
