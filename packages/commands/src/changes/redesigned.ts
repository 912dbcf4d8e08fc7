import { assembledDesign, type Design, type DesignedMachine, designedMachine, type Plant } from '@soundpost/core';
import { issuedKinds } from '@soundpost/documents/document-set';
import { seed } from '../seed.ts';

/** A design with the text of each of its sheets. */
export interface Seen {
  readonly design: Design;
  /** Each sheet by its key, as one text. */
  readonly sheets: ReadonlyMap<string, SheetText>;
}

export interface SheetText {
  readonly document: string;
  readonly sheet: string;
  readonly text: string;
}

/**
 * Designs one plant after another, most of them alike: a machine that is stated as before, in a plant of the same policy
 * and allowances, is designed once; a sheet that says what it is made from, and is made from the same, is set once. What
 * is kept is only what was worked out from equal statements, so nothing is taken for the same that is not.
 */
export function redesigning(): (plant: Plant) => Seen {
  const machines = new Map<string, DesignedMachine>();
  const common = new Map<string, object>();
  const texts = new WeakMap<object, Map<string, readonly [from: readonly object[], text: string]>>();

  const designOf = (plant: Plant): Design => {
    const policy = interned(common, plant.policy);
    const around = statement({ policy, allowances: plant.allowances });
    const same = { ...plant, policy };
    const designed = plant.machines.map((machine) => {
      const key = `${around}\n${statement(machine)}`;
      const known = machines.get(key) ?? designedMachine(same, machine, seed);
      machines.set(key, known);
      return known;
    });
    return assembledDesign(same, designed);
  };

  const textOf = (name: string, from: readonly object[] | undefined, made: () => unknown): string => {
    const [first] = from ?? [];
    if (from === undefined || first === undefined) return JSON.stringify(made());
    const known = texts.get(first) ?? new Map<string, readonly [readonly object[], string]>();
    texts.set(first, known);
    const before = known.get(name);
    if (before?.[0].every((each, at) => each === from[at])) return before[1];
    const text = JSON.stringify(made());
    known.set(name, [from, text]);
    return text;
  };

  return (plant) => {
    const design = designOf(plant);
    const sheets = new Map<string, SheetText>();
    for (const { kind, sheets: made } of issuedKinds) {
      for (const sheet of made(design, {})) {
        const key = `sheet|${kind}|${sheet.title}`;
        let free = key;
        for (let time = 2; sheets.has(free); time++) free = `${key}|${time}`;
        const text = textOf(`${kind}|${sheet.title}`, sheet.from, () => sheet.blocks);
        sheets.set(free, { document: kind, sheet: sheet.title, text });
      }
    }
    return { design, sheets };
  };
}

function interned<T extends object>(known: Map<string, object>, value: T): T {
  const key = statement(value);
  const found = known.get(key) ?? value;
  known.set(key, found);
  return found as T;
}

/** Everything that is stated, in full digits; numbers that no JSON has stand by name. */
function statement(value: unknown): string {
  return JSON.stringify(value, (_, each) => {
    if (typeof each === 'bigint') return `${each}n`;
    if (typeof each === 'number' && !Number.isFinite(each)) return `number ${each}`;
    if (each instanceof Map) return [...each];
    return each instanceof Set ? [...each] : each;
  });
}
