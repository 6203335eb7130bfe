/** A fault of the program, not of the input: what was made does not say what it was made from. */
export class ProgramFault extends Error {
  override readonly name = "ProgramFault";
}
