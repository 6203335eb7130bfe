export { fitPlate } from "../../../src/index.js";
