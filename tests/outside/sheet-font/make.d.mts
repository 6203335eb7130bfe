/** Texts of the files by their paths in the project. */
export function makeFontFiles(): Promise<ReadonlyMap<string, string>>;
