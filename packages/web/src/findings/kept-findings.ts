import type { FindingView } from '../engine/views.ts';

/** What of the findings is asked for; an empty text asks for all. */
export interface Sought {
  readonly rule: string;
  readonly machine: string;
  readonly text: string;
}

/** The findings that are of the rule and the machine and say every word of the text, in the order they came. */
export function keptFindings(
  findings: readonly FindingView[],
  { rule, machine, text }: Sought,
): readonly FindingView[] {
  const wanted = text.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  return findings.filter((each) => {
    if (rule !== '' && each.rule !== rule) return false;
    if (machine !== '' && each.machine !== machine) return false;
    if (wanted.length === 0) return true;
    const said = saidBy(each).toLocaleLowerCase();
    return wanted.every((word) => said.includes(word));
  });
}

function saidBy(each: FindingView): string {
  return [each.at, each.rule, each.found, each.limit, each.because, ...each.remedy, each.asks, each.sources].join('\n');
}
