import { shaftSpeedIn } from '../acquisition/set-kind.ts';
import type { MeasuringChain } from '../chain/chain.ts';
import type { ProbeRow, ProbeSurroundings, ProbeSystem } from '../chain/proximity/arrangement/arrangement-kind.ts';
import { type Arrangement, arrangementKindOf } from '../chain/proximity/arrangement/kinds.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Finding } from '../finding/finding.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import { type Answer, answerOf, fromAll, type Length, type Span, type Stated, unanswered } from '../quantity/index.ts';

/** One arrangement of probes with the numbers that follow from it. */
export interface ArrangementResult {
  readonly stated: Arrangement;
  readonly title: string;
  readonly rows: readonly ProbeRow[];
}

export interface PointProbes {
  readonly around: ProbeSurroundings;
  readonly arrangements: readonly ArrangementResult[];
  readonly findings: readonly Finding[];
}

export interface ProbePlace {
  readonly point: MeasuringPoint;
  readonly chain: MeasuringChain | undefined;
  readonly table: FrequencyTable;
  readonly shaft: string | undefined;
  readonly clearance: Stated<Length> | undefined;
}

/** What the probes of a point read, with the chosen set, the bearing and the speeds of its shaft. */
export function pointProbes(arrangements: readonly Arrangement[], place: ProbePlace): PointProbes {
  const around = surroundingsOf(place);
  return {
    around,
    arrangements: arrangements.map((stated) => {
      const kind = arrangementKindOf(stated);
      return { stated, title: kind.name, rows: kind.rows(stated.sheet, around) };
    }),
    findings: arrangements.flatMap((stated) => arrangementKindOf(stated).doubts(stated.sheet, around)),
  };
}

function surroundingsOf({ point, chain, table, shaft, clearance }: ProbePlace): ProbeSurroundings {
  const running = shaft === undefined ? {} : { shaft };
  return {
    at: point.of,
    system: systemOf(point, chain),
    shaftDiameter: answerOf(point.surroundings.values.shaftDiameter, point.of, 'shaft diameter'),
    clearance: answerOf(clearance, point.of, 'diametral clearance'),
    slowest: shaftSpeedIn(table, running, 'lowest'),
    fastest: shaftSpeedIn(table, running, 'highest'),
    firstCritical: firstCritical(table),
  };
}

/** Scale factor, linear range and corner of the chosen set, by the fields of its data sheet. */
function systemOf(point: MeasuringPoint, chain: MeasuringChain | undefined): Answer<ProbeSystem> {
  if (chain === undefined) return unanswered([{ of: point.of, what: 'proximity system' }]);
  const { sheet } = chain.parts.transducer;
  const values = sheet.values as Readonly<Record<string, Stated<unknown> | undefined>>;
  return fromAll(
    {
      scaleFactor: chain.transducer.sensitivity,
      linearRange: answerOf(values['linearRange'] as Stated<Span<'length'>> | undefined, sheet.of, 'linear range'),
      corner: answerOf(values['highCorner'] as Stated<number> | undefined, sheet.of, 'high corner'),
    },
    (known) => known,
  );
}

/** The lowest critical speed that the train states; unknown where it states none. */
function firstCritical(table: FrequencyTable): Answer<number> {
  const rows = table.rows.filter((row) => row.line.name.endsWith('/critical'));
  const known = rows.flatMap((row) => {
    const frequency = row.cells.find((cell) => cell.state === 'highest')?.frequency;
    return frequency?.known === true ? [frequency.value] : [];
  });
  if (known.length === 0 || known.length < rows.length) return unanswered([{ of: table.of, what: 'critical speed' }]);
  return { known: true, value: Math.min(...known) };
}
