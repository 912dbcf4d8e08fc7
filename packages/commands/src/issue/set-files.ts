import {
  csv,
  type DocumentRecord,
  drawingsIn,
  type IssueFacts,
  partsOf,
  setPageInPieces,
  standaloneSvg,
  tablesOf,
  volumesOf,
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
    yield {
      path: 'documents.html',
      title: 'All documents, for a browser',
      content: setPageInPieces(records, facts),
    };
  }
}

async function* documentFiles(record: DocumentRecord, wanted: WantedSet): AsyncGenerator<IssuedFile> {
  const { kind } = record;
  const { forms, paper, typesetting } = wanted;
  const [tableNamed, drawingNamed] = [namesOnce(), namesOnce()];
  for (const { name, record: each } of numbered(kind, volumesOf(record))) {
    // Every form of a volume is set from the same sheets; then they go, and the next volume is made.
    for (const { name: file, record: part } of forms.includes('pdf') ? numbered(name, partsOf(each)) : []) {
      const content = typesetting.pdf(part, paper);
      yield { path: `${file}.pdf`, title: part.title, content, pages: typesetting.pageCount(content) };
    }
    const volume = heldOf(each);
    if (forms.includes('xlsx')) {
      const content = await typesetting.workbook(volume, { carriesExported: comesBack(kind) });
      if (content !== undefined) yield { path: `${name}.xlsx`, title: volume.title, content };
    }
    for (const table of forms.includes('csv') ? tablesOf(volume) : []) {
      yield { path: `tables/${kind}/${tableNamed(table.name)}.csv`, title: table.caption, content: csv(table) };
    }
    for (const { name: drawn, drawing } of forms.includes('svg') ? drawingsIn(volume) : []) {
      const path = `drawings/${kind}/${drawingNamed(drawn)}.svg`;
      yield { path, title: drawing.title, content: standaloneSvg(drawing) };
    }
  }
}

/** Volumes and parts carry which of how many they are behind their name; one alone does not. */
function numbered(name: string, records: readonly DocumentRecord[]) {
  const of = records.length;
  return records.map((record, at) => ({ name: of === 1 ? name : `${name}-${at + 1}-of-${of}`, record }));
}

function heldOf(volume: DocumentRecord): DocumentRecord {
  return { ...volume, sheets: volume.sheets.map(({ title, blocks }) => ({ title, blocks })) };
}

/** Tables that may be edited and handed back in carry what was exported in them. */
function comesBack(kind: string): boolean {
  return roundTrips.some((each) => each.kind === kind);
}

/** Names as they may stand in the name of a file, each once whatever the plant calls its points. */
function namesOnce(): (name: string) => string {
  const taken = new Set<string>();
  return (name) => {
    const plain = name.replace(/[^A-Za-z0-9_-]+/g, '-').slice(0, 80) || 'unnamed';
    let found = plain;
    for (let at = 2; taken.has(found.toLowerCase()); at++) found = `${plain}-${at}`;
    taken.add(found.toLowerCase());
    return found;
  };
}
