import type { Answer, Span } from '../../quantity/index.ts';

/** What some transducers need of their place beyond a surface that is not too hot. What a kind does not need it leaves out. */
export interface TransducerNeeds {
  /** Where a transducer that follows from rest must keep what it looks at. */
  readonly linearTravel?: Answer<LinearTravel>;
  /** What a probe needs to see its shaft as on its test bench. */
  readonly probe?: ProbeNeeds;
  /** Electronics that stand apart from the surface. */
  readonly apart?: ElectronicsApart;
  /** Most current its own voltage output gives the cable, of a transducer that is not fed a constant current. */
  readonly outputCurrent?: Answer<number>;
  /** Current it draws through a supply core of its own. */
  readonly supplyDraw?: Answer<number>;
  /** A strong magnetic field gets into its signal. */
  readonly disturbedByField?: true;
  /** How far its axis may lean from its position of use, in radians. */
  readonly largestTilt?: Answer<number>;
  /** Highest surface speed a riding rod bears, in m/s. */
  readonly surfaceSpeed?: Answer<number>;
}

/** A linear range and where in it the target is set, in m. */
export interface LinearTravel {
  readonly range: number;
  /** From where it is set to the nearer end. */
  readonly room: number;
  /** Gap and direct voltage to be found at rest, of a probe. */
  readonly set?: { readonly gap: number; readonly voltage: number };
}

/** In m; what the data sheet does not say is left out. */
export interface ProbeNeeds {
  readonly smallestShaft?: Answer<number>;
  readonly sideClearance?: Answer<number>;
  readonly tipSpacing?: Answer<number>;
  readonly calibratedOn?: Answer<string>;
  /** Probe and extension cable together, and what the driver was matched to. */
  readonly electricalLength?: Answer<{ readonly together: number; readonly matched: number }>;
}

/** A converter or driver beside the machine: what it is called, and the surroundings it bears. */
export interface ElectronicsApart {
  readonly name: string;
  readonly temperature: Answer<Span<'temperature'>>;
}
