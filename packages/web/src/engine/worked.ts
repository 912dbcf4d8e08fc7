import {
  type AnyWorking,
  Broken,
  calculate,
  type Field,
  type Fields,
  fieldOf,
  isOptional,
  kebab,
  type Output,
  Refusal,
  type Showing,
  showMeasure,
  workingCalled,
} from '@soundpost/core';
import { placedYaml, plainOf, textFile } from '@soundpost/files';
import { whyView } from './why.ts';
import type { WorkedView, WorkingAsked } from './working-views.ts';

/** What was typed, read; a field that cannot be read says why. */
export interface ReadInputs {
  readonly working: AnyWorking;
  /** As `calculate` takes it: by the name as typed, a file as its content. */
  readonly raw: Readonly<Record<string, unknown>>;
  /** As `evaluate` takes it. */
  readonly values: Readonly<Record<string, unknown>>;
  readonly refused: Readonly<Record<string, string>>;
}

/** Fields are typed as they stand in a plant file: with a decimal point. */
export const writing = { decimal: 'point' } as const;

export function readInputs({ name, typed, files }: WorkingAsked): ReadInputs {
  const working = workingCalled(name);
  const raw: Record<string, unknown> = {};
  const values: Record<string, unknown> = {};
  const refused: Record<string, string> = {};
  for (const [key, entry] of Object.entries(working.inputs as Fields)) {
    const [field, at] = [fieldOf(entry), kebab(key)];
    const text = (typed[at] ?? '').trim();
    if (text === '') {
      if (!isOptional(entry)) refused[at] = `Needed: ${field.expected}; for example ${field.example}`;
      continue;
    }
    try {
      raw[at] = contentOf(field, text, files[at] ?? at);
      values[key] = field.read(raw[at], writing);
    } catch (error) {
      refused[at] = refusalWords(error);
    }
  }
  return { working, raw, values, refused };
}

function contentOf(field: Field<unknown>, text: string, file: string): unknown {
  return field.type === 'file' ? plainOf(placedYaml(textFile(new TextEncoder().encode(text), file))) : text;
}

export function worked(asked: WorkingAsked, showing: Showing): WorkedView {
  const { working, raw, refused } = readInputs(asked);
  const rest = { refused, command: commandOf(asked) };
  const nothing = { ...rest, results: [], refusedWhole: undefined, doubts: [] };
  if (Object.keys(refused).length > 0) return nothing;
  try {
    const { results, findings, inputs, holds } = calculate(working, raw, writing, showing);
    const numbers = Object.entries(inputs).map(([name, { shown }]) => ({ name: name.replaceAll('-', ' '), shown }));
    return {
      ...rest,
      results: results.map(({ name, shown, formula, substituted }) => ({
        name,
        shown,
        formula,
        substituted,
        why: whyView({
          title: `${capital(meaningOf(working, name))}: ${shown}`,
          sentence: `${capital(meaningOf(working, name))}, from what was typed above. It holds for: ${holds}.`,
          numbers: [...numbers, { name: name.replaceAll('-', ' '), shown }],
          steps: [
            { formula, substituted: substituted === formula ? `${formula} = ${shown}` : `${substituted} = ${shown}` },
          ],
          sources: working.sources,
        }),
      })),
      refusedWhole: undefined,
      doubts: findings.map((each) => ({
        found: showMeasure(each.found, showing),
        because: showMeasure(each.because, showing),
        remedy: each.remedy.map((one) => showMeasure(one, showing)),
      })),
    };
  } catch (error) {
    return { ...nothing, refusedWhole: refusalWords(error) };
  }
}

function meaningOf({ outputs }: AnyWorking, name: string): string {
  const all = Object.entries(outputs as Readonly<Record<string, Output<unknown>>>);
  return all.find(([key]) => kebab(key) === name)?.[1].field.meaning ?? name;
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** A refusal as a sentence of its own. Throws on whatever is none. */
export function refusalWords(error: unknown): string {
  if (!(error instanceof Refusal || error instanceof Broken)) throw error;
  if (error instanceof Broken) return `Nothing can be shown: ${error.message}`;
  return error.message.slice(0, 1).toUpperCase() + error.message.slice(1);
}

/** `soundpost work NAME input="value unit"`, quoted so that a shell hands it on as it stands here. */
function commandOf({ name, typed, files }: WorkingAsked): string {
  const inputs = Object.keys(workingCalled(name).inputs)
    .map(kebab)
    .map((key) => [key, files[key] ?? (typed[key] ?? '').trim()] as const)
    .filter(([, text]) => text !== '');
  return ['soundpost work', name, ...inputs.map(([key, text]) => `${key}=${quoted(text)}`)].join(' ');
}

function quoted(text: string): string {
  if (/^[\w./+-]+$/.test(text)) return text;
  return /["$`\\!\n]/.test(text) ? `'${text.replaceAll("'", String.raw`'\''`)}'` : `"${text}"`;
}
