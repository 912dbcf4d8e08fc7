import {
  clause,
  linesApart,
  type Requirement,
  type Said,
  type Showing,
  type SpectrumSet,
  samplingPractice,
  showBand,
  showMeasure,
  showNumber,
  showQuantity,
  tradePractice,
} from '@soundpost/core';
import type { Derivation } from '../derivation/derivation.ts';
import { capital, type Explain, type NamedNumber, step, workedSteps } from '../derivation/explained.ts';

export type SettingName =
  | 'highest frequency'
  | 'lines'
  | 'line spacing'
  | 'record'
  | 'sampling rate'
  | 'samples'
  | 'averages'
  | 'band before demodulation'
  | 'raw sampling rate';

interface Told {
  readonly sentence: string;
  readonly numbers: readonly NamedNumber[];
  readonly steps: readonly Derivation[];
}

const practice = clause(tradePractice, 'settings of spectra by what must be seen in them');
const sampling = clause(samplingPractice);

/** Why a setting of a record is what it is: what asked for it, and the formula by which it follows. */
export function explainedSetting(set: SpectrumSet, name: SettingName, shown: string, showing: Showing): Explain {
  return () => {
    const told = tellers[name](set, shown, showing);
    return {
      title: `${capital(name)} of the ${set.name} record`,
      sentence: told.sentence,
      numbers: [{ name, shown }, ...told.numbers],
      steps: told.steps,
      sources: [practice, sampling],
    };
  };
}

const tellers: Readonly<Record<SettingName, (set: SpectrumSet, shown: string, showing: Showing) => Told>> = {
  'highest frequency': highestFrequency,
  lines,
  'line spacing': (set, shown, showing) => ({
    sentence: `The record shows lines ${shown} apart: its highest frequency shared among its lines${set.apart === undefined ? '' : `. Needed: ${because(set.apart)}`}.`,
    numbers: [hertz('highest frequency', set.highestFrequency, showing), count('lines', set.lines, showing)],
    steps: following(set, 'resolution', showing, () =>
      step('df = F_max / L', `${fine(set.highestFrequency, showing)} / ${plain(set.lines, showing)}`, shown),
    ),
  }),
  record: (set, shown, showing) => ({
    sentence: `A record lasts ${shown}, as long as its lines ask for${set.last === undefined ? '' : `. Needed: ${because(set.last)}`}.`,
    numbers: [
      count('lines', set.lines, showing),
      hertz('highest frequency', set.highestFrequency, showing),
      ...(set.last === undefined
        ? []
        : [{ name: 'at least', shown: showQuantity('duration', set.last.value, showing) }]),
    ],
    steps: following(set, 'record-length', showing, () =>
      step('T = L / F_max', `${plain(set.lines, showing)} / ${fine(set.highestFrequency, showing)}`, shown),
    ),
  }),
  'sampling rate': (set, shown, showing) =>
    set.orders === undefined
      ? {
          sentence: `An analyser that shows up to ${hertzText(set.highestFrequency, showing)} samples 2.56 times as fast.`,
          numbers: [hertz('highest frequency', set.highestFrequency, showing)],
          steps: following(set, 'sampling-rate', showing, () =>
            step('f_s = 2.56 · F_max', `2.56 · ${fine(set.highestFrequency, showing)}`, shown),
          ),
        }
      : {
          sentence: `The samples follow the shaft: so many a turn, at its highest speed ${shown}.`,
          numbers: [
            count('samples a turn', set.orders.samplesPerTurn, showing),
            hertz('turns a second', turnsPerSecond(set), showing),
          ],
          steps: [
            step(
              'f_s = N_turn · f_shaft',
              `${plain(set.orders.samplesPerTurn, showing)} · ${fine(turnsPerSecond(set), showing)}`,
              shown,
            ),
          ],
        },
  samples: (set, shown, showing) =>
    set.orders === undefined
      ? {
          sentence: `One record holds ${shown} samples: 2.56 for each line.`,
          numbers: [count('lines', set.lines, showing)],
          steps: following(set, 'samples', showing, () =>
            step('N = 2.56 · L', `2.56 · ${plain(set.lines, showing)}`, shown),
          ),
        }
      : {
          sentence: `One record holds ${shown} samples: so many a turn, over whole turns.`,
          numbers: [
            count('samples a turn', set.orders.samplesPerTurn, showing),
            count('turns', set.orders.turns, showing),
          ],
          steps: [
            step(
              'N = N_turn · turns',
              `${plain(set.orders.samplesPerTurn, showing)} · ${plain(set.orders.turns, showing)}`,
              shown,
            ),
          ],
        },
  averages: (set, shown, showing) => ({
    sentence:
      set.averages === 1
        ? 'One record, triggered by the turn, is shown as it is: nothing is averaged.'
        : `${shown} averages: noise scatters by one over the root of their number, here by ${showNumber(1 / Math.sqrt(set.averages), 3, showing.decimal)}. A choice of the trade, not computed.`,
    numbers: [],
    steps: [
      step(
        'scatter = 1 / √n',
        `1 / √${plain(set.averages, showing)}`,
        showNumber(1 / Math.sqrt(set.averages), 4, showing.decimal),
      ),
    ],
  }),
  'band before demodulation': (set, shown, showing) => ({
    sentence: `Before demodulation the band of the bursts is passed, ${shown}: that of the target as it is stated.`,
    numbers:
      set.envelopeBand === undefined
        ? []
        : [{ name: 'band of the target', shown: showBand(set.envelopeBand, showing) }],
    steps: [],
  }),
  'raw sampling rate': (set, shown, showing) => ({
    sentence: `The record before demodulation is sampled for the whole of its band: 2.56 times its upper end.`,
    numbers: set.envelopeBand === undefined ? [] : [hertz('upper end of the band', set.envelopeBand.high, showing)],
    steps:
      set.envelopeBand === undefined
        ? []
        : [step('f_s = 2.56 · f_high', `2.56 · ${fine(set.envelopeBand.high, showing)}`, shown)],
  }),
};

function highestFrequency(set: SpectrumSet, shown: string, showing: Showing): Told {
  const { reach, orders } = set;
  if (reach !== undefined) {
    return {
      sentence: `The spectrum ends at ${shown}: the next of 1, 2, 5 · 10ⁿ above the farthest that must be shown, ${because(reach)}.`,
      numbers: [hertz('must reach beyond', reach.value, showing)],
      steps: [
        step(
          'F_max = next(f_reach)',
          `next(${fine(reach.value, showing)})`,
          shown,
          'next: the next of 1, 2, 5 · 10ⁿ above it',
        ),
      ],
    };
  }
  if (orders !== undefined) {
    return {
      sentence: `The record shows orders of the shaft up to ${showNumber(orders.highest, 4, showing.decimal)}; at its highest speed that is ${shown}.`,
      numbers: [count('highest order', orders.highest, showing), hertz('turns a second', turnsPerSecond(set), showing)],
      steps: [
        step('F_max = n · f_shaft', `${plain(orders.highest, showing)} · ${fine(turnsPerSecond(set), showing)}`, shown),
      ],
    };
  }
  return { sentence: saidBy(set.reasons, showing), numbers: [], steps: [] };
}

function lines(set: SpectrumSet, shown: string, showing: Showing): Told {
  const { apart, last, orders } = set;
  if (orders !== undefined) {
    return {
      sentence: `So many lines come of ${plain(orders.turns, showing)} whole turns of ${plain(orders.samplesPerTurn, showing)} samples each.`,
      numbers: [count('turns', orders.turns, showing), count('samples a turn', orders.samplesPerTurn, showing)],
      steps: [
        step(
          'L = turns · N_turn / 2.56',
          `${plain(orders.turns, showing)} · ${plain(orders.samplesPerTurn, showing)} / 2.56`,
          shown,
        ),
      ],
    };
  }
  const given = fewestLines(set);
  if (given !== undefined && given !== set.lines) {
    return {
      sentence: 'A record of that length, shown up to that frequency, has so many lines.',
      numbers: [
        { name: 'record', shown: showQuantity('duration', set.recordLength, showing) },
        hertz('highest frequency', set.highestFrequency, showing),
      ],
      steps: [
        step(
          'L = T · F_max',
          `${showQuantity('time', set.recordLength, { ...showing, digits: 7 })} · ${fine(set.highestFrequency, showing)}`,
          shown,
        ),
      ],
    };
  }
  const F = fine(set.highestFrequency, showing);
  const asked = [
    ...(apart === undefined ? [] : [`${linesApart} · ${F} / ${fine(apart.value, showing)}`]),
    ...(last === undefined ? [] : [`${showQuantity('time', last.value, { ...showing, digits: 6 })} · ${F}`]),
  ];
  const letters = [
    ...(apart === undefined ? [] : [`${linesApart} · F_max / Δf`]),
    ...(last === undefined ? [] : ['T_least · F_max']),
  ];
  const note = 'fewest: the fewest of 400 · 2ⁿ that are not below any of these, up to 409600';
  return {
    sentence:
      asked.length === 0
        ? 'Nothing asks for more than the fewest lines a spectrum is taken with.'
        : `The fewest of 400 · 2ⁿ lines that do what is asked: ${[apart, last].flatMap((each) => (each === undefined ? [] : [because(each)])).join('; ')}.`,
    numbers: [
      ...(apart === undefined ? [] : [hertz('must tell apart', apart.value, showing)]),
      ...(last === undefined ? [] : [{ name: 'must last', shown: showQuantity('duration', last.value, showing) }]),
      hertz('highest frequency', set.highestFrequency, showing),
    ],
    steps: [
      asked.length === 0
        ? step('L = fewest(0)', 'fewest(0)', shown, note)
        : step(`L = fewest(${letters.join(', ')})`, `fewest(${asked.join(', ')})`, shown, note),
    ],
  };
}

/** What the rule of 400 · 2ⁿ lines would give: a record counted in turns of a crank follows another. */
function fewestLines({ apart, last, highestFrequency: F }: SpectrumSet): number | undefined {
  const least = Math.max(400, apart === undefined ? 0 : (linesApart * F) / apart.value, (last?.value ?? 0) * F);
  const doubled = 400 * 2 ** Math.ceil(Math.log2(least / 400) - 1e-9);
  return Number.isFinite(doubled) ? Math.min(doubled, 409_600) : undefined;
}

/** By the working of spectrum settings where it takes these lines; else by the same formula in plain. */
function following(
  set: SpectrumSet,
  output: string,
  showing: Showing,
  otherwise: () => Derivation,
): readonly Derivation[] {
  const values = { highestFrequency: set.highestFrequency, lines: set.lines };
  const worked = Number.isInteger((set.lines * 64) / 25)
    ? workedSteps('spectrum-settings', values, output, { ...showing, digits: 6 })
    : [];
  return worked.length > 0 ? worked : [otherwise()];
}

function turnsPerSecond({ samplingRate, orders }: SpectrumSet): number {
  return samplingRate / (orders?.samplesPerTurn ?? 1);
}

function because({ why }: Requirement): string {
  return why;
}

function saidBy(reasons: readonly Said[], showing: Showing): string {
  return `${capital(reasons.map((each) => showMeasure(each, showing)).join('; '))}.`;
}

function fine(value: number, showing: Showing): string {
  return showQuantity('frequency', value, { ...showing, digits: 6 });
}

function hertzText(value: number, showing: Showing): string {
  return showQuantity('frequency', value, showing);
}

function hertz(name: string, value: number, showing: Showing): NamedNumber {
  return { name, shown: hertzText(value, showing) };
}

function plain(value: number, { decimal }: Showing): string {
  return showNumber(value, 7, decimal);
}

function count(name: string, value: number, showing: Showing): NamedNumber {
  return { name, shown: plain(value, showing) };
}
