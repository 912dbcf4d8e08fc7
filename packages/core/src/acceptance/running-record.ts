import { type Answer, fromAll, thenAnswer } from '../quantity/index.ts';
import type { CheckedRecord } from './check/check-kind.ts';
import { type LineSpectrum, lineSpectrum, type SeenLine, seenAt } from './lines-seen.ts';
import { linesAtSpeed, type MachineLine } from './machine-at-speed.ts';
import { declaredSpeed, speedMarked } from './speed-of-record.ts';

/** A record of a running machine with what its machine does at that speed. */
export interface RunningRecord {
  readonly speed: number;
  readonly lines: readonly MachineLine[];
  /** With the finer lines at the lower end, and to half the sampling rate. */
  readonly slow: LineSpectrum;
  readonly fine: LineSpectrum;
  /** The line at a frequency in hertz, by the finer spectrum that reaches it. */
  at(frequency: number, relative?: number): SeenLine | undefined;
}

/** How far a line may lie from where the speed puts it, relative. */
const usual = 0.01;

export function runningRecord(looked: CheckedRecord, at?: number): Answer<RunningRecord> {
  const { designed, machine, record, serving } = looked;
  const marked = at ?? speedMarked(serving);
  const speed: Answer<number> = marked === undefined ? declaredSpeed(record) : { known: true, value: marked };
  return fromAll(
    {
      speed,
      lines: thenAnswer(speed, (known) => linesAtSpeed(designed, machine, known)),
      slow: record.measures.slowDensity,
      fine: record.measures.density,
    },
    (known) => {
      const slow = lineSpectrum(known.slow);
      const fine = known.fine === known.slow ? slow : lineSpectrum(known.fine);
      return {
        speed: known.speed,
        lines: known.lines,
        slow,
        fine,
        at: (frequency, relative = usual) => {
          const spectrum = frequency < 0.35 * slow.density.rate ? slow : fine;
          return seenAt(spectrum, frequency, Math.max(relative * frequency, spectrum.density.resolution));
        },
      };
    },
  );
}

/** Which multiples of a frequency are seen, of those asked for; each must keep step with the first that was found. */
export function multiplesSeen(
  running: Pick<RunningRecord, 'at'>,
  base: number,
  multiples: readonly number[],
): readonly { readonly times: number; readonly line: SeenLine }[] {
  return multiples.flatMap((times) => {
    const line = running.at(times * base);
    return line === undefined ? [] : [{ times, line }];
  });
}
