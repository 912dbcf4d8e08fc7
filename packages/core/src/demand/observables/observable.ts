import { type Answer, answer, type Band, fromAll } from '../../quantity/index.ts';

/** What the noise of a chain is compared with: one analyser line of stated spacing, or a whole band. */
export type NoiseBandwidth = { readonly line: number; readonly spacing: number } | { readonly band: Band };

/** What is known of a target's place in frequency. */
export interface PlaceInFrequency {
  readonly frequencies: Answer<readonly number[]>;
  readonly band: Answer<Band>;
  readonly resolution: Answer<number>;
}

/** A way of looking at a motion: as a line, as one overall value, as bursts in a band, as a position. */
export interface Observable {
  readonly kind: string;
  readonly meaning: string;
  /** Whether one number from a detecting sensor can show it. */
  readonly isOneNumber: boolean;
  /** Whether the whole band counts, not only named frequencies: bursts excite whatever lies in it. */
  readonly scansBand: boolean;
  /** How its smallest level is compared with the noise: by rms, or by its peak. */
  readonly against: 'rms' | 'peak';
  /**
   * What noise does to it: it `hides` a line or a burst, which must stand out of it; it `adds` to an overall value, as
   * squares, which must still read within its tolerance.
   */
  readonly noise: 'hides' | 'adds';
  /** Whether it needs the chain to pass a constant position. */
  readonly atRest: boolean;
  noiseBandwidth(place: PlaceInFrequency): Answer<NoiseBandwidth>;
}

export function observable(definition: Observable): Observable {
  return definition;
}

export function noiseInLine(place: PlaceInFrequency): Answer<NoiseBandwidth> {
  return fromAll({ at: place.frequencies, spacing: place.resolution }, ({ at, spacing }) => ({
    line: at[0] ?? 0,
    spacing,
  }));
}

export function noiseInBand(place: PlaceInFrequency): Answer<NoiseBandwidth> {
  return place.band.known ? answer({ band: place.band.value }) : place.band;
}
