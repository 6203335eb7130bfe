/** What the fuzz is made of: a class draws cases, a case is run to one of three ends; an exception is a fault of the program. */

/** ok: answered; held: answered, with something that is not to be cut; fault: refused with what is wrong with the input. */
export type Ending = "ok" | "held" | "fault";

/** One input, with what to keep of it where it brings the program down. */
export interface FuzzCase {
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  run(): Ending | Promise<Ending>;
}

/** Draws of one case. */
export interface Draw {
  /** A whole number from 0 up to, not including, `below`. */
  below(below: number): number;
  /** One of the items, which are not none. */
  pick<T>(items: readonly T[]): T;
  /** True once in so many times. */
  once(times: number): boolean;
}

/** One kind of hostile input. */
export interface FuzzClass {
  readonly name: string;
  /** How many cases a whole run draws. */
  readonly cases: number;
  draw(random: Draw, index: number): FuzzCase;
}

/** What was made is not what was asked for: worse than an exception. */
export class WrongResult extends Error {
  override readonly name = "WrongResult";
}
