import { occasionKind } from './occasion-kind.ts';

export const stopped = occasionKind({
  kind: 'stopped',
  name: 'Machine stopped',
  how: 'Chain powered and settled, this machine at rest, its neighbours and the mains as in service.',
  dataSheet: {},
  turning: false,
});
