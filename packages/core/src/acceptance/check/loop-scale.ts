import { cardCounts } from '../../chain/formulas/counts-scaling.ts';
import { loopValue } from '../../chain/formulas/loop-scaling.ts';
import { faultCurrents, fullScale, liveZero, measuringCurrents } from '../../chain/formulas/loop-state.ts';
import { measured, measuredLevel, said, saidTogether } from '../../finding/measure.ts';
import { fromAll, type Level, level, type Motion, valueIfStated } from '../../quantity/index.ts';
import { loopPractice } from '../../source/loop-practice.ts';
import { namurNe43 } from '../../source/namur-ne-43.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf } from '../expected.ts';
import type { ReadingTable } from '../reading/kinds.ts';
import {
  type CheckedTable,
  cannotTell,
  checkKind,
  fails,
  type Judged,
  meets,
  type RivalCause,
  wants,
} from './check-kind.ts';
import { causesOfRatio } from './sensitivity-causes.ts';

/** Of the span: source, card and display together. */
const allowed = 0.005;
/** Currents that tell a scale: both ends and the middle, each within this of it. */
const asked = [4, 8, 12, 16, 20].map((milliamperes) => milliamperes / 1000);
const beside = 0.0005;
const fewest = 3;

interface Step {
  readonly current: number;
  readonly counts: number | undefined;
  readonly display: Level<Motion> | undefined;
  readonly fault: boolean | undefined;
}

/** A loop fed step by step: current to counts to display, and what becomes of the two failure currents. */
export const loopScale = checkKind({
  kind: 'loop-scale',
  title: 'Loop to counts to display',
  question: 'Does the controller show what the loop sends, and a fault as a fault?',
  on: [],
  applies: (designed) => chainOf(designed)?.transducer.oneNumber !== undefined,
  sources: [
    clause(loopPractice, 'scaling'),
    clause(namurNe43, 'signal levels'),
    clause(tradePractice, 'half a per cent of the span for source, card and display together'),
  ],
  judge: () => [],
  tables: {
    of: ['loop-steps'],
    judge: ({ designed, table }) => {
      const steps = stepsOf(table);
      return [...countsOf(designed, steps), ...displayOf(designed, steps), ...failures(steps)];
    },
  },
});

function stepsOf(table: ReadingTable): readonly Step[] {
  if (table.kind !== 'loop-steps') return [];
  return table.rows.flatMap(({ values }) => {
    const current = valueIfStated(values.current) as number | undefined;
    return current === undefined
      ? []
      : [
          {
            current,
            counts: valueIfStated(values.counts) as number | undefined,
            display: valueIfStated(values.display),
            fault: valueIfStated(values.fault),
          },
        ];
  });
}

/** Steps that tell a value, and those of the five usual ones that nobody read. */
function measuring(steps: readonly Step[]) {
  return steps.filter(({ current }) => current >= measuringCurrents.low && current <= measuringCurrents.high);
}

function missingOf(steps: readonly Step[]): readonly number[] {
  return asked.filter((each) => !steps.some(({ current }) => Math.abs(current - each) <= beside));
}

function tooFew(of: string, steps: readonly Step[]): Judged | undefined {
  const missing = missingOf(steps);
  const ends = [liveZero, fullScale].every((end) => !missing.includes(end));
  if (steps.length >= fewest && ends) return undefined;
  return cannotTell({ of, because: said`${steps.length} steps were read, and not both ends.` }, [
    saidTogether(
      missing.map((each) => measured('current', each)),
      ', ',
    ),
  ]);
}

function countsOf(designed: CheckedTable['designed'], steps: readonly Step[]): readonly Judged[] {
  const card = chainOf(designed)!.input.loopCard;
  const read = measuring(steps).filter((each) => each.counts !== undefined);
  if (card === undefined || read.length === 0) return [];
  const known = fromAll(
    {
      currentAtLow: card.currentAtLow,
      currentAtHigh: card.currentAtHigh,
      countsAtLow: card.countsAtLow,
      countsAtHigh: card.countsAtHigh,
    },
    (each) => each,
  );
  if (!known.known) return wants(known.missing);
  const lacking = tooFew('counts', read);
  if (lacking !== undefined) return [lacking];
  const scale = known.value;
  const countSpan = scale.countsAtHigh - scale.countsAtLow;
  const reach = Math.max(1, allowed * countSpan);
  // A card that cuts below its lower point shows that point.
  const expected = (current: number) => Math.max(Math.min(scale.countsAtLow, 0), cardCounts(current, scale));
  const worst = worstOf(read, ({ counts, current }) => counts! - expected(current));
  const facts = {
    of: 'counts',
    expected: said`${expected(worst.step.current)} counts at ${measured('current', worst.step.current)}`,
    tolerance: said`${Math.round(reach)} counts, half a per cent of the span`,
    found: said`${worst.step.counts!} counts there, the farthest of ${read.length} steps`,
    because: 'The controller knows the machine by its counts alone.',
  };
  if (Math.abs(worst.off) <= reach) return [meets(facts)];
  const line = through(read.map(({ current, counts }) => [expected(current), counts!] as const));
  return [fails(facts, scaleCauses(line, countSpan, facts.found))];
}

function displayOf(designed: CheckedTable['designed'], steps: readonly Step[]): readonly Judged[] {
  const read = measuring(steps).filter((each) => each.display !== undefined);
  if (read.length === 0) return [];
  const range = chainOf(designed)!.transducer.oneNumber!.range;
  if (!range.known) return wants(range.missing);
  const full = range.value;
  const lacking = tooFew('display', read);
  if (lacking !== undefined) return [lacking];
  const other = read.find(({ display }) => display!.quantity !== full.quantity);
  if (other !== undefined) {
    const found = said`${measuredLevel(other.display!)} at ${measured('current', other.current)}`;
    return [
      fails(
        {
          of: 'display',
          expected: said`up to ${measuredLevel(full)} at 20 mA`,
          tolerance: 'none',
          found,
          because: 'A sensor that sends one number cannot be shown as another motion.',
        },
        [
          {
            cause: 'unit of the display set for another sensor',
            evidence: found,
            next: 'Read the scaling block of the controller.',
          },
        ],
      ),
    ];
  }
  const reach = allowed * full.value;
  const expected = (current: number) => loopValue(current, 0, full.value);
  const worst = worstOf(read, ({ display, current }) => display!.value - expected(current));
  const detector = read.find(({ display }) => display!.detector !== full.detector)?.display?.detector;
  const facts = {
    of: 'display',
    expected: said`${measuredLevel(level(full.quantity, expected(worst.step.current), full.detector))} at ${measured('current', worst.step.current)}`,
    tolerance: said`${measuredLevel(level(full.quantity, reach, full.detector))}, half a per cent of the span`,
    found: said`${measuredLevel(worst.step.display!)} there, the farthest of ${read.length} steps`,
    because: 'Alert and trip are set in the unit of the display.',
  };
  const labelled: RivalCause = {
    cause: said`the display names another detector than the sensor sends: ${detector ?? full.detector} for ${full.detector}`,
    evidence: facts.found,
    next: 'Ask for the data sheet of the sensor; correct the label or the scale.',
  };
  if (Math.abs(worst.off) <= reach) return [detector === undefined ? meets(facts) : fails(facts, [labelled])];
  const line = through(read.map(({ current, display }) => [expected(current), display!.value] as const));
  const causes = scaleCauses(line, full.value, facts.found);
  return [fails(facts, detector === undefined ? causes : [labelled, ...causes])];
}

/** Whether the two failure currents are shown as a failure: zero vibration of a dead sensor reads as perfect health. */
function failures(steps: readonly Step[]): readonly Judged[] {
  return (['low', 'high'] as const).map((end): Judged => {
    const [limit, fits] =
      end === 'low'
        ? [faultCurrents.low, (current: number) => current <= faultCurrents.low + 1e-9]
        : [faultCurrents.high, (current: number) => current >= faultCurrents.high - 1e-9];
    const read = steps.filter(({ current, fault }) => fits(current) && fault !== undefined);
    const facts = {
      of: end === 'low' ? 'low failure current' : 'high failure current',
      expected: said`a fault of the channel at ${measured('current', limit)} and beyond`,
      tolerance: 'none',
      because: 'A sensor that died must not read as a machine without vibration, nor as one that must trip.',
    };
    const silent = read.find(({ fault }) => fault === false);
    if (read.length === 0) {
      return cannotTell({ ...facts, because: 'Nobody wrote down what is reported there.' }, [
        said`feed ${measured('current', end === 'low' ? 0.0035 : 0.0215)} and write down whether a fault is reported`,
      ]);
    }
    if (silent === undefined) return meets({ ...facts, found: 'reported as a fault' });
    const found = said`no fault reported at ${measured('current', silent.current)}`;
    return fails({ ...facts, found }, [
      {
        cause: 'the channel has no fault limits set, and cuts at its ends',
        evidence: found,
        next: 'Set the fault limits of the channel, and feed both currents again.',
      },
      {
        cause: 'the fault is held back by a filter or a delay that is too long',
        evidence: found,
        next: 'Feed the current for a minute.',
      },
    ]);
  });
}

function worstOf(steps: readonly Step[], off: (step: Step) => number) {
  return steps
    .map((step) => ({ step, off: off(step) }))
    .reduce((most, each) => (Math.abs(each.off) > Math.abs(most.off) ? each : most));
}

/** y = offset + slope·x. */
function through(points: readonly (readonly [number, number])[]) {
  const n = points.length;
  const [x, y] = [0, 1].map((k) => points.reduce((sum, each) => sum + each[k]!, 0) / n) as [number, number];
  const spread = points.reduce((sum, each) => sum + (each[0] - x) ** 2, 0);
  const slope = points.reduce((sum, each) => sum + (each[0] - x) * (each[1] - y), 0) / spread;
  return { slope, offset: y - slope * x };
}

function scaleCauses(
  { slope, offset }: { readonly slope: number; readonly offset: number },
  full: number,
  evidence: RivalCause['evidence'],
): readonly RivalCause[] {
  const shifted = Math.abs(offset) > allowed * full;
  // 0 to 20 mA read as 4 to 20 mA: a fifth of the span is added, and the slope is four fifths.
  const noLiveZero = Math.abs(offset / full - 0.2) < 0.02 && Math.abs(slope - 0.8) < 0.02;
  return [
    ...(noLiveZero
      ? [
          {
            cause: 'scaled for 0 to 20 mA, without the live zero',
            evidence: said`${evidence}; 4 mA reads as a fifth of the span`,
            next: 'Set the channel to 4 to 20 mA.',
          },
        ]
      : []),
    ...(shifted ? [] : causesOfRatio(slope, 0.02, [])),
    {
      cause: 'the range in the scaling block is another than that of the sensor',
      evidence: said`${evidence}; ${slope.toPrecision(3)} times what was expected`,
      next: 'Read the range on the label of the sensor against the scaling block.',
    },
    ...(shifted
      ? [
          {
            cause: 'a leak across the pair, or a second device in the loop',
            evidence: said`${evidence}; all steps are shifted`,
            next: 'Measure the current at the card with a meter in series.',
          },
        ]
      : []),
  ];
}
