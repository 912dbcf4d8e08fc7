/** How sure a protection is, in gas (G) and in dust (D): a holds with two faults, b with one, c in normal use. */
export const protectionLevels = ['Ga', 'Gb', 'Gc', 'Da', 'Db', 'Dc'] as const;
export type ProtectionLevel = (typeof protectionLevels)[number];

export type Atmosphere = 'gas' | 'dust';
export type Rank = 'a' | 'b' | 'c';

export function levelOf(rank: Rank, atmosphere: Atmosphere): ProtectionLevel {
  return `${atmosphere === 'gas' ? 'G' : 'D'}${rank}`;
}

export function rankOf(level: ProtectionLevel): Rank {
  return level[1] as Rank;
}

export function atmosphereOf(level: ProtectionLevel): Atmosphere {
  return level.startsWith('G') ? 'gas' : 'dust';
}

/** Whether equipment of one level may stand where another is asked for: the same atmosphere, no lower rank. */
export function coversLevel(offered: ProtectionLevel, required: ProtectionLevel): boolean {
  return atmosphereOf(offered) === atmosphereOf(required) && rankOf(offered) <= rankOf(required);
}

/** A loop is worth its weakest part. */
export function lowestRank(ranks: readonly Rank[]): Rank | undefined {
  return [...ranks].sort().at(-1);
}
