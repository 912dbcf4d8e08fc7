import { yamlAt } from '@soundpost/files';
import { isMap, isScalar, parseDocument } from 'yaml';

/** A length as the file has it, and where it says that it is from. */
export interface WrittenLength {
  readonly text: string;
  /** `measured, walked on the tray`; empty where nothing is said. */
  readonly origin: string;
}

/** The cable length of a point as written, before any unit of the reader; nothing where the point has no chain. */
export function writtenLength(file: string, machine: string, point: string): WrittenLength | undefined {
  const yaml = yamlAt(file, ['machines', machine, 'points', point, 'chain', 'cable-length']);
  if (yaml === undefined) return undefined;
  const { contents } = parseDocument(yaml);
  if (isScalar(contents)) return { text: String(contents.value ?? ''), origin: '' };
  if (!isMap(contents)) return undefined;
  const said = (key: string) => {
    const value: unknown = contents.get(key);
    return typeof value === 'string' ? value : undefined;
  };
  const origin = [said('status'), said('source')].filter((each) => each !== undefined).join(', ');
  return { text: said('value') ?? 'unknown', origin };
}
