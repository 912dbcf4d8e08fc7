import type { Clause } from '@soundpost/core';

interface FindingRule {
  readonly id: string;
  readonly title: string;
  readonly prose: string;
  readonly sources: readonly Clause[];
}

const says = (id: string, title: string, prose: string): FindingRule => ({ id, title, prose, sources: [] });

/** Findings that arise while something is computed, beside the rules that have a list of their own. */
export const findingRules: readonly FindingRule[] = [
  says(
    'design/nothing-to-prove',
    'A plant asks for nothing',
    'A verdict is a comparison with stated targets. A plant without any would be proven by saying nothing, so it is asked what must be seen, and where.',
  ),
  says(
    'design/no-chain',
    'A point has no chain',
    'A point without a chosen transducer and mount measures nothing, so its targets are uncovered. Choose from the shortlist of the point, or record why it is not measured.',
  ),
  says(
    'design/accuracy-not-proven',
    'The promise is wider than the budget allows',
    'Even with the calibration certificate of this very piece the expanded uncertainty is larger than the tolerance of the target. Either the largest contribution or the promise has to give way.',
  ),
  says(
    'design/accuracy-unknown',
    'The accuracy of a reading cannot be worked out',
    'A contribution to the uncertainty is not stated, so whether the promise of the target is kept cannot be told. It is asked for; nothing is put in its place.',
  ),
  says(
    'design/nominal-sensitivity',
    'The nominal sensitivity breaks the promise',
    'With the sensitivity from the data sheet the spread between pieces alone makes the reading less true than was promised; with the certificate of this piece the promise is kept.',
  ),
  says(
    'design/shakes-by-design',
    'A table of severity for a machine that works by shaking',
    'A vibrating screen or feeder vibrates because it is meant to. No table of severity speaks of it: it is judged by a window about its stroke, and its bearings by trends of their own.',
  ),
  says(
    'completeness/terminals-agree',
    'A terminal stands in one document and not in the other',
    'Whoever tests a loop follows the loop diagram. A terminal that only one of the two documents has is tested by nobody, or looked for in vain.',
  ),
  says(
    'completeness/tags-agree',
    'A tag stands in a document and not in the instrument list',
    'The instrument list is where a tag is looked up first. One that is missing there belongs to nothing that is ordered or mounted.',
  ),
  says(
    'area/channel',
    'Two loops on one channel of a barrier',
    'Each loop was compared with the whole of what its channel allows. Two loops on one channel share it, and that was compared with nothing; their signals meet as well.',
  ),
  says(
    'area/default-cable',
    'Cable values of the standard stand in place of a declaration',
    'Where nothing is declared of a cable, the standard gives values to reckon with. A declaration by its maker may allow more, and must then be signed and in the file.',
  ),
  says(
    'area/caution',
    'What a comparison of certificates is, and what it is not',
    'It compares certificate values as they were entered, and approves nothing. The codes of the place, the certificates themselves and a person licensed for this practice decide.',
  ),
  says(
    'alarm/no-baseline',
    'No baseline is known',
    'The alert is a step above what this machine does when it is well. Without that level there is no alert, and no other number can stand for it.',
  ),
  says(
    'alarm/baseline-unlike',
    'Baseline and limit are of unlike kinds',
    'A baseline in another quantity or detector than the limit cannot be added to a part of it: the sum would be a number without meaning.',
  ),
  says(
    'alarm/baseline-without-band',
    'The baseline states no band',
    'The limit holds for a band, and a level over another band may be much larger or smaller. The baseline is taken as one of the band of the limit, and this is said.',
  ),
  says(
    'alarm/baseline-zero',
    'A baseline of zero',
    'A machine that runs vibrates. A zero is an empty cell, a dead channel or a machine at rest, and the alert would be too low.',
  ),
  says(
    'alarm/baseline-above-alert',
    'The alert would stand from the first day',
    'The baseline lies above the alert that follows from it and its cap. Nobody heeds an alarm that always stands.',
  ),
  says(
    'alarm/baseline-in-zone-c',
    'The baseline is that of a machine not well',
    'A level above the boundary B/C is not fit for long operation; it should not become the measure of what is normal.',
  ),
  says(
    'zones/machine-kind',
    'A reader must check the kind of machine',
    'The scope of a table of limits is words: which machines it is for, and which not. A program cannot check that.',
  ),
  says(
    'zones/unverified-table',
    'Nobody here read these limits in the standard',
    'The numbers were obtained second-hand or from memory. Confirm them in a licensed copy before anything rests on them, or enter the confirmed limits as your own.',
  ),
  says(
    'zones/power',
    'Rated power against the scope of the table',
    'A table holds for a range of rated power; outside it the limits of another table apply.',
  ),
  says(
    'zones/speed',
    'Shaft speed against the scope of the table',
    'A table holds for a range of shaft speed; outside it the limits of another table apply.',
  ),
  says(
    'zones/support',
    'Support against the scope of the table',
    'Limits for flexible supports are higher than for rigid ones; which it is decides the column.',
  ),
  says(
    'zones/shaft-height',
    'Shaft height against the scope of the table',
    'For electrical machines the height of the shaft decides the column of limits instead of the power.',
  ),
  says(
    'zones/clearance-governs',
    'The clearance lowers the limit',
    'Where the bearing clearance is small, shaft limits are a part of it, not the curve over speed. A radial clearance entered for the diametral one would halve them.',
  ),
  says(
    'loop/no-voltage',
    'No voltage is left for the loop',
    'Supply less the least voltage of the device is nothing or less: the transmitter would not work even without a load.',
  ),
  says(
    'loop/held-at-its-end',
    'The transmitter holds its current',
    'A measuring signal ends at 3.8 and 20.5 mA; beyond, the receiver sees no difference however large the level.',
  ),
  says(
    'loop/zero-or-dead',
    'Zero or dead',
    'Close to 4 mA a machine at rest, an error of the zero and a dead sensor look alike.',
  ),
  says(
    'loop/outside-card',
    'Outside the two points of the card',
    'Beyond its two points a card may go on along the line, hold its last count or set a fault bit: look it up.',
  ),
  says(
    'loop/assumed-fault-current',
    'The fault current was not stated',
    'The load was computed at the usual fault-high current. A device that sends more needs more voltage.',
  ),
  says(
    'chain/no-swing',
    'The bias has no room to swing',
    'Over the whole tolerance of the bias nothing is left above or below it: the output would clip without any vibration.',
  ),
  says(
    'signal/band-level-as-sine',
    'A level over a band was converted as one sine',
    'A level over a band holds every frequency in it, and each converts by another factor. Convert the one line meant, or integrate the record itself.',
  ),
  says(
    'uncertainty/level-not-stated',
    'No level of confidence was stated',
    'An expanded uncertainty means nothing without its level of confidence; the usual one was taken, and this is said.',
  ),
  says(
    'uncertainty/readings-alike',
    'Readings without any scatter',
    'Readings that never change tell the resolution of the indication, not an uncertainty of zero.',
  ),
  says(
    'uncertainty/drawn-as-normal',
    'Few degrees of freedom, drawn as normal',
    "With few readings the uncertainty is itself only roughly known; trials from a normal distribution leave that out, Student's t keeps it.",
  ),
  says(
    'uncertainty/correlated-degrees-of-freedom',
    'Correlated inputs with finite degrees of freedom',
    'The formula for effective degrees of freedom is for independent inputs; the fewest among the correlated ones are taken for all of them.',
  ),
  says(
    'uncertainty/no-trials',
    'No check by trials',
    'The law of propagation stands here alone, since something the trials need is missing.',
  ),
  says(
    'alarm/response-time',
    'The trip comes in time, and single events do not trip',
    'Time constant of the sensor, filter, scan, delay and the way to the valve add up; too long, and the machine is damaged before it stops; too short for a slow shaft, and a single event trips it.',
  ),
  says(
    'zones/clearance-not-stated',
    'The clearance of the bearing is not known',
    'The curve of limits over speed may allow more shaft motion than the bearing has room for.',
  ),
  says(
    'zones/clearance-radial',
    'A clearance that looks radial',
    'It is half of what is usual for the shaft: taken as diametral it would halve the limits.',
  ),
  says(
    'zones/clearance-wide',
    'A clearance that looks too wide',
    'A bearing so wide is worn, or the unit is wrong; the limits would then not be held by it.',
  ),
  says(
    'leak/gas-not-stated',
    'The gas of a leak was not stated',
    'The unit is converted and nothing else: the result is of whatever gas the leak was measured with.',
  ),
  says(
    'leak/volume-temperature',
    'The temperature of a volume was not stated',
    'The same gas takes another volume at another temperature; both were taken as one.',
  ),
  says(
    'leak/gas-converted',
    'A leak was converted to another gas',
    'A leak is neither purely molecular nor purely viscous: the ratio of two gases is an estimate, not a measurement.',
  ),
  says(
    'proximity/positive-gap-voltage',
    'A positive gap voltage',
    'On a negative supply the gap voltage is negative; it was read by its size.',
  ),
  says(
    'proximity/outside-straight-part',
    'Outside the straight part of the curve',
    'Near its supply and near zero the curve of a probe bends: the gap is not what the straight line says.',
  ),
  says(
    'orbit/few-samples',
    'Few samples per turn',
    'Between two samples the shaft goes on: the largest displacement found is too low.',
  ),
  says(
    'area/caution',
    'What a comparison of certificate values does not say',
    'A comparison holds for the certificate values that were entered and for nothing else. It is no permission: the documents, the installation and the judgement of a licensed person stand beside it.',
  ),
  says(
    'area/channel',
    'One loop on one channel',
    'Each loop was compared with the whole of what a channel allows; two loops on it were compared with nothing.',
  ),
  says(
    'area/default-cable',
    'Cable values of the standard in place of declared ones',
    'The standard has values for a cable of which nothing is declared; a declaration of the maker may allow more.',
  ),
  says(
    'event/part-missed',
    'A part of the event does not reach the alarm',
    'What the chain does not show no set point can act on: a frequency below its corner, for one.',
  ),
  says(
    'event/alarm-late',
    'The alarm acts too late',
    'The chain shows less than there is, so the level passes the set point later than it should: the set point is right and acts too late.',
  ),
];
