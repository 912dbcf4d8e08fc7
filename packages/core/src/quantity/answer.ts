/** Something a computation needed and was not told. */
export interface Missing {
  /** Whose it is: `transducer ACC-100`, `machine P-301 / motor`. */
  readonly of: string;
  /** What is missing there: `mounted resonance`. */
  readonly what: string;
}

/** `the Uo and Po of supply ZB-28 and the mass of transducer ACC-100`: each owner once. */
export function theMissing(missing: readonly Missing[]): string {
  return ownersOf(missing)
    .map(([of, whats]) => `the ${listed(whats)} of ${of}`)
    .join(' and ');
}

/** The same as questions: `What are the Uo and Po of supply ZB-28?`. */
export function askMissing(missing: readonly Missing[]): string {
  return ownersOf(missing)
    .map(([of, whats]) => `What ${whats.length === 1 ? 'is' : 'are'} the ${listed(whats)} of ${of}?`)
    .join(' ');
}

function ownersOf(missing: readonly Missing[]): readonly (readonly [string, readonly string[]])[] {
  const owners = [...new Set(missing.map((each) => each.of))];
  return owners.map((of) => [of, missing.filter((each) => each.of === of).map((each) => each.what)]);
}

/** A word that all of them begin with stands once: `certificate Uo, Io and Po`. */
function listed(whats: readonly string[]): string {
  const first = whats[0]!.slice(0, whats[0]!.indexOf(' ') + 1);
  const shared = first === 'certificate ' && whats.every((each) => each.startsWith(first));
  const short = whats.map((each, index) => (shared && index > 0 ? each.slice(first.length) : each));
  return short.length === 1 ? short[0]! : `${short.slice(0, -1).join(', ')} and ${short.at(-1)}`;
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
