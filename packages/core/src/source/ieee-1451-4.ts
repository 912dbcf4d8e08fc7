import { source } from './source.ts';

export const ieee1451x4 = source({
  id: 'ieee-1451-4',
  title: 'IEEE 1451.4:2004, Transducer electronic data sheet formats',
  how: 'second-hand',
  note:
    'Not opened. Basic part, codings and template 25 after a public tutorial of 2004 on the templates and two public ' +
    'decoders that agree; of template 30 what one published stream of bytes shows; of template 27 the name alone.',
});
