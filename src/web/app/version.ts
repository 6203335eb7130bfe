/** Version of the program, as it stands on every sheet. */

const FOUND = import.meta.glob<string>("../../../package.json", { import: "version", eager: true });

/** As in `package.json`. */
export const VERSION: string = Object.values(FOUND)[0] ?? "";
