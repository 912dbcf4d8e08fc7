import type { CertificateColumn } from '../chain/certificate.ts';
import { iec60079x11 } from '../source/iec-60079-11.ts';
import { type Clause, clause } from '../source/source.ts';

/** Volts, then microfarads: permitted capacitance with a factor of safety of 1.5. IEC 60079-11, Table A.2, from memory. */
const table: Readonly<Record<CertificateColumn, readonly (readonly [volts: number, microfarads: number])[]>> = {
  IIC: [
    [10, 3.0],
    [12, 1.41],
    [15, 0.58],
    [20, 0.22],
    [24, 0.125],
    [30, 0.066],
  ],
  IIB: [
    [10, 20],
    [12, 9],
    [15, 3.55],
    [20, 1.41],
    [24, 0.93],
    [30, 0.56],
  ],
  IIA: [
    [10, 100],
    [12, 36],
    [15, 14],
    [20, 5.5],
    [24, 3.35],
    [30, 1.82],
  ],
};

/**
 * Capacitance that a certificate usually allows at an output voltage, in farads; read on log-log paper between the
 * remembered points, undefined outside them. To doubt a Co by, never to prove one.
 */
export function usualPermittedCapacitance(voltage: number, column: CertificateColumn): number | undefined {
  const points = table[column];
  const above = points.findIndex(([volts]) => voltage <= volts);
  if (above < 0 || voltage < points[0]![0]) return undefined;
  if (above === 0) return points[0]![1] * 1e-6;
  const [[low, most], [high, least]] = [points[above - 1]!, points[above]!];
  return most * (least / most) ** (Math.log(voltage / low) / Math.log(high / low)) * 1e-6;
}

/** How far above that a Co may lie before its column is doubted: the next group's column lies a factor of six and more above. */
const doubtfulFactor = 2;

/** The column whose usual value a Co is nearest to, where that is not the one it was entered for. */
export function columnSuspected(
  voltage: number,
  capacitance: number,
  entered: CertificateColumn,
): CertificateColumn | undefined {
  const own = usualPermittedCapacitance(voltage, entered);
  if (own === undefined || capacitance <= own * doubtfulFactor) return undefined;
  const distance = (column: CertificateColumn) =>
    Math.abs(Math.log(capacitance / usualPermittedCapacitance(voltage, column)!));
  const columns = Object.keys(table) as CertificateColumn[];
  const near = columns.reduce((best, each) => (distance(each) < distance(best) ? each : best));
  return near === entered ? undefined : near;
}

export const permittedCapacitanceSource: Clause = clause(iec60079x11, 'Table A.2');
