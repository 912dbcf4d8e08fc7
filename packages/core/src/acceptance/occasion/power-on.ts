import { occasionKind } from './occasion-kind.ts';

export const powerOn = occasionKind({
  kind: 'power-on',
  name: 'Power comes on',
  how: 'Direct-coupled record that begins before the supply is switched on and ends when nothing moves any more.',
  dataSheet: {},
  turning: false,
});
