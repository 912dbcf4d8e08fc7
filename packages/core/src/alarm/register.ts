import { exactCounts, type InputCard } from '../chain/formulas/counts-scaling.ts';
import { loopCurrent } from '../chain/formulas/loop-scaling.ts';
import { notLike } from '../demand/zones/zone-of.ts';
import type { Said } from '../finding/measure.ts';
import {
  type Answer,
  answer,
  fromAll,
  type Level,
  level,
  type Missing,
  type Stated,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';

/** What a set point does: tells somebody, or stops the machine. */
export const deeds = ['alert', 'trip'] as const;
export type Deed = (typeof deeds)[number];

/** A level to be registered, why it is what it is, and how long, in seconds, it must stand before it acts. */
export interface RegisterEntry {
  /** `alert`, `trip`, `zero`, or the name of a further set point. */
  readonly name: string;
  /** Of a row that acts; rows without it are read at the acceptance of the loop. Rows called `alert` and `trip` act. */
  readonly does?: Deed;
  readonly level: Answer<Level>;
  readonly because: Said;
  /** Of a row that acts. */
  readonly delay?: Stated<number>;
}

/** What 4 and 20 mA mean. */
export interface LoopScale {
  readonly low: Level;
  readonly high: Level;
}

/** A voltage output: volts per coherent SI unit of what is measured, with the detector kept. */
export interface VoltageScale {
  readonly of: Level['quantity'];
  readonly voltsPer: number;
}

/** The way of a point to whoever reads it; what it does not have is left out, what is not known is unanswered. */
export interface RegisterScales {
  readonly loop?: Answer<LoopScale>;
  readonly card?: Answer<InputCard>;
  readonly voltage?: Answer<VoltageScale>;
}

export interface RegisterRow extends RegisterEntry {
  /** Current on the straight line of the scale, in amperes; a transmitter may hold its current before it. */
  readonly current?: Answer<number>;
  /** Where it lies in the range: 0 at 4 mA, 1 at 20 mA. */
  readonly share?: Answer<number>;
  readonly counts?: Answer<number>;
  readonly voltage?: Answer<Level<'voltage'>>;
}

/**
 * The register of a point: each level as it is read in engineering units, on the loop, on the card and at a voltage
 * output. A level of another quantity or detector than the scale has no current: rms is not converted to peak unseen.
 */
export function register(entries: readonly RegisterEntry[], scales: RegisterScales): readonly RegisterRow[] {
  return entries.map((entry) => registerRow(entry, scales));
}

function registerRow(entry: RegisterEntry, { loop, card, voltage }: RegisterScales): RegisterRow {
  const current = loop && onLoop(entry, loop);
  const counts =
    current && card && fromAll({ current, card }, (known) => Math.round(exactCounts(known.current, known.card)));
  return {
    ...entry,
    ...(current === undefined
      ? {}
      : { current, share: fromAll({ current }, (known) => (known.current - 0.004) / 0.016) }),
    ...(counts === undefined ? {} : { counts }),
    ...(voltage === undefined ? {} : { voltage: atOutput(entry, voltage) }),
  };
}

function onLoop(entry: RegisterEntry, loop: Answer<LoopScale>): Answer<number> {
  const both = fromAll({ loop, level: entry.level }, (known) => known);
  return thenAnswer(both, ({ loop: { low, high }, level: each }) => {
    const missing = scaleMismatch(entry.name, each, high) ?? scaleMismatch('the low end of the scale', low, high);
    return missing === undefined ? answer(loopCurrent(each.value, low.value, high.value)) : unanswered([missing]);
  });
}

/** A band is compared only where both state one: a loop scale often states none. */
function scaleMismatch(name: string, each: Level, scale: Level): Missing | undefined {
  const banded = each.band === undefined && scale.band !== undefined ? { ...each, band: scale.band } : each;
  const asked = notLike(banded, scale);
  return asked === undefined ? undefined : { of: name, what: asked };
}

function atOutput(entry: RegisterEntry, voltage: Answer<VoltageScale>): Answer<Level<'voltage'>> {
  const both = fromAll({ voltage, level: entry.level }, (known) => known);
  return thenAnswer(both, ({ voltage: { of, voltsPer }, level: each }) =>
    each.quantity === of
      ? answer(level('voltage', each.value * voltsPer, each.detector, each.band))
      : unanswered([{ of: entry.name, what: `a level as ${of} (stated: ${each.quantity})` }]),
  );
}
