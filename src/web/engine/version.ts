/** Version of the program, as sheets and records name it. */
const FOUND: Readonly<Record<string, string>> = import.meta.glob("../../../package.json", {
  import: "version",
  eager: true,
});

/** From package.json. */
export const VERSION: string = Object.values(FOUND)[0] ?? "";
