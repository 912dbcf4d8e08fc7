import { type Assumption, assumptions, type DesignedPoint, type Subject } from '@soundpost/core';
import type { TriedMachine, TriedPoint } from './held-point.ts';
import type { HandleView } from './views.ts';

export function handleKey({ of, what }: Pick<Assumption, 'of' | 'what'>): string {
  return `${of} · ${what}`;
}

/** Every number of a point a hand may drag, with where in the plant file it stands, if it stands there. */
export function handleViews(machine: TriedMachine, designed: TriedPoint, subject: Subject): readonly HandleView[] {
  const at = ['machines', machine.stated.name, 'points', designed.point.name];
  const cable = subject.parts.cable.sheet.of;
  return assumptions(subject).map(
    (each): HandleView => ({
      key: handleKey(each),
      of: each.of,
      what: each.what,
      shown: each.shown,
      path: pathOf(each, at, cable, designed.point.of),
    }),
  );
}

/** How the numbers of a subject are shown, of those that are asked for. */
export function shownOf(subject: Subject, asksFor: (key: string) => boolean): Readonly<Record<string, string>> {
  const shown = assumptions(subject).map((each) => [handleKey(each), each] as const);
  return Object.fromEntries(shown.filter(([key]) => asksFor(key)).map(([key, each]) => [key, each.shown]));
}

export function subjectOf({ point, stated: { way, chosen } }: DesignedPoint): Subject | undefined {
  return way === undefined || chosen === undefined ? undefined : { point, parts: { ...way, ...chosen } };
}

export function pathOf({ of, what }: Assumption, at: readonly string[], cable: string, point: string) {
  if (of === cable && what === 'length') return [...at, 'chain', 'cable-length'];
  if (of === point && what === 'surface temperature') return [...at, 'surface-temperature'];
  const target = /^target (.*)$/s.exec(of)?.[1];
  const field = targetKeys[what];
  return target === undefined || field === undefined ? undefined : [...at, 'targets', target, field];
}

const targetKeys: Readonly<Record<string, string>> = {
  'smallest level': 'smallest',
  'largest level': 'largest',
  tolerance: 'tolerance',
  'line spacing': 'resolution',
};
