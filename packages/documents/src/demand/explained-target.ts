import {
  type DesignedPoint,
  type FrequencyReference,
  type Showing,
  type Stated,
  showNumber,
  showQuantity,
  showReference,
  type Target,
  type TargetStatement,
} from '@soundpost/core';
import type { Derivation } from '../derivation/derivation.ts';
import { capital, type Explain, step, typedNumber } from '../derivation/explained.ts';

const meanings = {
  smallest: 'the least that must be seen',
  largest: 'the most that must be survived',
  tolerance: 'how far a reading may lie off',
} as const;

/** A level or tolerance of a target: as its point states it, or as it was taken from an element of the machine. */
export function explainedTarget(
  { point, stated }: DesignedPoint,
  target: Target,
  key: keyof typeof meanings,
  shown: string,
): Explain | undefined {
  if (!target[key].known) return undefined;
  const statement = stated.statement.targets.find((each) => each.name === target.name);
  const entry = statement?.[key] as Stated<unknown> | undefined;
  const { by, from, sources } = target.origin;
  if (entry?.known !== true) return () => fromOrigin(target, capital(meanings[key]), shown);
  return () => {
    const typed = typedNumber(key, `target ${target.name} of ${point.of}`, entry, shown, meanings[key]);
    return { ...typed, sentence: `${typed.sentence} The target is ${by}, ${from}.`, sources };
  };
}

/** Where a target lies in frequency: as typed, or as so many times a line of the machine. */
export function explainedPlace(
  { point, stated }: DesignedPoint,
  target: Target,
  shown: string,
  showing: Showing,
): Explain {
  const statement: TargetStatement | undefined = stated.statement.targets.find((each) => each.name === target.name);
  const reference = statement?.frequency;
  const entry: Stated<unknown> | undefined = reference ?? statement?.band;
  if (reference?.known === true && reference.value.is === 'line')
    return () => ofLine(target, reference.value, shown, showing);
  if (entry?.known === true)
    return () =>
      typedNumber(
        reference === undefined ? 'band' : 'frequency',
        `target ${target.name} of ${point.of}`,
        entry,
        shown,
        'where it is looked for',
      );
  return () => fromOrigin(target, 'Where it is looked for', shown);
}

/** So many times a line whose frequency the machine tells. */
function ofLine(target: Target, reference: FrequencyReference, shown: string, showing: Showing) {
  const words = showReference(reference);
  const times = reference.is === 'line' ? reference.harmonic : 1;
  const line = reference.is === 'line' ? `${reference.line} at ${reference.state}` : words;
  const whole = target.frequencies.known ? target.frequencies.value[0] : undefined;
  const once = whole === undefined ? shown : showQuantity('frequency', whole / times, { ...showing, digits: 6 });
  const count = showNumber(times, 6, showing.decimal);
  return {
    title: `Frequency of ${target.name}`,
    sentence: `The file names a line of the machine, ${words}; the table of frequencies of the machine tells where that lies, and so the target lies at ${shown}.`,
    numbers: [
      { name: 'as named', shown: words },
      { name: 'the line itself', shown: once },
      { name: 'frequency', shown },
    ],
    steps: [
      step('f = h · f_line', `${count} · ${once}`, shown, `f_line: ${line}, as it opens in the table of frequencies`),
    ],
    sources: target.origin.sources,
  };
}

function fromOrigin({ name, origin: { by, from, sources } }: Target, meaning: string, shown: string) {
  return {
    title: `${meaning}: ${name}`,
    sentence: `${meaning}: ${by}, ${from}.`,
    numbers: [{ name: 'value', shown }],
    steps: [] as readonly Derivation[],
    sources,
  };
}

/** Anything else a point states. */
export function explainedStated(
  entry: Stated<unknown> | undefined,
  what: string,
  of: string,
  shown: string,
  meaning = '',
): Explain | undefined {
  return entry?.known === true ? () => typedNumber(what, of, entry, shown, meaning) : undefined;
}
