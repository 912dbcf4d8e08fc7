import { nearest, type QuantityName, Refusal, type Span, type Stated } from '../quantity/index.ts';
import { fixed } from './form.ts';
import { kindOf, type MachineElement } from './kinds.ts';

/** A speed or line frequency at which the train is looked at, in hertz, by its name: `duty`. */
export interface NamedState {
  readonly name: string;
  readonly at: number;
}

interface Range<Name extends QuantityName> {
  readonly range: Stated<Span<Name>>;
  /** How far the speed strays within one record, from least to most, relative to its mean. */
  readonly wander?: Stated<number>;
  /** Beside `lowest` and `highest`, which every operation has. */
  readonly states: readonly NamedState[];
}

/** What the speed of everything follows from: the speed of one shaft, or the line frequency of one motor. */
export type Operation =
  | ({ readonly by: 'shaft'; readonly shaft: string } & Range<'shaft speed'>)
  | ({ readonly by: 'line'; readonly motor: string } & Range<'frequency'>);

/** A speed printed on a plate, to hold against what the train gives. */
export interface Plate {
  readonly shaft: string;
  readonly speed: Stated<number>;
}

/** Everything that turns together, and how it is run. */
export interface Train {
  /** `P-301`. */
  readonly of: string;
  readonly shafts: readonly string[];
  readonly elements: readonly MachineElement[];
  readonly operation: Operation;
  readonly plates?: readonly Plate[];
}

const reserved = ['lowest', 'highest'];

/** A train whose names agree: every element stands on shafts that exist, every name stands once. Throws Refusal. */
export function train(definition: Train): Train {
  const { of, shafts, elements, operation } = definition;
  const once = (names: readonly string[], what: string) => {
    const twice = names.find((name, index) => names.indexOf(name) !== index);
    if (twice !== undefined) throw new Refusal({ read: twice, expected: `each ${what} of ${of} once` });
  };
  once(shafts, 'shaft');
  once(
    elements.map((element) => element.name),
    'element',
  );
  once([...reserved, ...operation.states.map((state) => state.name)], 'operating state');
  if (shafts.length === 0) throw new Refusal({ read: of, expected: 'at least one shaft' });
  if (shafts.includes(fixed)) {
    throw new Refusal({ read: fixed, expected: `a shaft name; '${fixed}' stands for what does not turn` });
  }
  for (const element of elements) checkedElement(element, shafts);
  for (const plate of definition.plates ?? []) existing(plate.shaft, shafts, `a shaft of ${of}`);
  if (operation.by === 'shaft') existing(operation.shaft, shafts, `a shaft of ${of}`);
  else checkedMotor(operation.motor, elements, of);
  return definition;
}

function checkedElement(element: MachineElement, shafts: readonly string[]): void {
  const kind = kindOf(element);
  const standing = Object.entries<string>(element.shafts);
  for (const [role, shaft] of standing) {
    if (shaft !== fixed) existing(shaft, shafts, `the shaft '${role}' of ${element.name}`);
    else if (kind.mayBeFixed?.includes(role) !== true) {
      throw new Refusal({ read: `${element.name}: ${role}=${fixed}`, expected: `a shaft that turns` });
    }
  }
  const moving = standing.map(([, shaft]) => shaft).filter((shaft) => shaft !== fixed);
  if (moving.length === 0 && kind.places.length > 0)
    throw new Refusal({ read: element.name, expected: 'an element on at least one shaft' });
  if (new Set(moving).size < moving.length) {
    throw new Refusal({ read: `${element.name}: ${moving.join(', ')}`, expected: 'a different shaft in each role' });
  }
}

function checkedMotor(motor: string, elements: readonly MachineElement[], of: string): void {
  const motors = elements.filter((element) => kindOf(element).drive !== undefined).map((element) => element.name);
  existing(motor, motors, `a motor of ${of}`);
}

function existing(name: string, names: readonly string[], what: string): void {
  if (names.includes(name)) return;
  const near = nearest(name, names);
  throw new Refusal({
    read: name,
    expected: `${what}: ${names.join(', ')}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
