import type { RecordingTyped } from './acceptance-views.ts';

/** A records file made of what was typed: what was left empty is left out, and asked for by whoever reads it. */
export function recordsText(title: string, typed: readonly RecordingTyped[]): string {
  const lines = ['soundpost: records', 'version: 1', '', 'session:', `  title: ${quoted(title)}`, '', 'recordings:'];
  for (const { file, occasion, fields, rate, channels } of typed) {
    lines.push(`  ${quoted(file)}:`, `    file: ${quoted(file)}`, '    occasion:', `      kind: ${occasion}`);
    for (const [key, value] of Object.entries(fields))
      if (value.trim() !== '') lines.push(`      ${key}: ${quoted(value)}`);
    if (rate.trim() !== '') lines.push(`    rate: ${quoted(rate)}`);
    lines.push('    channels:');
    for (const { number, point, ...answers } of channels) {
      lines.push(`      channel ${number}:`, `        channel: ${number}`, `        point: ${quoted(point)}`);
      for (const [key, value] of Object.entries(answers)) {
        if (value.trim() !== '') lines.push(`        ${key}: ${key === 'gain' ? value.trim() : quoted(value)}`);
      }
    }
  }
  return `${lines.join('\n')}\n`;
}

/** JSON text is YAML text. */
function quoted(text: string): string {
  return JSON.stringify(text.trim());
}
