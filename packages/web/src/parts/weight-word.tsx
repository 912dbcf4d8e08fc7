interface WeightWords {
  readonly sign: string;
  readonly word: string;
  /** What it does to the design. */
  readonly does: string;
  readonly look: string;
}

/** Gravest first, as the core orders them. */
const words: Readonly<Record<string, WeightWords>> = {
  'blocks-issue': { sign: '✗', word: 'Blocks issue', does: 'The design cannot be issued with it.', look: 'fails' },
  question: { sign: '?', word: 'Question', does: 'It waits for an answer.', look: 'cannot-tell' },
  warns: { sign: '!', word: 'Warns', does: 'It is printed with the design.', look: 'warns' },
  notes: { sign: '○', word: 'Notes', does: 'It explains.', look: 'quiet' },
};

export function weightWords(weight: string): WeightWords {
  return words[weight] ?? { sign: '', word: weight, does: '', look: 'quiet' };
}

/** The weight of a finding: shape and word first, colour last. */
export function WeightWord({ weight }: { readonly weight: string }) {
  const { sign, word, look } = weightWords(weight);
  return (
    <span className={`outcome ${look}`}>
      <span aria-hidden="true">{sign}</span> {word}
    </span>
  );
}
