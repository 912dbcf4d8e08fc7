import { type Answer, answer, answerOf, type Band, fromAll, unanswered, valueIfStated } from '../quantity/index.ts';
import { frequencyOf, type LineLookup } from './frequency-reference.ts';
import type { MeasuringPoint } from './measuring-point.ts';
import type { PointStatement, TargetStatement } from './statement.ts';
import type { Target } from './target.ts';

/** What a point must capture, its frequencies put in numbers. What the machine cannot tell stays unknown, by name. */
export function demand(statement: PointStatement, machine: string, lookup: LineLookup): MeasuringPoint {
  const of = `${machine}/${statement.name}`;
  return {
    of,
    name: statement.name,
    machine,
    location: valueIfStated(statement.location) ?? 'location unknown',
    direction: answerOf(statement.direction, of, 'direction'),
    installation: statement.installation,
    surfaceTemperature: statement.surfaceTemperature,
    surroundings: statement.surroundings,
    ...(statement.area === undefined ? {} : { area: statement.area }),
    ...(statement.hears === undefined ? {} : { hears: statement.hears }),
    targets: statement.targets.map((target) => targetIn(target, `${of}/${target.name}`, lookup)),
    disturbances: statement.disturbances.map((each) => {
      const band = valueIfStated(each.band);
      return {
        name: each.name,
        level: answerOf(each.level, `${of}/${each.name}`, 'level'),
        ...(band === undefined ? {} : { band: { low: band.low, high: band.high } }),
        ...(each.band?.known === false ? { bandMissing: [{ of: `${of}/${each.name}`, what: 'band' }] } : {}),
      };
    }),
  };
}

function targetIn(stated: TargetStatement, of: string, lookup: LineLookup): Target {
  const line =
    stated.frequency === undefined
      ? undefined
      : named(answerOf(stated.frequency, of, 'frequency'), (reference) => frequencyOf(reference, lookup));
  const band = bandOf(stated, line, of);
  const frequencies = frequenciesOf(stated, line, of, lookup);
  return {
    name: stated.name,
    cause: stated.cause,
    observable: stated.observe,
    motion: valueIfStated(stated.smallest)?.quantity ?? valueIfStated(stated.largest)?.quantity ?? 'velocity',
    reference: stated.reference,
    frequencies,
    band,
    largestAt: largestAt(stated, line, band, frequencies, of, lookup),
    smallest: answerOf(stated.smallest, of, 'smallest level'),
    largest: answerOf(stated.largest, of, 'largest level'),
    tolerance: answerOf(stated.tolerance, of, 'tolerance'),
    resolution: answerOf(stated.resolution, of, 'line spacing'),
    weight: stated.weight,
    ...(stated.within === undefined ? {} : { within: stated.within }),
    origin: stated.origin,
  };
}

function named<T, R>(first: Answer<T>, next: (value: T) => Answer<R>): Answer<R> {
  return first.known ? next(first.value) : first;
}

function bandOf(stated: TargetStatement, line: Answer<number> | undefined, of: string): Answer<Band> {
  if (line !== undefined) return fromAll({ line }, ({ line: f }) => ({ low: f, high: f }));
  return fromAll({ band: answerOf(stated.band, of, 'band') }, ({ band }) => ({ low: band.low, high: band.high }));
}

/** A line is judged at itself, an overall value at its components, a burst over its band (so its ends stand for it). */
function frequenciesOf(
  stated: TargetStatement,
  line: Answer<number> | undefined,
  of: string,
  lookup: LineLookup,
): Answer<readonly number[]> {
  if (line !== undefined) return fromAll({ line }, ({ line: f }) => [f]);
  if (stated.observe.scansBand || stated.observe.atRest) {
    return fromAll({ band: bandOf(stated, line, of) }, ({ band }) => [band.low, band.high]);
  }
  const components = stated.components ?? [];
  if (components.length === 0) return unanswered([{ of, what: 'components' }]);
  const each = components.map((component) =>
    named(answerOf(component, of, 'component'), (reference) => frequencyOf(reference, lookup)),
  );
  return fromAll(Object.fromEntries(each.map((component, index) => [index, component])), (values) =>
    Object.values(values),
  );
}

/** Where stated, there; of a line, the line; of a burst, the middle of its band by octaves; of an overall value unknown. */
function largestAt(
  stated: TargetStatement,
  line: Answer<number> | undefined,
  band: Answer<Band>,
  frequencies: Answer<readonly number[]>,
  of: string,
  lookup: LineLookup,
): Answer<number> {
  if (stated.largestAt !== undefined) {
    return named(answerOf(stated.largestAt, of, 'frequency of the largest level'), (r) => frequencyOf(r, lookup));
  }
  if (line !== undefined) return line;
  if (stated.observe.scansBand) return fromAll({ band }, ({ band: b }) => Math.sqrt(b.low * b.high));
  if (stated.observe.atRest) return answer(0);
  if (frequencies.known && frequencies.value.length === 1) return answer(frequencies.value[0]!);
  return unanswered([{ of, what: 'frequency of the largest level' }]);
}
