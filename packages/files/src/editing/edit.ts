/** One change of a YAML text, as a thing of its own: it can be kept, sent, and undone. */
export interface Edit {
  /** The keys that lead there; elements of a list by their number, from 0. */
  readonly path: readonly (string | number)[];
  /** The YAML text of what is put there, its lines as if it began in the first column; undefined takes the entry away. */
  readonly yaml?: string | undefined;
  /** The YAML text of the key the entry is called by from now on; then what stands there stays as it is. */
  readonly key?: string;
  /** What is new comes to stand before this entry; at the end where nothing is said. In a list it is always new then. */
  readonly before?: string | number;
}
