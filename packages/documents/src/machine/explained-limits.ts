import {
  type Boundaries,
  type Clause,
  type Level,
  level,
  type MachineLimits,
  type Showing,
  showLevel,
  showNumber,
  showQuantity,
} from '@soundpost/core';
import type { Derivation } from '../derivation/derivation.ts';
import { type Explain, step, typedNumber } from '../derivation/explained.ts';

export const boundaryWords = { ab: 'A/B', bc: 'B/C', cd: 'C/D' } as const;
const stated = { ab: 'aB', bc: 'bC', cd: 'cD' } as const;

/** A boundary between zones: as its owner typed it, or out of a table, moved with the speed and held by the clearance. */
export function explainedBoundary(
  limits: MachineLimits,
  key: keyof Boundaries,
  at: string,
  showing: Showing,
): Explain | undefined {
  const { boundaries, stated: from } = limits;
  if (!boundaries.known) return undefined;
  const shown = showLevel(boundaries.value[key], showing);
  const name = `boundary ${boundaryWords[key]}`;
  if (from.from === 'owner') {
    const entry = from[stated[key]];
    if (!entry.known) return undefined;
    return () =>
      typedNumber(
        name,
        `limits of ${at}`,
        { ...entry, source: entry.source ?? from.source },
        shown,
        'limit of the owner',
      );
  }
  return () => {
    const { table, clearance } = from;
    const listed = table.boundaries[key];
    const sources: readonly Clause[] = [table.cited];
    const { withSpeed } = table;
    const { speed } = limits;
    const steps: Derivation[] = [
      {
        formula: `${key.toUpperCase()} = as the table prints it`,
        substituted: `${key.toUpperCase()} = ${showLevel(listed, showing)}`,
      },
    ];
    let free: Level = listed;
    if (withSpeed !== undefined && speed !== undefined) {
      free = level(
        listed.quantity,
        listed.value * (speed / withSpeed.at) ** withSpeed.exponent,
        listed.detector,
        listed.band,
      );
      const speeds = (value: number) => showQuantity('shaft speed', value, { ...showing, digits: 6 });
      steps.push(
        step(
          's = s_0 · (n / n_0)^p',
          `${showLevel(listed, { ...showing, digits: 6 })} · (${speeds(speed)} / ${speeds(withSpeed.at)})^(${showNumber(withSpeed.exponent, 4, showing.decimal)})`,
          showLevel(free, showing),
        ),
      );
    }
    const share = table.clearanceShares?.[key];
    if (clearance?.known === true && share !== undefined) {
      const gap = showQuantity(free.quantity, clearance.value, { ...showing, digits: 6 });
      steps.push(
        step(
          's = min(s, c · C)',
          `min(${showLevel(free, { ...showing, digits: 6 })}, ${showNumber(share, 4, showing.decimal)} · ${gap})`,
          shown,
          'C: diametral clearance of the bearing, c: the share of it the boundary never exceeds',
        ),
      );
    }
    return {
      title: `Boundary ${boundaryWords[key]}`,
      sentence: `${table.title}: ${shown}. A published value${table.doubt === undefined ? '' : `; ${table.doubt}`}.`,
      numbers: [
        { name: `as printed`, shown: showLevel(listed, showing) },
        ...(speed === undefined || withSpeed === undefined
          ? []
          : [{ name: 'highest speed', shown: showQuantity('shaft speed', speed, showing) }]),
        { name, shown },
      ],
      steps,
      sources,
    };
  };
}
