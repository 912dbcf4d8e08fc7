import type * as core from '../packages/core/src/index.ts';
import type * as files from '../packages/files/src/index.ts';

export function methodPages(from: typeof core, door: typeof files): Readonly<Record<string, string>>;
export function writePages(pages: Readonly<Record<string, string>>): void;
