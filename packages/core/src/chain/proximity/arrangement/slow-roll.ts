import { leastRunout, runoutAllowance, shaftAcceptance } from '../../../demand/zones/shaft-acceptance.ts';
import type { Finding } from '../../../finding/finding.ts';
import { measured, measuredLevel, said } from '../../../finding/measure.ts';
import {
  type Answer,
  answer,
  flagField,
  fromAll,
  type Level,
  levelField,
  optional,
  quantityField,
  type Sheet,
  unanswered,
  valueIfStated,
} from '../../../quantity/index.ts';
import { api670 } from '../../../source/api-670.ts';
import { clause } from '../../../source/source.ts';
import { tradePractice } from '../../../source/trade-practice.ts';
import type { Derived } from '../../../uncertainty/contribution.ts';
import { type Vector, vectorDifference } from '../vectors.ts';
import {
  arrangementKind,
  askedFor,
  derivedFrom,
  type ProbeSurroundings,
  rowOf,
  saying,
  statedIn,
} from './arrangement-kind.ts';

const sources = [
  clause(api670, 'run-out', 'from memory'),
  clause(tradePractice, 'slow roll below a tenth of the speed and 0.3 of the first critical', 'from memory'),
];

const displacement = (meaning: string, example: string) => levelField(['displacement'], meaning, { example });

const dataSheet = {
  amplitude: displacement('Once-per-turn amplitude at slow roll', '5.1 um pp'),
  phase: quantityField('angle', 'Its phase', { example: '40 deg' }),
  speed: quantityField('shaft speed', 'Speed at which it was taken', { example: '500 r/min' }),
  warm: flagField('Whether the rotor was warm and had run straight'),
  running: optional(displacement('Once-per-turn amplitude at speed', '31.0 um pp')),
  runningPhase: optional(quantityField('angle', 'Its phase', { example: '112 deg' })),
  firstCritical: optional(
    quantityField('shaft speed', 'First critical speed; left out: the lowest the train states', {
      example: '4600 r/min',
    }),
  ),
  acceptance: optional(displacement('Vibration accepted in the shop; left out: from the highest speed', '25.4 um pp')),
} as const;

type SlowRollSheet = Sheet<typeof dataSheet>;

const asked = {
  amplitude: { asks: 'How much does the probe read at slow roll?', because: 'Run-out cannot be told from vibration.' },
  phase: { asks: 'At which phase?', because: 'Run-out is a vector; without its phase it cannot be taken away.' },
  speed: {
    asks: 'At which speed was the slow roll taken?',
    because: 'Taken too fast it is bow and unbalance, not run-out, and taking it away hides both.',
  },
  warm: {
    asks: 'Was the rotor warm and straight when the slow roll was taken?',
    because: 'After a stop a rotor sags; its bow is then taken for run-out.',
  },
} as const;

/** As stated here, or the lowest that the train states. */
function criticalSpeed(sheet: SlowRollSheet, around: ProbeSurroundings): Answer<number> {
  return sheet.values.firstCritical === undefined ? around.firstCritical : statedIn(sheet, 'firstCritical');
}

/** Slow roll is taken below these shares of the highest and of the first critical speed. */
const shares = { speed: 0.1, critical: 0.3 } as const;

/** Run-out that is allowed: of the stated acceptance, or of the acceptance at the highest speed. */
export function allowedRunout(sheet: SlowRollSheet, around: ProbeSurroundings): Answer<Level<'displacement'>> {
  const agreed = valueIfStated(sheet.values.acceptance);
  if (agreed !== undefined) return answer(runoutAllowance(agreed));
  const { fastest } = around;
  if (fastest.known && !(fastest.value > 0)) return unanswered([{ of: around.at, what: 'highest speed, above zero' }]);
  return fromAll({ fastest }, (known) => runoutAllowance(shaftAcceptance(known.fastest)));
}

/** The running vector without the slow roll, where both are stated; none where nobody stated a running one. */
export function compensatedVector(sheet: SlowRollSheet): Answer<Vector<'displacement'>> | undefined {
  if (sheet.values.running === undefined) return undefined;
  return fromAll(
    {
      amplitude: statedIn(sheet, 'running'),
      phase: statedIn(sheet, 'runningPhase'),
      slow: statedIn(sheet, 'amplitude'),
      slowPhase: statedIn(sheet, 'phase'),
    },
    (known) =>
      vectorDifference(
        { amplitude: known.amplitude, phase: known.phase },
        { amplitude: known.slow, phase: known.slowPhase },
      ),
  );
}

function runoutDerived(sheet: SlowRollSheet, around: ProbeSurroundings): Answer<Derived> {
  const agreed = valueIfStated(sheet.values.acceptance);
  const { fastest } = around;
  const moving =
    fastest.known && !(fastest.value > 0) ? unanswered([{ of: around.at, what: 'highest speed' }]) : fastest;
  const accepted =
    agreed === undefined ? fromAll({ moving }, (known) => shaftAcceptance(known.moving)) : answer(agreed);
  return derivedFrom(
    'R = max(A / 4, least)',
    { accepted, allowed: allowedRunout(sheet, around) },
    (known) =>
      said`max(${measuredLevel(known.accepted)} / 4, ${measured('displacement', leastRunout)}) = ${measuredLevel(known.allowed)}`,
  );
}

function compensatedDerived(
  sheet: SlowRollSheet,
  left: NonNullable<ReturnType<typeof compensatedVector>>,
): Answer<Derived> {
  return derivedFrom(
    'c = √(a² + b² − 2 · a · b · cos(α − β))',
    {
      left,
      a: statedIn(sheet, 'running'),
      b: statedIn(sheet, 'amplitude'),
      alpha: statedIn(sheet, 'runningPhase'),
      beta: statedIn(sheet, 'phase'),
    },
    ({ left: found, a, b, alpha, beta }) =>
      said`√((${measuredLevel(a)})² + (${measuredLevel(b)})² − 2 · ${measuredLevel(a)} · ${measuredLevel(b)} · cos(${measured('angle', alpha)} − ${measured('angle', beta)})) = ${measuredLevel(found.amplitude)}`,
  );
}

/** What a probe reads of a shaft that only turns: run-out of surface and steel, to be taken away as a vector. */
export const slowRoll = arrangementKind({
  kind: 'slow-roll',
  name: 'Slow roll',
  dataSheet,
  sources,
  rows: (sheet, around) => {
    const left = compensatedVector(sheet);
    return [
      {
        name: 'allowed-runout',
        value: fromAll({ allowed: allowedRunout(sheet, around) }, ({ allowed }) => measuredLevel(allowed)),
        because: said`a quarter of the acceptance, or ${measured('displacement', leastRunout)} where that is more`,
        derived: runoutDerived(sheet, around),
      },
      ...(left === undefined
        ? []
        : [
            {
              name: 'compensated',
              value: fromAll({ left }, (known) => measuredLevel(known.left.amplitude)),
              because: 'running vector less slow-roll vector; the magnitudes must not be subtracted',
              derived: compensatedDerived(sheet, left),
            },
            rowOf(
              'compensated-phase',
              'angle',
              fromAll({ left }, (known) => known.left.phase),
              'of the same vector',
              derivedFrom('γ = arg(a · e^(jα) − b · e^(jβ))', { left }, (known) => {
                return said`${measured('angle', known.left.phase)}`;
              }),
            ),
          ]),
    ];
  },
  doubts: (sheet, around) => [
    ...askedFor(sheet, around, asked, sources),
    ...noCritical(sheet, around),
    ...tooMuch(sheet, around),
    ...tooFast(sheet, around),
    ...cold(sheet, around),
    ...unlikeDetector(sheet, around),
  ],
});

/** Whether a slow roll may be taken away: known only where everything that decides is stated. */
export function slowRollAccepted(sheet: SlowRollSheet, around: ProbeSurroundings): Answer<boolean> {
  const decides = fromAll(
    {
      amplitude: statedIn(sheet, 'amplitude'),
      speed: statedIn(sheet, 'speed'),
      critical: criticalSpeed(sheet, around),
      warm: statedIn(sheet, 'warm'),
      allowed: allowedRunout(sheet, around),
      fastest: around.fastest,
    },
    (known) => known,
  );
  if (!decides.known) return decides;
  return answer([...tooMuch(sheet, around), ...tooFast(sheet, around), ...cold(sheet, around)].length === 0);
}

function noCritical(sheet: SlowRollSheet, around: ProbeSurroundings): readonly Finding[] {
  if (criticalSpeed(sheet, around).known) return [];
  return [
    saying(around.at, sources)('not-stated', 'question', {
      found: 'the first critical speed is not known',
      limit: `a slow roll below ${shares.critical} of the first critical speed`,
      because: 'Near a critical speed the shaft bends, and the reading is not run-out.',
      remedy: ["state 'first-critical'", 'add a critical-speed to the train'],
      asks: 'Where does the first critical speed of the rotor lie? Its rotordynamic report or a run-up says.',
    }),
  ];
}

function tooMuch(sheet: SlowRollSheet, around: ProbeSurroundings): readonly Finding[] {
  const [amplitude, allowed] = [valueIfStated(sheet.values.amplitude), allowedRunout(sheet, around)];
  if (amplitude === undefined || !allowed.known) return [];
  if (amplitude.detector !== allowed.value.detector) return [];
  if (amplitude.value <= allowed.value.value * (1 + 1e-9)) return [];
  return [
    saying(around.at, sources)('runout-too-large', 'blocks-issue', {
      found: measuredLevel(amplitude),
      limit: measuredLevel(allowed.value),
      because: 'So much run-out hides what the shaft does, and taking it away leaves an error of its own size.',
      remedy: ['burnish or demagnetise the track of the probe', 'move the probe to a sound track'],
    }),
  ];
}

function tooFast(sheet: SlowRollSheet, around: ProbeSurroundings): readonly Finding[] {
  const speed = valueIfStated(sheet.values.speed);
  if (speed === undefined) return [];
  const say = saying(around.at, sources);
  const critical = criticalSpeed(sheet, around);
  const limits: readonly (readonly [most: number | undefined, words: string])[] = [
    [
      around.fastest.known ? shares.speed * around.fastest.value : undefined,
      `${shares.speed * 100} % of the highest speed`,
    ],
    [critical.known ? shares.critical * critical.value : undefined, `${shares.critical} of the first critical speed`],
  ];
  return limits.flatMap(([most, words]) =>
    most === undefined || speed < most
      ? []
      : [
          say('slow-roll-too-fast', 'blocks-issue', {
            found: measured('shaft speed', speed),
            limit: said`below ${measured('shaft speed', most)}, ${words}`,
            because: 'At that speed bow and unbalance move the shaft already; taken for run-out they are hidden.',
            remedy: ['take it again, slower', 'take it from a run-down, below both limits'],
          }),
        ],
  );
}

function cold(sheet: SlowRollSheet, { at }: ProbeSurroundings): readonly Finding[] {
  if (valueIfStated(sheet.values.warm) !== false) return [];
  return [
    saying(at, sources)('slow-roll-cold', 'warns', {
      found: 'the rotor was not warm',
      limit: 'a rotor that is warm and has run straight',
      because: 'A sagged rotor bows at slow roll; the bow is gone at speed, and its vector with it.',
      remedy: ['take it again from a run-down of the warm machine'],
    }),
  ];
}

function unlikeDetector(sheet: SlowRollSheet, { at }: ProbeSurroundings): readonly Finding[] {
  const [slow, running] = [valueIfStated(sheet.values.amplitude), valueIfStated(sheet.values.running)];
  const strange = [slow, running].filter((each) => each !== undefined && each.detector !== 'peak-to-peak');
  if (strange.length === 0) return [];
  return [
    saying(at, sources)('slow-roll-detector', 'blocks-issue', {
      found: measuredLevel(strange[0]!),
      limit: 'amplitudes peak-to-peak',
      because: 'Run-out and shaft limits are peak-to-peak; another detector would be off by its factor.',
      remedy: ['state both amplitudes peak-to-peak'],
    }),
  ];
}
