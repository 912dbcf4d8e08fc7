import type { Rule } from '../chain/rules/rule.ts';
import { chainRules } from '../chain/rules/rules.ts';
import { areaRules } from '../hazardous-area/rules/rules.ts';

/** Every rule a chain at a point is judged by: first whether it may stand there, then what it makes of the motion. */
export const appraisalRules: readonly Rule[] = [...areaRules, ...chainRules];
