import { accept } from './accept.ts';
import { changes } from './changes.ts';
import type { AnyCommand } from './command.ts';
import { demand } from './demand.ts';
import { demo } from './demo.ts';
import { doctor } from './doctor.ts';
import { event } from './event.ts';
import { explain } from './explain.ts';
import { importTable } from './import.ts';
import { issue } from './issue.ts';
import { newThing } from './new.ts';
import { offer } from './offer.ts';
import { prove } from './prove.ts';
import { record } from './record.ts';
import { rehearse } from './rehearse.ts';
import { schema } from './schema.ts';
import { serve } from './serve.ts';
import { shortlist } from './shortlist.ts';
import { standardise } from './standardise.ts';
import { teds } from './teds.ts';
import { work } from './work.ts';
import { workings } from './workings.ts';

/** Every command: first the job in the order in which it is done, then what helps to do it. */
export const commands: readonly AnyCommand[] = [
  demand,
  shortlist,
  prove,
  standardise,
  offer,
  issue,
  changes,
  importTable,
  serve,
  event,
  rehearse,
  record,
  accept,
  explain,
  workings,
  work,
  teds,
  demo,
  schema,
  doctor,
  newThing,
];
