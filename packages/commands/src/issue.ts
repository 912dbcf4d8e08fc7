import { design as designOf, type Finding, Refusal, valueIfStated } from '@soundpost/core';
import { issuedKinds } from '@soundpost/documents/document-set';
import { always, argument, command, namesFlag, switchFlag, textFlag } from './command.ts';
import { completeDesign, composedSet } from './issue/composed-set.ts';
import { frozenFiles } from './issue/frozen.ts';
import { revisionFolder } from './issue/revision-names.ts';
import {
  contentsName,
  frozenBefore,
  type IssuedFile,
  issuedContents,
  type ListedFile,
  refuseOthers,
  written,
} from './issue/set-contents.ts';
import { setFiles } from './issue/set-files.ts';
import { namesFrom, oneFrom } from './issue/wanted.ts';
import { blank, type Line, paragraph } from './layout/line.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { contentHashOf } from './plant/content-hash.ts';
import { readPlant } from './plant/read-plant.ts';
import { verdictLine } from './prove.ts';
import { remembering } from './remembering.ts';
import { seed } from './seed.ts';
import { type Content, pathIn, type Surroundings } from './surroundings.ts';
import { findingsLines } from './text/finding-text.ts';
import { counted } from './text/values-text.ts';

/** The forms a document can be issued in. */
export const forms = ['pdf', 'xlsx', 'csv', 'svg', 'html'] as const;
export type Form = (typeof forms)[number];

export const issue = command({
  name: 'issue',
  summary: 'The documents of a design, as files for others to build, order and test from',
  description:
    `Writes every document as PDF/A, its tables as workbook and as text with commas, its drawings as SVG, and all of them ` +
    `as one page for a browser, into a folder of its own for the revision, with the plant file, its catalogues and the design record as ` +
    `they were; contents.json lists each file with its hash and is written last. Nothing is written while a finding blocks, unless it is asked for as preliminary, which every page ` +
    `then says. A revision that is issued stays as it is. Documents: ${issuedKinds.map((each) => each.kind).join(', ')}.`,
  arguments: { plant: argument('PLANT', 'A plant file') },
  flags: {
    out: textFlag('DIR', 'The folder for the set; it is made where there is none'),
    revision: textFlag('REVISION', 'In place of the revision the plant file states'),
    documents: namesFlag('NAMES', 'Only these documents, with commas between them'),
    forms: namesFlag('FORMS', `Only these forms: ${forms.join(', ')}`),
    paper: textFlag('PAPER', 'a4 where nothing is said, a3 or letter'),
    preliminary: switchFlag('Issue although findings block; every page says so'),
  },
  examples: [
    'soundpost issue examples/raw-water-pump/plant.yaml --out out/documents --preliminary',
    'soundpost issue examples/raw-water-pump/plant.yaml --out out/documents --preliminary --documents cable-schedule,alarm-register --forms pdf',
  ],
  whenAllowed: always,
  perform: issued,
});

interface Wanted {
  readonly plant: string;
  readonly out: string | undefined;
  readonly revision: string | undefined;
  readonly documents: readonly string[] | undefined;
  readonly forms: readonly string[] | undefined;
  readonly paper: string | undefined;
  readonly preliminary: boolean;
}

async function issued(surroundings: Surroundings, wanted: Wanted, manner: Manner): Promise<Outcome> {
  if (wanted.out === undefined) {
    throw new Refusal({ read: 'no folder', expected: 'a folder for the documents', suggestion: 'Say --out DIR.' });
  }
  const typesetting = await import('@soundpost/typesetting');
  const kinds = namesFrom('documents', issuedKinds, (each) => each.kind, wanted.documents);
  const asked = namesFrom('forms', forms, (each) => each, wanted.forms);
  const paper = oneFrom('paper', typesetting.papers, wanted.paper ?? 'a4');

  const read: Uint8Array[] = [];
  const { plant } = await readPlant(remembering(surroundings, read), wanted.plant);
  const revision = wanted.revision ?? valueIfStated(plant.title.values.revision);
  if (revision === undefined) {
    throw new Refusal({
      read: 'a plant without a revision',
      expected: 'a revision',
      suggestion: 'Say --revision A, or state it in the plant file.',
    });
  }
  const contentHash = await contentHashOf(read);
  const points = plant.machines.reduce((sum, machine) => sum + machine.points.length, 0);
  surroundings.step(`designing ${counted(points, 'point')}`);
  const designed = designOf(plant, seed);
  surroundings.step('looking for what is missing');
  const design = completeDesign(designed);
  const { preliminary } = wanted;
  const set = composedSet(design, { kinds, revision, contentHash, preliminary, showing: manner.showing });
  const { against, blocked, facts, records } = set;
  if (blocked && !preliminary) return notIssued(against, manner, verdictLine(design));

  const folder = pathIn(wanted.out, revisionFolder(revision));
  const before = await frozenBefore(surroundings, folder, revision, contentHash);
  const frozen = frozenFiles(design, read);
  const files: ListedFile[] = [];
  const kept = await surroundings.writeFolder(folder, contentsName, async (staged) => {
    const put = async (file: IssuedFile) => {
      const write = (content: Content) =>
        surroundings.writeFile(pathIn(staged, file.path), content, { overwrite: false });
      files.push(await written(file, write));
    };
    for (const file of frozen.files) await put(file);
    const begun = (title: string, done: number, of: number) => surroundings.step(title, { done, of });
    for await (const file of setFiles({ records, forms: asked, paper, facts, typesetting, begun })) await put(file);
    if (before !== undefined) {
      refuseOthers(before, files);
      return 'keep';
    }
    const contents = issuedContents(facts, files, wanted.preliminary, frozen.stated);
    await surroundings.writeFile(pathIn(staged, contentsName), contents, { overwrite: false });
    return 'replace';
  });
  return {
    exit: blocked ? 1 : 0,
    lines: [
      ...paragraph(
        before === undefined
          ? `${counted(files.length, 'file')} of revision ${revision} written to ${folder}.`
          : `Revision ${revision} stands in ${folder} exactly as it would be issued now; nothing was written.`,
        manner.width,
      ),
      ...(kept === undefined
        ? []
        : paragraph(`What stood in that folder and was not issued is kept in ${kept}.`, manner.width)),
      ...(wanted.preliminary ? paragraph(`Preliminary: ${facts.preliminary}`, manner.width) : []),
      blank,
      ...verdictLine(design),
    ],
    json: {
      issued: true,
      folder,
      revision,
      contentHash,
      preliminary: wanted.preliminary,
      written: before === undefined,
      ...(kept === undefined ? {} : { kept }),
      files,
    },
  };
}

function notIssued(against: readonly Finding[], manner: Manner, verdict: readonly Line[]): Outcome {
  const sentence = `Nothing is issued: ${counted(against.length, 'finding')} ${against.length === 1 ? 'blocks' : 'block'} it. Mend them, or issue with --preliminary for whoever is to check.`;
  return {
    exit: 1,
    lines: [...findingsLines(against, manner), blank, ...paragraph(sentence, manner.width), blank, ...verdict],
    json: { issued: false, blocking: against.map(({ rule, at }) => ({ rule, at })) },
  };
}
