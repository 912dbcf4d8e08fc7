import { answer, type Fields, stated, unanswered } from '../../quantity/index.ts';
import { unitFor } from '../../quantity/unit-expression.ts';
import type { RehearsedRecord } from '../../rehearsal/index.ts';
import type { RecordedUnit } from '../../signal/recording.ts';
import { type ChannelMeasures, channelMeasures } from '../channel-measures.ts';
import type { ChannelStatement, MeasuredRecord } from '../measured-record.ts';
import type { Occasion, OccasionName } from '../occasion/kinds.ts';

/** Numbers in a unit as a file would state it. */
export function recordedIn(
  written: string,
  quantity: 'voltage' | 'acceleration' | 'velocity' | 'current',
): RecordedUnit {
  const { factor, dimension } = unitFor(written, quantity);
  return { written, factor, dimension, quantity };
}

/** An occasion with some of its fields filled in; the others stand there as not stated. */
export function occasionOf(kind: OccasionName, values: Readonly<Record<string, unknown>> = {}): Occasion {
  const filled = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, stated(value)]));
  return { kind, sheet: { of: kind, values: filled as Fields & never } } as unknown as Occasion;
}

/** What is said of a channel of volts straight at the terminal. */
export function inVolts(more: Partial<ChannelStatement> = {}): ChannelStatement {
  const missing = (what: string) => unanswered([{ of: 'the record', what }]);
  return {
    unit: answer(recordedIn('V', 'voltage')),
    sensitivity: missing('sensitivity'),
    gain: answer(1),
    coupling: answer('alternating'),
    speed: missing('speed'),
    ...more,
  };
}

/** Samples measured as a file of them would be, in blocks. */
export function measuresOf(samples: Float64Array, rate: number, block = 10_000): ChannelMeasures {
  const gathering = channelMeasures({ rate: answer(rate), samples: samples.length });
  for (let start = 0; start < samples.length; start += block) gathering.take(samples.subarray(start, start + block));
  return gathering.result();
}

/** A rehearsed record as the acceptance meets it: numbers of a file, said to be made at its point on an occasion. */
export function asMeasured(
  record: RehearsedRecord,
  occasion: Occasion,
  more: { readonly recording?: string; readonly channel?: string; readonly statement?: Partial<ChannelStatement> } = {},
): MeasuredRecord {
  return {
    recording: more.recording ?? `${occasion.kind}.wav`,
    channel: more.channel ?? '1',
    at: record.of,
    occasion,
    statement: inVolts({
      coupling: answer(record.coupling === 'direct' ? 'direct' : 'alternating'),
      ...more.statement,
    }),
    measures: measuresOf(record.volts, record.rate),
  };
}
