/** What the owner says about keeping a part number. */
export const keepingRules = ['free', 'pinned', 'forbidden'] as const;
export type KeepingRule = (typeof keepingRules)[number];

/** A part number the plant could keep, with what it costs. Money is in one unit throughout. */
export interface PartType {
  readonly name: string;
  /** Price of one piece. */
  readonly price: number;
  /** What keeping the part number costs over the horizon, however few pieces are in use. */
  readonly keeping: number;
  /** Failures of one piece in use within one lead time, expected. */
  readonly failuresPerLeadTime: number;
  /** Pieces in the store already; they are used before any is bought. */
  readonly inStock: number;
  readonly rule: KeepingRule;
}

/** One way to meet a requirement: the part numbers it takes, one piece of each, and what it costs beside their prices. */
export interface Way {
  readonly name: string;
  /** Places in the list of part types, ascending, none twice. */
  readonly parts: readonly number[];
  /** Fitting, cable, channel, travelling: whatever one such point costs over the horizon beside its pieces. */
  readonly beside: number;
}

/** Something that must be met, as often as there are equal points, by any of its ways. */
export interface Need {
  readonly name: string;
  readonly points: readonly string[];
  readonly ways: readonly Way[];
}

/** What is to be decided. */
export interface KeepingProblem {
  readonly types: readonly PartType[];
  readonly requirements: readonly Need[];
  /** Spares are kept so that within a lead time the store is not empty with at least this probability. */
  readonly serviceLevel: number;
  /** At most so many of the listed types, where the owner says so. */
  readonly atMost?: { readonly types: readonly number[]; readonly count: number };
}
