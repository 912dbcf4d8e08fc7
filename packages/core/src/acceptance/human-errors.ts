import { type Clause, clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';

/** A ratio by which people are wrong, and the mistake that makes it. */
export interface HumanError {
  /** Found over expected. */
  readonly ratio: number;
  readonly written: string;
  readonly mistake: string;
}

/** Standard gravity, m/s² (CGPM 1901, exact). */
const gravity = 9.80665;

const bothWays = (ratio: number, written: string, larger: string, smaller: string): readonly HumanError[] => [
  { ratio, written, mistake: larger },
  { ratio: 1 / ratio, written: `1/${written}`, mistake: smaller },
];

/** The ratios that betray a mistake of scale; each is of exact numbers, so how near a found one comes can be judged. */
export const humanErrors: readonly HumanError[] = [
  ...bothWays(Math.SQRT2, '1.414', 'peak shown where rms was expected', 'rms shown where peak was expected'),
  ...bothWays(
    2 * Math.SQRT2,
    '2.828',
    'peak-to-peak shown where rms was expected',
    'rms shown where peak-to-peak was expected',
  ),
  ...bothWays(2, '2', 'peak-to-peak shown where peak was expected', 'peak shown where peak-to-peak was expected'),
  ...bothWays(
    5,
    '5',
    'scaled for a transducer a fifth as sensitive: 100 where 500 stands, or 20 where 100 stands',
    'scaled for a transducer five times as sensitive: 500 where 100 stands',
  ),
  ...bothWays(gravity, '9.81', 'm/s² read where g was meant', 'g read where m/s² was meant'),
  ...bothWays(10, '10', 'a gain or sensitivity ten times off', 'a gain or sensitivity ten times off'),
  ...bothWays(25.4, '25.4', 'millimetres read where inches were meant', 'inches read where millimetres were meant'),
  ...bothWays(39.37007874015748, '39.37', 'inches shown for metres', 'metres shown for inches'),
  ...bothWays(100, '100', 'a sensitivity a hundred times off', 'a sensitivity a hundred times off'),
  ...bothWays(1000, '1000', 'thousandths read as units', 'units read as thousandths'),
  ...bothWays(386.0885826771653, '386.1', 'in/s² read where g was meant', 'g read where in/s² was meant'),
];

export const humanErrorSources: readonly Clause[] = [clause(tradePractice, 'ratios of mistaken units and detectors')];

/** A ratio that was found, with the errors it may be: those inside its interval, nearest first. */
export interface Recognised {
  readonly candidates: readonly HumanError[];
  /** Whether the ratio is one, within its interval: no error of scale. */
  readonly none: boolean;
}

/**
 * The human errors that a found ratio may be. `spread` is its relative expanded uncertainty, k = 2: an error is a
 * candidate where ln(ratio) lies no farther from its own than ln(1 + spread). With a wide spread several are.
 */
export function recognised(ratio: number, spread: number): Recognised {
  const reach = Math.log1p(spread);
  const distance = (other: number) => Math.abs(Math.log(Math.abs(ratio) / other));
  return {
    candidates: humanErrors
      .filter((each) => distance(each.ratio) <= reach)
      .sort((a, b) => distance(a.ratio) - distance(b.ratio)),
    none: distance(1) <= reach,
  };
}
