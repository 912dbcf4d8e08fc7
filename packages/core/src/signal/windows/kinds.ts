import { blackman } from './blackman.ts';
import { blackmanHarris3Term } from './blackman-harris-3-term.ts';
import { blackmanHarris4Term } from './blackman-harris-4-term.ts';
import { exactBlackman } from './exact-blackman.ts';
import { flatTop5Term } from './flat-top-5-term.ts';
import { flatTopHft95 } from './flat-top-hft95.ts';
import { flatTopUnityGain } from './flat-top-unity-gain.ts';
import { hamming } from './hamming.ts';
import { hann } from './hann.ts';
import { kaiserBessel3Point5 } from './kaiser-bessel-3.5.ts';
import { kaiserBessel3 } from './kaiser-bessel-3.ts';
import { nuttall4c } from './nuttall-4c.ts';
import { rectangular } from './rectangular.ts';
import type { WindowKind } from './window.ts';

/** Every window; the one list that files, screens and calculators choose from. */
export const windowKinds = [
  rectangular,
  hann,
  hamming,
  blackman,
  exactBlackman,
  blackmanHarris3Term,
  blackmanHarris4Term,
  kaiserBessel3,
  kaiserBessel3Point5,
  nuttall4c,
  flatTop5Term,
  flatTopUnityGain,
  flatTopHft95,
] as const;

export type WindowName = (typeof windowKinds)[number]['kind'];

export const windowNames: readonly WindowName[] = windowKinds.map((each) => each.kind);

const byName = new Map<WindowName, WindowKind<WindowName>>(windowKinds.map((each) => [each.kind, each]));

/** The window of that name. */
export function windowCalled(name: WindowName): WindowKind<WindowName> {
  return byName.get(name)!;
}
