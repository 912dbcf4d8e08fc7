import { type Cause, type DerivedChange, type ProofChange, reason, type Said, showMeasure } from '@soundpost/core';
import type { PlacedChange, RevisionDifference, SheetChange } from '../changes/revision-difference.ts';
import { blank, grave, heading, type Line, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import type { StatedTexts } from '../plant/stated-texts.ts';
import { capital, counted } from './values-text.ts';

/** Stated changes are numbered; whatever follows from them names their numbers. */
export function revisionDifferenceLines(
  before: StatedTexts,
  after: StatedTexts,
  difference: RevisionDifference,
  manner: Manner,
): readonly Line[] {
  const { width } = manner;
  const { stated, design, sheets, notAlone } = difference;
  const title = heading(`Changes from ${named(before)} to ${named(after)}`, width);
  if (stated.length === 0) {
    return [...title, ...paragraph('Both state the same; nothing that follows from it differs.', width)];
  }
  return [
    ...title,
    blank,
    ...heading('What is stated otherwise', width),
    ...stated.flatMap((each, place) => statedLines(each, place, notAlone.includes(place), manner)),
    blank,
    ...heading('What changed with it, and why', width),
    ...(design.changes.length === 0 ? paragraph('  Nothing that is worked out.', width, '  ') : []),
    ...derivedLines(difference, manner),
    blank,
    ...heading('What became unproven', width),
    ...(design.unproven.length === 0 ? paragraph('  Nothing.', width, '  ') : []),
    ...design.unproven.flatMap((each) => proofLines(each, manner)),
    ...(design.proven.length === 0 ? [] : [blank, ...heading('What became proven', width)]),
    ...design.proven.flatMap((each) => proofLines(each, manner)),
    ...(design.withdrawn.length === 0 ? [] : [blank, ...heading('What is no longer asked for', width)]),
    ...design.withdrawn.flatMap(({ at, target }) => paragraph(`  ${at}: ${target}`, width, '  ')),
    blank,
    ...heading('Commissioning tests to be made again', width),
    ...(design.testsToRepeat.length === 0 ? paragraph('  None.', width, '  ') : []),
    ...design.testsToRepeat.flatMap(({ at, because }) =>
      paragraph(`  ${at}: ${because[0] === 'new' ? 'not tested yet' : `${because.join(', ')} changed`}`, width, '  '),
    ),
    blank,
    ...heading('Sheets to be issued again', width),
    ...(sheets.length === 0 ? paragraph('  None.', width, '  ') : []),
    ...sheetLines(sheets, manner),
    blank,
    ...endLine(difference, manner),
  ];
}

function named({ from, revision }: StatedTexts): string {
  return revision === undefined ? from : `revision ${revision} (${from})`;
}

function statedLines(change: PlacedChange, place: number, notAlone: boolean, { width }: Manner): readonly Line[] {
  const { catalogue, path, before, after } = change;
  const where = `${catalogue === undefined ? '' : `catalogue ${catalogue}: `}${path.join('/') || 'the whole file'}`;
  const what =
    before === undefined
      ? `new: ${short(after!)}`
      : after === undefined
        ? `gone: ${short(before)}`
        : `${short(before)} → ${short(after)}`;
  const only = notAlone ? ' (cannot be read without the other changes)' : '';
  return paragraph(`  [${place + 1}] ${where}: ${what}${only}`, width, '      ');
}

/** An entry that is new or gone can be a whole machine. */
function short(text: string): string {
  const plain = text.replace(/\s+/g, ' ');
  return plain.length <= 120 ? plain : `${plain.slice(0, 117)}…`;
}

/** First in one sentence per place what moved because of what, then each with before and after. */
function derivedLines({ design, causes }: RevisionDifference, manner: Manner): readonly Line[] {
  const places = [...new Set(design.changes.map((each) => each.at))];
  return places.flatMap((at) => {
    const here = design.changes.filter((each) => each.at === at);
    const together = new Map<string, { cause: Cause; sorts: Set<string> }>();
    for (const each of here) {
      const cause = causes.get(each.key)!;
      const key = JSON.stringify(cause);
      const entry = together.get(key) ?? { cause, sorts: new Set() };
      entry.sorts.add(each.sort);
      together.set(key, entry);
    }
    return [
      ...paragraph(`  ${at}`, manner.width, '  '),
      ...[...together.values()].flatMap(({ cause, sorts }) =>
        paragraph(`    ${capital(causeText(cause))}: therefore ${[...sorts].join(', ')}.`, manner.width, '  '),
      ),
      ...here.flatMap((each) => changeLines(each, causes.get(each.key)!, manner)),
    ];
  });
}

function changeLines(change: DerivedChange, cause: Cause, { showing, width }: Manner): readonly Line[] {
  const shown = (says: Said | undefined, otherwise: string) =>
    says === undefined ? otherwise : showMeasure(says, showing);
  const [was, is] = [shown(change.before, 'was not there'), shown(change.after, 'is no longer there')];
  const what = was === is ? `${was}, in figures or statements that are not shown here` : `${was} → ${is}`;
  return paragraph(`    ${change.sort}, ${change.name}: ${what} ${numbers(cause)}`, width, '      ');
}

function causeText(cause: Cause): string {
  const which = cause.changes.length === 1 ? 'change' : 'changes';
  if (cause.acting === 'not told apart') return 'by the changes together, which could not be told apart';
  if (cause.acting === 'alone') return `by ${which} ${numbers(cause)}`;
  return `by ${which} ${numbers(cause)}, not alone but with the others`;
}

function numbers({ changes }: Cause): string {
  return changes.length === 0 ? '[?]' : `[${changes.map((each) => each + 1).join(', ')}]`;
}

function proofLines({ at, target, before, after, decides }: ProofChange, { showing, width }: Manner): readonly Line[] {
  const why = decides === undefined ? '' : `; ${reason(decides, showing)}`;
  return paragraph(`  ${at}, ${target}: ${before} → ${after}${why}`, width, '    ');
}

function sheetLines(sheets: readonly SheetChange[], { width }: Manner): readonly Line[] {
  const documents = [...new Set(sheets.map((each) => each.document))];
  return documents.flatMap((document) => {
    const here = sheets.filter((each) => each.document === document);
    const told = here.map(({ sheet, is }) => (is === 'changed' ? sheet : `${sheet} (${is})`));
    return paragraph(`  ${document}: ${told.join('; ')}`, width, '    ');
  });
}

function endLine({ stated, design }: RevisionDifference, { width }: Manner): readonly Line[] {
  const sentence = `${capital(counted(stated.length, 'stated change'))}, ${counted(design.changes.length, 'change')} that follow, ${design.unproven.length} unproven by them, ${counted(design.testsToRepeat.length, 'point')} to be tested again.`;
  return design.unproven.length > 0 ? grave(sentence, width) : paragraph(sentence, width);
}
