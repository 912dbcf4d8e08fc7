import {
  type Answer,
  blocks,
  type DesignedMachine,
  type DesignedPoint,
  designedMachine,
  type GrowingFault,
  growingFault,
  Refusal,
  type Target,
  type WatchingPoint,
} from '@soundpost/core';
import { always, argument, command, textFlag } from './command.ts';
import { growingFaultJson } from './json/growing-fault-json.ts';
import { blank, heading, labelled, paragraph } from './layout/line.ts';
import { designedPointCalled, pointCalled, unknownName } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import { seed } from './seed.ts';
import { growingFaultLines } from './text/growing-fault-text.ts';
import { missingText } from './text/values-text.ts';

/** A target that grows: one of the point that watches, or of another point of its machine. */
interface Growing {
  readonly target: Target;
  readonly statedAt?: string;
}

const usualDays = 40;
/** A century: beyond it nothing grows by a constant factor a day. */
const mostDays = 36_525;

export const event = command({
  name: 'event',
  summary: 'On which day each alarm of a point acts while a fault grows',
  description:
    'Lets a target of a point grow by a constant factor a day, from the smallest level it must show to the largest it may ' +
    'reach, and reads it through the whole chain of the point as its alarms do: response, noise, loop and card, with the ' +
    'baseline of the machine beside it. Prints for each alarm the day on which it acts and its level and delay, or that it ' +
    'never acts, and why. A target of another point of the machine is taken as if it stood here: POINT/TARGET. Ends with 1 ' +
    'where the chain keeps an alarm from acting.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    point: argument('POINT', 'The point that watches: its name, or MACHINE/POINT'),
  },
  flags: {
    target: textFlag('NAME', 'Only this target, or POINT/TARGET of the same machine; otherwise each of the point'),
    days: textFlag('DAYS', `How long it takes from the smallest to the largest level; ${usualDays} if left out`),
  },
  examples: [
    'soundpost event examples/raw-water-pump/plant.yaml pump-drive-end-loop',
    'soundpost event examples/raw-water-pump/plant.yaml pump-drive-end-loop --target "pump-drive-end-horizontal/bearing bursts" --days 60',
  ],
  whenAllowed: always,
  async perform(surroundings, { plant: path, point: name, target: asked, days: typed }, manner) {
    const days = daysOf(typed);
    const { plant } = await readPlant(surroundings, path);
    const { machine: stated, of } = pointCalled(plant, name);
    surroundings.step(`designing ${stated.name}`);
    const { machine, point } = designedPointCalled([designedMachine(plant, stated, seed)], of);
    const watching = watchingPoint(point, machine, plant.policy);
    const growing = growingOf(point, machine, asked);
    const faults = growing.map((each) => ({ ...each, fault: growingFault(watching, { ...each, days }) }));
    return {
      exit: blocks(faults.flatMap(({ fault }) => (fault.known ? fault.value.record.findings : []))) ? 1 : 0,
      lines: [
        ...heading(`When each alarm acts: ${of}`, manner.width),
        ...labelled('Read through', watching.prediction.chain.of, manner.width, '', 14),
        ...faults.flatMap(({ target, fault }) => [
          blank,
          ...(fault.known ? growingFaultLines(fault.value, manner) : unknownLines(target, fault, manner.width)),
        ]),
        ...(asked === undefined ? elsewhereLines(machine, point, manner.width) : []),
      ],
      json: {
        point: of,
        chain: watching.prediction.chain.of,
        days,
        faults: faults.map(({ target, statedAt, fault }) => growingFaultJson(target.name, statedAt, fault)),
      },
    };
  },
});

function daysOf(typed: string | undefined): number {
  if (typed === undefined) return usualDays;
  const days = /^\d+(\.\d+)?$/.test(typed.trim()) ? Number(typed) : Number.NaN;
  if (days > 0 && days <= mostDays) return days;
  throw new Refusal({
    read: `--days ${typed}`,
    expected: `days as a number above 0 and up to ${mostDays}, such as 40`,
  });
}

function watchingPoint(
  { point, alarms, appraisal }: DesignedPoint,
  machine: DesignedMachine,
  policy: WatchingPoint['policy'],
): WatchingPoint {
  if (alarms === undefined) {
    const others = machine.points.flatMap((each) => (each.alarms === undefined ? [] : [each.point.name]));
    throw new Refusal({
      read: point.of,
      expected: "a point with an 'alarm'",
      suggestion:
        others.length === 0
          ? `No point of ${point.machine} has one.`
          : `Here ${others.join(' and ')} ${others.length === 1 ? 'has' : 'have'} one; --target '${point.name}/…' grows a target of this point there.`,
    });
  }
  if (appraisal === undefined) {
    throw new Refusal({
      read: point.of,
      expected: "a point whose 'chain' names transducer, mount, cable and input",
      suggestion: 'An alarm acts on what a chain shows.',
    });
  }
  return { point, alarms, prediction: appraisal.prediction, policy };
}

function growingOf({ point }: DesignedPoint, machine: DesignedMachine, asked: string | undefined): readonly Growing[] {
  const own = point.targets.map((target) => ({ name: target.name, target }));
  if (asked === undefined) return own.map(({ target }) => ({ target }));
  const others = othersOf(machine, point.of);
  const found = [...own, ...others].find(({ name }) => name === asked);
  if (found !== undefined) return [found];
  const names = [...own, ...others].map(({ name }) => name);
  throw unknownName(asked, `a target of this point, or POINT/TARGET of ${point.machine}`, names);
}

function othersOf(machine: DesignedMachine, watching: string) {
  return machine.points.flatMap(({ point }) =>
    point.of === watching
      ? []
      : point.targets.map((target) => ({ name: `${point.name}/${target.name}`, target, statedAt: point.of })),
  );
}

function unknownLines(target: Target, fault: Answer<GrowingFault>, width: number) {
  if (fault.known) return [];
  return [
    ...heading(`${target.name}: cannot be told`, width),
    ...paragraph(`  ? ${missingText(fault.missing)}`, width, '  '),
  ];
}

/** What else may grow on the machine, for whoever looks for a fault that this point has no target for. */
function elsewhereLines(machine: DesignedMachine, { point }: DesignedPoint, width: number) {
  const names = othersOf(machine, point.of).map(({ name }) => `'${name}'`);
  if (names.length === 0) return [];
  return [
    blank,
    ...paragraph(`Targets of other points of ${point.machine}, for --target: ${names.join(', ')}.`, width),
  ];
}
