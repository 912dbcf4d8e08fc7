/** What a rule about a recording says of itself. */
export interface RecordingRule {
  readonly id: string;
  readonly title: string;
  readonly prose: string;
}

const rule = <Name extends string>(name: Name, title: string, prose: string) =>
  ({ id: `recording/${name}`, title, prose }) as const;

/** Every rule that holds the file of a recording against itself. None leans on a standard. */
export const recordingRules = [
  rule(
    'length-against-file',
    'The head claims another length than the file holds',
    'A file that was cut off on its way, or whose recorder lost power before it closed it, still claims its full length. What stands there is read; that it is not all is told.',
  ),
  rule(
    'head-against-itself',
    'Two statements of the head cannot both be true',
    'Bytes a second against rate and channels, byte order against the size of the numbers, rows against columns: where two say different things one was changed later or was written wrongly, and the other may be the wrong one.',
  ),
  rule(
    'rate-against-time-column',
    'The declared rate is not that of the time column',
    'A viewer that exports one sample in so many often leaves the rate of the recorder in the head. Every frequency read with the wrong one of the two is wrong in their ratio; and where samples were left out without a filter, high frequencies stand at places where nothing was. The rate is then unknown until somebody says which is right. Compared to a hundredth of a per cent, or to what the digits of the times allow.',
  ),
  rule(
    'times-even',
    'The time column jumps or goes back',
    'A step more than half off the usual one, or a step backwards, means samples that are missing or two records that were joined. A spectrum across such a place is not one of the machine.',
  ),
  rule(
    'times-fine-enough',
    'Times stand more than once',
    'Times written with too few digits stand still for several samples. The rate follows from the first and last of them only, and a gap of a few samples would not be seen.',
  ),
  rule(
    'values-are-numbers',
    'Some values are no finite number',
    'An empty cell, a word, an overflow or a not-a-number stands where a sample should. It is read as no number, never as zero: no mean, level or spectrum exists across it.',
  ),
  rule(
    'unit-against-step',
    'The numbers go in steps that the unit does not explain',
    'Values that are whole numbers throughout, or multiples of the step of a converter within one of full scale, look like what the converter gave before it was scaled, under the unit of what it was to become.',
  ),
  rule(
    'unit-against-kind',
    'The unit is not one of the quantity the channel is said to be of',
    'A channel of acceleration in a unit of velocity has a wrong kind or a wrong unit, and with it every level read from it is wrong.',
  ),
  rule(
    'waveform-has-no-detector',
    'The unit carries a detector',
    'rms, peak and peak-to-peak are said of levels. A column of them is a trend, one level for each row, and has no spectrum.',
  ),
  rule(
    'values-move',
    'A channel never moves',
    'Every value is the same, of a hundred and more. A measurement has noise at least: the channel is dead, not connected, or was filled in.',
  ),
  rule(
    'no-standstill',
    'A channel stands still for a while',
    'A hundred values and more are the same while the others change from one to the next: samples that were lost and filled in with the last one or with zero, or a chain at an end of its range. Told where the standstill is fifty times as long as values usually rest.',
  ),
  rule(
    'bytes-in-order',
    'The bytes look exchanged',
    'Integers of 16 bits written with the other byte first read as noise of full size. Where exchanging them makes the mean step between neighbours less than a tenth, it is asked.',
  ),
  rule(
    'below-full-scale',
    'Values stand at full scale',
    'Shares of full scale that reach its end were cut there by the converter.',
  ),
  rule(
    'settled',
    'An acceleration or velocity settles over the record',
    'A record whose means go one way over its whole length, most of it at first, and hold four fifths of its variance, shows a coupling or an amplifier that settles after power came on or after it was driven out of its range. The motion itself returns to rest.',
  ),
  rule(
    'measured-in-part',
    'A record is longer than what is measured of it',
    'The first 67 million samples of a channel are measured, 22 minutes at 51.2 kHz. The whole record is looked through for contradictions.',
  ),
  rule(
    'one-start',
    'Channels start at different times',
    'Phase, orbit and delay between channels mean something only where they were sampled together. Channels with starts of their own may be two records, of two machines even, in one file.',
  ),
] as const satisfies readonly RecordingRule[];

type Named<Id> = Id extends `recording/${infer Name}` ? Name : never;
export type RecordingRuleName = Named<(typeof recordingRules)[number]['id']>;
