import { type Answer, answer, fromAll, thenAnswer, unanswered } from '../quantity/index.ts';
import { envelopeSpectrum } from '../signal/measures/envelope.ts';
import { type CandidateBand, envelopeBandChoice } from '../signal/measures/envelope-band.ts';
import { measured } from '../signal/measures/gathering.ts';
import type { ChannelMeasures } from './channel-measures.ts';
import { type LineSpectrum, lineSpectrum } from './lines-seen.ts';

/** The envelope of the most impulsive band of a record. */
export interface EnvelopeLines {
  readonly band: CandidateBand;
  readonly spectrum: LineSpectrum;
}

/** Lines of the envelope stand this share of the lowest frequency sought apart at most, where the record lets them. */
const longest = 16_384;
const fewestSegments = 4;

/** Chosen among bands wide enough for three harmonics of the highest frequency that is sought, in hertz. */
export function envelopeLines(
  { rate, excerpt }: ChannelMeasures,
  from: number,
  highest: number,
): Answer<EnvelopeLines> {
  return thenAnswer(rate, (known) => {
    const choice = measured(
      envelopeBandChoice({ rate: known, from, to: 0.45 * known, leastWidth: 3 * highest }),
      excerpt,
    );
    return thenAnswer(
      fromAll({ choice }, (each) => each.choice.chosen),
      (chosen) =>
        thenAnswer(chosen, (band) => {
          const low = Math.max(band.low, known * 1e-3);
          const every = Math.max(1, Math.floor(known / (4 * (band.high - low))));
          const samples = excerpt.length / every;
          const length = Math.min(longest, 2 ** Math.floor(Math.log2(samples / fewestSegments)));
          if (length < 256) return unanswered([{ of: 'the record', what: 'length for an envelope spectrum' }]);
          const spectrum = measured(
            envelopeSpectrum({
              rate: known,
              low,
              high: Math.min(band.high, 0.49 * known),
              order: 4,
              length,
              window: 'hann',
              overlap: 0.5,
            }),
            excerpt,
          );
          return spectrum.known ? answer({ band, spectrum: lineSpectrum(spectrum.value.spectrum) }) : spectrum;
        }),
    );
  });
}
