import { Refusal } from '@soundpost/core';
import { always, command, optionalArgument, textFlag } from './command.ts';
import { paragraph } from './layout/line.ts';
import { genericCataloguePath } from './plant/read-plant.ts';
import { pathIn, type Surroundings } from './surroundings.ts';

const copy = 'out/raw-water-pump/plant.yaml';

export const serve = command({
  name: 'serve',
  summary: 'Opens the workbench for a plant in the browser of this machine',
  description:
    'Serves the workbench on this machine alone and prints an address that opens it once. Enter prints a new address, ' +
    'Ctrl-C ends it; whatever was changed is in the plant file by then. Without a plant it opens a copy of the demo ' +
    `plant, ${copy}, which is made where there is none.`,
  arguments: { plant: optionalArgument('PLANT', 'Plant file') },
  flags: { port: textFlag('N', 'Port to listen on; any that is free where nothing is said') },
  examples: ['soundpost serve examples/raw-water-pump/plant.yaml', 'soundpost serve --port 8080'],
  whenAllowed: always,
  perform: async (surroundings, { plant, port }, manner) => {
    const path = plant ?? (await demoCopy(surroundings));
    await surroundings.workbench({
      plant: path,
      port: portIn(port),
      genericCatalogue: genericCataloguePath(surroundings),
      page: pathIn(surroundings.root, 'packages', 'web', 'dist'),
    });
    return {
      exit: 0,
      lines: paragraph(`The workbench has ended. What was changed is in ${path}.`, manner.width),
      json: { plant: path },
    };
  },
});

function portIn(text: string | undefined): number {
  if (text === undefined) return 0;
  const port = Number(text);
  if (/^\d{1,5}$/.test(text) && port >= 1 && port <= 65535) return port;
  throw new Refusal({ read: text, expected: 'a port from 1 to 65535' });
}

async function demoCopy(surroundings: Surroundings): Promise<string> {
  const stands = await surroundings.readBytes(copy).then(
    () => true,
    () => false,
  );
  if (stands) return copy;
  const bytes = await surroundings.readBytes(pathIn(surroundings.root, 'examples', 'raw-water-pump', 'plant.yaml'));
  await surroundings.writeFile(copy, new TextDecoder().decode(bytes), { overwrite: false });
  return copy;
}
