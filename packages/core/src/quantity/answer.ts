/** Something a computation needed and was not told. */
export interface Missing {
  /** Whose it is: `transducer ACC-100`, `machine P-301 / motor`. */
  readonly of: string;
  /** What is missing there: `mounted resonance`. */
  readonly what: string;
}

/** A computed value, or the names of what stands in its way. Unknown is a value, never zero and never a default. */
export type Answer<T> =
  | { readonly known: true; readonly value: T }
  | { readonly known: false; readonly missing: readonly Missing[] };

export function answer<T>(value: T): Answer<T> {
  return { known: true, value };
}

export function unanswered(missing: readonly Missing[]): Answer<never> {
  return { known: false, missing };
}

type Answers = Readonly<Record<string, Answer<unknown>>>;
type ValuesOf<A extends Answers> = { readonly [K in keyof A]: A[K] extends Answer<infer T> ? T : never };

/** Computes from several answers: known when all are, otherwise with everything that is missing, once each. */
export function fromAll<A extends Answers, R>(answers: A, compute: (values: ValuesOf<A>) => R): Answer<R> {
  const missing = Object.values(answers).flatMap((each) => (each.known ? [] : each.missing));
  if (missing.length > 0) return unanswered(distinct(missing));
  const values = Object.fromEntries(
    Object.entries(answers).map(([key, each]) => [key, each.known ? each.value : null]),
  );
  return answer(compute(values as ValuesOf<A>));
}

/** Like fromAll, for a computation that may itself end in an unknown. */
export function thenAnswer<T, R>(first: Answer<T>, compute: (value: T) => Answer<R>): Answer<R> {
  return first.known ? compute(first.value) : first;
}

function distinct(missing: readonly Missing[]): readonly Missing[] {
  return [...new Map(missing.map((each) => [`${each.of}/${each.what}`, each])).values()];
}
