import { finding } from '../../finding/finding.ts';
import { stated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { statedResponseTime, tooSlow } from '../logic/response-time.ts';
import { exampleCase, response, seconds } from './example.ts';
import { alarmRule, rowsThat } from './rule.ts';

const sources = [clause(tradePractice, 'trip time: sensor time constant, filter, scan, delay, final element')];

export const responseTimeRule = alarmRule({
  rule: 'alarm/response-time',
  title: 'The trip stops the machine in time',
  prose:
    'Detector, filter, scan, delay and final element wait one for the other. Their sum must be less than the damage allows; a delay of ten turns may leave no room on a slow machine, which is then a matter of the set point.',
  sources,
  findings: (subject) => {
    const { response: sheet, at } = subject;
    if (sheet === undefined) return [];
    return rowsThat('trip', subject).flatMap((row) => {
      const { total, allowed } = statedResponseTime(sheet, row.delay ?? { known: false }, at);
      if (total.known && allowed.known) return tooSlow(at, total.value, allowed.value);
      const missing = [total, allowed].flatMap((each) => (each.known ? [] : each.missing));
      return [
        finding({
          rule: 'alarm/response-time',
          weight: 'question',
          at,
          found: `the response time of the ${row.name} is not known`,
          limit: 'a stated time for each wait, and the time that damage allows',
          because: 'A trip that comes too late is none.',
          remedy: missing.map((each) => `state the ${each.what}`),
          sources,
          asks: `What is the ${missing.map((each) => each.what).join(', the ')}? Who owns the trip and the maker of the machine say.`,
        }),
      ];
    });
  },
  passes: exampleCase({ subject: { response: response(stated(10, '10 s')) } }),
  fails: exampleCase({ delay: seconds(3), subject: { response: response(stated(2, '2 s')) } }),
});
