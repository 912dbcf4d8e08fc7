import { always, command, textFlag } from './command.ts';
import { proof } from './prove.ts';
import { pathIn } from './surroundings.ts';

const report = 'out/raw-water-pump.html';

export const demo = command({
  name: 'demo',
  summary: 'The main job on the demo plant, from plant file to proof',
  description:
    'Proves the invented raw-water pump of examples/raw-water-pump/plant.yaml, prints the proof with its verdict and ' +
    `writes a readable report to ${report}.`,
  arguments: {},
  flags: { out: textFlag('REPORT.HTML', `Where the report goes; ${report} where nothing is said`) },
  examples: ['soundpost demo'],
  whenAllowed: always,
  perform: (surroundings, { out }, manner) =>
    proof(surroundings, pathIn(surroundings.root, 'examples', 'raw-water-pump', 'plant.yaml'), out ?? report, manner),
});
