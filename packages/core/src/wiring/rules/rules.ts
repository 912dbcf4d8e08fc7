import { hum } from './hum.ts';
import { oneEarth } from './one-earth.ts';
import type { WiringRule } from './rule.ts';
import { screenEarthed } from './screen-earthed.ts';
import { screenEnds } from './screen-ends.ts';
import { separation } from './separation.ts';
import { unknownJoint } from './unknown-joint.ts';

/** Every rule of the wiring. That a case is no signal ground online, and of a barrier its earth, the rooms above say. */
export const wiringRules: readonly WiringRule[] = [oneEarth, screenEnds, screenEarthed, unknownJoint, hum, separation];
