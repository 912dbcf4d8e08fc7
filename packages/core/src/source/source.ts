/** How the people of this house know what a source says. */
export type Acquaintance = 'read' | 'second-hand' | 'from memory' | 'common practice, no source' | 'computed here';

/** A standard edition, handbook, paper or data set. One file each; a new edition is a new file, never an edit. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly how: Acquaintance;
  /** What of it is used here, and any doubt about it. */
  readonly note: string;
}

export function source(definition: Source): Source {
  return definition;
}

/** A place in a source: the clause, table or example that backs a statement. */
export interface Clause {
  readonly source: Source;
  readonly place?: string;
  /** Where this statement is known otherwise than the source as a whole. */
  readonly how?: Acquaintance;
}

export function clause(cited: Source, place?: string, how?: Acquaintance): Clause {
  return {
    source: cited,
    ...(place === undefined ? {} : { place }),
    ...(how === undefined ? {} : { how }),
  };
}

/** `JCGM 100:2008, H.1 (second-hand)`. */
export function showClause(cited: Clause): string {
  const place = cited.place === undefined ? '' : `, ${cited.place}`;
  return `${cited.source.title}${place} (${cited.how ?? cited.source.how})`;
}
