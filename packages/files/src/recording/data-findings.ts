import type { Finding, QuantityName, RecordedChannel } from '@soundpost/core';
import type { ChannelSurvey, ChannelWatch } from './channel-watch.ts';
import {
  atItsFullScale,
  bytesOutOfOrder,
  lengthAgainstFile,
  neverMoves,
  notNumbers,
  notSettled,
  standsStill,
  unitAgainstStep,
} from './contradictions.ts';
import type { Steps } from './steps.ts';

/** What a converter gives as fractions of a unit. A speed, a time or a temperature may well be in whole numbers. */
const fromConverter: ReadonlySet<QuantityName | undefined> = new Set<QuantityName>([
  'acceleration',
  'velocity',
  'displacement',
  'voltage',
  'current',
  'force',
]);

/** Fewer samples in one place say nothing of a dropout; and how many times the usual they must be. */
const fewestStill = 128;
const timesUsual = 50;

/** What the data of one channel say against its head, and against being a measurement at all. */
export function dataFindings(channel: RecordedChannel, seen: ChannelSurvey, watch: ChannelWatch): readonly Finding[] {
  const { of, claimedSamples, samples, unit } = channel;
  const { steps } = watch;
  const promised = samples ?? claimedSamples;
  return [
    ...(promised !== undefined && promised !== seen.samples
      ? [lengthAgainstFile(of, 'samples', promised, seen.samples)]
      : []),
    ...(seen.notNumbers === 0 ? [] : [notNumbers(of, seen.notNumbers, seen.samples)]),
    ...motionFindings(channel, seen, watch),
    ...(unit.known && steps !== undefined && fromConverter.has(unit.value.quantity)
      ? stepFindings(of, unit.value.written, steps)
      : []),
  ];
}

function stepFindings(of: string, unit: string, { distinct, whole, shareOfFullScale }: Steps): readonly Finding[] {
  // A handful of levels, as of a switch or a pulse, says nothing of a converter.
  if (distinct < 32) return [];
  if (whole) return [unitAgainstStep(of, unit, 'every value is a whole number', 'counts of a converter')];
  if (shareOfFullScale === undefined) return [];
  const found = `every value is a multiple of 1/${2 ** shareOfFullScale} and none is beyond 1`;
  return [unitAgainstStep(of, unit, found, 'shares of full scale')];
}

function motionFindings(channel: RecordedChannel, seen: ChannelSurvey, watch: ChannelWatch): readonly Finding[] {
  const { of, unit, rate } = channel;
  const { still, exchanged, atFullScale } = watch;
  const { longest } = still;
  if (seen.samples >= fewestStill && still.never) return [neverMoves(of, longest.value)];
  const stands =
    longest.samples >= fewestStill && longest.samples >= timesUsual * still.usual && Number.isFinite(longest.value);
  const drift = unit.known && motions.has(unit.value.quantity) ? watch.drifting.drift() : undefined;
  return [
    ...(stands ? [standsStill(of, longest.samples, longest.from, longest.value)] : []),
    ...(exchanged ? [bytesOutOfOrder(of)] : []),
    ...(atFullScale >= 4 && seen.samples >= fewestStill ? [atItsFullScale(of, atFullScale)] : []),
    ...(drift === undefined ? [] : [notSettled(of, drift, rate.known ? rate.value : undefined)]),
  ];
}

/** What swings about a place it cannot leave for long. */
const motions: ReadonlySet<QuantityName | undefined> = new Set<QuantityName>(['acceleration', 'velocity']);
