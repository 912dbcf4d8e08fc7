import {
  type Answer,
  answer,
  exactly,
  fraction,
  fromAll,
  multiplied,
  plus,
  thenAnswer,
  toNumber,
} from '../quantity/index.ts';
import { type FrequencyForm, type FrequencySource, fixed, type Turning } from './form.ts';
import { kindOf, type MachineElement } from './kinds.ts';
import {
  type Factor,
  factorOf,
  lineKey,
  oneHertz,
  type Reduced,
  reducedTerm,
  referenceSpeed,
  slipKey,
  sumOfAnswers,
  sumReduced,
  timesReduced,
} from './reduced.ts';
import { type ShaftRatio, type ShaftSpeeds, shaftSpeeds } from './speeds.ts';
import type { Train } from './train.ts';

/** A motor of the train: its line and slip frequency over what is independent. */
export interface SolvedMotor {
  readonly element: MachineElement;
  readonly shaft: string;
  readonly line: Answer<Reduced>;
  readonly slip: Answer<Reduced>;
  /** Whether its slip frequency is one of the independent sources. */
  readonly slipIsFree: boolean;
}

/** A train whose speeds are known as far as they can be. */
export interface SolvedTrain {
  readonly train: Train;
  readonly speeds: ShaftSpeeds;
  /** The reference speed over what is independent. */
  readonly reference: Answer<Reduced>;
  readonly motors: Readonly<Record<string, SolvedMotor>>;
}

export function solvedTrain(train: Train): SolvedTrain {
  const speeds = shaftSpeeds(train);
  const reference = referenceOver(train);
  const motors = train.elements
    .filter((element) => kindOf(element).drive !== undefined)
    .map((element) => [element.name, solvedMotor(train, element, speeds, reference)] as const);
  return { train, speeds, reference, motors: Object.fromEntries(motors) };
}

/** The reference speed itself, or line frequency / pole pairs − slip of the motor that sets it. */
function referenceOver(train: Train): Answer<Reduced> {
  const { operation } = train;
  if (operation.by === 'shaft') return answer([reducedTerm(referenceSpeed, fraction(1))]);
  const motor = train.elements.find((element) => element.name === operation.motor)!;
  const drive = kindOf(motor).drive!;
  return fromAll({ pairs: drive.polePairs(motor.sheet) }, ({ pairs }) => [
    reducedTerm(lineKey(motor.name), fraction(1, pairs)),
    ...(drive.slip === undefined ? [] : [reducedTerm(slipKey(motor.name), fraction(-1))]),
  ]);
}

function solvedMotor(
  train: Train,
  element: MachineElement,
  speeds: ShaftSpeeds,
  reference: Answer<Reduced>,
): SolvedMotor {
  const drive = kindOf(element).drive!;
  const shaft = (element.shafts as Readonly<Record<string, string>>)[drive.on]!;
  const { operation } = train;
  const own = { element, shaft };
  const freeSlip: Reduced = drive.slip === undefined ? [] : [reducedTerm(slipKey(element.name), fraction(1))];
  if (operation.by === 'line' && operation.motor === element.name) {
    const line: Reduced = [reducedTerm(lineKey(element.name), fraction(1))];
    return { ...own, line: answer(line), slip: answer(freeSlip), slipIsFree: drive.slip !== undefined };
  }
  const speed = speedOver(speeds, reference, [{ shaft, times: 1, exact: fraction(1) }]);
  const pairs = drive.polePairs(element.sheet);
  const mains = drive.mains(element.sheet);
  if (mains.known && mains.value !== undefined) {
    const line: Reduced = [reducedTerm(oneHertz, exactly(mains.value))];
    const slip = fromAll({ speed, pairs }, (known) =>
      sumReduced(
        timesReduced(factorOf(1 / known.pairs, fraction(1, known.pairs)), line),
        timesReduced(factorOf(-1, fraction(-1)), known.speed),
      ),
    );
    return { ...own, line: answer(line), slip, slipIsFree: false };
  }
  const line = thenAnswer(mains, () =>
    fromAll({ speed, pairs }, (known) =>
      timesReduced(factorOf(known.pairs, fraction(known.pairs)), sumReduced(known.speed, freeSlip)),
    ),
  );
  return { ...own, line, slip: thenAnswer(mains, () => answer(freeSlip)), slipIsFree: drive.slip !== undefined };
}

/** |Σ times · speed| of some shafts over what is independent. The sign is that of the nominal ratio, and stays. */
export function speedOver(speeds: ShaftSpeeds, reference: Answer<Reduced>, turns: readonly Turning[]): Answer<Reduced> {
  const moving = turns.filter((turn) => turn.shaft !== fixed);
  const ratios = Object.fromEntries(moving.map(({ shaft }) => [shaft, speeds.shafts[shaft]!]));
  return fromAll({ ratios: fromAll(ratios, (known) => known), reference }, (known) =>
    timesReduced(sizeOf(moving, known.ratios), known.reference),
  );
}

function sizeOf(turns: readonly Turning[], ratios: Readonly<Record<string, ShaftRatio>>): Factor {
  const shares = turns.map((turn) => shareOf(turn, ratios[turn.shaft]!));
  const exact = shares.reduce<Factor['exact']>(
    (sum, share) => (sum === undefined || share.exact === undefined ? undefined : plus(sum, share.exact)),
    fraction(0),
  );
  const sum = (pick: (share: Factor) => number) => shares.reduce((total, share) => total + pick(share), 0);
  const times = exact === undefined ? sum((share) => share.times) : toNumber(exact);
  const [low, high] = [sum((share) => share.low), sum((share) => share.high)];
  const factor = { times, low, high, ...(exact === undefined ? {} : { exact }) };
  return times < 0 ? opposite(factor) : factor;
}

function shareOf(turn: Turning, { ratio, low, high }: ShaftRatio): Factor {
  const tight = low === 1 && high === 1;
  const times = turn.times * toNumber(ratio);
  const exact = tight && turn.exact !== undefined ? multiplied(turn.exact, ratio) : undefined;
  const ends = [times * low, times * high];
  return { times, low: Math.min(...ends), high: Math.max(...ends), ...(exact === undefined ? {} : { exact }) };
}

function opposite({ times, low, high, exact }: Factor): Factor {
  const turned = exact === undefined ? undefined : multiplied(fraction(-1), exact);
  return { times: -times, low: -high, high: -low, ...(turned === undefined ? {} : { exact: turned }) };
}

/** A frequency of an element over what is independent at this train. */
export function reducedForm(solved: SolvedTrain, form: FrequencyForm): Answer<Reduced> {
  return sumOfAnswers(
    form.map((term) =>
      fromAll({ source: sourceOver(solved, term.of) }, ({ source }) =>
        timesReduced(factorOf(term.times, term.exact), source),
      ),
    ),
  );
}

function sourceOver(solved: SolvedTrain, source: FrequencySource): Answer<Reduced> {
  if (source.kind === 'rotation') return speedOver(solved.speeds, solved.reference, source.of);
  if (source.kind === 'constant') return answer([reducedTerm(oneHertz, fraction(1))]);
  const motor = solved.motors[source.motor]!;
  return source.kind === 'line-frequency' ? motor.line : motor.slip;
}
