import { source } from './source.ts';

export const iepePractice = source({
  id: 'iepe-practice',
  title: 'Constant-current supply of accelerometers as printed in trade notes',
  how: 'second-hand',
  note: '2 to 20 mA, 18 to 30 V, bias 7 to 14 V, about 1 mA kept by the electronics, slew limit I/(2 pi C V); four independent texts.',
});
