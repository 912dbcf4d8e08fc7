import { type Finding, finding, type Weight } from '../../finding/finding.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase, logic } from './example.ts';
import { type AlarmCase, alarmRule } from './rule.ts';

const sources = [clause(tradePractice, 'voting, and a trip by one loose connector')];

export const voteStated = alarmRule({
  rule: 'alarm/vote',
  title: 'Who must agree before the machine is stopped',
  prose:
    'One channel alone stops the machine on one loose connector; two that must agree leave it without protection when one is dead, unless the vote then goes on with the other.',
  sources,
  findings: (subject) => {
    if (subject.logic === undefined) return [];
    const { voting, whenNotOk } = subject.logic.values;
    if (!voting.known) {
      return say(subject, 'question', {
        found: 'how the trip votes is not known',
        limit: '1oo1, 1oo2, 2oo2 or 2oo3',
        because: 'It decides whether one broken wire stops the machine, and whether one dead probe leaves it bare.',
        remedy: ["state 'voting' with whoever owns the trip"],
        asks: `Who owns the trip vote, and how do the channels vote?${voting.ask === undefined ? '' : ` Ask: ${voting.ask}.`}`,
      });
    }
    if (voting.value === '1oo1') {
      return say(subject, 'warns', {
        found: 'one channel alone trips (1oo1)',
        limit: 'a second channel that agrees',
        because: 'A knock on the cable, a loose connector or a radio beside it stops the machine.',
        remedy: ['2oo2 of X and Y with degrading on a fault', '2oo3', 'accept it, in writing, where damage costs more'],
      });
    }
    if (voting.value === '2oo2' && whenNotOk.known && whenNotOk.value === 'no vote') {
      return say(subject, 'warns', {
        found: '2oo2, and a channel that is not OK has no vote',
        limit: 'a vote that one dead channel leaves able to act',
        because: 'With one probe dead the machine runs without a trip until somebody heeds the fault.',
        remedy: ["'degrade': the other channel then votes alone", '2oo3'],
      });
    }
    return [];
  },
  passes: exampleCase({ subject: { logic: logic({}) } }),
  fails: exampleCase({ subject: { logic: logic({ voting: '1oo1' }) } }),
});

type Says = Pick<Finding, 'found' | 'limit' | 'because' | 'remedy'> & { readonly asks?: string };

function say({ at }: AlarmCase, weight: Weight, says: Says): readonly Finding[] {
  return [finding({ rule: 'alarm/vote', weight, at, sources, ...says })];
}
