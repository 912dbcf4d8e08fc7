import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { codePointsOf } from './coverage.ts';

/** The faces every document is set in, as they ship with this package: open licence, never a font of the machine. */
const faces = [
  '400Regular/Inter_400Regular',
  '400Regular_Italic/Inter_400Regular_Italic',
  '600SemiBold/Inter_600SemiBold',
];

interface ShippedFonts {
  readonly blobs: Buffer[];
  /** Every sign all of them have. */
  readonly signs: ReadonlySet<number>;
}

let loaded: ShippedFonts | undefined;

/** The shipped fonts, read once. */
export function shippedFonts(): ShippedFonts {
  loaded ??= read();
  return loaded;
}

function read(): ShippedFonts {
  const { resolve } = createRequire(import.meta.url);
  const blobs = faces.map((face) => readFileSync(resolve(`@expo-google-fonts/inter/${face}.ttf`)));
  const [first, ...others] = blobs.map(codePointsOf);
  return { blobs, signs: new Set([...first!].filter((code) => others.every((each) => each.has(code)))) };
}
