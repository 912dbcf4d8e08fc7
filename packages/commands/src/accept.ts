import { acceptance, blocks, design as designOf, parseQuantity, type Recorded } from '@soundpost/core';
import { acceptanceFile, checkAcceptanceFile } from './accept/acceptance-file.ts';
import { measuredSession } from './accept/measured-session.ts';
import { always, argument, command, textFlag } from './command.ts';
import { acceptanceJson } from './json/acceptance-json.ts';
import { blank, labelled } from './layout/line.ts';
import { contentHashOf } from './plant/content-hash.ts';
import { readPlant } from './plant/read-plant.ts';
import { remembering } from './remembering.ts';
import { seed } from './seed.ts';
import { acceptanceLines } from './text/acceptance-text.ts';

export const accept = command({
  name: 'accept',
  summary: 'Whether the installed chains measure as designed, from recordings',
  description:
    'Reads a records file: which recording was made on which occasion (stopped, taps, power coming on, calibrator, running ' +
    '…), which channel is which measuring point, and what the recordings do not say themselves. Measures every channel, a ' +
    'piece at a time, and holds it against the chain as designed: expected, tolerance, found, and one of three verdicts: ' +
    'meets, fails, cannot tell; what cannot be told says what would be needed. Then the chains are identified from the ' +
    'records, each property with its interval and the part it belongs to, and handed back to the design, which is judged ' +
    'again. Nothing is guessed: what neither recording nor records file says is asked. --out writes the acceptance file: one ' +
    'page for a browser and for paper, with pictures, a block for signatures and a hash. Ends with 1 where a check fails.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    records: argument('RECORDS', 'A records file'),
  },
  flags: {
    out: textFlag('FILE', 'Writes the acceptance file there: .html; in place of one that stands there'),
    date: textFlag('DATE', 'The day it is accepted on, for the acceptance file: 2026-11-26'),
    rate: textFlag('FREQUENCY', 'Samples a second of recordings of which nobody says it: 51.2 kHz'),
    unit: textFlag('UNIT', 'Unit of the numbers of channels of which nobody says it: V'),
  },
  examples: [
    'soundpost accept examples/acceptance/plant.yaml examples/acceptance/records.yaml',
    'soundpost accept examples/acceptance/plant.yaml examples/acceptance/records.yaml --out out/acceptance.html --date 2026-11-26',
  ],
  whenAllowed: always,
  async perform(surroundings, { plant: path, records: recordsPath, out, date, rate, unit }, manner) {
    checkAcceptanceFile(out, date);
    const read: Uint8Array[] = [];
    const { plant } = await readPlant(remembering(surroundings, read), path);
    const recorded = await measuredSession(surroundings, recordsPath, {
      ...(rate === undefined ? {} : { rate: parseQuantity(rate, 'frequency') }),
      ...(unit === undefined ? {} : { unit }),
    });
    surroundings.step('comparing with the design');
    const accepted = acceptance(designOf(plant, seed), recorded, seed);
    const json = acceptanceJson(accepted);
    if (out !== undefined) {
      surroundings.step(`writing ${out}`);
      await acceptanceFile(surroundings, {
        accepted,
        json,
        contentHash: await contentHashOf(read),
        records: recordsPath,
        out,
        date,
        manner,
      });
    }
    return {
      exit: failed(accepted.compared.results, recorded) ? 1 : 0,
      lines: [
        ...acceptanceLines(accepted, manner),
        ...(out === undefined ? [] : [blank, ...labelled('Written', out, manner.width, '', 9)]),
      ],
      json: { ...json, ...(out === undefined ? {} : { written: out }) },
    };
  },
});

/** A check that fails, a contradiction that stops, or a recording that cannot be read. */
function failed(results: readonly { readonly verdict: string }[], { findings, recordings }: Recorded): boolean {
  return (
    results.some(({ verdict }) => verdict === 'fails') ||
    blocks(findings) ||
    recordings.some(({ refused }) => refused !== undefined)
  );
}
