import type { PasteColumn, PasteField } from './views.ts';

/** The words engineers write over a column, beside the name the plant file has for it. */
const names: Readonly<Record<PasteField, readonly string[]>> = {
  machine: ['machine', 'machine tag', 'equipment', 'equipment tag', 'asset', 'train'],
  point: ['point', 'measuring point', 'point name', 'point tag', 'measurement point', 'name', 'tag'],
  location: ['location', 'where', 'place', 'position', 'bearing'],
  direction: ['direction', 'axis', 'orientation'],
  installation: ['installation', 'online or portable', 'installed'],
  'surface-temperature': ['surface temperature', 'temperature', 'surface'],
  transducer: ['transducer', 'sensor', 'transducer type', 'sensor type'],
  mount: ['mount', 'mounting', 'fixing'],
  cable: ['cable', 'cable type'],
  'cable-length': ['cable length', 'length', 'cable run'],
  input: ['input', 'input card', 'card', 'channel type'],
};

const fieldOfName = new Map(
  (Object.entries(names) as [PasteField, readonly string[]][]).flatMap(([field, known]) =>
    [field, ...known].map((name): [string, PasteField] => [name, field]),
  ),
);

/** What a head says: `Length [m]`, `Cable length (m)`, `Length, m`, `Length / m` are the cable length in metres. */
export function columnOf(head: string): PasteColumn {
  const whole = fieldNamed(head);
  if (whole !== undefined) return { head, unit: undefined, field: whole };
  const match =
    /^(.*\S)\s*[[(]\s*([^\])]*\S)\s*[\])]$/.exec(head) ??
    /^(.*\S)\s*[,/:]\s*(\S+)$/.exec(head) ??
    /^(.*?\S)\s+(?:in\s+)?(\S+)$/.exec(head);
  const field = match === null ? undefined : fieldNamed(match[1]!);
  return field === undefined ? { head, unit: undefined, field } : { head, unit: match![2]!, field };
}

function fieldNamed(name: string): PasteField | undefined {
  return fieldOfName.get(
    name
      .toLowerCase()
      .replace(/[\s_]+/g, ' ')
      .trim(),
  );
}

/** Whether a first row names columns: most of what it says is a name known here, and one of them names the point. */
export function areHeads(row: readonly string[]): boolean {
  const columns = row.filter((cell) => cell !== '').map(columnOf);
  const known = columns.filter((column) => column.field !== undefined);
  return known.some(({ field }) => field === 'point') || (known.length > 0 && 2 * known.length >= columns.length);
}
