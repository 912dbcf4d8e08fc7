import {
  csv,
  type DocumentRecord,
  drawingsIn,
  type IssueFacts,
  setPage,
  standaloneSvg,
  tablesOf,
} from '@soundpost/documents/document-set';
import type { Paper } from '@soundpost/typesetting';
import { roundTrips } from '../import/round-trip-places.ts';
import type { Form } from '../issue.ts';
import type { IssuedFile } from './set-contents.ts';

/** What a set is made from, and how. */
export interface WantedSet {
  readonly records: readonly DocumentRecord[];
  readonly forms: readonly Form[];
  readonly paper: Paper;
  readonly facts: IssueFacts;
  /** Loaded by whoever issues: it is heavy, and no other command needs it. */
  readonly typesetting: typeof import('@soundpost/typesetting');
  /** Told before a document is set: its title, and how many of how many are done. */
  begun(title: string, done: number, of: number): void;
}

/** Every file of a set, one after the other; nothing is written here. */
export async function* setFiles(wanted: WantedSet): AsyncGenerator<IssuedFile> {
  const { records, facts, forms, begun } = wanted;
  for (const [done, record] of records.entries()) {
    begun(record.title, done, records.length);
    yield* documentFiles(record, wanted);
  }
  if (forms.includes('html') && records.length > 0) {
    yield { path: 'documents.html', title: 'All documents, for a browser', content: setPage(records, facts) };
  }
}

async function* documentFiles(record: DocumentRecord, wanted: WantedSet): AsyncGenerator<IssuedFile> {
  const { kind, title } = record;
  const { forms, paper, typesetting } = wanted;
  if (forms.includes('pdf')) {
    const content = typesetting.pdf(record, paper);
    yield { path: `${kind}.pdf`, title, content, pages: typesetting.pageCount(content) };
  }
  if (forms.includes('xlsx')) {
    const content = await typesetting.workbook(record, { carriesExported: comesBack(kind) });
    if (content !== undefined) yield { path: `${kind}.xlsx`, title, content };
  }
  if (forms.includes('csv')) {
    const names = namesOnce(tablesOf(record).map((each) => each.name));
    for (const [at, table] of tablesOf(record).entries()) {
      yield { path: `tables/${kind}/${names[at]}.csv`, title: table.caption, content: csv(table) };
    }
  }
  if (forms.includes('svg')) {
    const names = namesOnce(drawingsIn(record).map((each) => each.name));
    for (const [at, { drawing }] of drawingsIn(record).entries()) {
      yield { path: `drawings/${kind}/${names[at]}.svg`, title: drawing.title, content: standaloneSvg(drawing) };
    }
  }
}

/** Tables that may be edited and handed back in carry what was exported in them. */
function comesBack(kind: string): boolean {
  return roundTrips.some((each) => each.kind === kind);
}

/** Names as they may stand in the name of a file, each once whatever the plant calls its points. */
function namesOnce(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const plain = name.replace(/[^A-Za-z0-9_-]+/g, '-').slice(0, 80) || 'unnamed';
    let found = plain;
    for (let at = 2; taken.has(found.toLowerCase()); at++) found = `${plain}-${at}`;
    taken.add(found.toLowerCase());
    return found;
  });
}
