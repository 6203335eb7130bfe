/** ISO 261/262 coarse pitches with the stress areas of ISO 898-1, in mm and mm2. */
import { millimetres } from "../../units/length.js";
import type { Confidence, StandardTable, ThreadRow } from "../model.js";
import { printedMillimetres } from "../sizes.js";

const COARSE = "coarse series (ISO 261/262)";
const NO_COARSE = "no coarse pitch in ISO 262; 6 mm (first fine choice) used by ISO 4034-type nuts >M64";

/** Size, pitch, tabulated stress area (null: none), computed stress area, confidence, note. */
export const metricThreads: StandardTable<ThreadRow> = {
  edition: "ISO 261",
  clause: "coarse series",
  rows: [
    row("M10", 1.5, null, 58, "pitch high, area computed", COARSE),
    row("M12", 1.75, 84.3, 84.3, "high", COARSE),
    row("M14", 2, 115, 115.4, "high", COARSE),
    row("M16", 2, 157, 156.7, "high", COARSE),
    row("M18", 2.5, 192, 192.5, "high", COARSE),
    row("M20", 2.5, 245, 244.8, "high", COARSE),
    row("M22", 2.5, 303, 303.4, "high", COARSE),
    row("M24", 3, 353, 352.5, "high", COARSE),
    row("M27", 3, 459, 459.4, "high", COARSE),
    row("M30", 3.5, 561, 560.6, "high", COARSE),
    row("M33", 3.5, 694, 693.6, "high", COARSE),
    row("M36", 4, 817, 816.7, "high", COARSE),
    row("M39", 4, 976, 975.8, "high", COARSE),
    row("M42", 4.5, 1120.9, 1120.9, "high", COARSE),
    row("M45", 4.5, 1306, 1306, "high", COARSE),
    row("M48", 5, 1473, 1473.1, "high", COARSE),
    row("M52", 5, 1758, 1757.8, "high", COARSE),
    row("M56", 5.5, 2030, 2030, "high", COARSE),
    row("M60", 5.5, null, 2362, "pitch high, area computed", COARSE),
    row("M64", 6, 2676, 2676, "high", COARSE),
    row("M68", 6, null, 3055.3, "pitch high, area computed", COARSE),
    row("M72", 6, null, 3459.7, "pitch high, area computed", NO_COARSE),
    row("M76", 6, null, 3889.3, "pitch high, area computed", NO_COARSE),
    row("M80", 6, null, 4344, "pitch high, area computed", NO_COARSE),
    row("M85", 6, null, 4947.8, "pitch high, area computed", NO_COARSE),
    row("M90", 6, null, 5590.8, "pitch high, area computed", NO_COARSE),
    row("M95", 6, null, 6273.1, "pitch high, area computed", NO_COARSE),
    row("M100", 6, null, 6994.6, "pitch high, area computed", NO_COARSE),
  ],
};

function row(
  size: string,
  pitch: number,
  stressArea: number | null,
  computedStressArea: number,
  confidence: Confidence,
  note: string,
): ThreadRow {
  const shape = { series: "metric coarse", threadsPerInch: null, pitch: millimetres(pitch) } as const;
  const diameter = printedMillimetres(size.slice(1));
  const source = "ISO 261/262 pitch; ISO 898-1 stress area";
  return { size, diameter, ...shape, stressArea, computedStressArea, source, confidence, note };
}
