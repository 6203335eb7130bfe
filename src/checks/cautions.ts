/** Cautions: the words of each stand here alone; an output picks those that concern it. */
import { fieldChanges } from "../standards/osha-1926/field-changes.js";

/** 29 CFR 1926.755(b)(1) is of rods: the citation stands with them, and the holes outside of it. */
const noFieldChange = (how: string): string =>
  `Rods are not bent, cut, welded or replaced (${fieldChanges.edition}.${fieldChanges.clause}), nor holes ${how}, without the approval of the engineer of record.`;

const onlyDropsOn = (how: string): string => `Dropping on says nothing of line, level or turn: ${how}.`;

/** Every caution by its name. */
export const CAUTION = {
  fieldChange: noFieldChange("enlarged"),
  fieldChangeOrSlot: noFieldChange("enlarged or slotted"),
  guardRods: "Guard projecting rods.",
  noLifting: "The template is not a lifting or working platform.",
  releasedOnly: "Set rods from released drawings only.",
  surveyAgain: "Survey the rods again after the pour.",
  localCodes: "Local codes and licensed practice govern. The program reports; the engineer decides.",
  noMeasurement: "A probability rests on the errors that the job names; it is no measurement. Engineer to decide.",
  freeOfErection: onlyDropsOn("the plate is taken free of the erection tolerance"),
  erectionApart: onlyDropsOn("those are told apart"),
  checkBiggerHole:
    "With a bigger hole check again the washer over it (washer-cover), the washer to the edge (washer-on-plate) and the hole to the edge (base-plate-edge); it needs the approval of the engineer of record.",
  remedyOnlyDropsOn: "Larger holes and slots are what would let the plate drop on, no more. Engineer to decide.",
  remedyNotChecked:
    "Not checked: strength of rods and anchorage, shear through enlarged holes, bearing, welds of washers.",
} as const;

/** Cautions of ledger and terminal, one a line. */
export const CAUTIONS: readonly string[] = [
  CAUTION.fieldChange,
  CAUTION.guardRods,
  CAUTION.noLifting,
  CAUTION.releasedOnly,
  CAUTION.surveyAgain,
  CAUTION.localCodes,
];

/** The same in one paragraph, for a screen. */
export const CAUTIONS_IN_SHORT =
  `no rod is bent, cut, welded or replaced (${fieldChanges.edition}.${fieldChanges.clause}) and no hole enlarged without the engineer of record; ` +
  "guard projecting rods; the template is no lifting or working platform; set from released drawings only; survey again after the pour; " +
  "local codes and licensed practice govern; the engineer decides.";
