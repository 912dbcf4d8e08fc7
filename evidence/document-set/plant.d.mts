/** The text of a plant file with exactly so many measuring points. */
export function generatedPlant(points: number, seed?: number): string;
