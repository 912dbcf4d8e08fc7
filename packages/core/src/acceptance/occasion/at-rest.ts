import { occasionKind } from './occasion-kind.ts';

export const atRest = occasionKind({
  kind: 'at-rest',
  name: 'Direct voltage at rest',
  how: 'Direct-coupled record across the pair at the input, machine at rest, chain powered and settled.',
  dataSheet: {},
  turning: false,
});
