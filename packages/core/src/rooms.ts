/**
 * The rooms of the core in the order in which a signal and a design travel. Read aloud it tells the job; it is also
 * the law of imports: a room imports only from rooms above it, and a test enforces that.
 */
export const rooms = [
  'quantity', //       what was typed, and what it means
  'source', //         who says so
  'finding', //        what is wrong, and what would mend it
  'working', //        what a formula is
  'uncertainty', //    how sure a number is
  'signal', //         what a sampled record can show
  'machine', //        what turns, and at which frequencies
  'demand', //         what a point must capture
  'chain', //          what a measuring chain makes of it
  'hazardous-area', // whether its loop may stand where it does
  'wiring', //         which loops the plant closes, and what they add
  'acquisition', //    how it is recorded
  'alarm', //          when somebody is told
  'selection', //      which chain meets the demand, and by how much
  'design', //         the one record that every document and screen reads
  'standardisation', // which few part numbers the plant keeps
  'rehearsal', //      what the analyst would see, before anything is bought
  'acceptance', //     whether the installed chain measures as designed
] as const;

export type Room = (typeof rooms)[number];
