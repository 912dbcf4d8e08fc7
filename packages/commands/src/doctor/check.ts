import { Refusal } from '@soundpost/core';
import { catalogueReader, readYaml } from '@soundpost/files';
import { genericCataloguePath, readPlant } from '../plant/read-plant.ts';
import { pathIn, type Surroundings } from '../surroundings.ts';
import { counted } from '../text/values-text.ts';

/** One thing the doctor looked at. What is `wanted for` something is no fault where it is missing. */
export interface Check {
  readonly what: string;
  readonly found: string;
  readonly is: 'well' | 'missing' | 'wrong';
  readonly remedy?: string;
}

/** The oldest Node this is built for. */
const oldestNode: readonly [number, number] = [20, 19];

export async function checks(surroundings: Surroundings): Promise<readonly Check[]> {
  return [
    nodeCheck(surroundings.nodeVersion),
    await folderCheck(surroundings),
    await catalogueCheck(surroundings),
    await exampleCheck(surroundings),
    ...(await Promise.all(tools.map((tool) => toolCheck(surroundings, tool)))),
  ];
}

function nodeCheck(version: string): Check {
  const [, major = '0', minor = '0'] = /^v(\d+)\.(\d+)/.exec(version) ?? [];
  const new_ = Number(major) > oldestNode[0] || (Number(major) === oldestNode[0] && Number(minor) >= oldestNode[1]);
  return {
    what: 'Node.js',
    found: version,
    is: new_ ? 'well' : 'wrong',
    ...(new_ ? {} : { remedy: `install Node.js ${oldestNode.join('.')} or newer` }),
  };
}

async function folderCheck(surroundings: Surroundings): Promise<Check> {
  const can = await surroundings.canWrite('.');
  return {
    what: 'this folder',
    found: can ? 'may be written' : 'may not be written',
    is: can ? 'well' : 'wrong',
    ...(can ? {} : { remedy: 'work in a folder of yours, or give reports a path that may be written' }),
  };
}

async function catalogueCheck(surroundings: Surroundings): Promise<Check> {
  return readable('generic catalogue', async () => {
    const path = genericCataloguePath(surroundings);
    const { value } = readYaml(await surroundings.readBytes(path), path, catalogueReader);
    return [
      counted(value.transducers.length, 'transducer'),
      counted(value.mounts.length, 'mount'),
      counted(value.cables.length, 'cable'),
      counted(value.supplies.length, 'supply', 'supplies'),
      counted(value.inputs.length, 'input'),
    ].join(', ');
  });
}

async function exampleCheck(surroundings: Surroundings): Promise<Check> {
  return readable('demo plant', async () => {
    const path = pathIn(surroundings.root, 'examples', 'raw-water-pump', 'plant.yaml');
    const { plant } = await readPlant(surroundings, path);
    const points = plant.machines.reduce((sum, machine) => sum + machine.points.length, 0);
    return `${counted(plant.machines.length, 'machine')}, ${counted(points, 'point')}`;
  });
}

async function readable(what: string, read: () => Promise<string>): Promise<Check> {
  try {
    return { what, found: await read(), is: 'well' };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { what, found: error.message, is: 'wrong', remedy: 'fetch the files of this version again' };
  }
}

interface Tool {
  readonly what: string;
  readonly program: string;
  readonly parameters: readonly string[];
  readonly pattern: RegExp;
}

/** Programs of others by which the stored evidence is made again; nothing else needs them. */
const tools: readonly Tool[] = [
  { what: 'ngspice', program: 'ngspice', parameters: ['--version'], pattern: /ngspice-?\s*([\d.]+\+?)/ },
  {
    what: 'scipy',
    program: '/usr/bin/python3',
    parameters: ['-c', 'import scipy; print(scipy.__version__)'],
    pattern: /([\d.]+)/,
  },
];

async function toolCheck(surroundings: Surroundings, tool: Tool): Promise<Check> {
  const line = await surroundings.firstLineOf(tool.program, tool.parameters);
  if (line !== undefined) return { what: tool.what, found: tool.pattern.exec(line)?.[1] ?? line, is: 'well' };
  return {
    what: tool.what,
    found: 'not here',
    is: 'missing',
    remedy: 'wanted only to make the stored evidence again (npm run evidence)',
  };
}
