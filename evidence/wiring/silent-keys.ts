/** Where the removal of a key from a good plant file changes nothing anybody is told of, and why. `*` stands for one key. */
export interface SilentKey {
  readonly keys: readonly string[];
  readonly because: string;
}

/**
 * This list may only shrink: a test fails where an entry covers no key any more. The first part is so on purpose; of the
 * second part a question would be better.
 */
export const silentOnPurpose: readonly SilentKey[] = [
  {
    because: 'where a value comes from is optional; the value stays, and the documents show it without an origin',
    keys: ['**/source', '**/status'],
  },
  {
    because: 'the title block prints a blank where nothing is stated',
    keys: ['plant/name', 'plant/owner', 'plant/project', 'plant/revision', 'plant/date', 'plant/prepared-by'],
  },
  {
    because: 'a remark and a rank of cost decide nothing about a chosen chain',
    keys: ['parts/*/*/remark', 'parts/*/*/cost-rank'],
  },
  {
    because: 'a curve may have any number of points; between those that are left it is read as a line',
    keys: ['parts/*/*/noise/*', 'parts/*/*/amplifier-noise/*'],
  },
  {
    because: 'the policy of the house has stated values where the file states none; the design basis prints which',
    keys: ['policy', 'policy/*'],
  },
  {
    because: 'distances have stated values where the owner states none; the rule names which it was held against',
    keys: ['separation', 'separation/*'],
  },
  {
    because: 'what is taken out whole is not there: what is left is a smaller plant that lacks nothing',
    keys: [
      'machines/*',
      'machines/*/points/*',
      'machines/*/points/*/targets/*',
      'machines/*/points/*/targets/*/components/*',
      'machines/*/points/*/disturbances',
      'machines/*/points/*/disturbances/*',
      'machines/*/points/*/alarm',
      'machines/*/points/*/chain/in-line/*',
    ],
  },
  {
    because: 'limits stated in figures take the place of those by power, support and height of the shaft',
    keys: ['machines/*/facts/power', 'machines/*/facts/support', 'machines/*/facts/shaft-height'],
  },
  {
    because: 'the test sheet then has a blank for the tolerance that is agreed, as it had before cards stated one',
    keys: ['parts/inputs/*/accuracy'],
  },
  {
    because: 'only interaction of vanes asks for it, and no target looks for that',
    keys: ['machines/*/elements/wheel/diffuser-vanes'],
  },
  {
    because:
      'the trip waits as long as the alert, holds without hysteresis, and acts at the start as at speed, and says so',
    keys: [
      'machines/*/points/*/alarm/trip-delay',
      'machines/*/points/*/alarm/logic/hysteresis',
      'machines/*/points/*/alarm/logic/at-start',
    ],
  },
  {
    because: 'a column of the certificate for another group, or for a way of comparing that is not needed here',
    keys: ['parts/supplies/*/certificate-*'],
  },
];

export const notYetAsked: readonly SilentKey[] = [
  {
    because: 'mass matters on light structures, settling at the switching on: no rule asks for either on these points',
    keys: ['parts/transducers/*/mass', 'parts/transducers/*/settling'],
  },
  {
    because: 'noise of a charge set is taken from its own curve or from amplifier and insulation: either is enough',
    keys: [
      'parts/transducers/*/insulation-*',
      'parts/transducers/*/amplifier-noise',
      'parts/transducers/CHG-25L/noise',
    ],
  },
  {
    because: 'the terminal plan then names the part by its type; nobody is told that its tag is missing',
    keys: ['machines/*/points/*/chain/in-line/*/tag'],
  },
  {
    because: 'a vote without the names of its channels, or no vote at all, is not asked about',
    keys: ['machines/*/points/*/alarm/logic', 'machines/*/points/*/alarm/logic/channels'],
  },
  {
    because: 'a file that says nothing of screens and earths is asked nothing; documents print unknown',
    keys: ['machines/*/points/*/wiring', 'machines/*/points/*/wiring/*'],
  },
  {
    because: 'surroundings that only a longer cable or a larger travel would make decide',
    keys: [
      'machines/*/points/bearing-1/surroundings/cable-temperature',
      'machines/*/points/bearing-1/surroundings/rest-travel',
    ],
  },
  {
    because: 'the vector is then not compensated, and the run-out counts whole',
    keys: ['machines/*/points/*/probes/run-out/running-phase'],
  },
];
