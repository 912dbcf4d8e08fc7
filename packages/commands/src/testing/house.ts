import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { AnyCommand } from '../command.ts';
import { type InMemory, inMemory } from '../in-memory.ts';
import { type Line, textOf } from '../layout/line.ts';
import { manner, type Wishes } from '../manner.ts';
import type { Outcome } from '../outcome.ts';
import { performed } from '../performed.ts';

/** The checkout the tests run in. */
export const checkout = resolve(import.meta.dirname, '../../../..');

/** A file of the checkout as text. */
export function fileOf(path: string): string {
  return readFileSync(resolve(checkout, path), 'utf8');
}

export const pumpPath = 'examples/raw-water-pump/plant.yaml';

/** The demo plant as it stands in the checkout, with some of its text replaced. Throws where the text is not there. */
export function pump(replaced: Readonly<Record<string, string>> = {}): string {
  return Object.entries(replaced).reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the demo plant does not say '${from}'`);
    return text.replace(from, to);
  }, fileOf(pumpPath));
}

/** A world in memory with the generic catalogue, the demo plant, and whatever else is given. */
export function world(files: Readonly<Record<string, string | Uint8Array>> = {}): InMemory {
  return inMemory({
    'house/packages/files/catalogues/generic.yaml': fileOf('packages/files/catalogues/generic.yaml'),
    [`house/${pumpPath}`]: pump(),
    [pumpPath]: pump(),
    'examples/uncertainty/end-gauge.yaml': fileOf('examples/uncertainty/end-gauge.yaml'),
    ...files,
  });
}

/** What a command gives, in a world of its own. A flag that is not given is off. */
export function done(
  command: AnyCommand,
  given: Readonly<Record<string, unknown>>,
  surroundings: InMemory = world(),
  wishes: Wishes = {},
): Promise<Outcome> {
  return performed(command, surroundings, given, manner(wishes));
}

export function text({ lines }: { readonly lines: readonly Line[] }): string {
  return textOf(lines);
}

/** The same with every run of spaces and line ends as one space: for sentences that wrap. */
export function flowing(outcome: { readonly lines: readonly Line[] }): string {
  return text(outcome).replace(/\s+/g, ' ');
}

/** A train of two shafts whose speeds follow from tooth counts. */
export const gearPlant = `soundpost: plant
version: 1
plant: { name: Invented mill }
catalogues: [generic]
machines:
  M-1:
    title: Mill drive
    facts: { power: 55 kW, support: rigid }
    shafts: [motor, mill]
    elements:
      gears:
        kind: gear-pair
        from: motor
        to: mill
        driving-teeth: 15
        driven-teeth: 1456
    operation:
      shaft: motor
      speed: 1480..1490 r/min
      states: { duty: 1486 r/min, night: 1484 r/min }
    points:
      mill-bearing:
        location: unknown
        direction: unknown
        installation: online
        surface-temperature: { value: unknown, ask: the operator }
        targets:
          mesh:
            cause: wear of the teeth
            observe: line
            frequency: gears/mesh at duty
            smallest: unknown
            largest: 5 mm/s rms
            tolerance: ±10 %
            resolution: 0.5 Hz
`;
