import { source } from './source.ts';

export const signalLibraryReference = source({
  id: 'signal-library-reference',
  title: 'Reference of a general-purpose signal-processing library, window table',
  how: 'read',
  note: 'Hann: scalloping -1.4236 dB, 1.5 bins, side lobe 31.5 dB.',
});
