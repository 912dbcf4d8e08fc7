import { divided, type Fraction, fraction, greatestCommonDivisor, minus, multiplied } from '../quantity/index.ts';
import { toothPair } from './mesh-frequencies.ts';

/** What the drawing of a planetary stage counts. */
export interface PlanetaryTeeth {
  readonly sun: number;
  readonly planet: number;
  readonly ring: number;
  readonly planets: number;
}

/** The members that turn about the common axis. */
export const planetaryMembers = ['sun', 'carrier', 'ring'] as const;
export type PlanetaryMember = (typeof planetaryMembers)[number];

/** Factors of the Willis equation 0 = z_s·f_s + z_r·f_r − (z_s + z_r)·f_c. Source: from memory. */
export function willisFactors({
  sun,
  ring,
}: Pick<PlanetaryTeeth, 'sun' | 'ring'>): Readonly<Record<PlanetaryMember, number>> {
  return { sun, ring, carrier: -(sun + ring) };
}

/** Exact turns of all three members per turn of the driven one, one of the others held; negative is the other way. */
export function turnsPerInput(
  teeth: Pick<PlanetaryTeeth, 'sun' | 'ring'>,
  held: PlanetaryMember,
  drivenBy: PlanetaryMember,
): Readonly<Record<PlanetaryMember, Fraction>> {
  const factors = willisFactors(teeth);
  const follows = planetaryMembers.find((member) => member !== held && member !== drivenBy)!;
  const turns = { sun: fraction(0), carrier: fraction(0), ring: fraction(0) };
  turns[drivenBy] = fraction(1);
  turns[follows] = fraction(-factors[drivenBy], factors[follows]);
  return turns;
}

/** Speeds in hertz with their sense, in; every frequency of the stage in hertz, without sense, out. */
export interface PlanetaryFrequencies {
  /** f_m = z_s·|f_s − f_c| = z_r·|f_c − f_r|. */
  readonly mesh: number;
  /** One turn of a planet as the carrier sees it: f_m/z_p. */
  readonly planetSpin: number;
  /** A bad tooth of the sun meets each of N planets: N·f_m/z_s. */
  readonly sunFault: number;
  /** A bad tooth of the ring meets each of N planets: N·f_m/z_r. */
  readonly ringFault: number;
  /** A bad planet tooth meets sun and ring, with both flanks: 2·f_m/z_p; with one flank f_m/z_p. */
  readonly planetFault: number;
  readonly planetFaultOneFlank: number;
}

/** Frequencies from the speeds of sun and carrier, whichever member is held. Source: planetary kinematics (from memory). */
export function planetaryFrequencies(teeth: PlanetaryTeeth, sun: number, carrier: number): PlanetaryFrequencies {
  const mesh = teeth.sun * Math.abs(sun - carrier);
  const planetSpin = mesh / teeth.planet;
  return {
    mesh,
    planetSpin,
    sunFault: (teeth.planets * mesh) / teeth.sun,
    ringFault: (teeth.planets * mesh) / teeth.ring,
    planetFault: 2 * planetSpin,
    planetFaultOneFlank: planetSpin,
  };
}

/** (z_s + z_r)/N: planets at equal angles go in only where it is whole. Known second-hand. */
export function assemblyShare({ sun, ring, planets }: PlanetaryTeeth): Fraction {
  return fraction(sun + ring, planets);
}

/** z_s + 2·z_p, the ring that fits without profile shift. From memory. */
export function ringThatFits({ sun, planet }: PlanetaryTeeth): number {
  return sun + 2 * planet;
}

/**
 * How the meshes of N equal planets stand to each other at a held ring. In orders of the carrier, only whole multiples
 * of N stand out at one place of the ring; the strongest is that nearest to `harmonic`·z_r, and where two are equally
 * near, both. In phase where that is the mesh order itself. Source: planetary phasing (from memory).
 */
export function ordersAtRing({ ring, planets }: PlanetaryTeeth, harmonic = 1): readonly number[] {
  const mesh = harmonic * ring;
  const below = mesh - (mesh % planets);
  const above = below + planets;
  if (mesh === below) return [mesh];
  if (mesh - below === above - mesh) return [below, above];
  return [mesh - below < above - mesh ? below : above];
}

/** Whether all planets mesh with the ring in phase: z_r is a multiple of the number of planets. */
export function inPhase(teeth: PlanetaryTeeth): boolean {
  return teeth.ring % teeth.planets === 0;
}

/** Turns of the carrier against the ring until the same planet tooth meets the same ring tooth: z_p/gcd(z_p, z_r). */
export function planetWindow({ planet, ring }: PlanetaryTeeth): number {
  return toothPair(ring, planet).turnsToMeet;
}

/** Turns of the carrier against the ring until the same sun tooth is in mesh at the same place of the ring: z_s/gcd(z_s, z_r). */
export function sunWindow({ sun, ring }: PlanetaryTeeth): number {
  return toothPair(ring, sun).turnsToMeet;
}

/** How often one planet tooth meets one tooth of another wheel, as a share of the mesh: gcd/(z_p·z). */
export function meetingShare(planet: number, other: number): Fraction {
  return fraction(greatestCommonDivisor(BigInt(planet), BigInt(other)), BigInt(planet) * BigInt(other));
}

/** Speed of the faster over the slower moving member with one held, without sense: 1 + z_r/z_s, z_r/z_s or 1 + z_s/z_r. */
export function ratioWithHeld(teeth: Pick<PlanetaryTeeth, 'sun' | 'ring'>, held: PlanetaryMember): Fraction {
  const [one, other] = planetaryMembers.filter((member) => member !== held) as [PlanetaryMember, PlanetaryMember];
  const ratio = turnsPerInput(teeth, held, one)[other];
  const size = ratio.numerator < 0n ? multiplied(fraction(-1), ratio) : ratio;
  return minus(size, fraction(1)).numerator < 0n ? divided(fraction(1), size) : size;
}
