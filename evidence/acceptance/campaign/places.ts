import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { designedMachine } from '../../../packages/core/src/index.ts';
import { plantOf, root } from '../../reading.ts';
import { type ChainedPoint, chainedPoints } from '../../rehearsal/chains.ts';

/** A chain on the pump of the examples: what stands in the place of its own points. */
interface PumpChain {
  readonly name: string;
  readonly transducer: string;
  readonly mount: string;
  readonly metres: number;
  readonly input: string;
  readonly inLine?: string;
  readonly cable?: string;
}

const pumpChains: readonly PumpChain[] = [
  { name: 'iepe-portable', transducer: 'ACC-100', mount: 'stud', metres: 2, input: 'PORT-24' },
  { name: 'iepe-online', transducer: 'ACC-500', mount: 'quick-lock', metres: 40, input: 'ONL-24' },
  { name: 'charge', transducer: 'CHG-25', mount: 'stud', metres: 30, input: 'ONL-24' },
  { name: 'velocity-piezo', transducer: 'PVT-4', mount: 'stud', metres: 60, input: 'ONL-24' },
  { name: 'velocity-coil', transducer: 'MCV-20', mount: 'stud', metres: 60, input: 'RACK-DC' },
  { name: 'loop', transducer: 'LPV-25', mount: 'stud', metres: 85, input: 'AI-16', inLine: 'LOOP-24' },
  { name: 'loop-peak', transducer: 'LPA-10P', mount: 'stud', metres: 85, input: 'AI-16', inLine: 'LOOP-24' },
];

function pointOf({ name, transducer, mount, metres, input, inLine, cable = 'TSP' }: PumpChain): string {
  const loop = inLine !== undefined;
  return `
      ${name}:
        location: pump, drive-end bearing housing
        direction: horizontal, to the right seen from the motor
        installation: ${name === 'iepe-portable' ? 'portable' : 'online'}
        surface-temperature: { value: 65 °C, status: measured, source: infrared reading }
        targets:
          overall velocity:
            cause: severity against plant specification PS-114
            observe: overall
            band: 2..1000 Hz
            components: [pump/1x at highest, impeller/vane-pass at highest]
            smallest: 0.5 mm/s rms
            largest: 25 mm/s rms
            largest-at: pump/1x at highest
            tolerance: ±10 %
${
  loop
    ? ''
    : `          vane pass:
            cause: hydraulic load, wear of the impeller
            observe: line
            frequency: impeller/vane-pass at highest
            smallest: 0.05 mm/s rms
            largest: 5 mm/s rms
            tolerance: ±10 %
            resolution: 0.3125 Hz
`
}        chain:
          transducer: ${transducer}
          mount: ${mount}
          cable: ${cable}
          cable-length: { value: ${metres} m, status: measured, source: walked on the tray }
${inLine === undefined ? '' : `          in-line: [${inLine}]\n`}          input: ${input}
`;
}

const fromExamples = ['K-11/bearing-1', 'SC-7/exciter-housing', 'T-14/nacelle', 'T-14/fast-shaft'];

let made: readonly ChainedPoint[] | undefined;

/** Points of every sort of chain a record may be of, on which the rates are found. */
export function campaignPlaces(): readonly ChainedPoint[] {
  made ??= [...onPump(), ...chainedPoints().filter(({ name }) => fromExamples.includes(name))];
  return made;
}

export function placeCalled(name: string): ChainedPoint {
  const found = campaignPlaces().find((each) => each.name === name);
  if (found === undefined) throw new Error(`no place ${name}`);
  return found;
}

function onPump(): readonly ChainedPoint[] {
  const text = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
  const [head] = text.split(/^ {4}points:$/m);
  const plant = plantOf(`${head}    points:${pumpChains.map(pointOf).join('')}`, 'rates/plant.yaml');
  return plant.machines
    .map((machine) => designedMachine(plant, machine, 1))
    .flatMap((machine) => machine.points.map((point) => ({ name: point.point.of, machine, point })));
}
