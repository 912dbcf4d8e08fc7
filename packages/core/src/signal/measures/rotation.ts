/** Cosine and sine of 2π·turns·n for n = 0, 1, 2, …, block after block. */
export interface Rotation {
  next(cosines: Float64Array, sines: Float64Array): void;
}

const stretch = 512;

/**
 * cos(2π·turns·n) and sin(2π·turns·n) by a rotation from sample to sample. Every 512 samples it begins anew from the
 * function itself, so that no error grows, and always at the same samples, however the record is cut.
 */
export function rotation(turns: number): Rotation {
  const [stepCosine, stepSine] = [Math.cos(2 * Math.PI * turns), Math.sin(2 * Math.PI * turns)];
  let place = 0;
  let [c, s] = [1, 0];
  return {
    next(cosines, sines) {
      for (let n = 0; n < cosines.length; n++, place++) {
        if (place % stretch === 0) {
          // The whole turns go first: of a large angle the sine keeps no digits.
          const angle = 2 * Math.PI * ((turns * place) % 1);
          c = Math.cos(angle);
          s = Math.sin(angle);
        }
        cosines[n] = c;
        sines[n] = s;
        const turned = c * stepCosine - s * stepSine;
        s = s * stepCosine + c * stepSine;
        c = turned;
      }
    },
  };
}
