import { type Finding, finding, inWords, measured, measuredChange, type Said, said } from '@soundpost/core';
import type { RecordingRuleName } from './recording-rules.ts';

/** A record that goes on behind what was measured of it. */
export function longerThanMeasured(at: string, samples: number, most: number): Finding {
  return finding({
    rule: 'recording/measured-in-part',
    weight: 'notes',
    at,
    found: `${samples} samples, of which the first ${most} were measured`,
    limit: `${most} samples`,
    because:
      'A longer stretch tells no more of a chain, and nobody would wait for it. Contradictions were looked for in all of it.',
    remedy: ['cut the stretch that matters into a record of its own'],
    sources: [],
  });
}

/** What a rule about a recording finds. */
function contradiction(
  rule: RecordingRuleName,
  at: string,
  found: Said,
  limit: Said,
  because: string,
  remedy: readonly Said[],
  asks?: Said,
): Finding {
  return finding({
    rule: `recording/${rule}`,
    weight: asks === undefined ? 'warns' : 'question',
    at,
    found,
    limit,
    because,
    remedy,
    sources: [],
    ...(asks === undefined ? {} : { asks }),
  });
}

export function lengthAgainstFile(at: string, what: string, claimed: number, there: number): Finding {
  return contradiction(
    'length-against-file',
    at,
    `${what}: the head claims ${claimed}, the file holds ${there}`,
    'the same length in both',
    there < claimed
      ? 'The file was cut off or thinned, or its recorder never closed it; what stands there is read.'
      : 'Something was added after the recorder closed the file, or the head was changed.',
    ['copy the file again from the recorder, and compare its size there'],
  );
}

export function headAgainstItself(at: string, found: string, limit: string): Finding {
  return contradiction(
    'head-against-itself',
    at,
    found,
    limit,
    'One of the two was changed after the recording, or was written wrongly; either may be the wrong one.',
    ['export the recording again from the program that made it'],
  );
}

export function rateAgainstTimes(at: string, declared: number, byTimes: number): Finding {
  const ratio = declared / byTimes;
  const whole = Math.round(ratio);
  const thinned = whole > 1 && Math.abs(ratio / whole - 1) < 0.001;
  return contradiction(
    'rate-against-time-column',
    at,
    said`sampled at ${measured('frequency', declared, 7)} by its head, at ${measured('frequency', byTimes, 7)} by its time column`,
    'one sampling rate',
    thinned
      ? `Their ratio is ${whole}: it looks as if one sample in ${whole} was kept. Where that was done without a filter, what ` +
          'lay above half of the lower rate now stands at frequencies where nothing was.'
      : 'Every frequency read from this record is wrong in the ratio of the two.',
    ['take the record as it left the recorder, not as it was exported from a viewer'],
    'Which of the two is the rate of the samples in this file?',
  );
}

export function timesNotEven(at: string, found: Said, jumps: number): Finding {
  return contradiction(
    'times-even',
    at,
    said`${jumps === 1 ? 'one step' : `${jumps} steps`} of the time column ${found}`,
    'steps of one size',
    'Samples are missing or were joined from two records there; a spectrum across such a place is not one of the machine.',
    ['use a stretch without a jump'],
  );
}

export function timesCoarse(at: string, repeated: number): Finding {
  return contradiction(
    'times-fine-enough',
    at,
    `${repeated} times stand more than once in the time column`,
    'a time of its own for each sample',
    'The times were written with too few digits; the rate is taken from the first and last of them.',
    ['export the times with more digits, or state the sampling rate'],
  );
}

export function notNumbers(at: string, count: number, samples: number): Finding {
  return contradiction(
    'values-are-numbers',
    at,
    said`${count} of ${samples} values are no finite number (${measuredChange(count / Math.max(1, samples))} of them)`,
    inWords('none'),
    'A gap or an overflow was written there; no mean, level or spectrum exists across it.',
    ['use a stretch without them, or record again'],
  );
}

export function unitAgainstStep(at: string, unit: string, found: string, meant: string): Finding {
  return contradiction(
    'unit-against-step',
    at,
    found,
    `steps that a measurement in ${unit} would have`,
    `The numbers look like ${meant}, and the unit like that of the channel before its scaling.`,
    ['export the scaled values, or state what one step is worth'],
    `Are these numbers in ${unit}, or are they ${meant}?`,
  );
}

export function unitAgainstKind(at: string, unit: string, kind: string): Finding {
  return contradiction(
    'unit-against-kind',
    at,
    `the unit is ${unit}, the channel is said to be of ${kind}`,
    `a unit of ${kind}`,
    'One of the two is wrong, and with it every level read from the channel.',
    [],
    `Is the channel in ${unit}, or of ${kind}?`,
  );
}

export function detectorInUnit(at: string, unit: string): Finding {
  return contradiction(
    'waveform-has-no-detector',
    at,
    `the unit is '${unit}'`,
    'a unit without a detector',
    'A sampled waveform has none; the column may hold levels that were detected before, one for each row.',
    [],
    'Are these samples of a waveform, or a trend of levels?',
  );
}

export function startsDiffer(at: string, found: string): Finding {
  return contradiction(
    'one-start',
    at,
    found,
    'one start for all channels',
    'Channels that began at different times have no phase against each other; two records may have been put in one file.',
    ['compare only channels of one start'],
  );
}

export function neverMoves(at: string, value: number): Finding {
  return contradiction(
    'values-move',
    at,
    said`every value is ${value}`,
    'values that change',
    'A measurement has noise at least. The channel is dead, not connected, switched off, or was filled in.',
    ['look at the channel on the recorder while the transducer is touched'],
  );
}

export function standsStill(at: string, samples: number, from: number, value: number): Finding {
  return contradiction(
    'no-standstill',
    at,
    said`${samples} values from value ${from + 1} on are all ${value}, while the others change`,
    'values that change',
    'Samples were lost there and filled in, or the chain rested at an end of its range. A spectrum across it is not one of the machine.',
    ['use a stretch without it, or record again'],
  );
}

export function bytesOutOfOrder(at: string): Finding {
  return contradiction(
    'bytes-in-order',
    at,
    'with the two bytes of each value exchanged, its steps are less than a tenth as large',
    'bytes in the order its form says',
    'What looks like noise is a record whose bytes were written the other way round.',
    ['export the recording again from the program that made it'],
    'Were the bytes of this file exchanged on its way?',
  );
}

export function atItsFullScale(at: string, count: number): Finding {
  return contradiction(
    'below-full-scale',
    at,
    `${count} values stand at an end of full scale`,
    'none',
    'The converter could not follow: tops are cut, and lines appear that nothing made.',
    ['record again in a larger range'],
  );
}

export function notSettled(
  at: string,
  { from, to, constant, share }: { from: number; to: number; constant: number; share: number },
  rate: number | undefined,
): Finding {
  const falls = rate === undefined ? `${Math.round(constant)} samples` : measured('time', constant / rate, 2);
  return contradiction(
    'settled',
    at,
    said`it moves from ${Number(from.toPrecision(3))} to ${Number(to.toPrecision(3))} in its own unit, most of it at first, as what settles does, in about ${falls} to 1/e; ${Math.round(1000 * share) / 10} % of its variance is this way`,
    'a motion about its rest',
    'A surface cannot accelerate one way for so long. The coupling or the amplifier had not settled, or was driven out of its range before: data acquisition, not motion. Nothing slow can be read from it, and nothing integrated.',
    [
      'record again, begun when the channel stands still',
      'look for what drove it out: a knock, a cable that was moved, power that came on',
    ],
  );
}
