import { type Answer, answer, fromAll, unanswered } from '../quantity/index.ts';
import { type Bounded, bounded } from './element.ts';
import { kindOf } from './kinds.ts';
import { lineKey, oneHertz, type Reduced, referenceSpeed, slipKey } from './reduced.ts';
import { type SolvedMotor, type SolvedTrain, speedOver } from './solved-train.ts';
import type { Train } from './train.ts';

/** The train at one speed: its name, the reference speed or line frequency, and every independent source in hertz. */
export interface OperatingState {
  readonly name: string;
  readonly at: Answer<number>;
  readonly sources: Readonly<Record<string, Bounded>>;
}

/** `lowest`, `highest`, and the states somebody named, in that order. */
export function operatingStates(solved: SolvedTrain): readonly OperatingState[] {
  const range = operatingRange(solved.train);
  const ends = (['low', 'high'] as const).map((end) =>
    stateAt(
      solved,
      fromAll({ range }, (known) => known.range[end]),
      end === 'low' ? 'lowest' : 'highest',
    ),
  );
  return [...ends, ...solved.train.operation.states.map((state) => stateAt(solved, answer(state.at), state.name))];
}

/** The range of reference speed or line frequency, in hertz. */
export function operatingRange(train: Train): Answer<{ readonly low: number; readonly high: number }> {
  const { range } = train.operation;
  if (range.known) return answer(range.value);
  return unanswered([
    { of: train.of, what: train.operation.by === 'shaft' ? 'operating speed' : 'operating line frequency' },
  ]);
}

/** The train at a reference speed or line frequency. */
export function stateAt(solved: SolvedTrain, at: Answer<number>, name = 'between'): OperatingState {
  const { operation } = solved.train;
  const given: Bounded = at.known ? bounded(at.value) : { value: at };
  const sources: Record<string, Bounded> = {
    [oneHertz]: bounded(1),
    [operation.by === 'shaft' ? referenceSpeed : lineKey(operation.motor)]: given,
  };
  const motors = Object.values(solved.motors).filter((motor) => motor.slipIsFree);
  const setting = motors.find((motor) => operation.by === 'line' && operation.motor === motor.element.name);
  if (setting !== undefined) {
    sources[slipKey(setting.element.name)] = at.known ? settingSlip(setting, at.value) : { value: at };
  }
  for (const motor of motors)
    if (motor !== setting) sources[slipKey(motor.element.name)] = followingSlip(solved, motor, sources);
  return { name, at, sources };
}

/** Slip of the motor whose line frequency is given; a slip beyond synchronous speed is a motor that does not turn. */
function settingSlip({ element }: SolvedMotor, lineFrequency: number): Bounded {
  const drive = kindOf(element).drive!;
  const slip = drive.slip!.slipAt(element.sheet, lineFrequency);
  const pairs = drive.polePairs(element.sheet);
  const most = slip.between?.high ?? 0;
  if (pairs.known && most > 0 && most >= lineFrequency / pairs.value) {
    return { value: unanswered([{ of: element.sheet.of, what: 'a line frequency above that of the slip' }]) };
  }
  return slip;
}

/** Slip of a converter-fed motor whose speed is given: the line frequency its law needs, less the speed. */
function followingSlip(solved: SolvedTrain, motor: SolvedMotor, sources: Readonly<Record<string, Bounded>>): Bounded {
  const drive = kindOf(motor.element).drive!;
  const over = speedOver(solved.speeds, solved.reference, [{ shaft: motor.shaft, times: 1 }]);
  const speed = over.known ? valueOver(over.value, sources) : over;
  if (!speed.known) return { value: speed };
  const line = drive.slip!.lineFrequencyAt(motor.element.sheet, speed.value);
  const pairs = drive.polePairs(motor.element.sheet);
  const value = fromAll({ line, pairs }, (known) => known.line / known.pairs - speed.value);
  return value.known ? bounded(value.value) : { value };
}

/** The frequency in hertz that a reduced form has with these sources. */
export function valueOver(form: Reduced, sources: Readonly<Record<string, Bounded>>): Answer<number> {
  const values = Object.fromEntries(form.map((term) => [term.of, sources[term.of]!.value]));
  return fromAll(values, (known) => Math.abs(form.reduce((sum, term) => sum + term.times * known[term.of]!, 0)));
}

/** The bounds of a reduced form, where all its sources have bounds. */
export function boundsOver(
  form: Reduced,
  sources: Readonly<Record<string, Bounded>>,
): { readonly low: number; readonly high: number } | undefined {
  let [low, high] = [0, 0];
  for (const term of form) {
    const between = sources[term.of]!.between;
    if (between === undefined) return undefined;
    const corners = [
      term.low * between.low,
      term.low * between.high,
      term.high * between.low,
      term.high * between.high,
    ];
    low += Math.min(...corners);
    high += Math.max(...corners);
  }
  if (low >= 0) return { low, high };
  return high <= 0 ? { low: -high, high: -low } : { low: 0, high: Math.max(-low, high) };
}
