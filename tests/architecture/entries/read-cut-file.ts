export { readCutFile } from "../../../src/index.js";
