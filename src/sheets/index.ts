/** plate + ledger -> sheets: a retained scene of strokes, fills, texts and groups, each with a role, never a colour. */

export { drawSheet, hasRoomOn } from "./draw-sheet.js";
export { drawLetter, type LetterRequest } from "./letter.js";
export { pieceRequest } from "./piece-request.js";
export { hasPlanRoom } from "./plan/choose-layout.js";
export { drawPlanSheets } from "./plan/draw-plan.js";
export type { PlanRequest } from "./plan/request.js";
export type { NamedFile, SheetRequest } from "./request.js";
export type * from "./scene.js";
export type { SettingRequest } from "./setting/request.js";
export { drawSettingSheet } from "./setting/setting-sheet.js";
export { type Collision, findCollisions, findTextCollisions, type TextCollision } from "./text-collisions.js";
