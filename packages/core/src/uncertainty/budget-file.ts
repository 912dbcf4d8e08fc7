import { camel, describe, kebab, nearest, Refusal } from '../quantity/index.ts';
import { type Contribution, type ContributionStatement, contribution, leanings } from './contribution.ts';
import { type Correlation, correlationMatrix } from './correlation.ts';
import { requireLevel } from './coverage.ts';
import { distributionNamed } from './distribution/distributions.ts';
import { canBeName, type Expression, parseExpression, reservedNames } from './expression.ts';
import { propagated } from './propagation.ts';
import { simultaneousReadings } from './readings.ts';
import { requireTrials, usualTrials } from './trials.ts';

/** What a budget file says: a model, its inputs, and how sure the answer is to be. */
export interface BudgetModel {
  readonly title: string | undefined;
  readonly expression: Expression;
  /** Label of the result; nothing is converted. */
  readonly unit: string | undefined;
  readonly inputs: readonly Contribution[];
  readonly correlations: readonly Correlation[];
  readonly level: number;
  readonly levelStated: boolean;
  readonly trials: number;
  readonly seed: number;
}

/** The level of confidence where a file names none; the working says so when it is used. */
const customaryLevel = 0.95;
const mostInputs = 200;

const keys = ['title', 'model', 'unit', 'inputs', 'readings', 'correlations', 'coverage', 'trials', 'seed'] as const;

/** Keys of one input: those of a statement, as they stand in a file. */
const numberKeys = [
  'value',
  'standard-uncertainty',
  'half-width',
  'expanded',
  'k',
  'confidence',
  'resolution',
  'inexactness',
  'reliability',
] as const;
const otherKeys = ['unit', 'source', 'distribution', 'degrees-of-freedom', 'direction', 'readings'] as const;

/**
 * Reads a budget: plain data as a file reader hands it on, or the same as JSON text. Values are plain numbers; a unit
 * is a label. Every input of the model must be there, and every input there must stand in the model. Throws Refusal.
 */
export function readBudget(content: unknown): BudgetModel {
  const file = mapping(typeof content === 'string' ? fromJson(content) : content, 'a budget', keys);
  const expression = parseExpression(text(file, 'model', 'the model, such as "R = V / I"'));
  const apart = entries(file.get('inputs'), 'inputs').map(([name, raw]) => readInput(name, raw));
  const lists = entries(file.get('readings'), 'readings').map(([name, raw]) => readReadings(name, raw));
  const joint = simultaneousReadings(new Map(lists));
  const inputs = [...apart, ...joint.inputs];
  requireNames(inputs, expression);
  const correlations = [...joint.correlations, ...readCorrelations(file.get('correlations'), inputs)];
  correlationMatrix(inputs, correlations);
  propagated(expression, inputs);
  const coverage = file.get('coverage');
  const level = coverage === undefined ? customaryLevel : number(coverage, 'coverage', 'a level of confidence: 0.95');
  requireLevel(level);
  const count = file.has('trials') ? number(file.get('trials'), 'trials', 'a number of trials') : usualTrials;
  const seed = file.has('seed') ? number(file.get('seed'), 'seed', 'a whole number') : 1;
  requireTrials(count, seed, level);
  return {
    title: file.has('title') ? text(file, 'title', 'a title') : undefined,
    expression,
    unit: file.has('unit') ? text(file, 'unit', 'the unit of the result, as a label') : undefined,
    inputs,
    correlations,
    level,
    levelStated: coverage !== undefined,
    trials: count,
    seed,
  };
}

function fromJson(content: string): unknown {
  try {
    return JSON.parse(content);
  } catch {
    throw new Refusal({ read: content, expected: 'the content of a budget file, or the same as JSON' });
  }
}

function mapping(raw: unknown, what: string, known: readonly string[]): ReadonlyMap<string, unknown> {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    throw new Refusal({ read: describe(raw), expected: `${what}: a mapping with ${known.join(', ')}` });
  }
  const pairs = Object.entries(raw).filter(([, value]) => value !== undefined);
  for (const [key] of pairs) {
    if (known.includes(key)) continue;
    const near = nearest(key, known);
    throw new Refusal({
      read: key,
      expected: `a key of ${what}: ${known.join(', ')}`,
      ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
    });
  }
  return new Map(pairs);
}

function entries(raw: unknown, what: string): readonly (readonly [string, unknown])[] {
  if (raw === undefined) return [];
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    throw new Refusal({ read: `${what}: ${describe(raw)}`, expected: `${what}: a mapping from name to what is known` });
  }
  const list = Object.entries(raw);
  if (list.length <= mostInputs) return list;
  throw new Refusal({ read: `${list.length} ${what}`, expected: `at most ${mostInputs} of them` });
}

function text(file: ReadonlyMap<string, unknown>, key: string, expected: string): string {
  const raw = file.get(key);
  if (typeof raw === 'string' && raw.trim() !== '' && raw.length <= 5000) return raw;
  throw new Refusal({ read: `${key}: ${describe(raw)}`, expected });
}

function number(raw: unknown, place: string, expected: string): number {
  if (typeof raw === 'number' && Number.isFinite(raw)) return raw;
  throw new Refusal({
    read: `${place}: ${describe(raw)}`,
    expected,
    ...(typeof raw === 'string'
      ? { suggestion: "A budget holds plain numbers, without quotes and with a point; a unit is a label under 'unit'." }
      : {}),
  });
}

function readInput(name: string, raw: unknown): Contribution {
  requireName(name);
  const what = `input ${name}`;
  const input = mapping(raw, what, [...numberKeys, ...otherKeys]);
  if (!input.has('readings') && !input.has('value')) {
    throw new Refusal({
      read: `${what} without value`,
      expected: "its value beside its uncertainty, or its 'readings'",
    });
  }
  const statement: Record<string, unknown> = { name };
  for (const key of numberKeys) {
    if (input.has(key)) statement[camel(key)] = number(input.get(key), `${name} / ${key}`, `a plain number for ${key}`);
  }
  for (const key of ['unit', 'source'] as const) {
    if (input.has(key)) statement[key] = text(input, key, `a text for ${key} of ${what}`);
  }
  if (input.has('distribution')) {
    statement.distribution = distributionNamed(text(input, 'distribution', `a distribution for ${what}`)).kind;
  }
  if (input.has('direction')) statement.direction = readDirection(input.get('direction'), what);
  if (input.has('readings')) statement.readings = readReadings(name, input.get('readings'))[1];
  if (input.has('degrees-of-freedom')) {
    const stated = input.get('degrees-of-freedom');
    const expected = "a number, or 'infinite'";
    statement.degreesOfFreedom =
      stated === 'infinite' ? stated : number(stated, `${name} / degrees-of-freedom`, expected);
  }
  return contribution(statement as unknown as ContributionStatement);
}

function readDirection(raw: unknown, what: string): Contribution['direction'] {
  const found = leanings.find((each) => each === raw);
  if (found !== undefined) return found;
  throw new Refusal({ read: `${what}: ${describe(raw)}`, expected: `a direction: ${leanings.join(', ')}` });
}

function readReadings(name: string, raw: unknown): readonly [string, readonly number[]] {
  requireName(name);
  if (!Array.isArray(raw)) {
    throw new Refusal({ read: `readings of ${name}: ${describe(raw)}`, expected: 'a list of plain numbers' });
  }
  return [name, raw.map((each, index) => number(each, `reading ${index + 1} of ${name}`, 'a plain number'))];
}

function requireName(name: string): void {
  if (canBeName(name)) return;
  const reserved = reservedNames.includes(name);
  const spelled = kebab(name).replace(/[^\p{L}\p{N}_]+/gu, '_');
  throw new Refusal({
    read: name,
    expected: 'the name of an input as the model writes it: letters, digits and _, beginning with a letter',
    ...(reserved
      ? { suggestion: `'${name}' is a word of the model language; choose another.` }
      : canBeName(spelled)
        ? { suggestion: `Write '${spelled}', there and in the model; '-' would be read as minus.` }
        : {}),
  });
}

function requireNames(inputs: readonly Contribution[], expression: Expression): void {
  const names = inputs.map((each) => each.name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined) {
    throw new Refusal({ read: twice, expected: "each input once, under 'inputs' or under 'readings'" });
  }
  const idle = names.find((name) => !expression.names.has(name));
  const asked = [...expression.names.keys()];
  const unanswered = asked.filter((name) => !names.includes(name));
  if (unanswered.length > 0 && idle === undefined) {
    throw new Refusal({
      read: `${unanswered[0]} at column ${expression.names.get(unanswered[0]!)} of '${expression.text}'`,
      expected: `one of the inputs: ${names.join(', ')}`,
      suggestion: `State what is known of '${unanswered[0]}' under 'inputs'.`,
    });
  }
  if (idle === undefined) return;
  const near = nearest(idle, unanswered.length > 0 ? unanswered : asked);
  throw new Refusal({
    read: `input ${idle}`,
    expected: `an input that stands in the model '${expression.text}'`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}

function readCorrelations(raw: unknown, inputs: readonly Contribution[]): readonly Correlation[] {
  if (raw === undefined) return [];
  const shape = 'correlations: a list of {between: [a, b], coefficient: 0.5}';
  if (!Array.isArray(raw)) throw new Refusal({ read: `correlations: ${describe(raw)}`, expected: shape });
  return raw.map((each, index) => {
    const place = `correlation ${index + 1}`;
    const entry = mapping(each, place, ['between', 'coefficient']);
    const between = entry.get('between');
    if (!Array.isArray(between) || between.length !== 2) {
      throw new Refusal({ read: `${place}: ${describe(between)}`, expected: `two names under 'between'; ${shape}` });
    }
    const coefficient = number(entry.get('coefficient'), `${place} / coefficient`, 'a number from -1 to 1');
    return { between: [inputNamed(between[0], inputs), inputNamed(between[1], inputs)], coefficient };
  });
}

function inputNamed(raw: unknown, inputs: readonly Contribution[]): Contribution {
  const found = inputs.find((each) => each.name === raw);
  if (found !== undefined) return found;
  const names = inputs.map((each) => each.name);
  const near = nearest(describe(raw), names);
  throw new Refusal({
    read: describe(raw),
    expected: `one of the inputs: ${names.join(', ')}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
