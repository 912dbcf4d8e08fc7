import type { Rule } from '../../chain/rules/rule.ts';
import { ambient } from './ambient.ts';
import { barrier } from './barrier.ts';
import { certificate } from './certificate.ts';
import { column } from './column.ts';
import { conditions } from './conditions.ts';
import { earth } from './earth.ts';
import { entity } from './entity.ts';
import { group } from './group.ts';
import { level } from './level.ts';
import { multicore } from './multicore.ts';
import { temperatureClass } from './temperature-class.ts';

/** Every rule of a loop in a classified area, in the order in which a reason is best read. */
export const areaRules: readonly Rule[] = [
  certificate,
  level,
  group,
  temperatureClass,
  ambient,
  barrier,
  entity,
  column,
  earth,
  multicore,
  conditions,
];
