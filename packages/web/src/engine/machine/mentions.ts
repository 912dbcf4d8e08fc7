/** What goes: shafts and elements whose lines may be named, or operating states. */
interface Gone {
  readonly lines?: readonly string[];
  readonly states?: readonly string[];
}

const reference = /(?:^|\s)([a-z][\w.-]*)\/[\w./-]+\s+at\s+([a-z][\w-]*)\s*$/i;

/**
 * Where a machine, as its file writes it, speaks of lines or states that go: `pump/1x at duty`. Each place is told with
 * what is written there; it stays, and what needs it then asks.
 */
export function mentions(written: unknown, { lines = [], states = [] }: Gone): readonly string[] {
  const found: string[] = [];
  const look = (value: unknown, path: readonly string[]): void => {
    if (typeof value === 'string') {
      const named = reference.exec(value);
      if (named !== null && (lines.includes(named[1]!) || states.includes(named[2]!))) {
        found.push(`‘${value.trim()}’, ${path.filter((each) => each !== 'value').join(', ')}`);
      }
    } else if (Array.isArray(value)) for (const each of value) look(each, path);
    else if (typeof value === 'object' && value !== null) {
      for (const [key, each] of Object.entries(value)) look(each, [...path, key]);
    }
  };
  const points = (written as { readonly points?: unknown } | undefined)?.points;
  look(points, []);
  return found;
}
