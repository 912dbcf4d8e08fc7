import { type Finding, finding } from '@soundpost/core';
import { type DocumentRecord, tablesOf } from './record.ts';

/** What the documents of one set say of each other: the same terminals, and no tag the instrument list does not have. */
export function setFindings(records: readonly DocumentRecord[]): readonly Finding[] {
  return [...terminalFindings(records), ...tagFindings(records)];
}

/** Terminals by the table they stand in: `P-301/drive-end terminals`. */
function terminalsIn(record: DocumentRecord): ReadonlyMap<string, readonly string[]> {
  return new Map(
    tablesOf(record)
      .filter(({ name }) => name.endsWith(' terminals'))
      .map((table) => [table.name.replace(/ terminals$/, ''), firstColumn(table)]),
  );
}

function firstColumn({ rows }: ReturnType<typeof tablesOf>[number]): readonly string[] {
  return rows.flatMap(([first]) => (first?.is === 'text' ? [first.text] : []));
}

function terminalFindings(records: readonly DocumentRecord[]): readonly Finding[] {
  const [drawn, tested] = ['loop-diagrams', 'commissioning-tests'].map((kind) =>
    records.find((each) => each.kind === kind),
  );
  if (drawn === undefined || tested === undefined) return [];
  const [inDrawing, inTest] = [terminalsIn(drawn), terminalsIn(tested)];
  const points = [...new Set([...inDrawing.keys(), ...inTest.keys()])];
  return points.flatMap((point) => [
    ...without(inDrawing.get(point), inTest.get(point)).map((each) => terminalFinding(point, each, drawn, tested)),
    ...without(inTest.get(point), inDrawing.get(point)).map((each) => terminalFinding(point, each, tested, drawn)),
  ]);
}

function without(all: readonly string[] = [], others: readonly string[] = []): readonly string[] {
  return all.filter((each) => !others.includes(each));
}

function terminalFinding(at: string, terminal: string, has: DocumentRecord, lacks: DocumentRecord): Finding {
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

function tagFindings(records: readonly DocumentRecord[]): readonly Finding[] {
  const list = records.find((each) => each.kind === 'instrument-list');
  if (list === undefined) return [];
  const listed = new Set(tablesOf(list).flatMap(firstColumn));
  return records.flatMap((record) =>
    tablesOf(record).flatMap((table) =>
      table.columns[0]?.head !== 'Tag'
        ? []
        : without([...new Set(firstColumn(table))], [...listed]).map((tag) =>
            finding({
              rule: 'completeness/tags-agree',
              weight: 'blocks-issue',
              at: tag,
              found: `it stands in '${record.title}' and not in the instrument list`,
              limit: 'every tag in the instrument list',
              because: 'What is not in the list is neither ordered nor mounted.',
              remedy: ['issue all documents from the same design'],
              sources: [],
            }),
          ),
    ),
  );
}
