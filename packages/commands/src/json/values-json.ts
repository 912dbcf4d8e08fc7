import {
  type Answer,
  type Band,
  type Level,
  type Missing,
  measured,
  measuredLevel,
  measureJson,
  type QuantityName,
  quantities,
  type Stated,
  showBand,
  showTolerance,
  type Tolerance,
} from '@soundpost/core';

/** A number for scripts: SI value, unit, and the text shown (metric, decimal point). Described in docs/json.md. */
export function quantityJson(name: QuantityName, value: number): unknown {
  return measureJson(measured(name, value));
}

export function levelJson(level: Level): unknown {
  return measureJson(measuredLevel(level));
}

export function bandJson(band: Band): unknown {
  return { low: band.low, high: band.high, unit: quantities.frequency.unit, shown: showBand(band) };
}

export function toleranceJson(tolerance: Tolerance): unknown {
  return { low: tolerance.low, high: tolerance.high, unit: '1', shown: showTolerance(tolerance) };
}

export function decibelsJson(value: number): unknown {
  return measureJson({ is: 'decibels', value });
}

export function missingJson(missing: readonly Missing[]): unknown {
  return { unknown: missing.map(({ of, what }) => ({ of, what })) };
}

/** What is known, or the names of what is missing: unknown is a value. */
export function answerJson<T>(answer: Answer<T>, json: (value: T) => unknown): unknown {
  return answer.known ? json(answer.value) : missingJson(answer.missing);
}

/** The same with how the stated value is known, and from where. */
export function sourcedJson<T>(
  answer: Answer<T>,
  stated: Stated<unknown> | undefined,
  json: (value: T) => unknown,
): unknown {
  const found = answerJson(answer, json);
  const written = typeof found === 'string' ? { shown: found } : found;
  if (stated === undefined || typeof written !== 'object' || written === null) return written;
  if (!stated.known) return stated.ask === undefined ? written : { ...written, ask: stated.ask };
  return {
    ...written,
    ...(stated.status === undefined ? {} : { status: stated.status }),
    ...(stated.source === undefined ? {} : { source: stated.source }),
  };
}

export function statedJson<T>(stated: Stated<T>, json: (value: T) => unknown): unknown {
  const answer: Answer<T> = stated.known ? stated : { known: false, missing: [] };
  return sourcedJson(answer, stated, json);
}
