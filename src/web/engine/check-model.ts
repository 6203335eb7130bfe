/** What a check in text answers. */

/** The text as a terminal of 100 columns would show it. */
export interface CheckAnswer {
  readonly text: string;
  readonly isHeld: boolean;
  /** Warnings of the job. */
  readonly said: readonly string[];
}
