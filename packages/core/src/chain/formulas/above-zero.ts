import { kebab, Refusal } from '../../quantity/index.ts';

/** Refuses what is not above zero, by the name it has at the door. Undefined means the value was left out. */
export function aboveZero(values: Readonly<Record<string, number | undefined>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (value === undefined || value > 0) continue;
    throw new Refusal({ read: `${kebab(name)}=${value}`, expected: 'a value above zero' });
  }
}
