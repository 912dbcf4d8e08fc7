import {
  type Clause,
  clause,
  hannSeparation,
  type LineMultiple,
  type MapMeeting,
  type Separation,
  type Showing,
  showQuantity,
  tradePractice,
} from '@soundpost/core';
import { type Explain, step } from '../derivation/explained.ts';

const practice: readonly Clause[] = [
  clause(tradePractice, 'two lines of a Hann spectrum are told apart three line spacings apart'),
];

/** How far two lines lie apart, and the spacing and the record that tell them apart. */
export function explainedSeparation(
  a: LineMultiple,
  b: LineMultiple,
  here: Separation,
  of: 'difference' | 'resolution' | 'recordLength',
  showing: Showing,
): Explain | undefined {
  if (here[of] === undefined) return undefined;
  const hertz = (value: number, digits = 4) => showQuantity('frequency', value, { ...showing, digits });
  const [one, other] = here.frequencies;
  const difference = hertz(here.difference);
  const apart = step('Δf = |f_a − f_b|', `|${hertz(one, 10)} − ${hertz(other, 10)}|`, difference);
  const spacing =
    here.resolution === undefined
      ? undefined
      : step(
          'df = Δf / d',
          `${hertz(here.difference, 6)} / ${hannSeparation}`,
          hertz(here.resolution),
          `d: ${hannSeparation} line spacings, with a Hann window`,
        );
  const record =
    here.recordLength === undefined || here.resolution === undefined
      ? undefined
      : step('T = 1 / df', `1 / ${hertz(here.resolution, 6)}`, showQuantity('duration', here.recordLength, showing));
  const told = { difference: [apart], resolution: [apart, spacing], recordLength: [apart, spacing, record] }[of];
  const titles = { difference: 'How far apart', resolution: 'Line spacing needed', recordLength: 'Record needed' };
  return () => ({
    title: `${titles[of]}: ${multiple(a)} and ${multiple(b)}`,
    sentence: {
      difference: `Here the two lie ${difference} apart.`,
      resolution: `Two peaks with a dip between them ask for lines a third as far apart as they are.`,
      recordLength: `A record gives lines one over its length apart, so it must last that long.`,
    }[of],
    numbers: [
      { name: multiple(a), shown: hertz(one, 6) },
      { name: multiple(b), shown: hertz(other, 6) },
      { name: 'apart', shown: difference },
    ],
    steps: told.flatMap((each) => each ?? []),
    sources: practice,
  });
}

/** How far an order stays from something that stands still. */
export function explainedAway(
  { band: { low, high }, standing, order, harmonic }: MapMeeting,
  frequency: number,
  relative: number,
  showing: Showing,
): Explain {
  const hertz = (value: number) => showQuantity('frequency', value, { ...showing, digits: 8 });
  const shown = showQuantity('fraction', relative, showing);
  const name = multiple({ line: order, harmonic });
  const below = frequency < low;
  return () => ({
    title: `${name} beside ${standing.name}`,
    sentence:
      relative === 0
        ? `The order lies inside the band of what stands still.`
        : `The order lies ${below ? 'below' : 'above'} the band of what stands still, ${shown} from its edge.`,
    numbers: [
      { name, shown: hertz(frequency) },
      { name: standing.name, shown: low === high ? hertz(low) : `${hertz(low)} to ${hertz(high)}` },
    ],
    steps:
      relative === 0
        ? [{ formula: 'f_low ≤ f ≤ f_high', substituted: `${hertz(low)} ≤ ${hertz(frequency)} ≤ ${hertz(high)}` }]
        : [
            below
              ? step('d = 1 − f / f_low', `1 − ${hertz(frequency)} / ${hertz(low)}`, shown)
              : step('d = f / f_high − 1', `${hertz(frequency)} / ${hertz(high)} − 1`, shown),
          ],
    sources: order.sources,
  });
}

/** Where an order lies: so many times its line. */
export function explainedOrder({ order, harmonic }: MapMeeting, frequency: number, showing: Showing): Explain {
  const shown = showQuantity('frequency', frequency, showing);
  return () => ({
    title: multiple({ line: order, harmonic }),
    sentence: `${order.meaning}; ${harmonic === 1 ? 'the line itself' : `${harmonic} times the line`} lies at ${shown}.`,
    numbers: [{ name: order.name, shown: showQuantity('frequency', frequency / harmonic, showing) }],
    steps: [
      step(
        'f = h · f_1',
        `${harmonic} · ${showQuantity('frequency', frequency / harmonic, { ...showing, digits: 6 })}`,
        shown,
      ),
    ],
    sources: order.sources,
  });
}

/** The band of what stands still. */
export function explainedStanding({ standing, band: { low, high } }: MapMeeting, showing: Showing): Explain {
  const hertz = (value: number) => showQuantity('frequency', value, showing);
  return () => ({
    title: standing.name,
    sentence: `${standing.meaning}: it stays where it is at every speed.`,
    numbers: [
      { name: 'from', shown: hertz(low) },
      { name: 'to', shown: hertz(high) },
    ],
    steps: standing.form.known
      ? [
          {
            formula: 'f = f_0 · (1 ± s)',
            substituted: `f = ${hertz(low)} to ${hertz(high)}`,
            notes: ['f_0 as the element states it, s half the width of its peak'],
          },
        ]
      : [],
    sources: standing.sources,
  });
}

/** Speeds at which an order is inside a band. */
export function explainedMet(meeting: MapMeeting, at: string, showing: Showing): Explain {
  const { standing, order, harmonic, inside, nearest } = meeting;
  if (inside.length === 0) {
    return () => {
      const away = explainedAway(meeting, nearest.frequency, nearest.relative, showing)();
      return { ...away, numbers: [...away.numbers, { name: 'nearest', shown: at }] };
    };
  }
  const hertz = (value: number) => showQuantity('frequency', value, showing);
  return () => ({
    title: `${multiple({ line: order, harmonic })} meets ${standing.name}`,
    sentence: `The order lies in the band of what stands still at ${at}.`,
    numbers: [
      { name: 'met at', shown: at },
      { name: 'order there', shown: hertz(nearest.frequency) },
      { name: standing.name, shown: hertz(meeting.band.low) },
    ],
    steps: [
      {
        formula: 'h · f(n) = f_0, solved for n over the range',
        notes: [`h = ${harmonic}; the crossing is found by halving to the last digit`],
      },
    ],
    sources: [...order.sources, ...standing.sources],
  });
}

function multiple({ line, harmonic }: LineMultiple): string {
  return `${harmonic === 1 ? '' : `${harmonic} × `}${line.name}`;
}
