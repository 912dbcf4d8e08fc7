import type { Finding } from '../finding/finding.ts';
import { type Answer, answer, type Fields, type Sheet, type StatedValues } from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';
import type { FrequencyForm } from './form.ts';
import type { SpeedRelation } from './relation.ts';

/** A frequency an element makes, as the element knows it: over the shafts it stands on. */
export interface ElementLine {
  /** Unique at its element: `outer-ring`. */
  readonly name: string;
  readonly meaning: string;
  readonly form: Answer<FrequencyForm>;
  /** How far the line may lie from its kinematic value, as fractions; low is negative. None where left out. */
  readonly slip?: Slip;
  /** How many multiples are worth looking for; 1 where left out. */
  readonly harmonics?: number;
  /** What was assumed to get it: `pitch diameter`. */
  readonly assumed?: readonly string[];
  readonly sources: readonly Clause[];
}

/** Writes the lines of an element that stand on the same sources. */
export function linesFrom(sources: readonly Clause[]) {
  return (name: string, meaning: string, harmonics: number, form: Answer<FrequencyForm>): ElementLine => ({
    name,
    meaning,
    form,
    harmonics,
    sources,
  });
}

/** Relative distance from the kinematic value, low and high. */
export interface Slip {
  readonly low: number;
  readonly high: number;
}
export const noSlip: Slip = { low: 0, high: 0 };

/** The shaft in each role; a carried one only where somebody named it. */
export type RoleShafts<Role extends string, Carried extends string = never> = Readonly<Record<Role, string>> &
  Readonly<Partial<Record<Carried, string>>>;

/** Where an element stands: its name, and the shaft in each of its roles. */
export interface ElementPlace<Role extends string = string, Carried extends string = never> {
  readonly element: string;
  readonly shafts: RoleShafts<Role, Carried>;
}

/** The speed of the shaft in each role over the operating range, in hertz and without its sense of rotation. */
export type RoleSpeeds<Role extends string = string> = Readonly<
  Record<Role, Answer<{ readonly low: number; readonly high: number }>>
>;

/** A value where it is known, and in any case the bounds it lies between, where there are any. */
export interface Bounded {
  readonly value: Answer<number>;
  readonly between?: { readonly low: number; readonly high: number };
}

export function bounded(value: number): Bounded {
  return { value: answer(value), between: { low: value, high: value } };
}

/** How far a shaft falls behind its synchronous speed, in hertz of shaft speed. */
export interface SlipLaw<F extends Fields = Fields> {
  slipAt(sheet: Sheet<F>, lineFrequency: number): Bounded;
  /** The line frequency at which the shaft turns that fast, where a converter sets it. */
  lineFrequencyAt(sheet: Sheet<F>, speed: number): Answer<number>;
}

/** What makes an element a motor: shaft speed = line frequency / pole pairs − slip. */
export interface MotorDrive<F extends Fields = Fields, Role extends string = string> {
  readonly on: Role;
  polePairs(sheet: Sheet<F>): Answer<number>;
  /** The line frequency where the mains set it; nothing where a converter does. */
  mains(sheet: Sheet<F>): Answer<number | undefined>;
  /** Left out by a motor that turns synchronously. */
  readonly slip?: SlipLaw<F>;
}

/** What makes an element a phase reference: pulses of the shaft in a role. */
export interface PulseSource<F extends Fields = Fields, Role extends string = string> {
  readonly on: Role;
  perTurn(sheet: Sheet<F>): Answer<number>;
}

/** A kind of machine element: one file, one line in `kinds.ts`. */
export interface MachineElementKind<
  Kind extends string = string,
  F extends Fields = Fields,
  Role extends string = string,
  Carried extends string = never,
> {
  readonly kind: Kind;
  readonly name: string;
  readonly sheet: F;
  /** The roles shafts play at it: `on`, or `from` and `to`, or `inner` and `outer`; none for what stands on no shaft. */
  readonly places: readonly Role[];
  /**
   * Roles of shafts that another one carries round, named only where something stands on them: `planet`. Their turns
   * against the housing make no lines; the element names what they make.
   */
  readonly carriedPlaces?: readonly Carried[];
  /** Roles in which it may stand still instead. */
  readonly mayBeFixed?: readonly Role[];
  /** Who plays which role where only `on` is written. */
  readonly onOneShaft?: (shaft: string) => Readonly<Record<Role, string>>;
  /** A relation that speaks of a shaft nobody named is not set up. */
  relations(sheet: Sheet<F>): Answer<readonly SpeedRelation<NoInfer<Role | Carried>>[]>;
  lines(sheet: Sheet<F>, place: ElementPlace<Role, Carried>): readonly ElementLine[];
  doubts(sheet: Sheet<F>, speeds: RoleSpeeds<Role>): readonly Finding[];
  readonly drive?: MotorDrive<F, Role>;
  readonly pulses?: PulseSource<F, Role>;
  /** It shakes its machine on purpose: severity by vibration does not judge such a machine. */
  readonly shakesByDesign?: true;
  readonly sources: readonly Clause[];
}

export function machineElementKind<
  const Kind extends string,
  F extends Fields,
  const Role extends string,
  const Carried extends string = never,
>(definition: MachineElementKind<Kind, F, Role, Carried>): MachineElementKind<Kind, F, Role, Carried> {
  return definition;
}

/** Any kind, its types forgotten. */
// biome-ignore lint/suspicious/noExplicitAny: a list of kinds of unlike sheets has no other common type
export type AnyElementKind = MachineElementKind<string, any, any, any>;

/** An element of that kind as it stands in a train. */
export type ElementOf<K> =
  K extends MachineElementKind<infer Kind, infer F, infer Role, infer Carried>
    ? {
        readonly name: string;
        readonly kind: Kind;
        readonly sheet: Sheet<F>;
        readonly shafts: RoleShafts<Role, Carried>;
      }
    : never;

/** Relations of an element that couples nothing. */
export const couplesNothing: Answer<readonly never[]> = answer([]);

/** An optional count or value: absent means 'has none', stated unknown means a line whose frequency is asked for. */
export function present<F extends Fields, K extends keyof F & string>(
  sheet: Sheet<F>,
  name: K,
): Exclude<StatedValues<F>[K], undefined> | undefined {
  return sheet.values[name] as Exclude<StatedValues<F>[K], undefined> | undefined;
}
