import { source } from './source.ts';

export const oscilloscopeWindowTable = source({
  id: 'oscilloscope-window-table',
  title: 'Table of FFT windows in the manual of an oscilloscope',
  how: 'read',
  note: 'Noise bandwidth, scalloping and gain. Its flat-top is another one, and its three-term Blackman-Harris gain differs.',
});
