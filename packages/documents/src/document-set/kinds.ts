import { kinds } from '@soundpost/core';
import type { IssuedKind } from './issued-kind.ts';
import { acquisitionSettings } from './kinds/acquisition-settings.ts';
import { alarmRegister } from './kinds/alarm-register.ts';
import { cableSchedule } from './kinds/cable-schedule.ts';
import { chainCalculations } from './kinds/chain-calculations.ts';
import { commissioningTests } from './kinds/commissioning-tests.ts';
import { designBasis } from './kinds/design-basis.ts';
import { frequencyTables } from './kinds/frequency-tables.ts';
import { groundingDrawings } from './kinds/grounding-drawing.ts';
import { hazardousAreaLoops } from './kinds/hazardous-area-loops.ts';
import { instrumentList } from './kinds/instrument-list.ts';
import { loopDiagrams } from './kinds/loop-diagrams.ts';
import { machineAndPointSheets } from './kinds/machine-and-point-sheets.ts';
import { mountingInstructions } from './kinds/mounting-instructions.ts';
import { purchaseList } from './kinds/purchase-list.ts';
import { requirementSheets } from './kinds/requirement-sheets.ts';
import { terminalPlan } from './kinds/terminal-plan.ts';

/** Every kind of document that is issued, in the order of a set. */
export const issuedKinds: readonly IssuedKind[] = kinds(
  designBasis,
  machineAndPointSheets,
  frequencyTables,
  instrumentList,
  requirementSheets,
  chainCalculations,
  cableSchedule,
  terminalPlan,
  loopDiagrams,
  groundingDrawings,
  hazardousAreaLoops,
  alarmRegister,
  acquisitionSettings,
  mountingInstructions,
  commissioningTests,
  purchaseList,
);
