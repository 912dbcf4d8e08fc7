import { type Finding, finding } from '@soundpost/core';
import type { DocumentRecord, SetTable } from './record.ts';

/** What the documents of one set say of each other: the same terminals, and no tag the instrument list does not have. */
export function setFindings(records: readonly DocumentRecord[]): readonly Finding[] {
  const documents = records.map(namedIn);
  return [...terminalFindings(documents), ...tagFindings(documents)];
}

/** What the first columns of a document name, without the document. */
interface Named {
  readonly kind: string;
  readonly title: string;
  readonly tags: ReadonlySet<string>;
  /** By the table they stand in: `P-301/drive-end terminals`. */
  readonly terminals: ReadonlyMap<string, readonly string[]>;
}

function namedIn({ kind, title, sheets }: DocumentRecord): Named {
  const tags = new Set<string>();
  const terminals = new Map<string, readonly string[]>();
  for (const { blocks } of sheets) {
    for (const table of blocks) {
      if (table.is !== 'table') continue;
      if (table.columns[0]?.head === 'Tag') for (const tag of firstColumn(table)) tags.add(tag);
      if (table.name.endsWith(' terminals')) terminals.set(table.name.replace(/ terminals$/, ''), firstColumn(table));
    }
  }
  return { kind, title, tags, terminals };
}

function firstColumn({ rows }: SetTable): readonly string[] {
  return rows.flatMap(([first]) => (first?.is === 'text' ? [first.text] : []));
}

function terminalFindings(documents: readonly Named[]): readonly Finding[] {
  const [drawn, tested] = ['loop-diagrams', 'commissioning-tests'].map((kind) =>
    documents.find((each) => each.kind === kind),
  );
  if (drawn === undefined || tested === undefined) return [];
  const [inDrawing, inTest] = [drawn.terminals, tested.terminals];
  const points = [...new Set([...inDrawing.keys(), ...inTest.keys()])];
  return points.flatMap((point) => [
    ...without(inDrawing.get(point), inTest.get(point)).map((each) => terminalFinding(point, each, drawn, tested)),
    ...without(inTest.get(point), inDrawing.get(point)).map((each) => terminalFinding(point, each, tested, drawn)),
  ]);
}

function without(all: readonly string[] = [], others: readonly string[] = []): readonly string[] {
  return all.filter((each) => !others.includes(each));
}

function terminalFinding(at: string, terminal: string, has: Named, lacks: Named): Finding {
  return finding({
    rule: 'completeness/terminals-agree',
    weight: 'blocks-issue',
    at,
    found: `terminal ${terminal} stands in '${has.title}' and not in '${lacks.title}'`,
    limit: 'the same terminals in both',
    because: 'Whoever tests a loop follows its diagram.',
    remedy: ['issue both documents from the same design'],
    sources: [],
  });
}

function tagFindings(documents: readonly Named[]): readonly Finding[] {
  const list = documents.find((each) => each.kind === 'instrument-list');
  if (list === undefined) return [];
  return documents.flatMap(({ title, tags }) =>
    [...tags]
      .filter((tag) => !list.tags.has(tag))
      .map((tag) =>
        finding({
          rule: 'completeness/tags-agree',
          weight: 'blocks-issue',
          at: tag,
          found: `it stands in '${title}' and not in the instrument list`,
          limit: 'every tag in the instrument list',
          because: 'What is not in the list is neither ordered nor mounted.',
          remedy: ['issue all documents from the same design'],
          sources: [],
        }),
      ),
  );
}
