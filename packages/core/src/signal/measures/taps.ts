import { type Answer, answer } from '../../quantity/index.ts';
import { digitalHighPass, runningFilter } from './digital-filter.ts';
import { type Gathering, notThere } from './gathering.ts';

export interface TapSettings {
  /** Samples a second. */
  readonly rate: number;
  /** Corner of the second-order high-pass in front of the detection, in hertz: what is below is not the tap. */
  readonly from: number;
  /** How many times the rms of the quiet a tap has to reach. */
  readonly factor: number;
  /** How long a tap is kept, in seconds from its begin. */
  readonly duration: number;
}

/** A tap as it was recorded. */
export interface Tap {
  /** Seconds from the first sample of the record to the first sample of `samples`. */
  readonly at: number;
  /** From a little before the begin; not filtered. */
  readonly samples: Float64Array;
  /** Place in `samples` where it reaches a twentieth of its peak for the first time. */
  readonly onset: number;
  /** Sign of the first half wave: towards which side the record went first. */
  readonly polarity: 'positive' | 'negative';
  /** Greatest distance from the quiet before it, in the unit of the record. */
  readonly peak: number;
  /** rms of the quiet before it, above the corner. */
  readonly quiet: number;
}

export interface TapsFound {
  readonly taps: readonly Tap[];
  /** Taps after the last one that is kept. */
  readonly notKept: number;
}

/** How many taps are kept, and samples before each. */
const most = 64;
const before = 64;

/**
 * Finds taps: where the record above a corner reaches `factor` times the rms of the quiet before it, an average over the
 * last 0.2 s. The first 0.05 s, or 256 samples, only tell the quiet. After a tap the record has to be quiet again, below
 * half of what it takes to begin for a tenth of the duration.
 */
export function taps(settings: TapSettings): Gathering<Answer<TapsFound>> {
  const { rate, factor } = settings;
  const filter = runningFilter(digitalHighPass(settings.from, 2, rate), 'steady');
  const length = before + Math.max(16, Math.round(settings.duration * rate));
  const learning = Math.max(256, Math.round(0.05 * rate));
  const memory = Math.max(256, Math.round(0.2 * rate));
  const calm = Math.max(16, Math.round((settings.duration * rate) / 10));
  const found: Tap[] = [];
  const past = new Float64Array(before);
  let [seen, quiet, calmFor, notKept] = [0, 0, 0, 0];
  let kept: Float64Array | undefined;
  let keptFiltered = new Float64Array(0);
  let [filled, begun, meanBefore] = [0, 0, 0];
  let waiting = false;

  const finish = () => {
    if (found.length < most) found.push(tapOf(kept!, keptFiltered, meanBefore, Math.sqrt(quiet), begun / rate, factor));
    else notKept++;
    kept = undefined;
    waiting = true;
    calmFor = 0;
  };

  return {
    take(samples) {
      const high = Float64Array.from(samples, (x) => (Number.isFinite(x) ? x : 0));
      filter.through(high);
      for (let n = 0; n < samples.length; n++, seen++) {
        const [raw, x] = [samples[n]!, high[n]!];
        const square = x * x;
        if (kept !== undefined) {
          kept[filled] = raw;
          keptFiltered[filled++] = x;
          if (filled === length) finish();
        } else if (waiting) {
          calmFor = square < (quiet * factor * factor) / 4 ? calmFor + 1 : 0;
          if (calmFor >= calm) waiting = false;
        } else if (seen >= learning && square > factor * factor * quiet && quiet > 0) {
          kept = new Float64Array(length);
          keptFiltered = new Float64Array(length);
          // The ring holds the last samples before this one, the oldest at the place that is written next.
          for (let k = 0; k < before; k++) kept[k] = past[(seen + k) % before]!;
          meanBefore = kept.subarray(0, before / 2).reduce((sum, each) => sum + each, 0) / (before / 2);
          kept[before] = raw;
          keptFiltered[before] = x;
          begun = seen - before;
          filled = before + 1;
        } else {
          quiet += (square - quiet) / Math.min(memory, seen + 1);
        }
        past[seen % before] = raw;
      }
    },
    result() {
      if (found.length === 0) {
        return notThere(
          kept === undefined
            ? `tap: nothing reaches ${factor} times the rms of the quiet before it`
            : `${settings.duration} s after its tap: it ends before`,
        );
      }
      return answer({ taps: [...found], notKept });
    },
  };
}

function tapOf(
  samples: Float64Array,
  filtered: Float64Array,
  mean: number,
  quiet: number,
  at: number,
  factor: number,
): Tap {
  let peak = 0;
  for (const x of samples) peak = Math.max(peak, Math.abs(x - mean));
  // What begins the tap may be a first half wave that is small: it is looked for before the trigger, too.
  const stands = (share: number) => Math.max(peak * share, Math.min(factor * quiet, peak / 2));
  const first = (least: number) => samples.findIndex((x) => Math.abs(x - mean) >= least);
  const onset = Math.max(0, first(stands(1 / 20)));
  // A steep filter of a recorder rings before the tap, some hundredths of it: that has no say in the polarity.
  const decides = first(stands(1 / 8));
  const sign = decides < 0 ? filtered[before]! : samples[decides]! - mean;
  return { at, samples, onset, polarity: sign > 0 ? 'positive' : 'negative', peak, quiet };
}
