import { source } from './source.ts';

export const tedsModalLibrary = source({
  id: 'teds-modal-library',
  title: 'Public modal-analysis library that reads template 25: its built-in stream and the values of its manual',
  how: 'read',
  note:
    'Printed of the built-in stream: high-pass corner 0.24800645070661656 Hz, weight 4.600511990936967 g; commit 4bf2c576. ' +
    'The sensitivity the manual prints is not that of the stream, and is not used.',
});
