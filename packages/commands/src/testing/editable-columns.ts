import fc from 'fast-check';

export type Values = Readonly<Record<string, string | number>>;
export type Path = readonly (string | number)[];

/** Valid values of a cell: what is typed, and what its table shows then. */
type Cells = fc.Arbitrary<{ readonly typed: Values; readonly shown: Readonly<Record<string, number | string>> }>;

const words = fc
  .array(fc.constantFrom('pump', 'über', 'Lager 2', "owner's", 'N-side', '50 %', 'a: b', '# 3', '- 4', '"q"', '{x}'), {
    minLength: 1,
    maxLength: 4,
  })
  .map((parts) => `at ${parts.join(', ')}`);
const text = (head: string): Cells => words.map((each) => ({ typed: { [head]: each }, shown: { [head]: each } }));
const among = (head: string, ...choices: readonly string[]): Cells =>
  fc.constantFrom(...choices).map((each) => ({ typed: { [head]: each }, shown: { [head]: each } }));
const tenths = (from: number, to: number) => fc.integer({ min: from * 10, max: to * 10 }).map((each) => each / 10);
const number = (head: string, from: number, to: number): Cells =>
  tenths(from, to).map((each) => ({ typed: { [head]: each }, shown: { [head]: each } }));

export interface Column {
  readonly kind: string;
  /** Row of the demo table, by its first cells. */
  readonly row: string;
  readonly column: string;
  readonly path: Path;
  readonly cells: Cells;
  /** What is said with the change. */
  readonly words?: string;
  /** The same with a unit of its own, and what the table shows for it. */
  readonly withUnit?: Cells;
}

export const tag = 'P-301/pump-drive-end-loop';
const at = (...path: Path): Path => ['machines', 'P-301', 'points', 'pump-drive-end-loop', ...path];

/** Every column of an exported table that a person may edit, with what may be typed there. */
export const editableColumns: readonly Column[] = [
  { kind: 'instrument-list', row: tag, column: 'Location', path: at('location'), cells: text('Location') },
  { kind: 'instrument-list', row: tag, column: 'Direction', path: at('direction'), cells: text('Direction') },
  {
    kind: 'instrument-list',
    row: tag,
    column: 'Surface',
    path: at('surface-temperature'),
    words: 'What is stated of where the old value came from goes with it; state it anew.',
    cells: fc
      .integer({ min: -20, max: 99 })
      .map((each) => ({ typed: { Surface: `${each} °C` }, shown: { Surface: `${each} °C` } })),
    withUnit: fc
      .integer({ min: -4, max: 19 })
      .map((each) => ({ typed: { Surface: `${32 + 9 * each} °F` }, shown: { Surface: `${5 * each} °C` } })),
  },
  {
    kind: 'instrument-list',
    row: tag,
    column: 'Transducer',
    path: at('chain', 'transducer'),
    cells: among('Transducer', 'LPV-12L', 'LPA-10P', 'LPV-25X'),
  },
  {
    kind: 'instrument-list',
    row: tag,
    column: 'Mount',
    path: at('chain', 'mount'),
    cells: among('Mount', 'magnet-2pole', 'epoxy-pad', 'quick-lock'),
  },
  { kind: 'instrument-list', row: tag, column: 'Input', path: at('chain', 'input'), cells: among('Input', 'AI-12') },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Type',
    path: at('chain', 'cable'),
    cells: among('Type', 'TST', 'COAX', 'FEP'),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Length',
    path: at('chain', 'cable-length'),
    cells: number('Length, m', 0, 900),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Screen earthed at',
    path: at('wiring', 'screen-earthed'),
    cells: among('Screen earthed at', 'sensor', 'both', 'nowhere', 'junction box'),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Runs along',
    path: at('wiring', 'power-cable'),
    cells: among('Runs along', 'none', 'converter drive', 'medium voltage'),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Apart by',
    path: at('wiring', 'power-distance'),
    cells: fc
      .integer({ min: 1, max: 999 })
      .map((each) => ({ typed: { 'Apart by': `${each} mm` }, shown: { 'Apart by': `${each} mm` } })),
  },
  {
    kind: 'alarm-register',
    row: `${tag},baseline`,
    column: 'Set at',
    path: at('alarm', 'baseline'),
    cells: number('Set at', 0.1, 20),
    withUnit: fc.integer({ min: 1, max: 7 }).map((each) => ({
      typed: { 'Set at': each / 10, 'Set at, unit': 'in/s rms' },
      shown: { 'Set at': each * 2.54 },
    })),
  },
  {
    kind: 'alarm-register',
    row: `${tag},early`,
    column: 'Set at',
    path: at('alarm', 'set-points', 'early', 'level'),
    cells: number('Set at', 0.1, 20),
  },
  {
    kind: 'alarm-register',
    row: `${tag},early`,
    column: 'Delay',
    path: at('alarm', 'set-points', 'early', 'delay'),
    cells: number('Delay, s', 0.1, 99),
  },
  {
    kind: 'alarm-register',
    row: `${tag},trip`,
    column: 'Delay',
    path: at('alarm', 'trip-delay'),
    cells: number('Delay, s', 0.1, 99),
  },
  {
    kind: 'alarm-register',
    row: `${tag},early`,
    column: 'Because',
    path: at('alarm', 'set-points', 'early', 'because'),
    cells: text('Because'),
  },
];
