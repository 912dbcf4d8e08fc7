/** Creep of a steel rim on a steel roller where nobody stated one. Common practice, no source. */
export const usualCreep = { low: 0, high: 0.01 };
