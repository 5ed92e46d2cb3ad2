import type { Written } from "../calculate.ts";

/** A calculation worked out by other means than the program's, from inputs that none of its own examples has. */
export interface WorkedCase {
  readonly calculation: string;
  /** As a person writes them on the command line. */
  readonly inputs: Written;
  /** Every result that the calculation gives for them. */
  readonly results: Readonly<Record<string, number | string | readonly (number | string)[]>>;
  /** Relative difference allowed; 1e-6 when omitted. */
  readonly tolerance?: number;
  /** Lines that the working has to hold, word for word. */
  readonly working?: readonly string[];
  /** Where the numbers come from, and how they were worked out. */
  readonly source: string;
}
