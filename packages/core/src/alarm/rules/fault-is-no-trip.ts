import { finding } from '../../finding/finding.ts';
import { namurNe43 } from '../../source/namur-ne-43.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase, logic } from './example.ts';
import { alarmRule } from './rule.ts';

const sources = [clause(namurNe43, 'failure currents'), clause(tradePractice, 'trip on channel fault')];

export const faultIsNoTrip = alarmRule({
  rule: 'alarm/fault-is-no-trip',
  title: 'A channel that is not OK is a fault, not a trip',
  prose:
    'A transmitter tells its own failure by 21 mA or 3.6 mA, a broken probe by its gap voltage. Read as a level the one is above every set point and the other a machine at rest; both say nothing of the machine.',
  sources,
  findings: ({ at, logic: stated }) => {
    if (stated === undefined) return [];
    const { whenNotOk, voting } = stated.values;
    if (!whenNotOk.known) {
      return [
        finding({
          rule: 'alarm/fault-is-no-trip',
          weight: 'question',
          at,
          found: 'what a channel that is not OK counts for is not known',
          limit: 'no vote, degrade, or a vote that its owner wants',
          because: 'Left to the controller, a broken wire may stop the machine or leave it without protection.',
          remedy: ["state 'when-not-ok'"],
          sources,
          asks: 'What does the trip logic do with a channel that is not OK? Who owns it says.',
        }),
      ];
    }
    if (whenNotOk.value !== 'vote') return [];
    const alone = voting.known && (voting.value === '1oo1' || voting.value === '1oo2');
    return [
      finding({
        rule: 'alarm/fault-is-no-trip',
        weight: alone ? 'blocks-issue' : 'warns',
        at,
        found: 'a channel that is not OK votes to trip',
        limit: 'a fault that is told as a fault',
        because: alone
          ? 'One broken wire stops the machine.'
          : 'A broken wire and one high reading stop the machine together.',
        remedy: [
          "'degrade' or 'no vote', with an alarm on the fault",
          'the owner of the trip states why a fault is to trip',
        ],
        sources,
      }),
    ];
  },
  passes: exampleCase({ subject: { logic: logic({}) } }),
  fails: exampleCase({ subject: { logic: logic({ voting: '1oo1', whenNotOk: 'vote' }) } }),
});
