import {
  type AnyField,
  type Design,
  type DesignedPoint,
  fieldOf,
  kindCalled,
  type Mount,
  mountKinds,
  type Sheet,
  type Showing,
  type Stated,
  showClause,
  showQuantity,
  words as spoken,
} from '@soundpost/core';
import { fittingOf } from '../../chain/mount-fitting.ts';
import { mountSection, placesOn } from '../../chain/mount-section.ts';
import { caution, drawn, facts, heading, list, note, signatures } from '../blocks.ts';
import { answered, blank, count, none, statedCell, unknown, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import type { Block, DocumentSheet } from '../record.ts';
import { blankColumn, numberColumn, setTable, textColumn } from '../set-table.ts';
import { howKnown, statedFacts } from '../stated-facts.ts';

/** How each mount used in the plant is fitted, where it stands, and what must still be asked before a tool is taken. */
export const mountingInstructions = issuedKind({
  kind: 'mounting-instructions',
  title: 'Installation and hook-up instructions',
  readers: 'whoever drills, taps and fixes the transducers, and whoever checks it afterwards',
  orientation: 'portrait',
  sheets: (design, showing) => [...pointsByMount(design).values()].map((points) => mountSheet(points, showing)),
});

function mountOf({ appraisal }: DesignedPoint): Mount {
  return appraisal!.prediction.chain.parts.mount;
}

/** A mount is told by its name in the catalogue: one name has one sheet. */
function pointsByMount(design: Design): ReadonlyMap<string, readonly DesignedPoint[]> {
  const byMount = new Map<string, DesignedPoint[]>();
  for (const { designed } of everyPoint(design)) {
    if (designed.appraisal === undefined) continue;
    const { kind, name } = mountOf(designed);
    const key = `${kind}\n${name}`;
    const before = byMount.get(key);
    if (before === undefined) byMount.set(key, [designed]);
    else before.push(designed);
  }
  return byMount;
}

function mountSheet(points: readonly DesignedPoint[], showing: Showing): DocumentSheet {
  const mount = mountOf(points[0]!);
  const kind = kindCalled(mountKinds, mount.kind);
  const { fields, steps, cuts } = fittingOf(mount.kind);
  const places = placesOn(mount.kind);
  const letters = new Map(
    fields.filter((key) => key in places).map((key, index) => [key, String.fromCharCode(65 + index)]),
  );
  return {
    title: `${kind.name}: ${mount.name}`,
    blocks: [
      caution(cautionOf(points, cuts)),
      ...drawn(
        mount.name,
        mountSection(mount.kind, mount.name, letters),
        'Section, not to scale. The grey face below is the machine; letters are those of the table.',
      ),
      readyTable(mount, fields, letters, showing),
      stepTable(mount, steps),
      heading('What commonly goes wrong'),
      ...list(kind.cautions),
      heading('Hook-up'),
      ...list(hookUp),
      pointTable(points, showing),
      recordTable(mount, points),
      ...proofFacts(mount, fields, showing),
      note(
        `Steps are common practice, no source, unless the sheet of the maker says otherwise: then the sheet holds. The kind of mount leans on: ${kind.sources.map(showClause).join('; ')}.`,
      ),
      signatures('fitted', 'checked', 'accepted'),
    ],
  };
}

function cautionOf(points: readonly DesignedPoint[], cuts: boolean): string {
  const inArea = points.some((each) => each.point.area !== undefined);
  return [
    'Before a tool touches the machine: stop it, part it from every source of energy (electrical, pressure, springs, heat, lifted loads), lock it and prove it. A shaft may turn by itself, driven by what the machine conveys.',
    ...(cuts
      ? ['Drilling a housing may open a pressurised, thin or coated wall: the owner of the machine agrees in writing.']
      : []),
    inArea
      ? 'Some of these points lie in a hazardous area: sparks, heat and open enclosures there need a permit, and the people licensed for that practice decide about it.'
      : 'No hazardous area is stated for these points, which does not say that there is none: ask before any spark or heat.',
    'The codes of the place and people licensed for this practice decide; this sheet does not replace them.',
  ].join(' ');
}

const hookUp: readonly string[] = [
  'Lead the cable off in a loop that drains downwards and relieves the connector; fix it to the machine near the transducer, and again before it leaves the machine.',
  'Do not bend it tighter than the sheet of its maker allows, and keep it off hot, sharp and moving parts.',
  'Join cores and screen as the terminal plan says, and earth nothing that the grounding drawing does not.',
];

function readyTable(
  { kind, sheet }: Mount,
  keys: readonly string[],
  letters: ReadonlyMap<string, string>,
  showing: Showing,
): Block {
  const { dataSheet } = kindCalled(mountKinds, kind);
  const entries = dataSheet as Readonly<Record<string, AnyField>>;
  const values = sheet.values as Readonly<Record<string, Stated<unknown> | undefined>>;
  return setTable<string>(
    `${sheet.of} fitting`,
    'How the place is made ready; what is unknown here is filled in from the sheet of the maker before work begins',
    [
      textColumn('Letter', (key) => words(letters.get(key)), 0.5),
      textColumn('Is', (key) => words(fieldOf(entries[key]!).meaning), 2.4),
      textColumn(
        'As stated',
        (key) =>
          values[key] === undefined
            ? unknown([{ of: sheet.of, what: spoken(key) }])
            : statedCell(values[key], sheet.of, spoken(key), (value) =>
                words(fieldOf(entries[key]!).show(value, showing)),
              ),
        2.2,
      ),
      textColumn('Known by', (key) => (values[key] === undefined ? none : words(howKnown(values[key]))), 1.2),
      {
        ...blankColumn<string>("From the maker's sheet", 1.6),
        cell: (key: string) => (values[key]?.known === true ? none : blank),
      },
    ],
    keys,
    '',
  );
}

function pointTable(points: readonly DesignedPoint[], showing: Showing): Block {
  return setTable<DesignedPoint>(
    `${mountOf(points[0]!).name} points`,
    'Points it holds for',
    [
      textColumn('Point', ({ point }) => words(point.of), 2.4),
      textColumn('Location', ({ point }) => words(point.location), 2.2),
      textColumn('Direction', ({ point }) => answered(point.direction, words), 1.2),
      textColumn('Transducer', ({ appraisal }) => words(appraisal!.prediction.chain.parts.transducer.name), 1.2),
      textColumn(
        'Surface up to',
        ({ point }) =>
          statedCell(point.surfaceTemperature, point.of, 'surface temperature', (value) =>
            words(showQuantity('temperature', value, showing)),
          ),
        1,
      ),
      textColumn('Mind', (each) => words(mindOf(each)), 2),
    ],
    points,
    '',
  );
}

/** What of this sheet does not hold at a point, and where it must be asked first. */
function mindOf({ point, appraisal }: DesignedPoint): string | undefined {
  const { reference } = appraisal!.prediction.chain.transducer;
  const minded = [
    ...(reference === 'casing'
      ? []
      : [
          `senses ${reference} motion: set by its gap or travel, held and aligned as its maker says; this sheet holds for its bracket only`,
        ]),
    ...(point.area === undefined ? [] : ['hazardous area: permit first']),
  ];
  return minded.length === 0 ? undefined : minded.join('; ');
}

function recordTable(mount: Mount, points: readonly DesignedPoint[]): Block {
  return setTable<DesignedPoint>(
    `${mount.name} record`,
    'As fitted',
    [
      textColumn('Point', ({ point }) => words(point.of), 2.4),
      blankColumn('Face found'),
      blankColumn('Torque found'),
      blankColumn('Insulation found'),
      blankColumn('Fitted by, date', 1.8),
    ],
    points,
    '',
  );
}

interface Step {
  readonly number: number;
  readonly text: string;
}

function stepTable({ name }: Mount, steps: readonly string[]): Block {
  return setTable<Step>(
    `${name} steps`,
    'What is done, in this order',
    [
      numberColumn('Step', '', ({ number }) => count(number), 0.5),
      textColumn('Is', ({ text }) => words(text), 7),
      blankColumn('Done by', 1.2),
    ],
    steps.map((text, index) => ({ number: index + 1, text })),
    '',
  );
}

/** What else the sheet of the mount says, and the proof was made with. */
function proofFacts({ kind, sheet }: Mount, shown: readonly string[], showing: Showing): readonly Block[] {
  const { dataSheet } = kindCalled(mountKinds, kind);
  const rest = Object.fromEntries(Object.entries(dataSheet).filter(([key]) => !shown.includes(key)));
  const told = statedFacts(sheet as Sheet, rest, showing);
  return told.length === 0 ? [] : [heading('What else the sheet of the mount states'), facts(told)];
}
