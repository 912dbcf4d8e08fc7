import { commands, textOf } from '@soundpost/commands';
import { expect, test } from 'vitest';
import { commandHelp, generalHelp } from './help.ts';

const widest = (text: string) => Math.max(...text.split('\n').map((line) => [...line].length));

test.each(commands.map((each) => [each.name, each] as const))(
  'help of %s: usage, flags, examples, 80 columns',
  (name, command) => {
    const help = textOf(commandHelp(command));
    expect(help).toContain(`Usage\n  soundpost ${name}`);
    for (const flag of Object.keys(command.flags)) expect(help).toContain(`--${flag}`);
    for (const example of command.examples) expect(help.replace(/\s+/g, ' ')).toContain(example);
    expect(widest(help)).toBeLessThanOrEqual(80);
  },
);

test('general help names every command with its summary, and every exit code', () => {
  const help = textOf(generalHelp(commands, '1.2.3')).replace(/\s+/g, ' ');
  for (const { name, summary } of commands) expect(help).toContain(`${name} ${summary}`);
  for (const exit of ['0 done', '1 a finding blocks', '2 the input', '70 a fault']) expect(help).toContain(exit);
});
